#include "ring_examples.h"

#include "marks/ring_tile.h"
#include "roll/reading/read_scan.h"
#include "simulator/render.h"
#include "tables/shipped_knowledge.h"

#include <fogline/pixels/open_scan.h>

#include <algorithm>
#include <filesystem>

namespace training {

namespace {

using fogline::ClosedLine;
using fogline::FilmExtent;
using fogline::MarkCandidate;

bool overlap(const FilmExtent& a, const FilmExtent& b) {
  return std::min(a.along_end_mm, b.along_end_mm) > std::max(a.along_begin_mm, b.along_begin_mm) &&
         std::min(a.across_end_mm, b.across_end_mm) >
             std::max(a.across_begin_mm, b.across_begin_mm);
}

void keep_one_of_overlapping(std::vector<ClosedLine>& lines) {
  std::stable_sort(lines.begin(), lines.end(), [](const ClosedLine& a, const ClosedLine& b) {
    return a.signs.mean_evidence > b.signs.mean_evidence;
  });
  std::vector<ClosedLine> kept;
  for (const ClosedLine& line : lines) {
    if (std::none_of(kept.begin(), kept.end(), [&](const ClosedLine& other) {
          return overlap(line.mark.extent, other.mark.extent);
        })) {
      kept.push_back(line);
    }
  }
  lines = std::move(kept);
}

bool is_true(const MarkCandidate& mark, const fogline::FilmMap& map,
             const filmsim::Simulated& simulated) {
  const FilmExtent& extent = mark.extent;
  const fogline::PointPx at =
      map.scan_from_film({0.5 * (extent.along_begin_mm + extent.along_end_mm),
                          0.5 * (extent.across_begin_mm + extent.across_end_mm)});
  const bench::FoundMark found{mark.kind, at.x, at.y, mark.size_mm, mark.area_mm2};
  const auto& drawn = simulated.truth.marks;
  return std::any_of(drawn.begin(), drawn.end(), [&](const filmsim::DrawnMark& truth) {
    return bench::is_right(found, truth, simulated.scenario.pixels_per_mm);
  });
}

}  // namespace

std::vector<RingExample> ring_examples(std::uint64_t seed, bench::MarksScan scan,
                                       const std::string& folder) {
  const filmsim::Simulated simulated = filmsim::render(bench::marks_scenario(seed, scan));
  const std::string path =
      filmsim::write_scan(simulated, folder + "/rings-" + std::to_string(static_cast<int>(scan)) +
                                         "-" + std::to_string(seed) + ".tif");
  const auto source = fogline::open_scan(path, {});
  const fogline::MeasureOptions options = fogline::shipped_options();
  const fogline::ScanWork work =
      fogline::read_scan(*source, options, fogline::ScanScanner(*source, options), {});
  std::filesystem::remove(path);
  std::filesystem::remove(std::filesystem::path(path).replace_extension(".truth.json"));
  const fogline::MarkKnowledge& knowledge = options.knowledge->marks;
  std::vector<RingExample> examples;
  for (std::size_t i = 0; i < work.readings.size(); ++i) {
    const fogline::StripReading& reading = work.readings[i];
    const fogline::FilmStrip& film = work.layout.strips[i];
    if (reading.lamp.empty() || !reading.clear || !film.scale_known) {
      continue;
    }
    std::vector<ClosedLine> lines = fogline::closed_lines(
        fogline::ring_tile(film,
                           {work.grid, work.stray, reading.lamp, reading.clear->visual, knowledge}),
        knowledge.ring);
    keep_one_of_overlapping(lines);
    for (const ClosedLine& line : lines) {
      examples.push_back({line.signs, is_true(line.mark, film.map, simulated)});
    }
  }
  return examples;
}

}  // namespace training
