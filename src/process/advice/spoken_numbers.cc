#include "process/advice/spoken_numbers.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace fogline {

std::string fixed_text(double value, int digits) {
  std::array<char, 64> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value,
                                 std::chars_format::fixed, digits);
  return {text.data(), end.ptr};
}

std::string clock_text(double seconds) {
  constexpr long a_minute = 60;
  constexpr long ten = 10;
  const long whole = std::lround(seconds);
  const long rest = whole % a_minute;
  return std::to_string(whole / a_minute) + (rest < ten ? ":0" : ":") + std::to_string(rest);
}

std::string percent_text(double share) {
  constexpr double hundred = 100.0;
  return fixed_text(hundred * share, 0) + " %";
}

std::string stops_text(double stops) {
  constexpr long a_stop = 3;
  const long thirds = std::lround(std::abs(stops) * static_cast<double>(a_stop));
  const long whole = thirds / a_stop;
  const std::string rest = thirds % a_stop == 1 ? "1/3" : "2/3";
  if (thirds % a_stop == 0) {
    return std::to_string(whole) + (whole == 1 ? " stop" : " stops");
  }
  return whole == 0 ? rest + " of a stop" : std::to_string(whole) + " " + rest + " stops";
}

}  // namespace fogline
