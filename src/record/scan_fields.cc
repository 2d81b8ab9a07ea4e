#include "record/measurement_tables.h"

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

/// `film` repeats the first strip; where none was found its kind is all there is to say.
void walk_film(ScanMeasurement& scan, FieldWalker& walker) {
  if (!walker.wants_repeats() || !walker.enter("film", kept, true)) {
    return;
  }
  walker.object([&] {
    StripMeasurement strip = scan.strips.empty() ? StripMeasurement{} : scan.strips.front();
    walk_field(walker, "format", strip.format, kept, any);
    if (!scan.strips.empty()) {
      walk_field(walker, "box_px", strip.box_px, kept, any);
      walk_field(walker, "rotation_deg", strip.rotation_deg, kept, any);
      walk_field(walker, "perforations", strip.perforations, kept, any);
    }
  });
  walker.leave();
}

/// Only of a roll that has a printed wedge as its target: elsewhere there is nothing to explain.
void walk_exposed_wedge(ScanMeasurement& scan, FieldWalker& walker) {
  Known<int>& steps = scan.exposed_wedge_steps;
  if (walker.enter("exposed_wedge_steps", left_out, steps.has_value())) {
    int walked = steps.value_or(0);
    walker.whole(walked);
    steps = walked;
    walker.leave();
  } else if (steps.why() != WhyUnknown{} || !walker.wants_repeats()) {
    walk_reason(walker, "exposed_wedge", steps);
  }
}

}  // namespace

template <>
const Fields<Transfer>& fields_of() {
  static const Fields<Transfer> fields{
      field("kind", &Transfer::kind, required),
      field("exponent", &Transfer::exponent, left_out),
      field("source", &Transfer::source, required),
  };
  return fields;
}

template <>
const Fields<ScanInfo>& fields_of() {
  static const Fields<ScanInfo> fields{
      field("file", &ScanInfo::file, required),
      field("width_px", &ScanInfo::width_px, required),
      field("height_px", &ScanInfo::height_px, required),
      field("bits", &ScanInfo::bits, required),
      field("samples_per_pixel", &ScanInfo::samples_per_pixel),
      field("channels", &ScanInfo::channels, required),
      field("tag_pixels_per_mm", &ScanInfo::tag_pixels_per_mm, left_out),
      field("transfer", &ScanInfo::transfer, required),
      field("transfer_known", &ScanInfo::transfer_known),
      field("lossy", &ScanInfo::lossy),
      field("camera", &ScanInfo::camera),
      field("file_cautions", &ScanInfo::cautions, left_out),
  };
  return fields;
}

template <>
const Fields<ZeroReport>& fields_of() {
  static const Fields<ZeroReport> fields{
      field("source", &ZeroReport::source, required),
      field("unevenness_density", &ZeroReport::unevenness_density, left_out),
  };
  return fields;
}

template <>
const Fields<StripMeasurement>& fields_of() {
  static const Fields<StripMeasurement> fields{
      field("number", &StripMeasurement::number, required),
      field("format", &StripMeasurement::format, required),
      field("box_px", &StripMeasurement::box_px, required),
      field("rotation_deg", &StripMeasurement::rotation_deg),
      field("perforations", &StripMeasurement::perforations),
      field("base_fog", &StripMeasurement::base_fog),
  };
  return fields;
}

template <>
const Fields<FrameTone>& fields_of() {
  static const Fields<FrameTone> fields{
      flat("shadow", &FrameTone::shadow),
      flat("middle", &FrameTone::middle),
      flat("highlight", &FrameTone::highlight),
      flat("range", &FrameTone::range),
      field("paper_range", &FrameTone::paper_range),
  };
  return fields;
}

template <>
const Fields<FrameMeasurement>& fields_of() {
  static const Fields<FrameMeasurement> fields{
      field("number", &FrameMeasurement::number, required),
      field("strip", &FrameMeasurement::strip),
      field("box_px", &FrameMeasurement::box_px, required),
      field("corners_px", &FrameMeasurement::corners_px),
      field("inferred", &FrameMeasurement::inferred),
      field("cut", &FrameMeasurement::cut),
      field("target", &FrameMeasurement::target),
      field("repeats_frame", &FrameMeasurement::repeats_frame, left_out),
      inlined(&FrameMeasurement::tone),
  };
  return fields;
}

template <>
const Fields<Outline>& fields_of() {
  static const Fields<Outline> fields{
      field("kind", &Outline::kind),       field("points", &Outline::points),
      field("strip", &Outline::strip),     field("number", &Outline::number),
      field("partial", &Outline::partial),
  };
  return fields;
}

template <>
const Fields<ScanMeasurement>& fields_of() {
  static const Fields<ScanMeasurement> fields{
      inlined(&ScanMeasurement::info),
      field("device", &ScanMeasurement::device),
      field("device_told", &ScanMeasurement::device_told),
      field("pixels_per_mm", &ScanMeasurement::pixels_per_mm),
      field("zero", &ScanMeasurement::zero, required),
      field("fitness", &ScanMeasurement::fitness),
      field("densities_above", &ScanMeasurement::densities_above),
      field("veiling_glare", &ScanMeasurement::veiling_glare),
      field("leader", &ScanMeasurement::leader),
      field("density_limit", &ScanMeasurement::density_limit),
      field("cautions", &ScanMeasurement::cautions, required),
      field("strips", &ScanMeasurement::strips),
      {"film", walk_film},
      field("base_fog", &ScanMeasurement::base_fog),
      field("edge_print", &ScanMeasurement::edge_print),
      field("frames", &ScanMeasurement::frames, required),
      {"steps", [](ScanMeasurement& scan,
                   FieldWalker& walker) { walk_steps(walker, scan.steps, scan.info.channels); }},
      {"exposed_wedge_steps", walk_exposed_wedge},
      field("calibration", &ScanMeasurement::calibration),
      field("budgets", &ScanMeasurement::budgets),
      field("tint", &ScanMeasurement::tint, required),
      field("marks", &ScanMeasurement::marks, required),
      remark("marks", &ScanMeasurement::marks_limit),
      field("outlines", &ScanMeasurement::outlines),
  };
  return fields;
}

}  // namespace fogline
