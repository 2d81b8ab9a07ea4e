#include "tables/scan_tables.h"

#include <algorithm>

namespace fogline {

namespace {

/// What the factor's span means for densities: half of it is how far the factor taken may be off.
/// With it dQ off, clear film of 0.25 base and 0.05 fog is read 0.73 dQ of its base wrong, and
/// under dense silver, where the slope of silver's scale reaches 1 + 1.14 (Q - 1), about 1.1 dQ
/// (both from `directed_density`).
AngleOfLight angle_from(const KnowledgeTable& table) {
  constexpr double base_share = 0.73;
  constexpr double dense_base_share = 1.1;
  const double least = table.number("least", any_callier);
  const double greatest = table.number("greatest", any_callier);
  AngleOfLight angle;
  // What is read `greatest` times too dense is this share of itself too dense.
  angle.share_95 = 1.0 - 1.0 / greatest;
  angle.callier = table.number("taken", any_callier);
  angle.told_share_95 = std::max(greatest / angle.callier - 1.0, 1.0 - least / angle.callier);
  const double off = 0.5 * (greatest - least);
  angle.wedge_base_share_95 = base_share * off;
  angle.wedge_dense_base_share_95 = dense_base_share * off;
  angle.wedge_net_share_95 = table.number("wedge_net_share_95", any_share);
  return angle;
}

DeviceEvenness evenness_from(const KnowledgeTable& table) {
  return {table.number("bulge_density", any_density), table.number("wedge_density", any_density)};
}

ToneCurveDoubt tone_curve_from(const KnowledgeTable& table) {
  ToneCurveDoubt doubt;
  doubt.told_share = table.number("told_share", any_share);
  doubt.assumed_share = table.number("assumed_share", any_share);
  doubt.finished_picture_share = table.number("finished_picture_share", any_share);
  doubt.guessed_share = table.number("guessed_share", any_share);
  return doubt;
}

CalibratedDevice calibrated_from(const KnowledgeTable& table) {
  CalibratedDevice device;
  device.same_settings_share = table.number("same_settings_share", any_share);
  device.other_settings_share = table.number("other_settings_share", any_share);
  device.remembered_zero_density = table.number("remembered_zero_density", any_density);
  device.nominal_step_density = table.number("nominal_step_density", any_density);
  device.nominal_slope_share = table.number("nominal_slope_share", any_share);
  device.layer_density = table.number("layer_density", any_density);
  device.layer_share = table.number("layer_share", any_share);
  device.unknown_scale_share = table.number("unknown_scale_share", any_share);
  return device;
}

ColouredShares coloured_from(const KnowledgeTable& table) {
  ColouredShares shares;
  shares.zero = table.number("zero", any_share);
  shares.clipping = table.number("clipping", any_share);
  shares.curve = table.number("curve", any_share);
  shares.compression = table.number("compression", any_share);
  shares.stray = table.number("stray", any_share);
  shares.lossy_density = table.number("lossy_density", any_density);
  return shares;
}

}  // namespace

DeviceKnowledge devices_from(const KnowledgeTable& top) {
  DeviceKnowledge devices;
  const KnowledgeTable angle = top.table("angle_of_light");
  devices.angle.camera = angle_from(angle.table("camera"));
  devices.angle.flatbed = angle_from(angle.table("flatbed"));
  devices.angle.film_scanner = angle_from(angle.table("film_scanner"));
  devices.angle.unknown = angle_from(angle.table("unknown"));
  const KnowledgeTable evenness = top.table("evenness");
  devices.camera_evenness = evenness_from(evenness.table("camera"));
  devices.scanner_evenness = evenness_from(evenness.table("scanner"));
  devices.tone_curve = tone_curve_from(top.table("tone_curve"));
  devices.calibrated = calibrated_from(top.table("calibrated"));
  const KnowledgeTable picture = top.table("camera_picture");
  devices.camera_picture = {picture.number("compression", any_factor),
                            picture.number("bright_lamp", any_share),
                            picture.number("uneven_density_8_bits", any_density),
                            picture.number("uneven_density", any_density),
                            picture.number("local_density", any_density),
                            picture.number("thin_base_density", any_density)};
  devices.coloured = coloured_from(top.table("coloured"));
  const KnowledgeTable strong = top.table("strong");
  devices.strong_stray_share = strong.number("stray_share", any_share);
  devices.strong_unevenness_density = strong.number("unevenness_density", any_density);
  return devices;
}

}  // namespace fogline
