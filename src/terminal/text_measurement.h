#pragma once

#include "terminal/text_layout.h"
#include "words/number_text.h"

#include <fogline/record/record_json.h>

// The sections of the printed report that tell what was measured and how, below their headings.
// Each is called only where the roll has it (`sections_of`).

namespace fogline {

void put_trust(TextLayout& layout, const RollMeasurement& measurement);
void put_clear_film(TextLayout& layout, const RollRecord& record, DensityUnits units);
/// A table where it fits, a list on a narrow terminal.
void put_frames(TextLayout& layout, const RollMeasurement& measurement, DensityUnits units);
void put_curve(TextLayout& layout, const RollRecord& record);
void put_method(TextLayout& layout, const RollRecord& record);

}  // namespace fogline
