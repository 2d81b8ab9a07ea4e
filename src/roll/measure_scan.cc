#include "roll/frame_place.h"
#include "roll/outlines.h"
#include "roll/scan_doubt.h"
#include "roll/scan_fitness.h"
#include "roll/scan_marks.h"
#include "roll/scan_picture.h"
#include "roll/scan_tint.h"
#include "roll/strip_reading.h"
#include "roll/transfer_from_picture.h"

#include <fogline/base/error.h>
#include <fogline/density/blank.h>
#include <fogline/film/find_film.h>
#include <fogline/numerics/robust.h>
#include <fogline/roll/measure_roll.h>
#include <fogline/sensitometry/read_tone.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// Pixels of the working grid: at 6 bytes of light and one of clip bits each, 98 MB in colour. A
/// whole 135 strip is then seen at 40 pixels a millimetre, a glass full of strips at 12.
constexpr std::int64_t grid_pixels = 14'000'000;
/// A blank is read coarsely: lamp and lens change slowly, and noise averages out.
constexpr std::int64_t blank_pixels = 60'000;
/// Scale taken for stray light where nothing tells it: a strip of 240 mm fills the picture.
constexpr double unknown_scale_length_mm = 240.0;
/// Strokes of the edge print are narrow: blur and pixels take up to this share of their net density
/// (95 %; the bench's own strokes at 10 pixels a millimetre).
constexpr double stroke_share_95 = 0.15;
/// Fog in clear film is silver, about this much: the part that the angle of light touches.
constexpr double usual_fog = 0.05;

/// One scan on its way: what was found and read of it.
struct ScanWork {
  ScanGrid grid;
  FilmLayout layout;
  StrayLight stray;
  std::vector<StripReading> readings;
};

/// Divides a blank scan out of the grid; bare light's level in it. Throws FileError where the blank
/// isn't one of this scan.
PerChannel<double> divide_blank_out(ScanGrid& grid, const ScanInfo& scan, ScanSource& source) {
  const ScanInfo& blank = source.info();
  if (blank.width_px != scan.width_px || blank.height_px != scan.height_px ||
      blank.channels != scan.channels) {
    throw FileError(blank.file, blank.file + " can't be the blank of " + scan.file +
                                    ": it has another size or another number of channels; scan "
                                    "the bare light with the very settings of the film.");
  }
  const BlankLight light = divide_by_blank(grid, source.survey(blank_pixels, {}));
  constexpr double clipped_blank_share = 0.005;
  if (light.clipped_share > clipped_blank_share) {
    throw FileError(blank.file, blank.file +
                                    " stands at the top code, so the bare light isn't measured in "
                                    "it; scan it and the film again with less exposure.");
  }
  return light.level;
}

ScanWork read_scan(ScanSource& source, const MeasureOptions& options, const Progress& progress) {
  ScanWork work;
  work.grid = source.survey(grid_pixels, progress);
  std::optional<PerChannel<double>> blank_level;
  if (options.blank != nullptr) {
    blank_level = divide_blank_out(work.grid, source.info(), *options.blank);
  }
  FindOptions find;
  find.format = options.format;
  find.frame_mm = options.frame_mm;
  find.tag_pixels_per_mm = source.info().tag_pixels_per_mm;
  work.layout = find_film(work.grid, find);
  const double longest = std::max(source.info().width_px, source.info().height_px);
  const double scale = work.layout.pixels_per_mm.value_or(longest / unknown_scale_length_mm);
  work.stray = StrayLight::estimated(work.grid, work.layout.strips, scale);
  const ClippedShare clips(work.grid);
  if (work.layout.polarity == Polarity::negative) {
    for (const FilmStrip& film : work.layout.strips) {
      work.readings.push_back(
          read_strip(film, {work.grid, clips, work.stray, options.clear, blank_level}));
    }
  }
  work.readings.resize(work.layout.strips.size());
  return work;
}

