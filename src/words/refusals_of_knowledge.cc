#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 10> words{{
    {knowledge_no_toml, "calibration/{file} isn't TOML in line {line:0}."},
    {knowledge_key_missing, "calibration/{file}, line {line:0}: {key} is missing."},
    {knowledge_key_unknown, "calibration/{file}, line {line:0}: {key} is known to nobody."},
    {knowledge_without_source, "calibration/{file}, line {line:0}: {table} names no source."},
    {knowledge_wants_table, "calibration/{file}, line {line:0}: {key} must be a table."},
    {knowledge_wants_number, "calibration/{file}, line {line:0}: {key} must be a number."},
    {knowledge_wants_whole_number,
     "calibration/{file}, line {line:0}: {key} must be a whole number."},
    {knowledge_wants_list,
     "calibration/{file}, line {line:0}: {key} must be a list of one value or more."},
    {knowledge_wants_values,
     "calibration/{file}, line {line:0}: {key} must hold {count:0} values."},
    {knowledge_out_of_range,
     "calibration/{file}, line {line:0}: {key} must lie from {least:3} to {most:3}."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_knowledge() {
  return words;
}

}  // namespace fogline
