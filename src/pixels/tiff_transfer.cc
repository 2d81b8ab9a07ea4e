#include "pixels/tiff_transfer.h"

#include "files/input_file.h"
#include "pixels/scan_notes.h"
#include "pixels/tiff_raw_tag.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace fogline {

namespace {

bool take_tiff_profile(OpenedPicture& picture, TIFF* tiff) {
  std::uint32_t bytes = 0;
  void* profile = nullptr;
  const bool present = TIFFGetField(tiff, TIFFTAG_ICCPROFILE, &bytes, &profile) == 1 &&
                       profile != nullptr && bytes > 0;
  return present && take_profile(picture, profile, bytes);
}

/// Puts a curve given for stored codes in order of rising light: codes of white-is-zero files are
/// inverted when they are read. False where it doesn't rise at all.
bool order_by_light(std::vector<float>& samples, const TiffPage& page) {
  if (page.photometric == PHOTOMETRIC_MINISWHITE && samples.back() < samples.front()) {
    std::reverse(samples.begin(), samples.end());
  }
  return samples.back() > samples.front();
}

void note_odd_tone_table(ScanInfo& info) {
  add_caution(info, CautionKind::transfer_tag_odd, Severity::caution);
}

/// TransferFunction: for each code its light, 0 to 65535 (TIFF 6.0, section 20).
bool take_transfer_function(OpenedPicture& picture, TIFF* tiff, const TiffPage& page) {
  std::array<std::uint16_t*, most_channels> tables{};
  if (page.bits > 16 || page.is_float() ||
      TIFFGetField(tiff, TIFFTAG_TRANSFERFUNCTION, tables.data(), &tables[1], &tables[2]) != 1) {
    return false;
  }
  const std::size_t codes = std::size_t{1} << page.bits;
  SampledCurve samples;
  for (int c = 0; c < picture.info.channels; ++c) {
    const auto slot = static_cast<std::size_t>(c);
    const std::uint16_t* table = tables[slot] != nullptr ? tables[slot] : tables[0];
    if (table == nullptr) {
      return false;
    }
    samples[slot].resize(codes);
    std::transform(table, table + codes, samples[slot].begin(),
                   [](std::uint16_t light) { return static_cast<float>(light) / 65535.0F; });
    if (!order_by_light(samples[slot], page)) {
      note_odd_tone_table(picture.info);
      return false;
    }
  }
  picture.curve =
      tone_curve_from_samples(std::move(samples), picture.info.channels, TransferSource::file_tag);
  return true;
}

/// GrayResponseCurve: for each code its density, in tenths to hundred-thousandths by
/// GrayResponseUnit (TIFF 6.0, section 8). Seldom written and seldom right, hence the caution.
bool take_grey_response(OpenedPicture& picture, const TiffPage& page) {
  constexpr std::uint16_t tag_unit = 290;
  constexpr std::uint16_t tag_curve = 291;
  constexpr std::uint16_t usual_unit = 2;
  if (page.bits > 16 || page.is_float() || page.channels() != 1) {
    return false;
  }
  const InputFile file(picture.info.file);
  const auto densities = raw_tiff_shorts(file, page.directory_offset, tag_curve);
  if (densities.size() != std::size_t{1} << page.bits) {
    return false;
  }
  const auto units = raw_tiff_shorts(file, page.directory_offset, tag_unit);
  const int unit = units.empty() || units[0] < 1 || units[0] > 5 ? usual_unit : units[0];
  SampledCurve samples;
  for (const std::uint16_t density : densities) {
    samples[0].push_back(static_cast<float>(
        transmittance_from_density(static_cast<double>(density) * std::pow(10.0, -unit))));
  }
  if (!order_by_light(samples[0], page)) {
    note_odd_tone_table(picture.info);
    return false;
  }
  picture.curve = tone_curve_from_samples(std::move(samples), 1, TransferSource::file_tag);
  add_caution(picture.info, CautionKind::grey_response_curve, Severity::caution);
  return true;
}

/// Black and white level of linear raw pages (DNG), as shares of the full code.
void take_raw_levels(OpenedPicture& picture, TIFF* tiff, const TiffPage& page) {
  if (page.is_float()) {
    return;
  }
  const double full = std::ldexp(1.0, page.bits) - 1.0;
  std::uint16_t count = 0;
  const std::uint32_t* white = nullptr;
  double white_level = full;
  if (TIFFGetField(tiff, TIFFTAG_WHITELEVEL, &count, &white) == 1 && count > 0) {
    white_level = std::clamp<double>(white[0], 1.0, full);
  }
  const float* black = nullptr;
  double black_level = 0.0;
  if (TIFFGetField(tiff, TIFFTAG_BLACKLEVEL, &count, &black) == 1 && count > 0) {
    black_level = std::clamp<double>(black[0], 0.0, full);
  }
  if (!(black_level < white_level)) {
    black_level = 0.0;
  }
  picture.curve.black_level = black_level / full;
  picture.curve.white_level = white_level / full;
  if (page.bits <= 16) {
    picture.top_code = static_cast<std::uint32_t>(white_level);
  }
}

}  // namespace

void decide_tiff_transfer(OpenedPicture& picture, const TiffHandle& handle, const TiffPage& page) {
  TIFF* tiff = handle.get();
  constexpr std::uint16_t linear_raw = 34892;
  if (page.photometric == linear_raw) {
    picture.curve.transfer = Transfer{TransferKind::linear, std::nullopt, TransferSource::file_tag};
    take_raw_levels(picture, tiff, page);
    return;
  }
  if (take_tiff_profile(picture, tiff) || take_transfer_function(picture, tiff, page) ||
      take_grey_response(picture, page)) {
    return;
  }
  assume_transfer(picture, page.is_float());
}

}  // namespace fogline
