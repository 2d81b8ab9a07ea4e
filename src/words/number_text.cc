#include "words/number_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string_view>

namespace fogline {
namespace {

constexpr int most_decimals = 3;   // a thousandth of density is below any scan's noise
constexpr int usual_decimals = 2;  // what a densitometer shows
const double density_of_a_stop = std::log10(2.0);

Quantity in_units(Quantity quantity, DensityUnits units) {
  if (units == DensityUnits::density) {
    return quantity;
  }
  quantity.value /= density_of_a_stop;
  quantity.u95 /= density_of_a_stop;
  for (std::optional<double>* end : {&quantity.lower95, &quantity.upper95}) {
    if (*end) {
      **end /= density_of_a_stop;
    }
  }
  return quantity;
}

}  // namespace

std::string machine_number(double value, int decimals) {
  std::array<char, 400> buffer{};  // the longest double has 309 digits before the point
  const double finite = std::isfinite(value) ? value : 0.0;
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), finite,
                                 std::chars_format::fixed, decimals);
  const std::string_view text(buffer.data(), static_cast<std::size_t>(end.ptr - buffer.data()));
  const bool is_zero = text.find_first_not_of("-0.") == std::string_view::npos;
  return std::string(is_zero && text.starts_with('-') ? text.substr(1) : text);
}

std::string text_from_number(double value, int decimals) {
  if (!std::isfinite(value)) {
    return "unknown";
  }
  const std::string text = machine_number(value, decimals);
  if (!text.starts_with('-')) {
    return text;
  }
  std::string with_minus("−");
  with_minus.append(text, 1, std::string::npos);
  return with_minus;
}

int decimals_from_doubt(double u95) {
  if (!std::isfinite(u95) || u95 <= 0.0) {
    return usual_decimals;
  }
  int exponent = static_cast<int>(std::floor(std::log10(u95)));
  const double leading = u95 / std::pow(10.0, exponent);
  constexpr double two_digits_below = 1.95;  // 1.95 already rounds to 2
  if (leading < two_digits_below) {
    --exponent;
  }
  return std::clamp(-exponent, 0, most_decimals);
}

NumberText text_from_density(const Quantity& density, DensityUnits units) {
  const Quantity shown = in_units(density, units);
  if (shown.lower95 && shown.upper95) {
    const int decimals = decimals_from_doubt((*shown.upper95 - *shown.lower95) / 2.0);
    return {text_from_number(shown.value, decimals),
            std::string("(") + text_from_number(*shown.lower95, decimals) + " to " +
                text_from_number(*shown.upper95, decimals) + ")"};
  }
  const int decimals = decimals_from_doubt(shown.u95);
  if (shown.at_least) {
    return {std::string("at least ").append(text_from_number(shown.value, decimals)), ""};
  }
  if (!(shown.u95 > 0.0) || !std::isfinite(shown.u95)) {
    return {text_from_number(shown.value, decimals), ""};
  }
  const double smallest = std::pow(10.0, -decimals);  // a doubt is never printed as nothing
  return {text_from_number(shown.value, decimals),
          std::string("± ").append(text_from_number(std::max(shown.u95, smallest), decimals))};
}

std::string sentence_from_density(const Quantity& density, DensityUnits units) {
  const NumberText text = text_from_density(density, units);
  return text.value + (text.doubt.empty() ? "" : " " + text.doubt) +
         (units == DensityUnits::stops ? " stops" : "");
}

}  // namespace fogline