double clipped_pixels_share(const ScanGrid& grid) {
  constexpr int most_bits = 0x70;
  const std::vector<std::uint8_t>& bits = grid.clipped.samples();
  const auto clipped = std::count_if(bits.begin(), bits.end(),
                                     [](std::uint8_t bit) { return (bit & most_bits) != 0; });
  return bits.empty() ? 0.0 : static_cast<double>(clipped) / static_cast<double>(bits.size());
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

/// Where the file doesn't tell how codes become light, asks the picture; true where the answer
/// needs the file to be read again.
bool decide_transfer(ScanSource& source, const ScanWork& work) {
  switch (reading_of_codes(code_evidence(work))) {
    case CodeReading::light:
      source.set_transfer({TransferKind::linear, {}, TransferSource::assumed});
      return false;
    case CodeReading::display_curve:
      source.set_transfer({TransferKind::srgb, {}, TransferSource::assumed});
      return true;
    case CodeReading::cannot_tell:
      break;
  }
  return false;
}

BaseFog base_fog_of(const ClearFilm& clear, const DoubtSources& doubt, int channels,
                    bool scale_known) {
  BaseFog base;
  base.visual = quantity_of_density(doubt, clear.visual, usual_fog);
  if (channels == most_channels) {
    PerChannel<Quantity> each;
    for (std::size_t c = 0; c < each.size(); ++c) {
      each[c] = quantity_of_density(doubt, clear.density[c], usual_fog);
    }
    base.channels = each;
  }
  base.source = clear.source;
  if (scale_known) {
    base.area_mm2 = clear.area_mm2;
  }
  return base;
}

BoxPx bounding_box(const Outline& outline, const ScanInfo& info) {
  double left = INFINITY;
  double top = INFINITY;
  double right = -std::numeric_limits<double>::infinity();
  double bottom = -std::numeric_limits<double>::infinity();
  for (const PointPx& point : outline.points) {
    left = std::min(left, point.x);
    top = std::min(top, point.y);
    right = std::max(right, point.x);
    bottom = std::max(bottom, point.y);
  }
  left = std::clamp(left, 0.0, static_cast<double>(info.width_px));
  top = std::clamp(top, 0.0, static_cast<double>(info.height_px));
  right = std::clamp(right, left, static_cast<double>(info.width_px));
  bottom = std::clamp(bottom, top, static_cast<double>(info.height_px));
  return {left, top, right - left, bottom - top};
}

void explain_missing_tone(FrameMeasurement& frame, const std::string& why) {
  for (const char* field : {"shadow", "middle", "highlight", "range", "paper_range"}) {
    frame.reasons[field] = why;
  }
}

/// True where the scan's densities may be told.
bool tells_densities(const ScanMeasurement& scan) {
  return scan.fitness != Fitness::unfit && scan.fitness != Fitness::marks_only;
}

/// Marks come before tone, which leaves them out, and after the colour of clear film, which reads
/// whole patches.
void add_marks_and_tint(ScanMeasurement& scan, ScanWork& work, const MeasureOptions& options) {
  scan.tint =
      scan_tint(scan.info, work.layout, work.readings, options.base_tint, tells_densities(scan));
  if (scan.fitness == Fitness::unfit) {
    scan.reasons["marks"] = "This scan tells no densities.";
    return;
  }
  MarkSearch search = scan_marks(work.grid, work.layout, work.stray, work.readings);
  scan.marks = std::move(search.marks);
  if (!search.limits.empty()) {
    scan.reasons["marks"] = search.limits;
  }
  for (std::size_t i = 0; i < work.readings.size(); ++i) {
    leave_out_marks(work.readings[i].density, static_cast<int>(i) + 1, scan.marks,
                    work.layout.strips[i].map);
  }
}

/// Writes one strip's numbers and outlines into the scan.
void add_strip(ScanMeasurement& scan, const ScanWork& work, std::size_t index, int first_frame) {
  const FilmStrip& film = work.layout.strips[index];
  const StripReading& reading = work.readings[index];
  const int strip_number = static_cast<int>(index) + 1;
  const bool densities = tells_densities(scan) && reading.clear.has_value();
  StripMeasurement strip;
  strip.number = strip_number;
  strip.format = film.format;
  strip.rotation_deg = film.map.rotation_deg();
  strip.perforations = static_cast<int>(film.perforations.size());
  const DoubtSources doubt = doubt_of(scan.info, reading);
  if (densities && reading.zero != ZeroSource::none) {
    strip.base_fog = base_fog_of(*reading.clear, doubt, scan.info.channels, film.scale_known);
  }
  const double limit = density_reach(doubt);
  int number = first_frame;
  for (const FilmFrame& frame : film.frames) {
    FrameMeasurement measured = frame_place(frame, film.map, number++, strip_number);
    const std::optional<FilmExtent> area = tone_area(frame);
    if (!densities) {
      explain_missing_tone(measured, "This scan tells no densities.");
    } else if (!area) {
      explain_missing_tone(measured, "Too little of the frame is in sight.");
    } else {
      measured.tone = read_tone(reading.density, *area, reading.clear->visual, doubt, limit);
      measured.sketch = sketch_of(reading.density, *area);
      if (!measured.tone.paper_range) {
        measured.reasons["paper_range"] =
            "The frame is denser than this scan can tell, so its range is only a lower bound.";
      }
    }
    scan.frames.push_back(std::move(measured));
  }
  std::vector<Outline> outlines = strip_outlines(film, reading, strip_number, first_frame);
  strip.box_px = bounding_box(outlines.front(), scan.info);
  scan.outlines.insert(scan.outlines.end(), outlines.begin(), outlines.end());
  scan.strips.push_back(strip);
}

/// Base plus fog of a scan: that of its strips, weighted by the area read, their scatter in the
/// doubt.
std::optional<BaseFog> combined_base_fog(const std::vector<StripMeasurement>& strips) {
  std::vector<double> visuals;
  const BaseFog* widest = nullptr;
  double area = 0.0;
  for (const StripMeasurement& strip : strips) {
    if (strip.base_fog) {
      visuals.push_back(strip.base_fog->visual.value);
      area += strip.base_fog->area_mm2.value_or(0.0);
      if (widest == nullptr ||
          strip.base_fog->area_mm2.value_or(0.0) > widest->area_mm2.value_or(0.0)) {
        widest = &*strip.base_fog;
      }
    }
  }
  if (widest == nullptr) {
    return std::nullopt;
  }
  BaseFog base = *widest;
  const LocationScale spread = robust_location(visuals);
  base.visual.value = spread.location;
  base.visual.u95 = std::hypot(base.visual.u95, coverage_factor_95 * spread.scale);
  if (base.area_mm2) {
    base.area_mm2 = area;
  }
  return base;
}

/// A density that may lie beyond what the scan tells: then its end, as a lower bound.
Quantity bounded_quantity(const DoubtSources& doubt, double density, double base) {
  const double reach = density_reach(doubt);
  const double told = std::min(density, reach);
  Quantity quantity = quantity_of_density(doubt, told, told - base);
  quantity.at_least = density > reach;
  return quantity;
}

/// Edge print as the median over the strips that show it, leader from the first that does.
void add_factory_exposures(ScanMeasurement& scan, const ScanWork& work) {
  std::vector<double> prints;
  const StripReading* print_strip = nullptr;
  for (const StripReading& reading : work.readings) {
    if (!reading.clear) {
      continue;
    }
    if (reading.edge_print) {
      prints.push_back(reading.edge_print->density);
      print_strip = print_strip == nullptr ? &reading : print_strip;
    }
    if (reading.leader && !scan.leader) {
      scan.leader = bounded_quantity(doubt_of(scan.info, reading), reading.leader->density,
                                     reading.clear->visual);
    }
  }
  if (print_strip != nullptr) {
    const double base = print_strip->clear->visual;
    Quantity print = bounded_quantity(doubt_of(scan.info, *print_strip), median(prints), base);
    print.u95 = std::hypot(print.u95, stroke_share_95 * (print.value - base));
    scan.edge_print = print;
  }
}

void explain_missing(ScanMeasurement& scan) {
  const bool densities = tells_densities(scan);
  const char* none = "This scan tells no densities.";
  if (!scan.base_fog) {
    scan.reasons["base_fog"] =
        densities ? "No bare light path is in sight, so base plus fog has no zero to be read from."
                  : none;
  }
  if (!scan.edge_print) {
    scan.reasons["edge_print"] =
        densities ? "No edge print wide enough to be read was found." : none;
  }
  if (!scan.leader) {
    scan.reasons["leader"] = densities ? "No fogged leader is in the scan." : none;
  }
  if (!scan.veiling_glare) {
    scan.reasons["veiling_glare"] =
        "Nothing opaque is in sight by which stray light could be told.";
  }
  if (!scan.density_limit) {
    scan.reasons["density_limit"] = none;
  }
  if (!scan.pixels_per_mm) {
    scan.reasons["pixels_per_mm"] =
        "Neither perforations nor a usable resolution tag nor a known film width give the scale.";
  }
}

void add_scan_numbers(ScanMeasurement& scan, const ScanWork& work) {
  for (const StripReading& reading : work.readings) {
    if (reading.zero != ZeroSource::none && scan.zero.source == ZeroSource::none) {
      scan.zero.source = reading.zero;
      scan.zero.unevenness_density = reading.lamp.unevenness_density();
    }
  }
  if (work.stray.measured()) {
    scan.veiling_glare = Quantity{
        work.stray.share(), coverage_factor_95 * work.stray.share_doubt(), {}, {}, {}, false};
  }
}

}  // namespace

