#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 11> words{{
    {reference_too_large, "{file} is too large to be a wedge reference."},
    {reference_line_unknown,
     "{file} has a line that isn't step,density (line {line:0}): write one step a line, such as "
     "1,0.05."},
    {reference_no_density,
     "{file} has \"{text}\" in line {line:0} where a density from 0 to 6 is wanted (with a decimal "
     "point)."},
    {reference_step_count,
     "{file} lists {steps:0} steps; a wedge has 5 to 41: write one a line, step,density."},
    {reference_step_twice, "{file} lists step \"{step}\" twice."},
    {reference_out_of_order,
     "{file} neither rises nor falls all the way: step \"{step}\" ({density:3}) is out of order."},
    {reference_no_densities,
     "{file} has no table with SAMPLE_ID and D_VIS: give the visual densities of the steps."},
    {reference_format_breaks_off,
     "{file} breaks off within its BEGIN_DATA_FORMAT: END_DATA_FORMAT is missing."},
    {reference_data_break_off, "{file} breaks off within its data: END_DATA is missing."},
    {reference_row_unfit,
     "{file} has {values:0} values in line {line:0} where its format names {fields:0}."},
    {reference_sets_unfit, "{file} says NUMBER_OF_SETS {sets} but holds {rows:0} lines of data."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_references() {
  return words;
}

}  // namespace fogline
