#include "roll/reading/transfer_from_picture.h"

#include "tables/shipped_knowledge.h"

#include <fogline/base/quantity.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Encoding of IEC 61966-2-1 (constants from memory).
double encoded(double light) {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
}

/// Usual 135 film on a bare light of full scale: base 0.27, highlights 1.05 above it, edge print
/// 1.1, leader 2.2, 0.8 % of stray light.
CodeEvidence usual_film(double (*code_of)(double)) {
  const double bare = code_of(0.9);
  const auto code = [&](double density) {
    return code_of(0.9 * transmittance_from_density(density));
  };
  CodeEvidence evidence;
  evidence.format = FilmFormat::f135;
  evidence.clear_over_bare = code(0.27) / bare;
  evidence.opaque_over_light = code_of(0.9 * 0.008) / bare;
  evidence.print_over_clear = code(1.37) / code(0.27);
  evidence.leader_over_clear = code(2.47) / code(0.27);
  evidence.dense_over_clear = {code(1.2) / code(0.27), code(1.32) / code(0.27),
                               code(1.5) / code(0.27)};
  return evidence;
}

double as_light(double light) {
  return light;
}

TEST(ReadingOfCodes, OfLinearFilm) {
  EXPECT_EQ(reading_of_codes(usual_film(as_light), shipped_knowledge().scan.films),
            CodeReading::light);
}

TEST(ReadingOfCodes, OfDisplayEncodedFilm) {
  EXPECT_EQ(reading_of_codes(usual_film(encoded), shipped_knowledge().scan.films),
            CodeReading::display_curve);
}

// Base and pictures alone, as a scan without print, leader or anything opaque shows them.
TEST(ReadingOfCodes, FromBaseAndPicturesAlone) {
  for (const bool linear : {true, false}) {
    CodeEvidence evidence = usual_film(linear ? as_light : encoded);
    evidence.opaque_over_light.reset();
    evidence.print_over_clear.reset();
    evidence.leader_over_clear.reset();
    EXPECT_EQ(reading_of_codes(evidence, shipped_knowledge().scan.films),
              linear ? CodeReading::light : CodeReading::display_curve);
  }
}

TEST(ReadingOfCodes, WithoutEvidenceCannotTell) {
  EXPECT_EQ(reading_of_codes({}, shipped_knowledge().scan.films), CodeReading::cannot_tell);
}

// A flat roll on linear codes looks like a contrasty one on a display curve's half: net highlights
// of 0.7 would be 1.5, neither absurd.
TEST(ReadingOfCodes, OfPicturesBetweenBothReadingsCannotTell) {
  CodeEvidence evidence;
  evidence.format = FilmFormat::f120;
  evidence.dense_over_clear = {transmittance_from_density(0.70), transmittance_from_density(0.68)};
  EXPECT_EQ(reading_of_codes(evidence, shipped_knowledge().scan.films), CodeReading::cannot_tell);
}

// One wild roll doesn't outvote base, print and leader.
TEST(ReadingOfCodes, OneAbsurdNumberDoesNotDecide) {
  CodeEvidence evidence = usual_film(as_light);
  evidence.dense_over_clear = {transmittance_from_density(0.4)};
  EXPECT_EQ(reading_of_codes(evidence, shipped_knowledge().scan.films), CodeReading::light);
}

}  // namespace
}  // namespace fogline