ScanMeasurement measure_scan(ScanSource& source, const MeasureOptions& options, int frame_number,
                             const Progress& progress) {
  ScanWork work = read_scan(source, options, progress);
  if (!source.info().transfer_known && work.layout.polarity == Polarity::negative &&
      decide_transfer(source, work)) {
    work = read_scan(source, options, progress);
  }
  ScanMeasurement scan;
  scan.info = source.info();
  scan.cautions = scan.info.cautions;
  scan.pixels_per_mm = work.layout.pixels_per_mm;
  scan.picture = scan_picture(work.grid);
  add_scan_numbers(scan, work);
  judge_fitness(scan, work.layout, work.readings, clipped_pixels_share(work.grid));
  add_marks_and_tint(scan, work, options);
  for (std::size_t i = 0; i < work.layout.strips.size(); ++i) {
    const int first = frame_number + static_cast<int>(scan.frames.size());
    add_strip(scan, work, i, first);
  }
  if (tells_densities(scan)) {
    scan.base_fog = combined_base_fog(scan.strips);
    add_factory_exposures(scan, work);
    const auto read = std::find_if(work.readings.begin(), work.readings.end(),
                                   [](const StripReading& r) { return r.clear.has_value(); });
    scan.density_limit = density_limit(doubt_of(scan.info, *read));
  }
  explain_missing(scan);
  return scan;
}

}  // namespace fogline
