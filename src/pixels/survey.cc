#include "pixels/scan_file.h"
#include "pixels/survey_parts.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace fogline {

namespace {

/// How often a long read tells its progress.
constexpr int progress_steps = 50;

/// Most threads a survey takes: what two decode a second, a disk rarely delivers faster.
constexpr int most_threads = 4;

/// Memory all readers together may hold while they decode, of what grids and kept codes leave of
/// 256 MB less the libraries' (about 40 MB): a grid of 14 Mpx in three channels takes 98 MB.
constexpr std::size_t readers_budget_bytes = 80 << 20;
constexpr std::size_t survey_budget_bytes = 216 << 20;

int thread_count(const BlockSource& source, std::size_t held_bytes) {
  if (!source.random_access()) {
    return 1;
  }
  const int processors = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  const std::size_t left = survey_budget_bytes - std::min(survey_budget_bytes, held_bytes);
  const std::size_t by_memory =
      std::min(left, readers_budget_bytes) / std::max<std::size_t>(1, source.working_bytes());
  const int most = std::min(processors, most_threads);
  return std::clamp(static_cast<int>(std::min<std::size_t>(by_memory, most_threads)), 1, most);
}

/// One survey under way: what all threads share.
class Survey {
 public:
  Survey(BlockSource& source, const ScanInfo& info, const Decoding& decoding, int reduction,
         KeptCodes* keep, const Progress& progress);

  std::vector<ScanGrid> run();

 private:
  void work(BlockSource& source, bool tells);
  void read_part(BlockSource& source, const GridPart& part, bool tells);
  void store(const LightRow& row, const GridPart& part);
  void tell();
  [[nodiscard]] std::size_t held_bytes() const;

  BlockSource& source_;
  const ScanInfo& info_;
  const Decoding& decoding_;
  int reduction_;
  KeptCodes* keep_;
  const Progress& progress_;
  int grid_width_;
  int grid_height_;
  /// The light of one grid for each reading; clip bits are the same in all.
  std::vector<LightRaster> light_;
  Raster<std::uint8_t> clipped_;
  std::vector<GridPart> parts_;
  std::atomic<std::size_t> next_part_{0};
  std::atomic<std::int64_t> pixels_done_{0};
  int told_ = 0;
  std::mutex mutex_;
  std::exception_ptr failure_;
};

Survey::Survey(BlockSource& source, const ScanInfo& info, const Decoding& decoding, int reduction,
               KeptCodes* keep, const Progress& progress)
    : source_(source),
      info_(info),
      decoding_(decoding),
      reduction_(reduction),
      keep_(keep),
      progress_(progress),
      grid_width_((info.width_px - 1) / reduction + 1),
      grid_height_((info.height_px - 1) / reduction + 1),
      light_(decoding.readings.size(), LightRaster(grid_width_, grid_height_, info.channels)),
      clipped_(grid_width_, grid_height_) {}

std::size_t Survey::held_bytes() const {
  const std::size_t cells = clipped_.samples().size();
  const std::size_t of_light =
      cells * static_cast<std::size_t>(info_.channels) * sizeof(std::uint16_t) * light_.size();
  return cells + of_light + (keep_ != nullptr ? keep_->bytes() : 0);
}

void Survey::store(const LightRow& row, const GridPart& part) {
  const int y = part.y + row.grid_y;
  const int channels = info_.channels;
  std::uint8_t* clip = clipped_.row(y);
  std::size_t at = 0;
  for (int x = part.x; x < part.x + part.width; ++x) {
    const int columns = std::min(reduction_, info_.width_px - x * reduction_);
    const std::int64_t pixels = static_cast<std::int64_t>(columns) * row.stored_rows;
    const double scale = 1.0 / (full_light * static_cast<double>(pixels));
    unsigned bits = 0;
    for (int c = 0; c < channels; ++c, ++at) {
      for (std::size_t i = 0; i < light_.size(); ++i) {
        light_[i].set_light(x, y, c,
                            static_cast<float>(static_cast<double>(row.light[i][at]) * scale));
      }
      const std::int64_t clipped = row.clipped[at];
      bits |= clipped > 0 ? 1U << c : 0U;
      bits |= 2 * clipped > pixels ? 16U << c : 0U;
    }
    clip[x] = static_cast<std::uint8_t>(bits);
  }
}

void Survey::tell() {
  if (!progress_) {
    return;
  }
  const std::int64_t all = static_cast<std::int64_t>(grid_width_) * grid_height_;
  const auto step = static_cast<int>(pixels_done_ * progress_steps / all);
  if (step > told_) {
    told_ = step;
    progress_(static_cast<double>(step) / progress_steps);
  }
}

void Survey::read_part(BlockSource& source, const GridPart& part, bool tells) {
  const std::int64_t reduction = reduction_;
  const auto stored = [&](int grid, int end) {
    return static_cast<int>(std::min<std::int64_t>(end, grid * reduction));
  };
  const int x = stored(part.x, info_.width_px);
  const int y = stored(part.y, info_.height_px);
  const int x_end = stored(part.x + part.width, info_.width_px);
  const int y_end = stored(part.y + part.height, info_.height_px);
  const auto take_row = [&](const LightRow& row) {
    store(row, part);
    pixels_done_ += part.width;
    if (tells) {
      tell();
    }
  };
  const BlockSink keep =
      keep_ == nullptr ? BlockSink() : [this](const Block& block) { keep_->keep(block); };
  reduce_region(source, RegionPx{x, y, x_end - x, y_end - y}, reduction_, decoding_, take_row,
                keep);
}

void Survey::work(BlockSource& source, bool tells) {
  try {
    for (std::size_t part = next_part_++; part < parts_.size(); part = next_part_++) {
      read_part(source, parts_[part], tells);
    }
  } catch (...) {
    const std::scoped_lock lock(mutex_);
    failure_ = failure_ ? failure_ : std::current_exception();
    next_part_ = parts_.size();
  }
}

std::vector<ScanGrid> Survey::run() {
  const int threads = thread_count(source_, held_bytes());
  parts_ = plan_survey_parts(source_, info_, reduction_, threads);
  std::vector<std::unique_ptr<BlockSource>> forks;
  for (int i = 1; i < threads; ++i) {
    forks.push_back(source_.fork());
  }
  {
    std::vector<std::jthread> workers;
    workers.reserve(forks.size());
    for (auto& fork : forks) {
      workers.emplace_back([this, &fork] { work(*fork, false); });
    }
    // The caller's own thread works too, and alone tells progress.
    work(source_, true);
  }
  if (failure_) {
    std::rethrow_exception(failure_);
  }
  tell();
  std::vector<ScanGrid> grids;
  for (LightRaster& light : light_) {
    const bool last = &light == &light_.back();
    grids.push_back({reduction_, std::move(light), last ? std::move(clipped_) : clipped_});
  }
  return grids;
}

}  // namespace

int reduction_for(int width_px, int height_px, std::int64_t most_pixels) {
  const std::int64_t w = width_px;
  const std::int64_t h = height_px;
  int reduction = 1;
  while (((w - 1) / reduction + 1) * ((h - 1) / reduction + 1) >
         std::max<std::int64_t>(1, most_pixels)) {
    ++reduction;
  }
  return reduction;
}

std::vector<ScanGrid> survey_blocks(BlockSource& source, const ScanInfo& info,
                                    const Decoding& decoding, std::int64_t most_pixels,
                                    KeptCodes* keep, const Progress& progress) {
  const int reduction = reduction_for(info.width_px, info.height_px, most_pixels);
  return Survey(source, info, decoding, reduction, keep, progress).run();
}

}  // namespace fogline
