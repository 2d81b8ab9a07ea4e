#include "pixels/survey_parts.h"

#include "pixels/light_sums.h"

#include <algorithm>
#include <cstdint>

namespace fogline {

namespace {

/// Parts of the picture a thread takes at a time: enough that threads end together.
constexpr int parts_a_thread = 8;

/// Least units (strips or rows of tiles) a part, so that few are cut by its borders.
constexpr int least_units_a_part = 16;

/// Grid positions that cut `length` stored pixels into `parts`, each on the border of a unit, or on
/// the grid's last border before it; without empty parts.
std::vector<int> cuts(int length, int unit, int reduction, int parts) {
  const std::int64_t units = (static_cast<std::int64_t>(length) - 1) / unit + 1;
  std::vector<int> result{0};
  for (int part = 1; part < parts; ++part) {
    const std::int64_t border = units * part / parts * unit;
    const auto cut = static_cast<int>(border / reduction);
    if (cut > result.back()) {
      result.push_back(cut);
    }
  }
  const int end = (length - 1) / reduction + 1;
  if (result.back() == end) {
    result.pop_back();
  }
  result.push_back(end);
  return result;
}

int parts_down(const BlockSource& source, const ScanInfo& info, int threads) {
  if (threads == 1) {
    return 1;
  }
  const std::int64_t least_rows =
      static_cast<std::int64_t>(source.rows_together()) * least_units_a_part;
  const auto fitting = static_cast<int>(info.height_px / std::max<std::int64_t>(1, least_rows));
  return std::clamp(fitting, threads, threads * parts_a_thread);
}

int parts_across(const BlockSource& source, const ScanInfo& info, int reduction) {
  const std::int64_t grid_rows = source.rows_together() / reduction + 3;
  const std::int64_t bytes =
      grid_rows * ((info.width_px - 1) / reduction + 1) * info.channels * light_sum_bytes_a_sample;
  const std::int64_t wanted = (bytes - 1) / light_sums_budget_bytes + 1;
  const std::int64_t units = (info.width_px - 1) / source.columns_together() + 1;
  return static_cast<int>(std::min(wanted, units));
}

}  // namespace

std::vector<GridPart> plan_survey_parts(const BlockSource& source, const ScanInfo& info,
                                        int reduction, int threads) {
  const auto rows =
      cuts(info.height_px, source.rows_together(), reduction, parts_down(source, info, threads));
  const auto columns = cuts(info.width_px, source.columns_together(), reduction,
                            parts_across(source, info, reduction));
  std::vector<GridPart> parts;
  for (std::size_t j = 0; j + 1 < rows.size(); ++j) {
    for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
      parts.push_back(
          GridPart{columns[i], rows[j], columns[i + 1] - columns[i], rows[j + 1] - rows[j]});
    }
  }
  return parts;
}

}  // namespace fogline
