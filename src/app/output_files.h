#pragma once

#include <string>

namespace fogline {

/// Where the page of a roll goes by default: strip.report.html beside strip.tif.
std::string default_page_path(const std::string& first_scan);

/// Writes a page to `path`. Replaces a file only if fogline wrote it. Throws FileError where
/// something else stands in the way.
void write_page(const std::string& path, const std::string& page);

/// Throws FileError where `path` is taken by anything but a scanner file of fogline's: that may be
/// replaced, nothing else.
void check_replaces_scanner_file(const std::string& path);

/// Writes a page to its default place, and to the current folder where that can't be written.
/// Returns the path it went to. Throws FileError where neither can be.
std::string write_default_page(const std::string& first_scan, const std::string& page);

}  // namespace fogline
