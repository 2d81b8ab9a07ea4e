#include "pixels/light_sums.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Stored rows worth gathering before grid rows are handed on, where the file's own unit is less.
constexpr int least_rows_a_piece = 32;

/// One row of samples of a block, `x` pixels right of the region's edge, and where it goes.
template <typename Sample, int Channels>
struct RowTask {
  const Sample* samples;
  std::ptrdiff_t pixel_stride;
  int x;
  int width;
  int reduction;
  int cell_stride;
};

// The inner loops of every reading. Several sweeps over a row that lies in the cache take less time
// than one that does all: each stays simple enough for the compiler.

/// Adds `value(channel, code)` over each cell of the row to `sums`.
template <typename Sum, typename Sample, int Channels, typename Value>
void add_cells(const RowTask<Sample, Channels>& task, Sum* sums, const Value& value) {
  const Sample* sample = task.samples;
  int cell = task.x / task.reduction;
  int next_cell_x = (cell + 1) * task.reduction;
  sums += static_cast<std::ptrdiff_t>(cell) * task.cell_stride;
  const int end = task.x + task.width;
  for (int x = task.x; x < end; next_cell_x += task.reduction, sums += task.cell_stride) {
    const int pixels = std::min(end, next_cell_x) - x;
    Sum sum[Channels] = {};
    for (int i = 0; i < pixels; ++i, sample += task.pixel_stride) {
      for (int c = 0; c < Channels; ++c) {
        sum[c] += value(c, sample[c]);
      }
    }
    for (int c = 0; c < Channels; ++c) {
      sums[c] += sum[c];
    }
    x += pixels;
  }
}

template <typename Sample, int Channels>
void add_light(const RowTask<Sample, Channels>& task, const LightTables& tables,
               std::size_t first_channel, std::uint64_t* light) {
  const std::uint32_t* table[Channels];
  for (int c = 0; c < Channels; ++c) {
    table[c] = tables.of_channel[first_channel + static_cast<std::size_t>(c)]->data();
  }
  add_cells(task, light,
            [&](int c, Sample code) { return static_cast<std::uint64_t>(table[c][code]); });
}

/// The highest code of a row.
template <typename Sample, int Channels>
Sample highest_code(const RowTask<Sample, Channels>& task) {
  Sample highest = 0;
  const Sample* sample = task.samples;
  if (task.pixel_stride == Channels) {
    // Samples that touch are compared many at a time.
    const std::ptrdiff_t count = static_cast<std::ptrdiff_t>(task.width) * Channels;
    for (std::ptrdiff_t i = 0; i < count; ++i) {
      highest = std::max(highest, sample[i]);
    }
    return highest;
  }
  for (int x = 0; x < task.width; ++x, sample += task.pixel_stride) {
    for (int c = 0; c < Channels; ++c) {
      highest = std::max(highest, sample[c]);
    }
  }
  return highest;
}

/// Counts the clipped pixels of each cell; few rows hold any.
template <typename Sample, int Channels>
void count_clipped(const RowTask<Sample, Channels>& task, std::uint32_t top_code,
                   std::uint32_t* clipped) {
  if (highest_code(task) >= top_code) {
    add_cells(task, clipped, [&](int, Sample code) { return code >= top_code ? 1U : 0U; });
  }
}

int rows_a_piece(const BlockSource& source, const RegionPx& region, int reduction,
                 const Decoding& decoding) {
  const std::int64_t grid_width = (region.width + reduction - 1) / reduction;
  const std::int64_t row_bytes = grid_width * decoding.channels *
                                 static_cast<std::int64_t>(decoding.readings.size()) *
                                 light_sum_bytes_a_sample;
  const std::int64_t grid_rows = std::max<std::int64_t>(1, light_sums_budget_bytes / row_bytes - 2);
  const std::int64_t most = std::min<std::int64_t>(grid_rows * reduction, region.height);
  const int unit = source.rows_together();
  const int least = std::max(least_rows_a_piece, reduction);
  const std::int64_t wanted = (static_cast<std::int64_t>(least) + unit - 1) / unit * unit;
  return static_cast<int>(std::max<std::int64_t>(1, std::min(wanted, most)));
}

}  // namespace

LightSums::LightSums(const RegionPx& region, int reduction, const Decoding& decoding)
    : region_(region),
      reduction_(reduction),
      decoding_(decoding),
      grid_width_(
          static_cast<int>((static_cast<std::int64_t>(region.width) + reduction - 1) / reduction)),
      light_(decoding.readings.size()) {}

std::size_t LightSums::row_offset(int grid_y) const {
  return static_cast<std::size_t>(grid_y - first_row_) * static_cast<std::size_t>(grid_width_) *
         static_cast<std::size_t>(decoding_.channels);
}

void LightSums::reserve_rows(int y_end) {
  const int last_row = (y_end - region_.y - 1) / reduction_;
  rows_ = std::max(rows_, last_row - first_row_ + 1);
  const std::size_t cells = std::max(clipped_.size(), row_offset(first_row_ + rows_));
  clipped_.resize(cells);
  for (std::vector<std::uint64_t>& sums : light_) {
    sums.resize(cells);
  }
}

