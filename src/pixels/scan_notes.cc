#include "pixels/scan_notes.h"

#include "pixels/icc_transfer.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fogline {

namespace {

/// Resolutions a scan of film can have (px/mm): from a web preview to beyond any lens.
constexpr double lowest_per_mm = 1.0;
constexpr double highest_per_mm = 1000.0;

/// Share by which the two directions may differ: rounding of whole numbers a centimetre.
constexpr double axis_tolerance = 0.01;

}  // namespace

void add_caution(ScanInfo& info, std::string code, Severity severity, std::string message) {
  info.cautions.push_back(Caution{std::move(code), severity, std::move(message)});
}

void note_resolution(ScanInfo& info, double x_per_mm, double y_per_mm) {
  const auto possible = [](double per_mm) {
    return std::isfinite(per_mm) && per_mm >= lowest_per_mm && per_mm <= highest_per_mm;
  };
  const bool agree = std::abs(x_per_mm - y_per_mm) <= axis_tolerance * std::max(x_per_mm, y_per_mm);
  if (possible(x_per_mm) && possible(y_per_mm) && agree) {
    info.tag_pixels_per_mm = 0.5 * (x_per_mm + y_per_mm);
    return;
  }
  add_caution(
      info, "resolution-tag-odd", Severity::caution,
      "The file states a resolution that can't be right, so it is not used; perforations or "
      "the frame size must give the scale.");
}

void assume_transfer(OpenedPicture& picture, bool is_float) {
  ToneCurve& curve = picture.curve;
  curve.transfer = Transfer{};
  if (is_float) {
    curve.transfer.source = TransferSource::file_tag;
  } else if (picture.info.bits == 8) {
    curve.transfer.kind = TransferKind::srgb;
    add_caution(
        picture.info, "transfer-assumed", Severity::caution,
        "The file doesn't tell how its codes stand for light; the usual sRGB curve is "
        "assumed. Densities are indicative: save the scan with a profile, or better with 16 "
        "bits and linear.");
  } else {
    picture.info.transfer_known = false;
  }
}

bool take_profile(OpenedPicture& picture, const void* profile, std::size_t bytes) {
  IccTone tone = icc_tone(profile, bytes, picture.info.channels);
  if (!tone.curve) {
    add_caution(picture.info, "profile-unfit", Severity::caution,
                "The file's colour profile can't be used: " + tone.problem +
                    ". The scan is read as if it had none.");
    return false;
  }
  if (tone.from_table) {
    add_caution(picture.info, "profile-table", Severity::caution,
                "The file's colour profile has a table instead of tone curves; the curve was read "
                "along its grey axis, so densities of tinted film are less sure.");
  }
  picture.curve = std::move(*tone.curve);
  return true;
}

}  // namespace fogline
