#pragma once

namespace fogline {

/// The time that a shutter's mark stands for: marks are rounded, exposures are whole, half or third
/// stops from one second, so "1/60" is 1/64 s and "15" is 16 s (ISO 516, times of shutters; from
/// memory). Marks near none of these (within 0.12 stop) are taken as written. Times above 0.
double true_time_s(double marked_s);

}  // namespace fogline
