// One row a scan, for looking at the numbers with other programs.
#pragma once

#include "scan_case.h"

#include <string>
#include <vector>

namespace bench {

/// Throws std::runtime_error where the file can't be written.
void write_csv(const std::string& path, const std::vector<ScanCase>& cases);

}  // namespace bench
