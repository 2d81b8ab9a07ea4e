#pragma once

#include <cstddef>
#include <functional>

namespace fogline {

/// Runs `task(0)` ... `task(count - 1)`, independent of each other, on as many threads as the
/// machine has processors, two at most: each holds a tile. What a task throws is thrown again once
/// all have ended.
void run_side_by_side(std::size_t count, const std::function<void(std::size_t)>& task);

}  // namespace fogline
