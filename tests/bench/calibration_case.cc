#include "calibration_case.h"

#include "compare.h"
#include "density/callier.h"
#include "density/stray_light.h"
#include "film/wedges/find_wedges.h"
#include "simulator/random.h"
#include "simulator/render.h"
#include "tables/shipped_knowledge.h"

#include <fogline/density/doubt.h>
#include <fogline/pixels/open_scan.h>
#include <fogline/roll/calibrate_scanner.h>
#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <memory>

namespace bench {

namespace {

using fogline::CalibrationRun;
using fogline::ScannerCalibration;

constexpr std::int64_t grid_pixels = 6'000'000;
/// Of small scans one in so many is read without its calibration too: enough to tell what it
/// gains.
constexpr std::uint64_t uncalibrated_every = 4;

fogline::WedgeReference reference_of(const filmsim::CalibratedPair& pair) {
  fogline::WedgeReference reference;
  reference.name = "invented wedge";
  for (std::size_t i = 0; i < pair.wedge.certified.size(); ++i) {
    reference.steps.push_back(
        {std::to_string(i + 1), pair.wedge.certified[i], pair.certificate_u95});
  }
  return reference;
}

/// A step shows where its light isn't clipped and stands off its lighter neighbour's by a code and
/// by more than noise.
bool shows(const filmsim::WedgePlan& plan, const filmsim::WedgeScan& scan, std::size_t i) {
  struct Area {
    double mean = 0.0;
    double error = 0.0;
  };
  const auto area = [&](std::size_t k) {
    const filmsim::Point& middle = scan.middles_px[k];
    constexpr int half = 2;
    constexpr double count = (2 * half + 1) * (2 * half + 1);
    double sum = 0.0;
    double squares = 0.0;
    for (int y = -half; y <= half; ++y) {
      for (int x = -half; x <= half; ++x) {
        const double code =
            scan.picture.code(static_cast<int>(middle.x) + x, static_cast<int>(middle.y) + y,
                              plan.encoding.channels == 1 ? 0 : 1);
        sum += code;
        squares += code * code;
      }
    }
    const double mean = sum / count;
    return Area{mean, std::sqrt(std::max(0.0, squares / count - mean * mean) / count)};
  };
  const Area here = area(i);
  if (here.mean > 0.995 * scan.picture.top()) {
    return false;
  }
  if (i == 0) {
    return true;
  }
  const Area lighter = area(i - 1);
  return lighter.mean - here.mean > std::max(1.0, 3.0 * std::hypot(here.error, lighter.error));
}

void compare_wedge(CalibrationCase& result, const filmsim::CalibratedPair& pair,
                   const filmsim::WedgeScan& scan, const ScannerCalibration& calibration) {
  for (std::size_t i = 0; i < pair.wedge.densities.size(); ++i) {
    result.steps_to_find += shows(pair.wedge, scan, i) ? 1 : 0;
  }
  result.direction_right = true;
  result.reference_right = true;
  for (const fogline::CalibrationStep& step : calibration.steps) {
    const fogline::PointPx at = fogline::middle_of(step.corners_px);
    const auto index = static_cast<std::size_t>(step.number - 1);
    const filmsim::Point& middle = scan.middles_px[index];
    const double off = std::hypot(at.x - middle.x, at.y - middle.y) / pair.wedge.pixels_per_mm;
    if (off < 0.3 * pair.wedge.pitch_mm) {
      ++result.steps_found;
    } else {
      result.reference_right = false;
    }
    const bool is_dirty = step.number - 1 == pair.wedge.dirty_step;
    result.dirty_named = result.dirty_named || (is_dirty && step.outlier);
    result.falsely_named += step.outlier && !is_dirty ? 1 : 0;
  }
  const auto& first = calibration.steps.front();
  const auto& last = calibration.steps.back();
  result.direction_right = first.number < last.number && result.reference_right;
  result.dirty = pair.wedge.dirty_step >= 0;
  result.residual_rms = calibration.residual_rms;
  result.limit = calibration.density_limit;
  // Glare within a few millimetres is in proportion to a step's own light: only the far part shows.
  const filmsim::GlareSettings& glare = pair.wedge.scanner.glare;
  result.stray_error = calibration.stray.share - glare.share * (1.0 - glare.narrow_part);
  result.stray_doubt = calibration.stray.share_doubt;
  result.stray_measured = calibration.stray.measured;
}

fogline::Transfer transfer_of(const ScannerCalibration& calibration) {
  fogline::Transfer transfer;
  transfer.kind = fogline::TransferKind::scanner;
  transfer.source = fogline::TransferSource::scanner_file;
  transfer.scanner = std::make_shared<const fogline::CodeCurves>(calibration.curves);
  return transfer;
}

fogline::ScannerDevice device_of(const std::string& device) {
  return device == "camera"         ? fogline::ScannerDevice::camera
         : device == "film scanner" ? fogline::ScannerDevice::film_scanner
                                    : fogline::ScannerDevice::flatbed;
}

/// Densities of the patches' scan; with a calibration by its curves and its share of stray light.
std::vector<Compared> read_patches(const std::string& path, const filmsim::WedgePlan& plan,
                                   const filmsim::WedgeScan& scan,
                                   const ScannerCalibration* calibration) {
  std::vector<Compared> read;
  const auto source = fogline::open_scan(path, {});
  if (calibration != nullptr) {
    source->set_transfer(transfer_of(*calibration));
  }
  const fogline::ScanGrid grid = source->survey({grid_pixels}, {});
  const fogline::WedgeSearch search = fogline::find_wedges(grid);
  if (search.wedges.empty() || !search.wedges.front().bare_light) {
    return read;
  }
  const fogline::FoundWedge& found = search.wedges.front();
  fogline::StrayKnowledge known;
  if (calibration != nullptr) {
    known.share = calibration->stray.share;
    known.share_doubt = calibration->stray.share_doubt;
    known.calibrated = true;
  }
  const int unseen = static_cast<int>(plan.densities.size() - found.steps.size());
  known.film_outlines.push_back(fogline::outline_of(found, unseen, unseen));
  const auto stray = fogline::StrayLight::estimated(grid, {}, plan.pixels_per_mm, known);
  const int channels = source->info().channels;
  const fogline::PointPx bare_at = fogline::middle_of(found.bare_corners_px);
  for (const fogline::WedgeStep& step : found.steps) {
    const fogline::PointPx at = fogline::middle_of(step.corners_px);
    fogline::PerChannel<double> through{};
    for (int c = 0; c < channels; ++c) {
      const auto i = static_cast<std::size_t>(c);
      const double bare =
          (*found.bare_light)[i] - static_cast<double>(stray.at(bare_at.x, bare_at.y, c));
      through[i] = (step.light[i] - static_cast<double>(stray.at(at.x, at.y, c))) / bare;
    }
    // Which patch it is, by its place.
    std::size_t nearest = 0;
    double distance = INFINITY;
    for (std::size_t i = 0; i < scan.middles_px.size(); ++i) {
      const double d = std::hypot(scan.middles_px[i].x - at.x, scan.middles_px[i].y - at.y);
      if (d < distance) {
        distance = d;
        nearest = i;
      }
    }
    if (distance > 0.3 * plan.pitch_mm * plan.pixels_per_mm) {
      continue;
    }
    Compared compared;
    compared.truth = plan.densities[nearest];
    compared.value = fogline::diffuse_density(
        fogline::density_from_transmittance(fogline::visual_from_channels(through, channels)),
        calibration != nullptr ? calibration->callier : 1.0);
    if (!std::isfinite(compared.value)) {
      continue;
    }
    if (calibration != nullptr) {
      fogline::DoubtSources doubt;
      doubt.scanner = calibration;
      const fogline::DeviceKnowledge& devices = fogline::shipped_knowledge().scan.devices;
      doubt.evenness_density =
          (calibration->device == fogline::ScannerDevice::camera ? devices.camera_evenness
                                                                 : devices.scanner_evenness)
              .bulge_density;
      doubt.transfer_share = devices.calibrated.same_settings_share;
      doubt.noise_density =
          fogline::visual_from_channels(step.light_doubt, channels) /
          (std::max(1e-9, fogline::visual_from_channels(through, channels)) *
           fogline::visual_from_channels(*found.bare_light, channels) * std::log(10.0));
      doubt.stray_transmittance = source->info().bits <= 8 ? 0.0002 : 0.0;
      doubt.angle_share_95 = devices.angle.of(calibration->device).wedge_net_share_95;
      doubt.stray_field = stray.visual_field(
          at.x, at.y, fogline::visual_from_channels(*found.bare_light, channels));
      const fogline::Quantity told =
          fogline::quantity_of_density(doubt, compared.value, compared.value);
      compared.u95 = told.u95;
      compared.lower95 = told.lower95;
      compared.upper95 = told.upper95;
      compared.at_least = compared.value > fogline::density_limit(doubt);
    }
    read.push_back(compared);
  }
  return read;
}

ScanCase measure_strip(const filmsim::Simulated& simulated, const std::string& path,
                       const ScannerCalibration* calibration, std::uint64_t seed) {
  ScanCase strip;
  strip.name = {"tiny", seed};
  describe(simulated, strip);
  try {
    const auto source = fogline::open_scan(path, {});
    fogline::MeasureOptions options = fogline::shipped_options();
    if (calibration != nullptr) {
      options.scanner = *calibration;
    }
    const fogline::RollMeasurement roll = fogline::measure_roll(*source, options).measurement;
    strip.read = true;
    compare(simulated, roll, strip);
  } catch (const std::exception& error) {
    strip.trouble = error.what();
  }
  return strip;
}

}  // namespace

CalibrationCase run_calibration_case(const filmsim::WedgeKind& kind, std::uint64_t seed,
                                     const std::string& folder) {
  CalibrationCase result;
  result.seed = seed;
  result.large = kind.large;
  result.like_silver = kind.like_silver;
  result.plan = filmsim::sample_pair(kind, seed);
  const filmsim::CalibratedPair& pair = result.plan;
  result.bits = pair.wedge.encoding.bits;
  const std::string base = folder + "/" + std::to_string(seed) + (kind.large ? "l" : "s");
  const filmsim::WedgeScan wedge = filmsim::render_wedge(pair.wedge);
  const std::string wedge_path = base + "-wedge.tif";
  write_wedge(wedge, pair.wedge, wedge_path);
  const filmsim::WedgeScan patches = filmsim::render_wedge(pair.patches);
  const std::string patches_path = base + "-patches.tif";
  write_wedge(patches, pair.patches, patches_path);
  const filmsim::Simulated strip = filmsim::render(pair.strip);
  const std::string strip_path = write_scan(strip, base + "-strip.tif");
  describe(strip, result.strip_uncalibrated);
  result.device = result.strip_uncalibrated.device;
  // Half of the owners say what they have.
  result.device_told = seed / 2 % 2 == 0;
  const fogline::ScannerDevice told_device =
      result.device_told ? device_of(result.device) : fogline::ScannerDevice::unknown;
  try {
    const auto source = fogline::open_scan(wedge_path, {});
    CalibrationRun run = fogline::calibrate_from_wedge(*source, reference_of(pair), told_device,
                                                       fogline::shipped_knowledge().scan, {});
    compare_wedge(result, pair, wedge, run.calibration);
    result.patches = read_patches(patches_path, pair.patches, patches, &run.calibration);
    result.strip = measure_strip(strip, strip_path, &run.calibration, seed);
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  if (kind.large || seed / 8 % uncalibrated_every == 0) {
    result.patches_uncalibrated = read_patches(patches_path, pair.patches, patches, nullptr);
    result.strip_uncalibrated = measure_strip(strip, strip_path, nullptr, seed);
  }
  for (const std::string& path : {wedge_path, patches_path, strip_path}) {
    std::filesystem::remove(path);
  }
  std::filesystem::remove(std::filesystem::path(strip_path).replace_extension(".truth.json"));
  return result;
}

namespace {

/// Even pictures of one device: each lit by so much of the bare light.
std::vector<std::unique_ptr<fogline::ScanSource>> even_pictures(const filmsim::CalibratedPair& pair,
                                                                const std::vector<double>& lights,
                                                                const std::string& base,
                                                                std::uint64_t seed) {
  std::vector<std::unique_ptr<fogline::ScanSource>> sources;
  constexpr int side_px = 90;
  for (std::size_t i = 0; i < lights.size(); ++i) {
    std::vector<filmsim::Plane> planes(
        3, filmsim::Plane(side_px, side_px, static_cast<float>(lights[i])));
    filmsim::ScannerSettings scanner = pair.wedge.scanner;
    // The exposure isn't set anew: the bare light of every picture is the same.
    filmsim::Plane bare(side_px, side_px, 1.0F);
    const double brightest = *std::max_element(scanner.lamp.begin(), scanner.lamp.end());
    scanner.exposure_rule = filmsim::ExposureRule::kLevel;
    scanner.bare_level *= lights[i] * brightest;
    const std::vector<std::size_t> all{0, 1, 2};
    expose_sensor(planes, scanner, pair.wedge.pixels_per_mm, all,
                  filmsim::derived_seed(seed, 50 + i));
    bend(planes, scanner.response);
    const filmsim::WedgePlan& plan = pair.wedge;
    filmsim::WedgeScan scan;
    scan.picture = encode(planes, plan.encoding, 0.0);
    const std::string path = base + std::to_string(i) + ".tif";
    write_wedge(scan, plan, path);
    sources.push_back(fogline::open_scan(path, {}));
  }
  return sources;
}

std::vector<fogline::ScanSource*> pointers(
    const std::vector<std::unique_ptr<fogline::ScanSource>>& sources) {
  std::vector<fogline::ScanSource*> all;
  for (const auto& source : sources) {
    all.push_back(source.get());
  }
  return all;
}

/// What a calibration makes of light of known density on this device, without noise.
std::vector<Compared> read_known(const ScannerCalibration& calibration,
                                 const filmsim::CalibratedPair& pair) {
  std::vector<Compared> read;
  const filmsim::ScannerSettings& scanner = pair.wedge.scanner;
  const int channels = pair.wedge.encoding.channels;
  for (const double density : {0.5, 1.0, 1.5}) {
    if (density > calibration.shown_to_density) {
      continue;
    }
    fogline::PerChannel<double> through{};
    for (std::size_t c = 0; c < static_cast<std::size_t>(channels); ++c) {
      const auto code_of = [&](double light) {
        const double signal = scanner.bare_level * light + scanner.black_offset;
        return filmsim::encoded_from_light(
            filmsim::bent(signal * (channels == 1 ? 1.0 : scanner.lamp[c]), scanner.response, c),
            pair.wedge.encoding);
      };
      const fogline::CodeCurve& curve = calibration.curves.of_channel[c];
      through[c] = curve.light_of(code_of(std::pow(10.0, -density))) / curve.light_of(code_of(1.0));
    }
    Compared compared;
    compared.truth = density;
    compared.value =
        fogline::density_from_transmittance(fogline::visual_from_channels(through, channels));
    const auto doubt = calibration.doubt_at(density);
    compared.u95 = 1.96 * std::hypot(doubt.fit, calibration.slope_doubt_share * density);
    read.push_back(compared);
  }
  return read;
}

}  // namespace

OtherWay run_layers_case(std::uint64_t seed, const std::string& folder) {
  OtherWay way;
  filmsim::Random random(seed, 5);
  const filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, seed);
  const double layer = random.uniform(0.2, 0.35);
  const double told = layer * (1.0 + random.normal(0.0, 0.02));
  std::vector<double> lights;
  std::vector<int> layers;
  for (int i = 0; i <= 7; ++i) {
    layers.push_back(i);
    const double scatter = random.normal(0.0, 0.006 * std::sqrt(static_cast<double>(i)));
    lights.push_back(std::pow(10.0, -layer * i - scatter));
  }
  try {
    const std::string base = folder + "/layer-" + std::to_string(seed) + "-";
    const auto sources = even_pictures(pair, lights, base, seed);
    way.densities = read_known(fogline::calibrate_from_layers(pointers(sources), layers, told,
                                                              fogline::ScannerDevice::unknown,
                                                              fogline::shipped_knowledge().scan, {})
                                   .calibration,
                               pair);
  } catch (const std::exception& error) {
    way.trouble = error.what();
  }
  return way;
}

OtherWay run_bracket_case(std::uint64_t seed, const std::string& folder) {
  OtherWay way;
  filmsim::Random random(seed, 6);
  const filmsim::CalibratedPair pair = filmsim::sample_pair({false, true}, seed);
  std::vector<double> lights;
  std::vector<double> times_s;
  constexpr double doubt_stops = 0.1;
  for (int i = 0; i <= 7; ++i) {
    times_s.push_back(std::pow(2.0, -i));
    const double error_stops = random.normal(0.0, doubt_stops / 1.96);
    lights.push_back(std::pow(2.0, -i + error_stops));
  }
  try {
    const std::string base = folder + "/bracket-" + std::to_string(seed) + "-";
    const auto sources = even_pictures(pair, lights, base, seed);
    way.densities =
        read_known(fogline::calibrate_from_bracket(pointers(sources), times_s, doubt_stops,
                                                   fogline::ScannerDevice::unknown, {})
                       .calibration,
                   pair);
  } catch (const std::exception& error) {
    way.trouble = error.what();
  }
  return way;
}

}  // namespace bench
