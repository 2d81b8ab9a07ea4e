// A scan in memory: drawn light behind the interface that files have.
#pragma once

#include "film/drawn_scan.h"

#include <fogline/base/scan_source.h>

#include <algorithm>
#include <cmath>

namespace fogline::drawn {

/// Decoding and encoding of IEC 61966-2-1 (constants from memory).
inline double decoded(double code) {
  return code <= 0.04045 ? code / 12.92 : std::pow((code + 0.055) / 1.055, 2.4);
}
inline double encoded(double light) {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
}

/// Stores codes of 8 or 16 bits, linear or on the display curve, and reads them by its transfer.
class DrawnSource : public ScanSource {
 public:
  DrawnSource(const Raster<float>& light, ScanInfo info, bool display_codes)
      : info_(std::move(info)), codes_(light.width(), light.height()) {
    info_.width_px = light.width();
    info_.height_px = light.height();
    const double top = info_.bits == 8 ? 255.0 : 65535.0;
    for (std::size_t i = 0; i < codes_.samples().size(); ++i) {
      const double held = std::clamp(static_cast<double>(light.samples()[i]), 0.0, 1.0);
      codes_.samples()[i] =
          static_cast<float>(std::round(top * (display_codes ? encoded(held) : held)) / top);
    }
  }

  [[nodiscard]] const ScanInfo& info() const override { return info_; }

  void set_transfer(const Transfer& transfer) override {
    info_.transfer = transfer;
    info_.transfer_known = true;
  }

  [[nodiscard]] double code_of(double light, int channel) const override {
    switch (info_.transfer.kind) {
      case TransferKind::srgb:
        return encoded(light);
      case TransferKind::scanner:
        return info_.transfer.scanner->of_channel[static_cast<std::size_t>(channel)].code_of(light);
      default:
        return light;
    }
  }

  ScanGrid survey(const SurveyPlan& plan, const Progress& progress) override {
    passes += foreseen(info_.transfer) ? 0 : 1;
    plan_ = plan;
    Raster<float> light(codes_.width(), codes_.height());
    for (std::size_t i = 0; i < codes_.samples().size(); ++i) {
      const float code = codes_.samples()[i];
      light.samples()[i] = static_cast<float>(light_of(static_cast<double>(code)));
    }
    if (progress) {
      progress(1.0);
    }
    return grid_of(light, info_.channels);
  }

  /// Times a file would have been read: surveys that the plan before didn't foresee.
  int passes = 0;

 private:
  [[nodiscard]] bool foreseen(const Transfer& transfer) const {
    return plan_.learns_curve ||
           std::any_of(plan_.other_curves.begin(), plan_.other_curves.end(),
                       [&](const Transfer& other) { return other.kind == transfer.kind; });
  }

  [[nodiscard]] double light_of(double code) const {
    switch (info_.transfer.kind) {
      case TransferKind::srgb:
        return decoded(code);
      case TransferKind::scanner:
        return info_.transfer.scanner->of_channel[0].light_of(code);
      default:
        return code;
    }
  }

  ScanInfo info_;
  Raster<float> codes_;
  SurveyPlan plan_;
};

}  // namespace fogline::drawn
