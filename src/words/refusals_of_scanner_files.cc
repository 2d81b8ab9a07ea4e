#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 7> words{{
    {scanner_file_too_large, "{file} is too large to be a scanner file."},
    {scanner_file_no_json,
     "{file} is no scanner file (not JSON): make one with fogline calibrate."},
    {no_scanner_file, "{file} is no scanner file of fogline's: make one with fogline calibrate."},
    {scanner_file_of_other_version,
     "{file} is a scanner file of a version that this fogline doesn't know: calibrate again, or "
     "use the fogline that made it."},
    {scanner_file_changed,
     "{file} is damaged or was edited (its checksum doesn't fit): calibrate again."},
    {scanner_file_lacks_field, "{file} has no field {field}: calibrate again."},
    {scanner_file_field_impossible,
     "{file} has something impossible in its field {field}: calibrate again."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_scanner_files() {
  return words;
}

}  // namespace fogline
