#pragma once

#include "files/input_file.h"
#include "pixels/tiff_handle.h"
#include "pixels/tiff_page.h"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace fogline {

/// Decodes one strip or tile too large to hold, row by row.
///
/// libtiff decodes tiles only whole, and even for reading a strip by scan lines it first loads all
/// of the strip's stored bytes. But a strip or a tile is coded as if it were a picture of its own,
/// so this class shows it to libtiff as one: a header made here, of a TIFF with this single strip,
/// followed by the stored bytes. The bytes come from a mapping of their part of the file whose
/// pages are given back as the rows go by, so that hardly any stay resident. Only this one kind of
/// file is ever mapped; should another program cut it short while it is read, the system ends ours.
class TiffUnitRows {
 public:
  /// `unit` is the index of a strip or tile of the page current in `handle`. Throws FileError.
  TiffUnitRows(const InputFile& file, const TiffHandle& handle, const TiffPage& page,
               std::uint32_t unit);
  ~TiffUnitRows();
  TiffUnitRows(const TiffUnitRows&) = delete;
  TiffUnitRows& operator=(const TiffUnitRows&) = delete;
  TiffUnitRows(TiffUnitRows&&) = delete;
  TiffUnitRows& operator=(TiffUnitRows&&) = delete;

  /// Decodes row `row` of the unit into `bytes` (page.unit_row_bytes()). Rows in rising order cost
  /// nothing extra; a step back decodes again from the top. Throws FileError.
  void read_row(std::uint32_t row, std::uint8_t* bytes);

 private:
  void give_pages_back();

  const InputFile& file_;
  std::size_t row_bytes_;
  std::size_t decoded_since_ = 0;
  std::uint32_t next_row_ = 0;
  std::uint8_t* mapping_ = nullptr;
  std::size_t mapping_bytes_ = 0;
  std::size_t header_bytes_ = 0;
  std::uint64_t position_ = 0;
  TiffComplaints complaints_;
  TIFF* tiff_ = nullptr;

  friend struct TiffUnitCallbacks;
};

/// True for the codecs that decode row by row; the others (WebP, LERC, ...) hold a whole unit.
bool decodes_by_rows(const TiffPage& page);

}  // namespace fogline
