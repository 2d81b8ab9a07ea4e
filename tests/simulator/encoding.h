// From the sensor's signal to the codes of a file, and how the file tells what they mean.
#pragma once

#include "simulator/plane.h"

#include <cstdint>
#include <string>
#include <vector>

namespace filmsim {

enum class Transfer { kLinear, kSrgb, kPower };
enum class ToneTold { kIccProfile, kFileTag, kUntold };
enum class FileKind { kTiff, kPng, kJpeg };
enum class ResolutionTag { kRight, kAbsent, kWrong };
/// How coarsely a JPEG keeps colour.
enum class ChromaSampling { kHalf, kHalfAcross, kWhole };

struct EncodingSettings {
  FileKind file = FileKind::kTiff;
  int channels = 3;  ///< 1 or 3
  int bits = 16;     ///< 8 or 16; JPEG has 8
  Transfer transfer = Transfer::kLinear;
  double exponent = 2.2;                       ///< of a power transfer: light = code^exponent
  ToneTold tone_told = ToneTold::kIccProfile;  ///< a tag needs a TIFF file
  ResolutionTag resolution_tag = ResolutionTag::kRight;
  double wrong_pixels_per_inch = 72.0;  ///< what a wrong tag says
  /// Codes are stretched so that these encoded levels become black and white; 0 and 1: untouched.
  double stretch_low = 0.0;
  double stretch_high = 1.0;
  bool inverted = false;  ///< a positive picture made of the negative
  int jpeg_quality = 90;
  ChromaSampling chroma = ChromaSampling::kHalf;
  bool compressed = false;  ///< deflate with predictor, TIFF only
};

struct Picture {
  int width = 0;
  int height = 0;
  int channels = 0;
  int bits = 0;
  std::vector<std::uint16_t> codes;  ///< row by row, channels together

  [[nodiscard]] std::uint16_t top() const { return bits == 8 ? 255 : 65535; }
  [[nodiscard]] std::uint16_t code(int x, int y, int c) const {
    return codes[(static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                  static_cast<std::size_t>(x)) *
                     static_cast<std::size_t>(channels) +
                 static_cast<std::size_t>(c)];
  }
};

std::string transfer_name(Transfer transfer);

/// Light (0 to 1) to encoded level (0 to 1), and back.
double encoded_from_light(double light, const EncodingSettings& settings);
double light_from_encoded(double level, const EncodingSettings& settings);

/// Clips, encodes, sharpens (unsharp masking of the codes by that amount), stretches, inverts and
/// rounds. Grey is the visual mix of the planes.
Picture encode(const std::vector<Plane>& signal, const EncodingSettings& settings,
               double sharpening);

}  // namespace filmsim
