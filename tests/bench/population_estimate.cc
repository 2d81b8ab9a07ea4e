#include "population_estimate.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <Eigen/Cholesky>
#include <Eigen/Dense>

namespace bench {

namespace {

/// Contrast index and speed point of the shapes before they are stretched and moved.
constexpr double shape_index = 0.6;
/// Maximum density lies between the shapes as well: its own scale is normal about each, as wide as
/// they lie apart, so that together they spread evenly.
constexpr int density_count = 14;
constexpr int toe_count = 12;
constexpr int shoulder_count = 5;

double between(double low, double high, int i, int count) {
  return low + (high - low) * (i + 0.5) / count;
}

/// Unknowns of one shape: logarithm of its stretch, place, own density scale's logarithm, base plus
/// fog, and the scanner's scale, whose middles are the start.
enum Unknown { stretch, place, own_scale, base, scanner_scale, unknown_count };
using Unknowns = Eigen::Matrix<double, unknown_count, 1>;
using Information = Eigen::Matrix<double, unknown_count, unknown_count>;

/// A shape stretched, moved and scaled.
struct Film {
  const filmsim::FilmCurve& shape;
  const Unknowns& at;

  [[nodiscard]] double net_density(double log_h) const {
    const double x = (log_h - at(place)) * std::exp(at(stretch));
    return std::exp(at(own_scale)) * shape.quick_density(static_cast<float>(x));
  }
  [[nodiscard]] double slope(double log_h) const {
    constexpr double width = 0.02;
    return (net_density(log_h + width) - net_density(log_h - width)) / (2.0 * width);
  }
};

struct Prior {
  Unknowns middle;
  Unknowns deviation;
};

/// The most probable unknowns, and the logarithm of how probable the shape makes the steps.
struct ShapeAnswer {
  Unknowns at;
  double log_evidence = -std::numeric_limits<double>::infinity();
};

ShapeAnswer answer_of(const filmsim::FilmCurve& shape, const fogline::ExposedSteps& exposed,
                      const Prior& prior) {
  ShapeAnswer answer;
  answer.at = prior.middle;
  constexpr int rounds = 6;
  for (int round = 0;; ++round) {
    const Film film{shape, answer.at};
    Information information = Information::Zero();
    Unknowns gradient = Unknowns::Zero();
    double log_probability = 0.0;
    for (int k = 0; k < unknown_count; ++k) {
      const double off = answer.at(k) - prior.middle(k);
      const double weight = 1.0 / (prior.deviation(k) * prior.deviation(k));
      information(k, k) += weight;
      gradient(k) -= weight * off;
      log_probability -= 0.5 * weight * off * off;
    }
    for (const fogline::ExposedStep& step : exposed.steps) {
      const double net = film.net_density(step.log_h);
      const double slope = film.slope(step.log_h);
      const double scale = std::exp(answer.at(scanner_scale));
      Unknowns by;
      by(stretch) = scale * slope * (step.log_h - answer.at(place));
      by(place) = -scale * slope;
      by(own_scale) = scale * net;
      by(base) = 1.0;
      by(scanner_scale) = scale * net;
      const double doubt = std::hypot(step.density_doubt, slope * step.log_h_doubt);
      const double off = (step.density - answer.at(base) - scale * net) / doubt;
      information += by * by.transpose() / (doubt * doubt);
      gradient += by * off / doubt;
      log_probability -= 0.5 * off * off + std::log(doubt);
    }
    const Eigen::LLT<Information> factor(information);
    if (round == rounds) {
      answer.log_evidence =
          log_probability - factor.matrixL().toDenseMatrix().diagonal().array().log().sum();
      return answer;
    }
    // Far from the answer a whole stride would leave the table.
    constexpr double longest = 0.4;
    const Unknowns stride = factor.solve(gradient);
    answer.at += stride * std::min(1.0, longest / std::max(1e-12, stride.cwiseAbs().maxCoeff()));
  }
}

}  // namespace

PopulationEstimator::PopulationEstimator(const FilmPopulation& population) {
  using filmsim::CurveFamily;
  for (int d = 0; d < density_count; ++d) {
    filmsim::CurveSettings settings;
    settings.contrast_index = shape_index;
    settings.speed_point_log_h = 0.0;
    settings.maximum_density = between(population.least_maximum_density,
                                       population.greatest_maximum_density, d, density_count);
    for (const CurveFamily family :
         {CurveFamily::kLogistic, CurveFamily::kQuantumCount, CurveFamily::kNormalSum}) {
      settings.family = family;
      shapes_.push_back({filmsim::FilmCurve(settings), 0.0});
    }
    for (int t = 0; t < toe_count; ++t) {
      settings.toe = between(population.shortest_toe, population.longest_toe, t, toe_count);
      settings.family = CurveFamily::kStraightLine;
      shapes_.push_back({filmsim::FilmCurve(settings), -std::log(toe_count)});
      settings.family = CurveFamily::kSoftToe;
      for (int s = 0; s < shoulder_count; ++s) {
        settings.shoulder =
            between(population.softest_shoulder, population.sharpest_shoulder, s, shoulder_count);
        shapes_.push_back(
            {filmsim::FilmCurve(settings), -std::log(toe_count) - std::log(shoulder_count)});
      }
    }
  }
  density_distance_ =
      (population.greatest_maximum_density - population.least_maximum_density) / density_count;
}

CurveNumbers PopulationEstimator::estimate(const fogline::ExposedSteps& exposed,
                                           const filmsim::CurveSettings& film) const {
  // Contrast index and speed point are spread so widely beforehand that the steps alone tell them.
  Prior prior;
  prior.middle << std::log(film.contrast_index / shape_index), film.speed_point_log_h, 0.0,
      *exposed.base_fog, 0.0;
  prior.deviation << 10.0, 10.0, 0.0, exposed.base_fog_doubt, exposed.density_share_doubt;
  std::vector<ShapeAnswer> answers;
  double best = -std::numeric_limits<double>::infinity();
  for (const Shape& shape : shapes_) {
    prior.deviation(own_scale) = density_distance_ / shape.curve.settings().maximum_density;
    answers.push_back(answer_of(shape.curve, exposed, prior));
    answers.back().log_evidence += shape.log_probability - std::log(prior.deviation(own_scale));
    best = std::max(best, answers.back().log_evidence);
  }
  CurveNumbers sum{};
  double weights = 0.0;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    constexpr double negligible = 1e-4;
    const double weight = std::exp(answers[i].log_evidence - best);
    if (!(weight > negligible)) {
      continue;
    }
    const Film answer{shapes_[i].curve, answers[i].at};
    const CurveNumbers numbers = numbers_of_curve(
        [&](double log_h) { return answer.net_density(log_h); },
        {answer.at(place), exposed.steps.front().log_h, exposed.steps.back().log_h});
    for (std::size_t n = 0; n < sum.size(); ++n) {
      sum[n] += weight * numbers[n];
    }
    weights += weight;
  }
  for (double& number : sum) {
    number /= weights;
  }
  return sum;
}

}  // namespace bench
