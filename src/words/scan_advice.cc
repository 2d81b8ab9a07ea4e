#include "words/phrases.h"
#include "words/story.h"

#include <algorithm>

// Which line of the rescan sheet a roll needs is told from facts of its scans and from the families
// of their cautions, so that a kind added later to a family finds its advice.

namespace fogline {
namespace {

struct RescanAdvice {
  bool (*applies)(const ScanMeasurement&);
  const char* sentence;
};

bool is_inverted(const ScanMeasurement& scan) {
  return has_caution_of(scan, CautionFamily::inversion);
}
bool is_clipped(const ScanMeasurement& scan) {
  return has_caution_of(scan, CautionFamily::clipping);
}
bool has_no_zero(const ScanMeasurement& scan) {
  return scan.zero.source == ZeroSource::none && !scan.strips.empty();
}
bool has_assumed_curve(const ScanMeasurement& scan) {
  return scan.info.transfer.source == TransferSource::assumed;
}
bool has_few_bits(const ScanMeasurement& scan) {
  return scan.info.bits == 8;
}
bool is_lossy(const ScanMeasurement& scan) {
  return scan.info.lossy;
}
bool is_grey(const ScanMeasurement& scan) {
  return scan.info.channels == 1;
}
bool is_coarse(const ScanMeasurement& scan) {
  constexpr double coarse_pixels_per_mm = 11.8;  // 300 an inch, the least for tone
  return scan.pixels_per_mm && *scan.pixels_per_mm < coarse_pixels_per_mm;
}
bool has_glare(const ScanMeasurement& scan) {
  return has_caution_of(scan, CautionFamily::glare);
}
bool is_uneven(const ScanMeasurement& scan) {
  return has_caution_of(scan, CautionFamily::unevenness);
}

constexpr RescanAdvice all_advice[] = {
    {is_inverted,
     "Scan as a transparent positive with every automatic setting off: an inverted picture has "
     "been stretched, and no density is left in it."},
    {is_clipped,
     "Give the scan less light until the bare window reads 80 to 95 % of full scale: where the "
     "top code is reached, the amount of light is lost."},
    {has_no_zero,
     "Let bare light through beside the film: pull the strip 3 mm out of its mask so that the "
     "perforations are free, or leave 5 mm of empty window. Density zero is read there."},
    {has_assumed_curve,
     "Save with a colour profile, or scan with a linear tone curve and say --transfer linear: "
     "a tone curve guessed wrongly can double or halve every density."},
    {has_few_bits, "Save 16 bits a channel: with 8, one step at density 2 is 0.03."},
    {is_lossy, "Save as TIFF: JPEG smears spots and tints."},
    {is_grey, "Scan in colour, even black-and-white film: tint is told from three channels."},
    {is_coarse, "Scan with 300 pixels an inch or more; 1200 for marks."},
    {has_glare,
     "Mask the light down to the film and darken the room: stray light thins the dense parts. Two "
     "layers of black tape on the holder show how much is left."},
    {is_uneven,
     "Take one picture of the bare light at the same settings and keep it, or even out the light: "
     "unevenness over the film adds to every doubt."},
};

}  // namespace

std::vector<std::string> scan_advice(const JudgedRoll& record) {
  std::vector<std::string> sentences;
  const auto& scans = record.measurement.scans;
  for (const RescanAdvice& advice : all_advice) {
    if (std::any_of(scans.begin(), scans.end(), advice.applies)) {
      sentences.emplace_back(advice.sentence);
    }
  }
  return sentences;
}

}  // namespace fogline
