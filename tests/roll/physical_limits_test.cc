#include "roll/reading/physical_limits.h"

#include "roll/reading/scan_doubt.h"
#include "sensitometry/density_film.h"
#include "tables/shipped_knowledge.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

ScanInfo sure_scan() {
  ScanInfo info;
  info.bits = 16;
  info.channels = 3;
  info.transfer.source = TransferSource::icc_profile;
  return info;
}

/// Film of two frames, `net` denser than its clear film.
struct Read {
  FilmStrip film = drawn::perforated_film();
  StripReading reading{shipped_knowledge().scan.devices};

  explicit Read(double net) {
    reading.zero = ZeroSource::perforations;
    reading.density = drawn::clear_density(film);
    for (const double begin : {2.0, 40.0}) {
      FilmFrame frame;
      frame.along_begin_mm = begin;
      frame.along_end_mm = begin + 36.0;
      frame.across_begin_mm = -12.0;
      frame.across_end_mm = 12.0;
      film.frames.push_back(frame);
      drawn::add_density(reading.density, {begin, begin + 36.0, -12.0, 12.0}, net);
    }
    reading.clear = ClearFilm{};
    reading.clear->visual = drawn::base_density;
  }
};

// Two faces of a clear support reflect 0.03 together (Fresnel's equations): a density at or below
// the bare light is no film's.
TEST(PhysicalLimits, NoSupportIsClearerThanTheLight) {
  Read read(0.5);
  const FilmKnowledge& films = shipped_knowledge().scan.films;
  for (const double impossible : {-0.05, -0.26, -5.963}) {
    read.reading.clear->visual = impossible;
    EXPECT_TRUE(lies_below_support(sure_scan(), read.reading, films)) << impossible;
  }
  for (const double possible : {0.0, 0.04, 0.28}) {
    read.reading.clear->visual = possible;
    EXPECT_FALSE(lies_below_support(sure_scan(), read.reading, films)) << possible;
  }
  // Counted from clear film there is no light to be below.
  read.reading.zero = ZeroSource::none;
  read.reading.clear->visual = -0.5;
  EXPECT_FALSE(lies_below_support(sure_scan(), read.reading, films));
}

TEST(PhysicalLimits, NoPictureIsThinnerThanClearFilm) {
  for (const double net : {-0.26, -0.12}) {
    const Read below(net);
    EXPECT_TRUE(pictures_below_clear_film(sure_scan(), below.film, below.reading)) << net;
  }
  for (const double net : {0.0, 0.02, 1.2}) {
    const Read above(net);
    EXPECT_FALSE(pictures_below_clear_film(sure_scan(), above.film, above.reading)) << net;
  }
}

// One frame under a fallen lamp isn't most of them; it is told apart by its own shadow.
TEST(PhysicalLimits, OneFrameAloneDoesntRefuseTheStrip) {
  Read read(0.3);
  drawn::add_density(read.reading.density, {40.0, 76.0, -12.0, 12.0}, -0.6);
  EXPECT_FALSE(pictures_below_clear_film(sure_scan(), read.film, read.reading));
  EXPECT_TRUE(lies_below_clear_film(sure_scan(), read.reading, drawn::base_density - 0.3));
  EXPECT_FALSE(lies_below_clear_film(sure_scan(), read.reading, drawn::base_density + 0.3));
}

// Local contrast of a finished picture brightens clear places beside dark ones, by about a tenth.
TEST(PhysicalLimits, AFinishedPictureMayBrightenPlaces) {
  const Read read(0.3);
  ScanInfo finished = sure_scan();
  finished.transfer = {TransferKind::srgb, {}, TransferSource::icc_profile};
  finished.bits = 8;
  EXPECT_TRUE(lies_below_clear_film(finished, read.reading, drawn::base_density - 0.09));
  finished.camera = true;
  EXPECT_FALSE(lies_below_clear_film(finished, read.reading, drawn::base_density - 0.09));
  EXPECT_TRUE(lies_below_clear_film(finished, read.reading, drawn::base_density - 0.3));
}

// Scattered clear film tells less of what lies below it.
TEST(PhysicalLimits, ScatterOfClearFilmCounts) {
  Read read(0.3);
  read.reading.clear->scatter = 0.1;
  EXPECT_FALSE(lies_below_clear_film(sure_scan(), read.reading, drawn::base_density - 0.15));
  read.reading.clear->scatter = 0.0;
  EXPECT_TRUE(lies_below_clear_film(sure_scan(), read.reading, drawn::base_density - 0.15));
}

}  // namespace
}  // namespace fogline
