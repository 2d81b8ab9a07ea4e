#pragma once

#include <fogline/process/judge_roll.h>

#include <string_view>
#include <vector>

namespace fogline {

/// The sections that a report of a roll can have. A new one needs a row in `sections.cc`, its
/// words, and what stands below its title in `page/html.cc` and in `terminal/text.cc`: their
/// switches have no default, so that the compiler asks for it.
enum class SectionId {
  verdict,
  tonight,          ///< what to do with the film in hand, each step in short where room is short
  next_roll,        ///< what to set for the next roll
  strip,            ///< the picture of each scan, with what was measured drawn on it
  frames,           ///< shadow, middle and highlight of each frame
  light_or_time,    ///< the probable cause, with its evidence
  curve,            ///< the characteristic curve
  clear_film,       ///< base plus fog, tint
  marks,            ///< what lies on the film
  tonight_whole,    ///< each of tonight's steps in full, where they were told in short
  baths,            ///< why the next roll's recipe is as it is
  trust,            ///< what each scan may be trusted for
  budget,           ///< where the doubt of each number comes from
  unsure,           ///< what is missing, and why
  better_scanning,  ///< how to scan better
  method,           ///< how it was measured
  cautions          ///< what baths can do to people
};

struct Section {
  SectionId id;
  /// By which links lead to it; empty where none does.
  std::string_view anchor;
  std::string_view title;
};

/// The sections of this roll's report, in the order in which they are read. One that has nothing to
/// tell isn't among them. Better scanning comes before all measurement where a scan tells little.
std::vector<Section> sections_of(const JudgedRoll& roll);

/// One section, whether this roll has it or not.
const Section& section_of(SectionId id);

/// Whether some scan tells no densities, so that scanning better comes first.
bool tells_little(const RollMeasurement& measurement);

/// Whether tonight's steps are more, or longer, than a short list holds.
bool tonight_goes_on(const Advice& advice);
/// Steps that a short list holds.
inline constexpr std::size_t short_list_steps = 3;

}  // namespace fogline
