#include "words/number_forms.h"

#include "words/number_text.h"
#include "words/phrases.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace fogline {

namespace {

constexpr int most_decimals = 4;

std::string clock_text(double seconds) {
  constexpr long a_minute = 60;
  constexpr long ten = 10;
  const long whole = std::lround(seconds);
  const long rest = whole % a_minute;
  return std::to_string(whole / a_minute) + (rest < ten ? ":0" : ":") + std::to_string(rest);
}

std::string percent_text(double share) {
  constexpr double hundred = 100.0;
  return text_from_number(hundred * share, 0) + " %";
}

std::string stops_text(double stops) {
  constexpr long a_stop = 3;
  const long thirds = std::lround(std::abs(stops) * static_cast<double>(a_stop));
  const long whole = thirds / a_stop;
  if (thirds % a_stop == 0) {
    return std::to_string(whole) + (whole == 1 ? " stop" : " stops");
  }
  const std::string rest = thirds % a_stop == 1 ? "1/3" : "2/3";
  return whole == 0 ? rest + " of a stop" : std::to_string(whole) + " " + rest + " stops";
}

std::string median_text(double frames) {
  const long count = std::lround(frames);
  return count == 1 ? "the one frame" : "the median of " + std::to_string(count) + " frames";
}

std::string signed_text(double number) {
  constexpr int digits = 2;
  const double value = number == 0.0 ? 0.0 : number;  // never "+-0"
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value,
                                 std::chars_format::general, digits);
  std::string with_sign(value < 0.0 ? "" : "+");
  return with_sign.append(text.data(), end.ptr);
}

}  // namespace

std::string number_in_form(double value, std::string_view form) {
  if (std::isnan(value)) {
    return "unknown";
  }
  // Nothing that is measured or set comes near; what is counted in whole seconds or frames fits.
  constexpr double greatest = 1e12;
  const double shown = std::clamp(value, -greatest, greatest);
  if (form == "clock") {
    return clock_text(shown);
  }
  if (form == "percent") {
    return percent_text(shown);
  }
  if (form == "stops") {
    return stops_text(shown);
  }
  if (form == "count") {
    return count_word(static_cast<std::size_t>(std::max(0L, std::lround(shown))));
  }
  if (form == "signed") {
    return signed_text(shown);
  }
  if (form == "median") {
    return median_text(shown);
  }
  const bool with_sign = form.size() == 2 && form.front() == '+';
  const std::string_view decimals = with_sign ? form.substr(1) : form;
  if (decimals.size() == 1 && decimals.front() >= '0' && decimals.front() <= '0' + most_decimals) {
    const std::string text = text_from_number(shown, decimals.front() - '0');
    const bool nothing = text.find_first_not_of("0.") == std::string::npos;
    return with_sign && shown > 0.0 && !nothing ? "+" + text : text;
  }
  throw std::logic_error("no form of a number is called " + std::string(form));
}

}  // namespace fogline
