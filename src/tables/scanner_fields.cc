#include "tables/scanner_fields.h"

#include "words/schema_words.h"
#include "words/unknown_words.h"

#include <array>
#include <cmath>
#include <string_view>

#include <nlohmann/json.hpp>

namespace fogline {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 3> colour_names{"red", "green", "blue"};

std::string_view channel_name(int channels, std::size_t channel) {
  return channels == 1 ? std::string_view("grey") : colour_names[channel];
}

Json json_from_channels(const PerChannel<double>& values, int channels) {
  Json json = Json::object();
  for (std::size_t c = 0; c < static_cast<std::size_t>(channels); ++c) {
    json[std::string(channel_name(channels, c))] = values[c];
  }
  return json;
}

Json json_from_step(const CalibrationStep& step, int channels) {
  Json corners = Json::array();
  for (const PointPx& corner : step.corners_px) {
    corners.push_back(Json::array({corner.x, corner.y}));
  }
  return {{"number", step.number},
          {"label", step.label},
          {"reference_density", step.reference_density},
          {"density", std::isfinite(step.density) ? Json(step.density) : Json(nullptr)},
          {"u95", std::isfinite(step.u95) ? Json(step.u95) : Json(nullptr)},
          {"uncalibrated_density",
           step.uncalibrated_density && std::isfinite(*step.uncalibrated_density)
               ? Json(*step.uncalibrated_density)
               : Json(nullptr)},
          {"code", json_from_channels(step.code, channels)},
          {"used", step.used},
          {"outlier", step.outlier},
          {"reason", step.left_out ? unknown_sentence(*step.left_out) : std::string()},
          {"corners_px", std::move(corners)}};
}

/// A field of an object that must be there.
const Json& field(const Json& object, std::string_view name) {
  const auto found = object.is_object() ? object.find(name) : object.end();
  if (!object.is_object() || found == object.end()) {
    throw WrongField(Refusal::scanner_file_lacks_field, std::string(name));
  }
  return *found;
}

[[noreturn]] void wrong(std::string_view name) {
  throw WrongField(Refusal::scanner_file_field_impossible, std::string(name));
}

double number(const Json& object, std::string_view name) {
  const Json& value = field(object, name);
  if (!value.is_number() || !std::isfinite(value.get<double>())) {
    wrong(name);
  }
  return value.get<double>();
}

std::optional<double> number_or_null(const Json& object, std::string_view name) {
  return field(object, name).is_null() ? std::nullopt : std::optional(number(object, name));
}

std::string text(const Json& object, std::string_view name) {
  const Json& value = field(object, name);
  if (!value.is_string()) {
    wrong(name);
  }
  return value.get<std::string>();
}

bool truth(const Json& object, std::string_view name) {
  const Json& value = field(object, name);
  if (!value.is_boolean()) {
    wrong(name);
  }
  return value.get<bool>();
}

int whole(const Json& object, std::string_view name, int least, int most) {
  const double value = number(object, name);
  if (value != std::floor(value) || value < least || value > most) {
    wrong(name);
  }
  return static_cast<int>(value);
}

const Json& list(const Json& object, std::string_view name) {
  const Json& value = field(object, name);
  if (!value.is_array()) {
    wrong(name);
  }
  return value;
}

/// Positive numbers, each greater than the one before.
std::vector<double> rising(const Json& object, std::string_view name) {
  std::vector<double> values;
  for (const Json& value : list(object, name)) {
    if (!value.is_number() || !(value.get<double>() > (values.empty() ? 0.0 : values.back()))) {
      wrong(name);
    }
    values.push_back(value.get<double>());
  }
  constexpr std::size_t most = 10000;
  if (values.size() < 2 || values.size() > most) {
    wrong(name);
  }
  return values;
}

PerChannel<double> channels_of(const Json& object, std::string_view name, int channels) {
  const Json& json = field(object, name);
  PerChannel<double> values{};
  for (std::size_t c = 0; c < static_cast<std::size_t>(channels); ++c) {
    values[c] = number(json, channel_name(channels, c));
  }
  return values;
}

CalibrationStep step_from_json(const Json& json, int channels) {
  constexpr int most_number = 100000;
  CalibrationStep step;
  step.number = whole(json, "number", 0, most_number);
  step.label = text(json, "label");
  step.reference_density = number(json, "reference_density");
  step.density = number_or_null(json, "density").value_or(INFINITY);
  step.u95 = number_or_null(json, "u95").value_or(INFINITY);
  step.uncalibrated_density = number_or_null(json, "uncalibrated_density");
  step.code = channels_of(json, "code", channels);
  step.used = truth(json, "used");
  step.outlier = truth(json, "outlier");
  if (const std::string reason = text(json, "reason"); !reason.empty()) {
    step.left_out = {Unknown::not_told, {}, {}, reason};
  }
  const Json& corners = list(json, "corners_px");
  if (corners.size() != step.corners_px.size()) {
    wrong("corners_px");
  }
  for (std::size_t i = 0; i < step.corners_px.size(); ++i) {
    if (!corners[i].is_array() || corners[i].size() != 2 || !corners[i][0].is_number() ||
        !corners[i][1].is_number()) {
      wrong("corners_px");
    }
    step.corners_px[i] = {corners[i][0].get<double>(), corners[i][1].get<double>()};
  }
  return step;
}

template <typename Kind>
Kind kind_of(const Json& json, const char* name) {
  if (const auto kind = kind_from_word<Kind>(text(json, name))) {
    return *kind;
  }
  wrong(name);
}

void read_settings(ScannerCalibration& calibration, const Json& json) {
  constexpr int most_bits = 32;
  const Json& settings = field(json, "settings");
  calibration.bits = whole(settings, "bits", 1, most_bits);
  calibration.channels = whole(settings, "channels", 1, most_channels);
  if (calibration.channels == 2) {
    wrong("channels");
  }
  calibration.device = kind_of<ScannerDevice>(settings, "device");
  if (!field(settings, "bare_code").is_null()) {
    calibration.bare_code = channels_of(settings, "bare_code", calibration.channels);
    for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
      if (!((*calibration.bare_code)[c] > 0.0)) {
        wrong("bare_code");
      }
    }
  }
}

