#include "roll/reading/read_scan.h"

#include "density/blank.h"
#include "film/find_film.h"
#include "film/wedges/find_wedges.h"
#include "roll/calibrating/scanner_response.h"
#include "roll/reading/lost_channels.h"
#include "roll/reading/transfer_from_picture.h"
#include "roll/scan_knowledge.h"
#include "sensitometry/read_tone.h"

#include <fogline/base/raster.h>
#include <fogline/base/refusal.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Pixels of the working grid: at 6 bytes of light and one of clip bits each, 98 MB in colour. A
/// whole 135 strip is then seen at 40 pixels a millimetre, a glass full of strips at 12.
constexpr std::int64_t grid_pixels = 14'000'000;
/// A blank is read coarsely: lamp and lens change slowly, and noise averages out.
constexpr std::int64_t blank_pixels = 60'000;
/// Scale taken for stray light where nothing tells it: a strip of 240 mm fills the picture.
constexpr double unknown_scale_length_mm = 240.0;
const Transfer display_curve{TransferKind::srgb, {}, TransferSource::assumed};

/// The grid of a blank scan. Throws FileError where it isn't one of this scan.
ScanGrid read_blank(const ScanSource& scan_source, ScanSource& source, bool calibrated) {
  const ScanInfo& scan = scan_source.info();
  const ScanInfo& blank = source.info();
  if (blank.width_px != scan.width_px || blank.height_px != scan.height_px ||
      blank.channels != scan.channels) {
    throw FileError(blank.file, Refusal::blank_of_other_scan, {}, {scan.file});
  }
  if (calibrated) {
    source.set_transfer(scan.transfer);
  }
  return source.survey({blank_pixels}, {});
}

/// Divides a blank out of the grid; bare light's level in it. Throws FileError where it is clipped.
PerChannel<double> divide_blank_out(ScanGrid& grid, const ScanGrid& blank_grid,
                                    const ScanInfo& blank) {
  const BlankLight light = divide_by_blank(grid, blank_grid);
  constexpr double clipped_blank_share = 0.005;
  if (light.clipped_share > clipped_blank_share) {
    throw FileError(blank.file, Refusal::blank_clipped);
  }
  return light.level;
}

bool contains(const FilmStrip& film, PointPx at) {
  const PointMm place = film.map.film_from_scan(at);
  return place.along_mm > film.along_begin_mm && place.along_mm < film.along_end_mm &&
         place.across_mm > film.across_begin_mm && place.across_mm < film.across_end_mm;
}

/// A wedge isn't film to be judged: strips that hold any of its steps are no strips.
template <typename Step>
void leave_wedge_out(FilmLayout& layout, const std::vector<Step>& steps) {
  std::erase_if(layout.strips, [&](const FilmStrip& film) {
    return std::any_of(steps.begin(), steps.end(), [&](const Step& step) {
      return contains(film, middle_of(step.corners_px));
    });
  });
}

/// Film without perforations that nobody called a target may be a step wedge: its touching steps
/// are no frames. True where nothing else is left.
bool is_wedge_alone(FilmLayout& layout, const ScanGrid& grid) {
  const bool perforated =
      std::any_of(layout.strips.begin(), layout.strips.end(),
                  [](const FilmStrip& film) { return !film.perforations.empty(); });
  if (perforated || layout.polarity == Polarity::inverted) {
    return false;
  }
  bool found = false;
  for (const FoundWedge& wedge : find_wedges(grid).wedges) {
    if (wedge.touching) {
      leave_wedge_out(layout, wedge.steps);
      found = true;
    }
  }
  return found && layout.strips.empty();
}

StrayKnowledge stray_knowledge(const ScanScanner& scanner) {
  StrayKnowledge known;
  const ScannerCalibration* calibration = scanner.calibration();
  if (calibration == nullptr) {
    return known;
  }
  known.share = calibration->stray.share;
  known.share_doubt = calibration->stray.share_doubt;
  known.calibrated = true;
  if (scanner.own_wedge()) {
    known.film_outlines = scanner.own_wedge()->film_outlines;
  }
  return known;
}

/// A scan whose file doesn't tell its curve may turn out to be on the display's: both readings of
/// its codes come from one pass.
SurveyPlan survey_plan(const ScanInfo& info) {
  SurveyPlan plan{grid_pixels};
  if (!info.transfer_known) {
    plan.other_curves.push_back(display_curve);
  }
  return plan;
}

/// Stray light and strips of the grid as it is.
void read_strips(ScanWork& work, const ScanInfo& info, const MeasureOptions& options,
                 const ScanScanner& scanner, const std::optional<PerChannel<double>>& blank_level) {
  const double longest = std::max(info.width_px, info.height_px);
  const double scale = work.layout.pixels_per_mm.value_or(longest / unknown_scale_length_mm);
  work.stray =
      StrayLight::estimated(work.grid, work.layout.strips, scale, stray_knowledge(scanner));
  const ClippedShare clips(work.grid);
  work.readings.clear();
  if (work.layout.polarity == Polarity::negative) {
    for (const FilmStrip& film : work.layout.strips) {
      work.readings.push_back(read_strip(
          film, {work.grid, clips, work.stray, options.clear, blank_level, scanner.calibration(),
                 options.device, options.knowledge->devices, options.knowledge->films}));
    }
  }
  work.readings.resize(work.layout.strips.size(), StripReading(options.knowledge->devices));
}

