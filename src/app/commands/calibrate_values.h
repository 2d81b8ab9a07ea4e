#pragma once

#include <fogline/density/scanner_calibration.h>

#include <string>
#include <vector>

namespace fogline {

/// Meaning of the texts given to `calibrate`. Each throws UsageError for a text that means nothing.

/// "21x0.15": a nominal wedge.
WedgeReference nominal_wedge_from_text(const std::string& text);
/// "0,1,2,4": numbers of layers, each once.
std::vector<int> layers_from_text(const std::string& text);
/// "1/125,1/60,0.5,2": shutter times in seconds.
std::vector<double> times_from_text(const std::string& text);
double layer_density_from_text(const std::string& text);
double doubt_stops_from_text(const std::string& text);
/// "2026-11-26".
std::string date_from_text(const std::string& text);

}  // namespace fogline
