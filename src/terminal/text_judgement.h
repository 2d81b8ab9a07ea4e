#pragma once

#include "terminal/text_layout.h"
#include "words/number_text.h"

#include <fogline/record/record_json.h>

// The sections of the printed report that tell what is concluded, below their headings. Each is
// called only where the roll has it (`sections_of`).

namespace fogline {

/// *Do tonight* and *Next roll*, as a person sets them.
void put_tonight(TextLayout& layout, const RollRecord& record);
void put_next_roll(TextLayout& layout, const RollRecord& record);
/// *Light or time?*: probabilities and evidence.
void put_light_or_time(TextLayout& layout, const RollRecord& record);
/// *Marks*, with their table.
void put_marks(TextLayout& layout, const RollRecord& record, DensityUnits units);
/// *Your baths*: why the next roll's recipe is what it is.
void put_baths(TextLayout& layout, const RollRecord& record);

}  // namespace fogline
