#pragma once

#include <fogline/density/doubt.h>
#include <fogline/film/film_format.h>
#include <fogline/roll/roll_measurement.h>
#include <fogline/sensitometry/film_tones.h>

#include <cstddef>
#include <string>
#include <string_view>

namespace fogline {

/// True where something of that kind is said of a scan.
bool has_caution_of(const ScanMeasurement& scan, CautionFamily family);
/// "one", ... "twelve", then figures.
std::string count_word(std::size_t count);
/// First letter made large (ASCII).
std::string capitalised(std::string text);
/// "135 film", "120 film", "sheet film", "film of unknown format".
std::string_view film_phrase(FilmFormat format);
/// What a scan may be trusted for and why, one or two sentences.
std::string fitness_sentence(const ScanMeasurement& scan);
/// "on the rebate", "between the frames", ...
std::string_view place_phrase(BaseFogSource source);
/// "in the perforations", "in the bare window beside the film", ...
std::string_view place_phrase(ZeroSource source);

}  // namespace fogline