void read_curves(ScannerCalibration& calibration, const Json& json) {
  calibration.curves.channels = calibration.channels;
  const Json& curves = field(json, "curves");
  for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
    const Json& curve = field(curves, channel_name(calibration.channels, c));
    CodeCurve& read = calibration.curves.of_channel[c];
    read.code = rising(curve, "code");
    read.light = rising(curve, "light");
    if (read.code.size() != read.light.size()) {
      wrong("light");
    }
  }
}

void read_doubt(ScannerCalibration& calibration, const Json& json) {
  for (const Json& line : list(json, "doubt")) {
    CalibratedDoubt doubt{number(line, "density"), number(line, "fit"), number(line, "stray"), {}};
    const Json& field = list(line, "field");
    if (field.size() != doubt.field.size()) {
      wrong("field");
    }
    for (std::size_t i = 0; i < doubt.field.size(); ++i) {
      if (!field[i].is_number()) {
        wrong("field");
      }
      doubt.field[i] = field[i].get<double>();
    }
    if (doubt.fit < 0.0 || doubt.stray < 0.0 ||
        (!calibration.doubt.empty() && !(doubt.density > calibration.doubt.back().density))) {
      wrong("doubt");
    }
    calibration.doubt.push_back(doubt);
  }
  if (calibration.doubt.empty()) {
    wrong("doubt");
  }
}

double not_negative(const Json& object, std::string_view name) {
  const double value = number(object, name);
  if (value < 0.0) {
    wrong(name);
  }
  return value;
}

}  // namespace

Json json_from_calibration_fields(const ScannerCalibration& calibration) {
  const int channels = calibration.channels;
  Json json{
      {"tool_version", calibration.tool_version},  {"date", calibration.date},
      {"method", schema_word(calibration.method)}, {"shape_only", calibration.shape_only},
      {"reference", calibration.reference},        {"source_files", calibration.source_files}};
  json["settings"] = {
      {"bits", calibration.bits},
      {"channels", channels},
      {"device", schema_word(calibration.device)},
      {"bare_code", calibration.bare_code ? json_from_channels(*calibration.bare_code, channels)
                                          : Json(nullptr)}};
  json["callier"] = calibration.callier;
  json["shown_from_density"] = calibration.shown_from_density;
  json["shown_to_density"] = calibration.shown_to_density;
  json["density_limit"] = calibration.density_limit;
  json["residual_rms"] = calibration.residual_rms;
  json["slope_doubt_share"] = calibration.slope_doubt_share;
  json["certificate_doubt"] = calibration.certificate_doubt;
  json["stray"] = {{"share", calibration.stray.share},
                   {"share_doubt", calibration.stray.share_doubt},
                   {"measured", calibration.stray.measured}};
  json["doubt"] = Json::array();
  for (const CalibratedDoubt& doubt : calibration.doubt) {
    json["doubt"].push_back({{"density", doubt.density},
                             {"fit", doubt.fit},
                             {"stray", doubt.stray},
                             {"field", doubt.field}});
  }
  json["steps"] = Json::array();
  for (const CalibrationStep& step : calibration.steps) {
    json["steps"].push_back(json_from_step(step, channels));
  }
  for (std::size_t c = 0; c < static_cast<std::size_t>(channels); ++c) {
    const CodeCurve& curve = calibration.curves.of_channel[c];
    json["curves"][std::string(channel_name(channels, c))] = {{"code", curve.code},
                                                              {"light", curve.light}};
  }
  return json;
}

ScannerCalibration calibration_from_json(const Json& json) {
  ScannerCalibration calibration;
  calibration.tool_version = text(json, "tool_version");
  calibration.date = text(json, "date");
  calibration.method = kind_of<CalibrationMethod>(json, "method");
  calibration.shape_only = truth(json, "shape_only");
  calibration.reference = text(json, "reference");
  for (const Json& file : list(json, "source_files")) {
    if (!file.is_string()) {
      wrong("source_files");
    }
    calibration.source_files.push_back(file.get<std::string>());
  }
  read_settings(calibration, json);
  constexpr double greatest_callier = 2.0;
  calibration.callier = number(json, "callier");
  if (calibration.callier < 1.0 || calibration.callier > greatest_callier) {
    wrong("callier");
  }
  calibration.shown_from_density = number(json, "shown_from_density");
  calibration.shown_to_density = number(json, "shown_to_density");
  calibration.density_limit = number(json, "density_limit");
  calibration.residual_rms = not_negative(json, "residual_rms");
  calibration.slope_doubt_share = not_negative(json, "slope_doubt_share");
  calibration.certificate_doubt = not_negative(json, "certificate_doubt");
  const Json& stray = field(json, "stray");
  calibration.stray = {not_negative(stray, "share"), not_negative(stray, "share_doubt"),
                       truth(stray, "measured")};
  read_doubt(calibration, json);
  for (const Json& step : list(json, "steps")) {
    calibration.steps.push_back(step_from_json(step, calibration.channels));
  }
  read_curves(calibration, json);
  return calibration;
}

}  // namespace fogline
