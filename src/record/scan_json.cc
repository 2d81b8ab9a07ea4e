#include "record/scan_json.h"

#include "record/calibration_json.h"
#include "record/film_state_json.h"
#include "words/caution_words.h"
#include "words/schema_words.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

Json json_from_transfer(const Transfer& transfer) {
  Json object{{"kind", schema_word(transfer.kind)}};
  if (transfer.exponent) {
    object["exponent"] = json_from_density(*transfer.exponent);
  }
  object["source"] = schema_word(transfer.source);
  return object;
}

Json json_from_zero(const ZeroReport& zero) {
  Json object{{"source", schema_word(zero.source)}};
  if (zero.unevenness_density && std::isfinite(*zero.unevenness_density)) {
    object["unevenness_density"] = json_from_density(*zero.unevenness_density);
  }
  return object;
}

Json json_from_strip(const StripMeasurement& strip) {
  Json object{{"number", strip.number},
              {"format", schema_word(strip.format)},
              {"box_px", json_from_box(strip.box_px)},
              {"rotation_deg", json_from_place(strip.rotation_deg)},
              {"perforations", strip.perforations},
              {"base_fog", json_from_base_fog(strip.base_fog)}};
  Whys whys;
  note_why(whys, "base_fog", strip.base_fog);
  put_reasons(object, whys);
  return object;
}

// `film` repeats the first strip; where none was found its kind is all there is to say.
Json json_from_film(const ScanMeasurement& scan) {
  if (scan.strips.empty()) {
    return {{"format", schema_word(FilmFormat::unknown)}};
  }
  const StripMeasurement& strip = scan.strips.front();
  return {{"format", schema_word(strip.format)},
          {"box_px", json_from_box(strip.box_px)},
          {"rotation_deg", json_from_place(strip.rotation_deg)},
          {"perforations", strip.perforations}};
}

Json json_from_frame(const FrameMeasurement& frame) {
  Json object{{"number", frame.number}, {"strip", frame.strip}};
  object["box_px"] = json_from_box(frame.box_px);
  for (const PointPx& corner : frame.corners_px) {
    object["corners_px"].push_back(
        Json::array({json_from_place(corner.x), json_from_place(corner.y)}));
  }
  object["inferred"] = frame.inferred;
  object["cut"] = frame.cut;
  if (frame.repeats_frame) {
    object["repeats_frame"] = *frame.repeats_frame;
  }
  put_flat(object, "shadow", frame.tone.shadow);
  put_flat(object, "middle", frame.tone.middle);
  put_flat(object, "highlight", frame.tone.highlight);
  put_flat(object, "range", frame.tone.range);
  object["paper_range"] = json_from_known(frame.tone.paper_range);
  Whys whys;
  note_why(whys, "shadow", frame.tone.shadow);
  note_why(whys, "middle", frame.tone.middle);
  note_why(whys, "highlight", frame.tone.highlight);
  note_why(whys, "range", frame.tone.range);
  note_why(whys, "paper_range", frame.tone.paper_range);
  put_reasons(object, whys);
  return object;
}

void put_file(Json& object, const ScanMeasurement& scan) {
  object["file"] = scan.info.file;
  object["width_px"] = scan.info.width_px;
  object["height_px"] = scan.info.height_px;
  object["bits"] = scan.info.bits;
  object["channels"] = scan.info.channels;
  object["pixels_per_mm"] = json_from_known(scan.pixels_per_mm);
  object["transfer"] = json_from_transfer(scan.info.transfer);
  object["zero"] = json_from_zero(scan.zero);
  object["fitness"] = schema_word(scan.fitness);
  object["densities_above"] = schema_word(scan.densities_above);
}

Whys whys_of(const ScanMeasurement& scan) {
  Whys whys;
  note_why(whys, "base_fog", scan.base_fog);
  note_why(whys, "calibration", scan.calibration);
  note_why(whys, "density_limit", scan.density_limit);
  note_why(whys, "edge_print", scan.edge_print);
  note_why(whys, "exposed_wedge", scan.exposed_wedge_steps);
  note_why(whys, "leader", scan.leader);
  note_why(whys, "pixels_per_mm", scan.pixels_per_mm);
  note_why(whys, "veiling_glare", scan.veiling_glare);
  if (scan.marks_limit) {
    whys.emplace("marks", *scan.marks_limit);
  }
  return whys;
}

}  // namespace

Json json_from_cautions(const std::vector<Caution>& cautions) {
  Json array = Json::array();
  for (const Caution& caution : cautions) {
    array.push_back({{"code", caution_code(caution.fact.kind)},
                     {"severity", schema_word(caution.severity)},
                     {"message", caution_sentence(caution)},
                     {"fact", json_from_fact(caution.fact)}});
    if (caution.why) {
      array.back()["why"] = json_from_fact(*caution.why);
    }
  }
  return array;
}

Json json_from_scan(const ScanMeasurement& scan) {
  Json object;
  put_file(object, scan);
  object["veiling_glare"] = json_from_quantity(scan.veiling_glare);
  object["leader"] = json_from_quantity(scan.leader);
  object["density_limit"] = json_from_known(scan.density_limit);
  object["cautions"] = json_from_cautions(scan.cautions);
  object["strips"] = Json::array();
  for (const StripMeasurement& strip : scan.strips) {
    object["strips"].push_back(json_from_strip(strip));
  }
  object["film"] = json_from_film(scan);
  object["base_fog"] = json_from_base_fog(scan.base_fog);
  object["edge_print"] = json_from_quantity(scan.edge_print);
  object["frames"] = Json::array();
  for (const FrameMeasurement& frame : scan.frames) {
    object["frames"].push_back(json_from_frame(frame));
  }
  object["steps"] = json_from_steps(scan);
  object["calibration"] = json_from_calibration(scan.calibration);
  object["budgets"] = json_from_budgets(scan.budgets);
  object["tint"] = json_from_tint(scan.tint);
  object["marks"] = json_from_marks(scan.marks);
  put_reasons(object, whys_of(scan));
  return object;
}

}  // namespace fogline
