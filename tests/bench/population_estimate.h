// What could be read from a sensitometric test by someone who knew all that nobody knows: the
// families of curves that the bench draws its films from, how often each film is drawn, and the
// true size of every error. Bayes' estimator (the mean over all films that the steps leave
// possible) has the least mean squared error of all readers of the same steps; a percentile over
// some hundred tests can be undercut by chance. Shapes lie on a grid; about each, what stretches
// and moves it is told by Laplace's approximation, without the bounds of contrast index and speed
// point.
#pragma once

#include "curve_truth.h"
#include "simulator/film_curve.h"

#include <fogline/sensitometry/characteristic_curve.h>

#include <vector>

namespace bench {

/// The films that the bench draws: each family as often, its numbers spread evenly.
struct FilmPopulation {
  double least_contrast_index = 0.38;
  double greatest_contrast_index = 0.85;
  double least_maximum_density = 1.8;
  double greatest_maximum_density = 3.2;
  double shortest_toe = 0.06;
  double longest_toe = 0.3;
  double softest_shoulder = 2.0;
  double sharpest_shoulder = 8.0;
  double least_speed_point_log_h = -3.0;
  double greatest_speed_point_log_h = -1.5;
};

/// Made once for all tests, which may ask from several threads.
class PopulationEstimator {
 public:
  explicit PopulationEstimator(const FilmPopulation& population);

  /// Starts at the true film, which only saves time.
  [[nodiscard]] CurveNumbers estimate(const fogline::ExposedSteps& exposed,
                                      const filmsim::CurveSettings& film) const;

 private:
  struct Shape {
    filmsim::FilmCurve curve;
    double log_probability;
  };
  std::vector<Shape> shapes_;
  double density_distance_ = 0.0;
};

}  // namespace bench
