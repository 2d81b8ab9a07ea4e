#include "record/channel_fields.h"
#include "record/judgement_tables.h"

namespace fogline {

using enum Presence;
using enum NumberRange;

// The keys of the card itself, times in seconds. What the card leaves out is left out here too.

template <>
const Fields<DevelopmentCard>& fields_of() {
  static const Fields<DevelopmentCard> fields{
      field("developer", &DevelopmentCard::developer, left_out),
      field("dilution", &DevelopmentCard::dilution, left_out),
      field("volume_ml", &DevelopmentCard::volume_ml, left_out),
      field("time_s", &DevelopmentCard::time_s, left_out),
      field("temperature_c", &DevelopmentCard::temperature_c, left_out),
      field("end_temperature_c", &DevelopmentCard::end_temperature_c, left_out),
      field("agitation", &DevelopmentCard::agitation, left_out),
      field("presoak", &DevelopmentCard::presoak, left_out),
      field("opened", &DevelopmentCard::opened, left_out),
  };
  return fields;
}

template <>
const Fields<StopCard>& fields_of() {
  static const Fields<StopCard> fields{
      field("kind", &StopCard::kind, left_out),
      field("time_s", &StopCard::time_s, left_out),
  };
  return fields;
}

template <>
const Fields<FixCard>& fields_of() {
  static const Fields<FixCard> fields{
      field("kind", &FixCard::kind, left_out),
      field("dilution", &FixCard::dilution, left_out),
      field("time_s", &FixCard::time_s, left_out),
      field("rolls_before", &FixCard::rolls_before, left_out),
      field("clearing_time_s", &FixCard::clearing_time_s, left_out),
      field("fresh_clearing_time_s", &FixCard::fresh_clearing_time_s, left_out),
  };
  return fields;
}

template <>
const Fields<WashCard>& fields_of() {
  static const Fields<WashCard> fields{
      field("method", &WashCard::method, left_out),
      field("fills", &WashCard::fills, left_out),
      field("time_s", &WashCard::time_s, left_out),
  };
  return fields;
}

template <>
const Fields<TargetCard>& fields_of() {
  static const Fields<TargetCard> fields{
      field("kind", &TargetCard::kind, required),
      field("stops", &TargetCard::stops, left_out),
      field("times_s", &TargetCard::times_s, left_out),
      field("metered_time_s", &TargetCard::metered_time_s, left_out),
      field("first_frame", &TargetCard::first_frame, left_out),
      field("by", &TargetCard::by, left_out),
      field("doubt_stops", &TargetCard::doubt_stops, left_out),
      field("reference", &TargetCard::reference, left_out),
      field("h_at_zero_lux_s", &TargetCard::h_at_zero_lux_s, left_out),
  };
  return fields;
}

template <>
const Fields<MeteredTone>& fields_of() {
  static const Fields<MeteredTone> fields{
      field("frame", &MeteredTone::frame, required),
      field("tone", &MeteredTone::part, required),
      field("zone", &MeteredTone::zone, required),
      field("doubt_stops", &MeteredTone::doubt_stops),
  };
  return fields;
}

namespace {

void walk_base_tint(RollCard& card, FieldWalker& walker) {
  if (walker.enter("base_tint", left_out, card.base_tint.has_value())) {
    PerChannel<double> walked = card.base_tint.value_or(PerChannel<double>{});
    walker.object([&] { walk_colours(walker, walked); });
    walker.leave();
    card.base_tint = walked;
  }
}

}  // namespace

template <>
const Fields<RollCard>& fields_of() {
  static const Fields<RollCard> fields{
      field("name", &RollCard::name, required),
      field("film", &RollCard::film, left_out),
      field("film_type", &RollCard::film_type, left_out),
      field("exposure_index", &RollCard::exposure_index, left_out),
      field("aim_contrast_index", &RollCard::aim_contrast_index, left_out),
      field("aim_like", &RollCard::aim_like, left_out),
      field("print_with", &RollCard::print_with, left_out),
      field("batch", &RollCard::batch, left_out),
      field("expiry", &RollCard::expiry, left_out),
      field("exposed", &RollCard::exposed, left_out),
      field("developed", &RollCard::developed, left_out),
      field("camera", &RollCard::camera, left_out),
      field("tank", &RollCard::tank, left_out),
      field("device", &RollCard::device, left_out),
      {"base_tint", walk_base_tint},
      field("development", &RollCard::development, left_out),
      field("stop", &RollCard::stop, left_out),
      field("fix", &RollCard::fix, left_out),
      field("wash", &RollCard::wash, left_out),
      field("target", &RollCard::target, left_out),
      field("metered", &RollCard::metered, left_out),
  };
  return fields;
}

}  // namespace fogline
