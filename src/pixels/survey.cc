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

/// Memory all readers together may hold while they decode. With the grid of 14 Mpx in three
/// channels (98 MB) and the libraries (about 40 MB) the reading stays below 256 MB.
constexpr std::size_t readers_budget_bytes = 80 << 20;

int thread_count(const BlockSource& source) {
  if (!source.random_access()) {
    return 1;
  }
  const int processors = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  const std::size_t by_memory =
      readers_budget_bytes / std::max<std::size_t>(1, source.working_bytes());
  const int most = std::min(processors, most_threads);
  return std::clamp(static_cast<int>(std::min<std::size_t>(by_memory, most_threads)), 1, most);
}

/// One survey under way: what all threads share.
class Survey {
 public:
  Survey(BlockSource& source, const ScanInfo& info, const Decoding& decoding, int codes,
         int reduction, const Progress& progress);

  ScanGrid run();

 private:
  void work(BlockSource& source, bool tells);
  void read_part(BlockSource& source, const GridPart& part, CodeCounts& counts, bool tells);
  void store(const LightRow& row, const GridPart& part);
  void merge(CodeCounts& counts);
  void tell();

  BlockSource& source_;
  const ScanInfo& info_;
  const Decoding& decoding_;
  int codes_;
  const Progress& progress_;
  ScanGrid grid_;
  std::vector<GridPart> parts_;
  std::atomic<std::size_t> next_part_{0};
  std::atomic<std::int64_t> pixels_done_{0};
  int told_ = 0;
  std::mutex mutex_;
  std::exception_ptr failure_;
};

Survey::Survey(BlockSource& source, const ScanInfo& info, const Decoding& decoding, int codes,
               int reduction, const Progress& progress)
    : source_(source), info_(info), decoding_(decoding), codes_(codes), progress_(progress) {
  const int grid_width = (info.width_px - 1) / reduction + 1;
  const int grid_height = (info.height_px - 1) / reduction + 1;
  grid_.reduction = reduction;
  grid_.light = LightRaster(grid_width, grid_height, info.channels);
  grid_.clipped = Raster<std::uint8_t>(grid_width, grid_height);
  for (int c = 0; c < info.channels; ++c) {
    grid_.histograms[static_cast<std::size_t>(c)].assign(static_cast<std::size_t>(codes), 0);
  }
}

void Survey::store(const LightRow& row, const GridPart& part) {
  const int y = part.y + row.grid_y;
  const int reduction = grid_.reduction;
  const int channels = info_.channels;
  std::uint8_t* clip = grid_.clipped.row(y);
  std::size_t at = 0;
  for (int x = part.x; x < part.x + part.width; ++x) {
    const int columns = std::min(reduction, info_.width_px - x * reduction);
    const std::int64_t pixels = static_cast<std::int64_t>(columns) * row.stored_rows;
    const double scale = 1.0 / (full_light * static_cast<double>(pixels));
    unsigned bits = 0;
    for (int c = 0; c < channels; ++c, ++at) {
      grid_.light.set_light(x, y, c,
                            static_cast<float>(static_cast<double>(row.light[at]) * scale));
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
  const std::int64_t all = static_cast<std::int64_t>(grid_.light.width()) * grid_.light.height();
  const auto step = static_cast<int>(pixels_done_ * progress_steps / all);
  if (step > told_) {
    told_ = step;
    progress_(static_cast<double>(step) / progress_steps);
  }
}

void Survey::read_part(BlockSource& source, const GridPart& part, CodeCounts& counts, bool tells) {
  const std::int64_t reduction = grid_.reduction;
  const auto stored = [&](int grid, int end) {
    return static_cast<int>(std::min<std::int64_t>(end, grid * reduction));
  };
  const int x = stored(part.x, info_.width_px);
  const int y = stored(part.y, info_.height_px);
  const int x_end = stored(part.x + part.width, info_.width_px);
  const int y_end = stored(part.y + part.height, info_.height_px);
  reduce_region(source, RegionPx{x, y, x_end - x, y_end - y}, grid_.reduction, decoding_, &counts,
                [&](const LightRow& row) {
                  store(row, part);
                  pixels_done_ += part.width;
                  if (tells) {
                    tell();
                  }
                });
}

void Survey::merge(CodeCounts& counts) {
  const std::scoped_lock lock(mutex_);
  for (std::size_t c = 0; c < counts.size(); ++c) {
    for (std::size_t code = 0; code < counts[c].size(); ++code) {
      grid_.histograms[c][code] += counts[c][code];
    }
  }
}

void Survey::work(BlockSource& source, bool tells) {
  try {
    CodeCounts counts;
    for (int c = 0; c < info_.channels; ++c) {
      counts[static_cast<std::size_t>(c)].assign(static_cast<std::size_t>(codes_), 0);
    }
    for (std::size_t part = next_part_++; part < parts_.size(); part = next_part_++) {
      read_part(source, parts_[part], counts, tells);
    }
    merge(counts);
  } catch (...) {
    const std::scoped_lock lock(mutex_);
    failure_ = failure_ ? failure_ : std::current_exception();
    next_part_ = parts_.size();
  }
}

ScanGrid Survey::run() {
  const int threads = thread_count(source_);
  parts_ = plan_survey_parts(source_, info_, grid_.reduction, threads);
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
  return std::move(grid_);
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

ScanGrid survey_blocks(BlockSource& source, const ScanInfo& info, const Decoding& decoding,
                       int codes, std::int64_t most_pixels, const Progress& progress) {
  const int reduction = reduction_for(info.width_px, info.height_px, most_pixels);
  return Survey(source, info, decoding, codes, reduction, progress).run();
}

}  // namespace fogline
