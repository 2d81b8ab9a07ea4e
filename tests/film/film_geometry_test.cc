#include "film/film_layout.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

// Stored pixels of 135 film's dimensions (ISO 1007, from memory), as dpi / 25.4 times millimetres.
TEST(Film135, DimensionsInPixels) {
  struct Row {
    double dpi;
    double pitch_px;
    double width_px;
    double frame_pitch_px;
  };
  for (const Row row : {Row{1200, 224.41, 1652.4, 1795.3},
                        {2400, 448.82, 3304.7, 3590.6},
                        {3200, 598.43, 4406.3, 4787.4},
                        {4800, 897.64, 6609.4, 7181.1}}) {
    const double pixels_per_mm = row.dpi / 25.4;
    EXPECT_NEAR(film_135::pitch_mm * pixels_per_mm, row.pitch_px, 0.005);
    EXPECT_NEAR(film_135::width_mm * pixels_per_mm, row.width_px, 0.05);
    EXPECT_NEAR(film_135::frame_pitch_mm * pixels_per_mm, row.frame_pitch_px, 0.05);
  }
  EXPECT_NEAR(film_135::frame_across_mm * 2400 / 25.4, 2267.7, 0.05);
  EXPECT_NEAR(film_135::frame_along_mm * 2400 / 25.4, 3401.6, 0.05);
}

// Eight perforations a frame leave a gap of 2 mm; 25.37 mm lie between the rows; the strip is
// 7.3632 pitches wide (ISO 1007, from memory, and arithmetic).
TEST(Film135, DimensionsAgreeWithEachOther) {
  EXPECT_NEAR(film_135::frame_pitch_mm, 38.0, 1e-9);
  EXPECT_NEAR(film_135::frame_pitch_mm - film_135::frame_along_mm, 2.0, 1e-9);
  EXPECT_NEAR(film_135::width_mm / film_135::pitch_mm, 7.3632, 0.00005);
  const double between_rows = 2.0 * (film_135::row_across_mm - film_135::hole_across_mm / 2.0);
  EXPECT_NEAR(between_rows, 25.37, 0.005);
  EXPECT_GT(between_rows, film_135::frame_across_mm);
  EXPECT_NEAR(film_135::row_across_mm + film_135::hole_across_mm / 2.0 + film_135::hole_to_edge_mm,
              film_135::width_mm / 2.0, 1e-9);
}

}  // namespace
}  // namespace fogline
