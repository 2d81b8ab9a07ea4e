#include "simulator/foreign_json.h"
#include "simulator/render.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace filmsim {
namespace {

using Json = nlohmann::ordered_json;

// Four decimals: finer than anything that is measured here, and stable to read.
double rounded(double value) {
  return std::round(value * 1e4) / 1e4;
}

Json to_json(const Box& box) {
  return {{"x", rounded(box.x)},
          {"y", rounded(box.y)},
          {"width", rounded(box.width)},
          {"height", rounded(box.height)}};
}

Json to_json(Point point) {
  return Json::array({rounded(point.x), rounded(point.y)});
}

Json to_json(const Rgb& rgb) {
  return {{"red", rounded(rgb[0])}, {"green", rounded(rgb[1])}, {"blue", rounded(rgb[2])}};
}

Json to_json(const ChannelDensities& d) {
  return {{"visual", rounded(d.visual)},
          {"red", rounded(d.red)},
          {"green", rounded(d.green)},
          {"blue", rounded(d.blue)}};
}

Json to_json(const std::optional<double>& value) {
  return value ? Json(rounded(*value)) : Json();
}

Json above_base(const std::optional<double>& visual, const ChannelDensities& base) {
  if (!visual) return {};
  return {{"visual", rounded(*visual)}, {"net", rounded(*visual - base.visual)}};
}

Json stock_json(const FilmStock& stock) {
  return {{"base", to_json(stock.base)},
          {"fog", rounded(stock.fog)},
          {"curve_family", curve_family_name(stock.curve.family)},
          {"maximum_net_density", rounded(stock.curve.maximum_density)},
          {"speed_point_log_h", rounded(stock.curve.speed_point_log_h)},
          {"edge_print_log_h", rounded(stock.curve.speed_point_log_h + stock.edge_print_log_h)},
          {"granularity", stock.granularity},
          {"dye_left", to_json(stock.dye_left)},
          {"yellow_stain", to_json(stock.yellow_stain)},
          {"haze", to_json(stock.haze)},
          {"image_stain", to_json(stock.image_stain)}};
}

Json strip_json(const StripTruth& truth, const StripPlan& plan) {
  Json holes = Json::array();
  for (const Point hole : truth.holes_px) holes.push_back(to_json(hole));
  return {{"number", truth.number},
          {"format", film_format_name(plan.geometry.format)},
          {"axis", plan.geometry.axis == FilmAxis::kX ? "x" : "y"},
          {"box_px", to_json(truth.box_px)},
          {"rotation_deg", rounded(plan.geometry.rotation_deg)},
          {"perforations", truth.holes_px.size()},
          {"perforations_partly", truth.holes_partly},
          {"hole_centres_px", holes},
          {"shrinkage", plan.geometry.shrinkage},
          {"base_fog", to_json(truth.base_fog)},
          {"edge_print", above_base(truth.edge_print, truth.base_fog)},
          {"leader", above_base(truth.leader, truth.base_fog)},
          {"surge_density", rounded(plan.surge_density)},
          {"contrast_index", rounded(truth.contrast_index)},
          {"average_gradient", rounded(truth.average_gradient)},
          {"film", stock_json(plan.stock)}};
}

Json frame_json(const FrameTruth& truth) {
  Json corners = Json::array();
  for (const Point corner : truth.corners_px) corners.push_back(to_json(corner));
  Json sides = Json::array();
  for (const double side : truth.side_shows) sides.push_back(rounded(side));
  std::optional<double> range;
  if (truth.highlight && truth.shadow) range = *truth.highlight - *truth.shadow;
  const FramePlan& plan = *truth.plan;
  return {{"number", truth.number},
          {"strip", truth.strip},
          {"corners_px", corners},
          {"box_px", to_json(truth.box_px)},
          {"length_mm", rounded(plan.length_mm)},
          {"width_mm", rounded(plan.width_mm)},
          {"visible_share", rounded(truth.visible_share)},
          {"cut", truth.cut},
          {"blank", plan.blank},
          {"overlap", truth.overlap},
          {"edge_shows", truth.edge_shows},
          {"side_shows", sides},
          {"shadow", to_json(truth.shadow)},
          {"middle", to_json(truth.middle)},
          {"highlight", to_json(truth.highlight)},
          {"range", to_json(range)},
          {"scene", scene_kind_name(plan.scene.kind)},
          {"scene_log_range", rounded(plan.scene.log_range)},
          {"lens_flare", rounded(plan.scene.flare)},
          {"mean_log_h_from_speed_point", rounded(plan.mean_log_h)},
          {"exposure_error_stops", rounded(plan.exposure_error_stops)}};
}

Json mark_json(const DrawnMark& mark) {
  return {{"strip", mark.strip + 1},
          {"kind", mark_kind_name(mark.plan.kind)},
          {"box_px", to_json(mark.box_px)},
          {"size_mm", rounded(mark.plan.size_mm)},
          {"width_mm", rounded(mark.plan.width_mm)},
          {"area_mm2", rounded(mark.area_mm2)},
          {"contrast_density", rounded(mark.contrast_density)}};
}

Json transfer_json(const EncodingSettings& encoding) {
  Json transfer = {{"kind", transfer_name(encoding.transfer)}};
  if (encoding.transfer == Transfer::kPower) transfer["exponent"] = encoding.exponent;
  const bool tag = encoding.tone_told == ToneTold::kFileTag && encoding.file == FileKind::kTiff;
  const char* told = encoding.tone_told == ToneTold::kUntold ? "untold" : "icc-profile";
  transfer["told"] = tag ? "file-tag" : told;
  return transfer;
}

Json scanner_json(const ScannerSettings& s) {
  return {{"lamp", to_json(s.lamp)},
          {"bare_level", rounded(s.bare_level)},
          {"clipped_share_wanted",
           s.exposure_rule == ExposureRule::kClippedShare ? Json(s.clipped_share) : Json()},
          {"callier", rounded(s.callier)},
          {"glare_share", rounded(s.glare.share)},
          {"glare_narrow_sd_mm", rounded(s.glare.narrow_sd_mm)},
          {"glare_wide_sd_mm", rounded(s.glare.wide_sd_mm)},
          {"glare_aspect", rounded(s.glare.aspect)},
          {"blur_um", rounded(s.blur_um)},
          {"sharpening", rounded(s.sharpening)},
          {"tilt_x", to_json(s.tilt_x)},
          {"tilt_y", to_json(s.tilt_y)},
          {"bulge", rounded(s.bulge)},
          {"full_well", s.full_well},
          {"read_noise", s.read_noise},
          {"adc_bits", s.adc_bits},
          {"black_offset", s.black_offset}};
}

Json camera_json(const CameraSettings& camera) {
  return {{"radial", rounded(camera.radial)},
          {"perspective_x", rounded(camera.perspective_x)},
          {"perspective_y", rounded(camera.perspective_y)}};
}

}  // namespace