ScanWork read_by_present_curve(ScanSource& source, const MeasureOptions& options,
                               const ScanScanner& scanner, const std::optional<ScanGrid>& blank,
                               const Progress& progress) {
  ScanWork work;
  work.grid = source.survey(survey_plan(source.info()), progress);
  std::optional<PerChannel<double>> blank_level;
  if (blank) {
    blank_level = divide_blank_out(work.grid, *blank, options.blank->info());
  }
  FindOptions find;
  find.format = options.format;
  find.frame_mm = options.frame_mm;
  // A camera doesn't know how far the film was.
  find.tag_pixels_per_mm = source.info().camera ? std::nullopt : source.info().tag_pixels_per_mm;
  work.layout = find_film(work.grid, find);
  if (scanner.own_wedge()) {
    leave_wedge_out(work.layout, scanner.calibration()->steps);
  } else if (!options.target) {
    work.wedge_alone = is_wedge_alone(work.layout, work.grid);
  }
  read_strips(work, source.info(), options, scanner, blank_level);
  const std::optional<LostChannels> lost = lost_channels(source.info(), work.readings);
  if (lost && !blank_level && scanner.calibration() == nullptr) {
    leave_channels_out(work.grid, *lost);
    read_strips(work, source.info(), options, scanner, blank_level);
    for (StripReading& reading : work.readings) {
      reading.colours = false;
    }
  }
  return work;
}

CodeEvidence code_evidence(const ScanWork& work) {
  CodeEvidence evidence;
  for (std::size_t i = 0; i < work.readings.size(); ++i) {
    const StripReading& reading = work.readings[i];
    const FilmStrip& film = work.layout.strips[i];
    if (!reading.clear) {
      continue;
    }
    evidence.format = film.format;
    if (reading.zero != ZeroSource::none) {
      evidence.clear_over_bare = transmittance_from_density(reading.clear->visual);
    }
    if (reading.edge_print) {
      evidence.print_over_clear =
          transmittance_from_density(reading.edge_print->density - reading.clear->visual);
    }
    if (reading.leader) {
      evidence.leader_over_clear =
          transmittance_from_density(reading.leader->density - reading.clear->visual);
    }
    if (const std::optional<double> opaque = work.stray.opaque_light()) {
      evidence.opaque_over_light = *opaque / std::max(1e-6, reading.bare_light);
    }
    for (const FilmFrame& frame : film.frames) {
      const std::optional<FilmExtent> area = tone_area(frame);
      if (area && !frame.inferred) {
        const FrameTone tone =
            read_tone(reading.density, *area, reading.clear->visual, {}, INFINITY);
        evidence.dense_over_clear.push_back(
            transmittance_from_density(tone.highlight->value - reading.clear->visual));
      }
    }
  }
  return evidence;
}

/// Where the file doesn't tell how codes become light, asks the picture; true where the scan is to
/// be read again by another curve.
bool decide_transfer(ScanSource& source, const ScanWork& work, const FilmKnowledge& films) {
  switch (reading_of_codes(code_evidence(work), films)) {
    case CodeReading::light:
      source.set_transfer({TransferKind::linear, {}, TransferSource::assumed});
      return false;
    case CodeReading::display_curve:
      source.set_transfer(display_curve);
      return true;
    case CodeReading::cannot_tell:
      break;
  }
  return false;
}

}  // namespace

ScanScanner::ScanScanner(ScanSource& source, const MeasureOptions& options)
    : scanner_(options.scanner ? &*options.scanner : nullptr) {
  if (options.wedge) {
    own_ = calibrate_from_wedge(source, *options.wedge, options.device, *options.knowledge, {});
    return;
  }
  if (scanner_ == nullptr) {
    return;
  }
  const ScanInfo& info = source.info();
  if (scanner_->channels != info.channels) {
    throw FileError(info.file, info.channels == 1 ? Refusal::grey_scan_colour_scanner
                                                  : Refusal::colour_scan_grey_scanner);
  }
  source.set_transfer(scanner_transfer(*scanner_));
}

ScanWork read_scan(ScanSource& source, const MeasureOptions& options, const ScanScanner& scanner,
                   const Progress& progress) {
  std::optional<ScanGrid> blank;
  if (options.blank != nullptr) {
    blank = read_blank(source, *options.blank, scanner.calibration() != nullptr);
  }
  ScanWork work = read_by_present_curve(source, options, scanner, blank, progress);
  if (!source.info().transfer_known && work.layout.polarity == Polarity::negative &&
      decide_transfer(source, work, options.knowledge->films)) {
    work = ScanWork{};
    work = read_by_present_curve(source, options, scanner, blank, progress);
  }
  return work;
}

}  // namespace fogline
