// Invented scanners of many shapes, as numbers: what code they give to a light.
#pragma once

#include "density/fit_response.h"

#include <cmath>
#include <random>

namespace fogline::invented {

struct Scanner {
  double bare_level = 0.85;   // of the sensor's range
  double stray_share = 0.01;  // of the bare light
  double offset = 0.0003;     // of the bare light, added to all
  double power = 1.0;         // code = light^(1 / power), bent further:
  double toe = 0.0;           // codes of dark light flatten towards this floor
  double shoulder = 0.0;      // codes of bright light flatten
  double noise = 2e-5;        // of the full code, in an area's mean

  [[nodiscard]] double code(double transmittance, double field) const {
    const double light = bare_level * (transmittance + stray_share * field + offset);
    const double bent = std::pow(light, 1.0 / power);
    return (bent * (1.0 + shoulder) / (1.0 + shoulder * bent) + toe) / (1.0 + toe);
  }
};

inline Scanner scanner(std::mt19937& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Scanner made;
  made.bare_level = between(0.6, 0.95);
  made.stray_share = between(0.0, 0.025);
  made.offset = between(0.0, 0.0006);
  made.power = between(0.7, 2.4);
  made.toe = between(0.0, 0.002);
  made.shoulder = between(0.0, 0.6);
  made.noise = std::pow(10.0, between(-5.3, -4.3));
  return made;
}

struct Wedge {
  int steps = 21;
  double step_density = 0.15;
  double certificate_u95 = 0.01;
  double least_field = 0.2;
  double greatest_field = 0.6;
};

/// The wedge as this scanner reads it; the certificate errs by its own doubt.
inline ResponseProblem shown(const Scanner& scanner, const Wedge& wedge, std::mt19937& random) {
  std::normal_distribution<double> normal;
  ResponseProblem problem;
  problem.stray = {0.010, 0.007, false};
  const auto add = [&](double density, double true_density, double field) {
    ShownLight light;
    light.step.reference_density = density;
    light.step.code[0] =
        scanner.code(std::pow(10.0, -true_density), field) + scanner.noise * normal(random);
    light.code_doubt[0] = scanner.noise;
    light.density_doubt = wedge.certificate_u95 / 1.96;
    light.stray_field[0] = even_field(field);
    if (light.step.code[0] <= 3.0 * scanner.noise) {
      light.step.left_out = fact_of(Unknown::step_without_light);
    }
    return light;
  };
  problem.bare = add(0.0, 0.0, wedge.greatest_field);
  problem.bare->density_doubt = 0.001;
  for (int i = 0; i < wedge.steps; ++i) {
    const double density = 0.05 + wedge.step_density * i;
    const double error = wedge.certificate_u95 / 1.96 * normal(random);
    const double part = static_cast<double>(i) / (wedge.steps - 1);
    problem.lights.push_back(
        add(density + error, density,
            wedge.greatest_field + part * (wedge.least_field - wedge.greatest_field)));
    problem.lights.back().step.number = i + 1;
  }
  return problem;
}

}  // namespace fogline::invented
