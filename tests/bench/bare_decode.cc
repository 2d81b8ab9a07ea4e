#include "bare_decode.h"

#include <chrono>
#include <memory>
#include <stdexcept>
#include <vector>

#include <tiffio.h>

namespace bench {

double bare_decode_seconds(const std::string& path) {
  const auto start = std::chrono::steady_clock::now();
  const std::unique_ptr<TIFF, void (*)(TIFF*)> file(TIFFOpen(path.c_str(), "rm"), TIFFClose);
  if (!file) {
    throw std::runtime_error("can't open " + path);
  }
  if (TIFFIsTiled(file.get()) != 0) {
    std::vector<char> buffer(static_cast<std::size_t>(TIFFTileSize(file.get())));
    for (std::uint32_t i = 0; i < TIFFNumberOfTiles(file.get()); ++i) {
      TIFFReadEncodedTile(file.get(), i, buffer.data(), static_cast<tmsize_t>(buffer.size()));
    }
  } else {
    std::vector<char> buffer(static_cast<std::size_t>(TIFFStripSize(file.get())));
    for (std::uint32_t i = 0; i < TIFFNumberOfStrips(file.get()); ++i) {
      TIFFReadEncodedStrip(file.get(), i, buffer.data(), static_cast<tmsize_t>(buffer.size()));
    }
  }
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace bench
