#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// How one channel of a scanner turns light into codes, as a calibration found it: rising pairs of
/// code (share of the format's full code, above 0 to 1) and linear light (full code is light 1).
/// Between the points the logarithm of light is straight over the logarithm of code, and so it goes
/// on beyond them; points therefore stand close.
struct CodeCurve {
  std::vector<double> code;
  std::vector<double> light;

  /// Linear light of a code; 0 at code 0 and below. Needs at least two points.
  [[nodiscard]] double light_of(double code_share) const;
  /// The code of a light, the other way round.
  [[nodiscard]] double code_of(double linear_light) const;
};

/// The curves of a scanner's channels: one (grey) or three.
struct CodeCurves {
  int channels = 1;
  PerChannel<CodeCurve> of_channel;
};

/// The family of curve by which stored codes become linear light; `scanner`: a calibration's own.
enum class TransferKind { linear, srgb, power, curve, scanner };

/// Who said so. `assumed`: nobody; the reader of the numbers must be told.
enum class TransferSource { icc_profile, file_tag, option, scanner_file, assumed };

/// How stored codes become linear light.
struct Transfer {
  TransferKind kind = TransferKind::linear;
  /// Exponent of the decoding power, for `power` only: light = code^exponent.
  std::optional<double> exponent;
  TransferSource source = TransferSource::assumed;
  /// For `scanner` only.
  std::shared_ptr<const CodeCurves> scanner = nullptr;

  /// Of what is told of it: the curves themselves belong to the calibration.
  friend bool operator==(const Transfer& one, const Transfer& other) {
    return one.kind == other.kind && one.exponent == other.exponent && one.source == other.source;
  }
};

/// What a file says of itself, before any pixel is judged.
struct ScanInfo {
  std::string file;
  int width_px = 0;
  int height_px = 0;
  /// Stored bits a sample: 8, 16, 32.
  int bits = 0;
  /// Stored samples a pixel, alpha and infrared included.
  int samples_per_pixel = 0;
  /// Colour channels used for light: 1 (grey) or 3 (red, green, blue).
  int channels = 0;
  /// From the resolution tag, along x and y; absent where the file has none or an impossible one.
  /// May be wrong: perforations decide.
  std::optional<double> tag_pixels_per_mm;
  Transfer transfer;
  /// False for 16-bit files that don't tell their transfer: `transfer` is then the linear reading,
  /// and nothing may be said in densities until the picture or an option decides.
  bool transfer_known = true;
  /// Lossy compression (JPEG, also inside TIFF): spots and tints are smeared.
  bool lossy = false;
  /// The file says it was made by a camera (it records an exposure time or aperture).
  bool camera = false;
  std::vector<Caution> cautions;

  friend bool operator==(const ScanInfo&, const ScanInfo&) = default;
};

/// A whole scan, reduced: area averages of linear light, and what only full resolution can tell.
struct ScanGrid {
  /// Stored pixels a grid pixel, along x and along y. Grid pixel (i, j) averages the stored pixels
  /// [i * reduction, (i + 1) * reduction) x [j * reduction, ...), fewer at the right and lower
  /// borders.
  int reduction = 1;
  LightRaster light;
  /// One byte a grid pixel: bit c (0, 1, 2) is set where any stored pixel below it has the top code
  /// in channel c, bit c + 4 where more than half of them have.
  Raster<std::uint8_t> clipped;
};

/// What a survey shall give, and what its one pass over the file shall keep for the next.
struct SurveyPlan {
  /// Most pixels of the grid.
  std::int64_t most_pixels = 1;
  /// Tone curves by one of which the same grid may be asked next: their averages are taken in the
  /// same pass.
  std::vector<Transfer> other_curves = {};
  /// A tone curve is being learned from the picture, and more surveys follow: its codes are kept.
  bool learns_curve = false;
};

/// Told now and then during a long read: share done, 0 to 1.
using Progress = std::function<void(double)>;

/// A scan to be surveyed. Implemented by `pixels`, handed down by the program, so that the stages
/// that measure never open a file.
class ScanSource {
 public:
  ScanSource() = default;
  ScanSource(const ScanSource&) = delete;
  ScanSource& operator=(const ScanSource&) = delete;
  ScanSource(ScanSource&&) = delete;
  ScanSource& operator=(ScanSource&&) = delete;
  virtual ~ScanSource() = default;

  [[nodiscard]] virtual const ScanInfo& info() const = 0;

  /// Decides how codes become light in every later survey: for files that don't tell and whose
  /// picture does. `info().transfer` becomes `transfer`, `info().transfer_known` true.
  virtual void set_transfer(const Transfer& transfer) = 0;

  /// The code that stands for a light, as a share of the full code, by the present transfer. Codes
  /// of white-is-zero files count from white, as everywhere.
  [[nodiscard]] virtual double code_of(double light, int channel) const = 0;

  /// The scan by the present transfer. Reads the whole file once; what the last plan foresaw comes
  /// from what that pass kept, and is given up unless this plan foresees it again. A picture of
  /// more codes than memory is spent on (21 Mpx in three channels of 16 bits) is kept as every n-th
  /// pixel along and across, good enough while its curve is still learned; the survey after that
  /// reads the file a second time. Throws FileError where the file breaks off or is damaged.
  virtual ScanGrid survey(const SurveyPlan& plan, const Progress& progress) = 0;
};

}  // namespace fogline
