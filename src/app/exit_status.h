#pragma once

namespace fogline {

/// Exit statuses of the program.
enum class ExitStatus {
  done = 0,
  file_failed = 1,  ///< a file could not be read or written
  wrong_use = 2,
  unfit_scan = 3  ///< every file was read and written, but some scan tells no density
};

}  // namespace fogline
