#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 5> words{{
    {report_no_json, "{file} is no report, or is cut off (not JSON): measure the scans again."},
    {no_report, "{file} is no report of fogline's: name a file that fogline measure --json wrote."},
    {report_of_other_version,
     "{file} is a report of version {version:0}, which this fogline doesn't know: use the fogline "
     "that made it, or a newer one."},
    {report_field_unfit,
     "{file} is damaged: its field {field} is missing or not what it should be; measure the scans "
     "again."},
    {told, "{file} couldn't be read."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_reports() {
  return words;
}

}  // namespace fogline