std::string truth_json(const Simulated& simulated) {
  const Scenario& scenario = simulated.scenario;
  const Truth& truth = simulated.truth;
  Json json = {{"invented", true},
               {"kind", scenario.kind},
               {"seed", scenario.seed},
               {"width_px", scenario.width_px},
               {"height_px", scenario.height_px},
               {"bits", scenario.encoding.bits},
               {"channels", scenario.encoding.channels},
               {"pixels_per_mm", scenario.pixels_per_mm},
               {"transfer", transfer_json(scenario.encoding)},
               {"zero_visible", truth.zero_visible},
               {"zero_clipped_share", rounded(truth.zero_clipped_share)},
               {"expected_fitness", truth.expected_fitness},
               {"expected_reason", truth.reason},
               {"holder", scenario.holder.present},
               {"camera", camera_json(scenario.camera)},
               {"scanner", scanner_json(scenario.scanner)}};
  if (scenario.foreign) json["foreign"] = foreign_json(*scenario.foreign);
  for (const char* list : {"strips", "frames", "marks"}) json[list] = Json::array();
  for (std::size_t i = 0; i < truth.strips.size(); ++i) {
    json["strips"].push_back(strip_json(truth.strips[i], scenario.strips[i]));
  }
  for (const FrameTruth& frame : truth.frames) json["frames"].push_back(frame_json(frame));
  for (const DrawnMark& mark : truth.marks) json["marks"].push_back(mark_json(mark));
  return json.dump(2);
}

}  // namespace filmsim
