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

void add_caution(ScanInfo& info, CautionKind kind, Severity severity, std::vector<double> numbers) {
  info.cautions.push_back({severity, fact_of(kind, std::move(numbers))});
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
  add_caution(info, CautionKind::resolution_tag_odd, Severity::caution);
}

void assume_transfer(OpenedPicture& picture, bool is_float) {
  ToneCurve& curve = picture.curve;
  curve.transfer = Transfer{};
  if (is_float) {
    curve.transfer.source = TransferSource::file_tag;
  } else if (picture.info.bits == 8) {
    curve.transfer.kind = TransferKind::srgb;
    add_caution(picture.info, CautionKind::transfer_assumed, Severity::caution);
  } else {
    picture.info.transfer_known = false;
  }
}

bool take_profile(OpenedPicture& picture, const void* profile, std::size_t bytes) {
  IccTone tone = icc_tone(profile, bytes, picture.info.channels);
  if (!tone.curve) {
    picture.info.cautions.push_back(
        {Severity::caution, fact_of(CautionKind::profile_unfit), tone.curve.why()});
    return false;
  }
  if (tone.from_table) {
    add_caution(picture.info, CautionKind::profile_table, Severity::caution);
  }
  picture.curve = std::move(*tone.curve);
  return true;
}

}  // namespace fogline
