// Writers of the three kinds of file. Each throws std::runtime_error if it can't.
#pragma once

#include "simulator/encoding.h"

#include <string>

namespace filmsim {

/// `pixels_per_inch` 0: no resolution is told.
void write_tiff(const Picture& picture, const EncodingSettings& settings, double pixels_per_inch,
                const std::string& path);
void write_png(const Picture& picture, const EncodingSettings& settings, double pixels_per_inch,
               const std::string& path);
void write_jpeg(const Picture& picture, const EncodingSettings& settings, double pixels_per_inch,
                const std::string& path);

}  // namespace filmsim