template <typename Sample, int Channels>
void LightSums::add_samples(const Block& block) {
  RowTask<Sample, Channels> task{};
  task.samples = static_cast<const Sample*>(block.samples);
  task.pixel_stride = block.pixel_stride;
  task.x = block.area.x - region_.x;
  task.width = block.area.width;
  task.reduction = reduction_;
  task.cell_stride = decoding_.channels;
  const auto first_channel = static_cast<std::size_t>(block.first_channel);
  for (int y = 0; y < block.area.height; ++y, task.samples += block.row_stride) {
    const std::size_t offset =
        row_offset((block.area.y + y - region_.y) / reduction_) + first_channel;
    for (std::size_t i = 0; i < light_.size(); ++i) {
      add_light(task, decoding_.readings[i].tables, first_channel, light_[i].data() + offset);
    }
    count_clipped(task, decoding_.top_code, clipped_.data() + offset);
  }
}

void LightSums::add_float(const Block& block) {
  const auto* row = static_cast<const float*>(block.samples);
  const auto channels = static_cast<std::size_t>(decoding_.channels);
  for (int y = 0; y < block.area.height; ++y, row += block.row_stride) {
    const std::size_t offset = row_offset((block.area.y + y - region_.y) / reduction_);
    const float* pixel = row;
    for (int x = 0; x < block.area.width; ++x, pixel += block.pixel_stride) {
      const auto cell = static_cast<std::size_t>((block.area.x + x - region_.x) / reduction_);
      for (int c = 0; c < block.channels; ++c) {
        // Not-a-number counts as no light.
        const float code = pixel[c] > 0.0F ? std::min(pixel[c], 1.0F) : 0.0F;
        const int channel = block.first_channel + c;
        const std::size_t at = offset + cell * channels + static_cast<std::size_t>(channel);
        for (std::size_t i = 0; i < light_.size(); ++i) {
          const double light =
              decoding_.readings[i].curve.light(static_cast<double>(code), channel);
          light_[i][at] += static_cast<std::uint64_t>(std::llround(light * full_light));
        }
        clipped_[at] += code >= 1.0F ? 1U : 0U;
      }
    }
  }
}

void LightSums::add(const Block& block) {
  const bool one = block.channels == 1;
  switch (block.type) {
    case SampleType::u8:
      one ? add_samples<std::uint8_t, 1>(block) : add_samples<std::uint8_t, 3>(block);
      break;
    case SampleType::u16:
      one ? add_samples<std::uint16_t, 1>(block) : add_samples<std::uint16_t, 3>(block);
      break;
    case SampleType::f32:
      add_float(block);
      break;
  }
}

void LightSums::finish_rows(int y_end, const LightRowSink& sink) {
  const int bottom = region_.y + region_.height;
  int done = 0;
  for (; done < rows_; ++done) {
    const int grid_y = first_row_ + done;
    const std::int64_t row_begin = region_.y + static_cast<std::int64_t>(grid_y) * reduction_;
    const std::int64_t row_end = std::min<std::int64_t>(bottom, row_begin + reduction_);
    if (row_end > y_end) {
      break;
    }
    const std::size_t offset = row_offset(grid_y);
    LightRow row{grid_y, static_cast<int>(row_end - row_begin), {}, clipped_.data() + offset};
    for (const std::vector<std::uint64_t>& sums : light_) {
      row.light.push_back(sums.data() + offset);
    }
    sink(row);
  }
  const std::size_t used = row_offset(first_row_ + done);
  const std::size_t kept = row_offset(first_row_ + rows_) - used;
  const auto shift = [&](auto& cells) {
    const auto from = cells.begin() + static_cast<std::ptrdiff_t>(used);
    const auto kept_end = std::copy(from, from + static_cast<std::ptrdiff_t>(kept), cells.begin());
    std::fill(kept_end, cells.end(), 0);
  };
  if (used > 0) {
    std::for_each(light_.begin(), light_.end(), shift);
    shift(clipped_);
  }
  first_row_ += done;
  rows_ -= done;
}

void reduce_region(BlockSource& source, const RegionPx& region, int reduction,
                   const Decoding& decoding, const LightRowSink& sink, const BlockSink& codes) {
  LightSums sums(region, reduction, decoding);
  const int piece = rows_a_piece(source, region, reduction, decoding);
  const int unit = source.rows_together();
  const int bottom = region.y + region.height;
  int y = region.y;
  while (y < bottom) {
    int next = std::min<int>(bottom, y + piece);
    // End pieces where the file's own units end, so that none is decoded twice.
    if (next < bottom && piece >= unit && next % unit != 0) {
      next = std::max(y + 1, next / unit * unit);
    }
    sums.reserve_rows(next);
    source.read_blocks(RegionPx{region.x, y, region.width, next - y}, [&](const Block& block) {
      sums.add(block);
      if (codes) {
        codes(block);
      }
    });
    sums.finish_rows(next, sink);
    y = next;
  }
}

}  // namespace fogline
