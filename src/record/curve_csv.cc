#include "record/curve_csv.h"

#include "words/curve_numbers.h"
#include "words/number_text.h"

#include <fogline/base/quantity.h>

namespace fogline {

namespace {

constexpr int digits = 4;
/// Curve places are written up to a stop beyond the exposures.
constexpr double written_beyond = 0.3;

std::string quoted(const std::string& text) {
  std::string result = "\"";
  for (const char letter : text) {
    result += letter == '"' ? "\"\"" : std::string(1, letter);
  }
  return result + "\"";
}

std::string row(const std::string& kind, const std::string& name, const std::string& log_h,
                double value, double u95, const std::string& used) {
  return kind + "," + quoted(name) + "," + log_h + "," + machine_number(value, digits) + "," +
         machine_number(u95, digits) + "," + used + "\r\n";
}

}  // namespace

std::string curve_csv(const RollMeasurement& roll) {
  std::string csv = "kind,name,log_h,net_density,u95,used\r\n";
  if (!roll.sensitometry) {
    return csv;
  }
  const CharacteristicCurve& curve = roll.sensitometry->curve;
  for (const ExposedStep& step : curve.steps) {
    csv +=
        row("step", step.label, machine_number(step.log_h, digits), step.density - curve.base_fog,
            coverage_factor_95 * step.density_doubt, step.left_out ? "no" : "yes");
  }
  for (std::size_t i = 0; i < curve.mean.net_density.size(); ++i) {
    const double log_h = curve.mean.begin_log_h + curve.mean.step_log_h * static_cast<double>(i);
    if (log_h >= curve.begin_log_h - written_beyond && log_h <= curve.end_log_h + written_beyond) {
      csv += row("curve", "", machine_number(log_h, digits), curve.mean.net_density[i],
                 coverage_factor_95 * curve.doubt[i], "");
    }
  }
  for (const CurveNumber& number : curve_numbers(*roll.sensitometry)) {
    if (*number.reading) {
      csv += row("reading", number.name, "", (*number.reading)->value, (*number.reading)->u95, "");
    }
  }
  return csv;
}

}  // namespace fogline
