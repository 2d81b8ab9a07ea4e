#include "io/scan_file.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>

namespace fogline {

namespace {

/// How often a long read tells its progress.
constexpr int progress_steps = 50;

/// Most threads a survey takes: what two decode a second, a disk rarely delivers faster.
constexpr int most_threads = 4;

/// Memory all readers together may hold while they decode. With the grid of 14 Mpx in three
/// channels (98 MB) and the libraries (about 40 MB) the reading stays below 256 MB.
constexpr std::size_t readers_budget_bytes = 80 << 20;

/// Parts of the picture a thread takes at a time: enough that threads end together.
constexpr int parts_a_thread = 8;

/// Least stored rows a part, in units of rows decoded together: a unit cut by a part's border is
/// decoded by both neighbours.
constexpr int least_units_a_part = 16;

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
  void plan_parts(int threads);
  void work(BlockSource& source, bool tells);
  void read_part(BlockSource& source, int part, CodeCounts& counts, bool tells);
  void store(const LightRow& row, int first_grid_row);
  void merge(CodeCounts& counts);
  void tell();

  BlockSource& source_;
  const ScanInfo& info_;
  const Decoding& decoding_;
  int codes_;
  const Progress& progress_;
  ScanGrid grid_;
  /// Grid rows at which parts begin, and the end.
  std::vector<int> part_rows_;
  std::atomic<int> next_part_{0};
  std::atomic<int> rows_done_{0};
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

void Survey::plan_parts(int threads) {
  const int grid_height = grid_.light.height();
  int parts = 1;
  if (threads > 1) {
    const std::int64_t least_rows =
        static_cast<std::int64_t>(source_.rows_together()) * least_units_a_part;
    const auto fitting = static_cast<int>(info_.height_px / std::max<std::int64_t>(1, least_rows));
    parts = std::clamp(fitting, threads, threads * parts_a_thread);
    parts = std::min(parts, grid_height);
  }
  for (int part = 0; part <= parts; ++part) {
    part_rows_.push_back(static_cast<int>(static_cast<std::int64_t>(grid_height) * part / parts));
  }
}

void Survey::store(const LightRow& row, int first_grid_row) {
  const int y = first_grid_row + row.grid_y;
  const int reduction = grid_.reduction;
  const int channels = info_.channels;
  std::uint8_t* clip = grid_.clipped.row(y);
  std::size_t at = 0;
  for (int x = 0; x < grid_.light.width(); ++x) {
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
  const int step = static_cast<int>(static_cast<std::int64_t>(rows_done_) * progress_steps /
                                    grid_.light.height());
  if (step > told_) {
    told_ = step;
    progress_(static_cast<double>(step) / progress_steps);
  }
}

void Survey::read_part(BlockSource& source, int part, CodeCounts& counts, bool tells) {
  const int first = part_rows_[static_cast<std::size_t>(part)];
  const int last = part_rows_[static_cast<std::size_t>(part) + 1];
  const int y = first * grid_.reduction;
  const auto y_end = static_cast<int>(
      std::min<std::int64_t>(info_.height_px, static_cast<std::int64_t>(last) * grid_.reduction));
  reduce_region(source, RegionPx{0, y, info_.width_px, y_end - y}, grid_.reduction, decoding_,
                &counts, [&](const LightRow& row) {
                  store(row, first);
                  ++rows_done_;
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
    const int parts = static_cast<int>(part_rows_.size()) - 1;
    CodeCounts counts;
    for (int c = 0; c < info_.channels; ++c) {
      counts[static_cast<std::size_t>(c)].assign(static_cast<std::size_t>(codes_), 0);
    }
    for (int part = next_part_++; part < parts; part = next_part_++) {
      read_part(source, part, counts, tells);
    }
    merge(counts);
  } catch (...) {
    const std::scoped_lock lock(mutex_);
    failure_ = failure_ ? failure_ : std::current_exception();
    next_part_ = static_cast<int>(part_rows_.size());
  }
}

ScanGrid Survey::run() {
  const int threads = thread_count(source_);
  plan_parts(threads);
  std::vector<std::unique_ptr<BlockSource>> forks;
  for (int i = 1; i < threads; ++i) {
    forks.push_back(source_.fork());
  }
  {
    std::vector<std::jthread> helpers;
    helpers.reserve(forks.size());
    for (auto& fork : forks) {
      helpers.emplace_back([this, &fork] { work(*fork, false); });
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

int reduction_for(int width_px, int height_px, std::int64_t max_pixels) {
  const std::int64_t w = width_px;
  const std::int64_t h = height_px;
  int reduction = 1;
  while (((w - 1) / reduction + 1) * ((h - 1) / reduction + 1) >
         std::max<std::int64_t>(1, max_pixels)) {
    ++reduction;
  }
  return reduction;
}

ScanGrid survey_blocks(BlockSource& source, const ScanInfo& info, const Decoding& decoding,
                       int codes, std::int64_t max_pixels, const Progress& progress) {
  const int reduction = reduction_for(info.width_px, info.height_px, max_pixels);
  return Survey(source, info, decoding, codes, reduction, progress).run();
}

}  // namespace fogline
