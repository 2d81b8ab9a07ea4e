#include "record/advice_fields.h"
#include "record/judgement_tables.h"
#include "record/measurement_tables.h"
#include "words/curve_words.h"
#include "words/record_words.h"

#include <fogline/words/refusal_words.h>

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

/// What lies under net densities of the roll: 0 where its densities count from base.
double base_of(const RollMeasurement& roll) {
  for (const ScanMeasurement& scan : roll.scans) {
    if (scan.base_fog && scan.densities_above == DensitiesAbove::light_path) {
      return scan.base_fog->visual.value;
    }
  }
  return 0.0;
}

void walk_card(RollRecord& record, FieldWalker& walker) {
  if (walker.enter("roll", null, record.card.has_value())) {
    RollCard card = record.card.value_or(RollCard{});
    walk_value(walker, card, any);
    record.card = std::move(card);
    walker.leave();
  } else {
    walker.because("roll", no_card_sentence());
  }
}

void walk_advice_part(RollRecord& record, FieldWalker& walker) {
  std::optional<Advice>& advice = record.judgement.advice;
  if (walker.enter("advice", null, advice.has_value())) {
    Advice walked = advice.value_or(Advice{});
    walk_advice(walker, walked, record.judgement.aim);
    advice = std::move(walked);
    walker.leave();
  } else {
    walker.because("advice", no_advice_sentence());
  }
}

void walk_contrast(RollRecord& record, FieldWalker& walker) {
  walker.enter("contrast", required, true);
  walker.object([&] {
    RollMeasurement& roll = record.measurement;
    walk_field(walker, "method", roll.contrast.method, required, any);
    walk_known(walker, "contrast_index", roll.contrast.contrast_index,
               told_or_silent(contrast_index_reason(roll)));
    walk_field(walker, "density_range", roll.contrast.density_range, null, any);
    walk_sensitometry(walker, roll.sensitometry, base_of(roll));
    walk_field(walker, "use", record.judgement.curve, left_out, any);
  });
  walker.leave();
}

/// A field of the measurement, or of the judgement, in the record's own object.
template <typename Part, typename Value>
Field<RollRecord> part_field(std::string_view name, Part JudgedRoll::*part, Value Part::*member,
                             Presence presence) {
  return {name, [=](RollRecord& record, FieldWalker& walker) {
            walk_field(walker, name, record.*part.*member, presence, any);
          }};
}

}  // namespace

template <>
const Fields<UnreadFile>& fields_of() {
  static const Fields<UnreadFile> fields{
      field("file", &UnreadFile::file, required),
      repeat<UnreadFile>(
          "message",
          [](const UnreadFile& unread) { return sentence_of_refusal(unread.file, unread.why); }),
      field("fact", &UnreadFile::why),
  };
  return fields;
}

template <>
const Fields<RollMedians>& fields_of() {
  static const Fields<RollMedians> fields{
      field("frames", &RollMedians::frames),
      flat("shadow", &RollMedians::shadow),
      flat("middle", &RollMedians::middle),
      flat("highlight", &RollMedians::highlight),
      flat("range", &RollMedians::range),
      flat("net_shadow", &RollMedians::net_shadow),
      flat("net_middle", &RollMedians::net_middle),
      flat("net_highlight", &RollMedians::net_highlight),
  };
  return fields;
}

template <>
const Fields<RollRecord>& fields_of() {
  static const Fields<RollRecord> fields{
      field("tool_version", &RollRecord::tool_version),
      {"roll", walk_card},
      part_field("scans", &RollRecord::measurement, &RollMeasurement::scans, required),
      part_field("unread", &RollRecord::measurement, &RollMeasurement::unread, kept),
      part_field("roll_medians", &RollRecord::measurement, &RollMeasurement::medians, null),
      part_field("target_cautions", &RollRecord::measurement, &RollMeasurement::target_cautions,
                 left_out),
      {"contrast", walk_contrast},
      part_field("findings", &RollRecord::judgement, &Judgement::findings, required),
      part_field("aim", &RollRecord::judgement, &Judgement::aim, kept),
      part_field("light_or_time", &RollRecord::judgement, &Judgement::light_or_time, kept),
      {"advice", walk_advice_part},
  };
  return fields;
}

}  // namespace fogline
