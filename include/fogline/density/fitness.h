#pragma once

namespace fogline {

/// What may be claimed from a scan, best first.
/// measured: calibrated. comparable: tone curve known, 16 bits, bare light path seen. indicative:
/// tone curve assumed, or 8 bits, or the bare light path partly clipped. relative: no bare light
/// path in sight, densities above base only. marks_only: no densities. unfit: nothing.
enum class Fitness { measured, comparable, indicative, relative, marks_only, unfit };

/// What density 0 means: the bare light path, or the film's own clear base.
enum class DensitiesAbove { light_path, base };

/// Where density 0 (the bare light path) was read.
/// `scanner_file`: not in this scan, but in that of its calibration.
enum class ZeroSource { perforations, clear_gate, reference_scan, scanner_file, none };

}  // namespace fogline
