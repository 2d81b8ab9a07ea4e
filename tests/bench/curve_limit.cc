#include "curve_limit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Cholesky>
#include <Eigen/Dense>

namespace bench {

namespace {

/// The population's unknowns, what they stand for in the settings, and over which range they are
/// spread evenly (`sample_film`).
struct Unknown {
  double filmsim::CurveSettings::*member;
  double range;
  double step;
};
constexpr std::array unknowns{Unknown{&filmsim::CurveSettings::contrast_index, 0.47, 0.002},
                              Unknown{&filmsim::CurveSettings::maximum_density, 1.4, 0.02},
                              Unknown{&filmsim::CurveSettings::toe, 0.24, 0.004},
                              Unknown{&filmsim::CurveSettings::shoulder, 6.0, 0.1},
                              Unknown{&filmsim::CurveSettings::speed_point_log_h, 1.5, 0.002}};

struct Told {
  Eigen::VectorXd steps;
  Eigen::VectorXd numbers;
};

Told told_by(const filmsim::CurveSettings& settings, const fogline::ExposedSteps& exposed) {
  const filmsim::FilmCurve film(settings);
  Told told;
  told.steps.resize(static_cast<Eigen::Index>(exposed.steps.size()));
  for (std::size_t i = 0; i < exposed.steps.size(); ++i) {
    told.steps(static_cast<Eigen::Index>(i)) = film.density(exposed.steps[i].log_h);
  }
  const auto net = [&](double x) { return film.density(x); };
  told.numbers.resize(4);
  told.numbers << settings.contrast_index,
      filmsim::average_gradient(net, settings.speed_point_log_h),
      true_gamma(film, exposed.steps.front().log_h, exposed.steps.back().log_h),
      settings.speed_point_log_h;
  return told;
}

}  // namespace

std::vector<double> least_deviations(const filmsim::CurveSettings& film,
                                     const fogline::ExposedSteps& exposed) {
  // Beside the population's: base plus fog, and the scanner's scale.
  const Eigen::Index population = unknowns.size();
  const Eigen::Index base = population;
  const Eigen::Index scale = population + 1;
  const Eigen::Index all = population + 2;
  const Told middle = told_by(film, exposed);
  Eigen::MatrixXd by_unknown(middle.steps.size(), all);
  Eigen::MatrixXd numbers_by(middle.numbers.size(), all);
  Eigen::MatrixXd information = Eigen::MatrixXd::Zero(all, all);
  numbers_by.setZero();
  for (Eigen::Index k = 0; k < population; ++k) {
    const Unknown& unknown = unknowns[static_cast<std::size_t>(k)];
    filmsim::CurveSettings less = film;
    filmsim::CurveSettings more = film;
    less.*unknown.member -= unknown.step;
    more.*unknown.member += unknown.step;
    const Told below = told_by(less, exposed);
    const Told above = told_by(more, exposed);
    by_unknown.col(k) = (above.steps - below.steps) / (2.0 * unknown.step);
    numbers_by.col(k) = (above.numbers - below.numbers) / (2.0 * unknown.step);
    information(k, k) = 12.0 / (unknown.range * unknown.range);
  }
  by_unknown.col(base).setOnes();
  by_unknown.col(scale) = middle.steps;
  information(base, base) = 1.0 / (exposed.base_fog_doubt * exposed.base_fog_doubt);
  information(scale, scale) = 1.0 / (exposed.density_share_doubt * exposed.density_share_doubt);
  for (Eigen::Index i = 0; i < middle.steps.size(); ++i) {
    const fogline::ExposedStep& step = exposed.steps[static_cast<std::size_t>(i)];
    const filmsim::FilmCurve curve(film);
    constexpr double width = 0.02;
    const double slope =
        (curve.density(step.log_h + width) - curve.density(step.log_h - width)) / (2.0 * width);
    const double doubt = std::hypot(step.density_doubt, slope * step.log_h_doubt);
    information += by_unknown.row(i).transpose() * by_unknown.row(i) / (doubt * doubt);
  }
  const Eigen::MatrixXd covariance =
      numbers_by * information.ldlt().solve(numbers_by.transpose().eval());
  std::vector<double> deviations;
  for (Eigen::Index n = 0; n < middle.numbers.size(); ++n) {
    deviations.push_back(std::sqrt(std::max(0.0, covariance(n, n))));
  }
  return deviations;
}

double percentile_of_normals(const std::vector<double>& deviations, double share) {
  double low = 0.0;
  double high = 1.0;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    double within = 0.0;
    for (const double deviation : deviations) {
      within += deviation > 0.0 ? std::erf(middle / deviation / std::sqrt(2.0)) : 1.0;
    }
    (within < share * static_cast<double>(deviations.size()) ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace bench
