#pragma once

#include "words/number_text.h"
#include "words/schema_words.h"

#include <fogline/base/scan_source.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/film/film_format.h>
#include <fogline/roll/measure_roll.h>

#include <array>
#include <optional>
#include <string_view>
#include <vector>

// The words that options take, and what each means. Parsing, its refusals, help, man pages and
// completion list them from here. An absent meaning: told from the scan.

namespace fogline {

template <typename Meaning>
struct OptionWord {
  std::string_view word;
  Meaning meaning;
};

inline constexpr std::array<OptionWord<DensityUnits>, 2> units_words{
    {{"density", DensityUnits::density}, {"stops", DensityUnits::stops}}};

/// A kind by the word that reports have for it.
template <typename Meaning, typename Kind>
OptionWord<Meaning> by_schema_word(Kind kind) {
  return {schema_word(kind), kind};
}

inline const std::array<OptionWord<std::optional<FilmFormat>>, 4> format_words{
    {{"auto", std::nullopt},
     by_schema_word<std::optional<FilmFormat>>(FilmFormat::f135),
     by_schema_word<std::optional<FilmFormat>>(FilmFormat::f120),
     by_schema_word<std::optional<FilmFormat>>(FilmFormat::sheet)}};

inline const std::array<OptionWord<std::optional<TransferKind>>, 3> transfer_words{
    {{"auto", std::nullopt},
     by_schema_word<std::optional<TransferKind>>(TransferKind::linear),
     by_schema_word<std::optional<TransferKind>>(TransferKind::srgb)}};

inline constexpr std::array<OptionWord<ClearReference>, 4> clear_words{
    {{"auto", ClearReference::automatic},
     {"holes", ClearReference::holes},
     {"gap", ClearReference::gap},
     {"none", ClearReference::none}}};

inline const std::array<OptionWord<ScannerDevice>, 3> device_words{
    {by_schema_word<ScannerDevice>(ScannerDevice::flatbed),
     by_schema_word<ScannerDevice>(ScannerDevice::film_scanner),
     by_schema_word<ScannerDevice>(ScannerDevice::camera)}};

/// Given to --html: no page is written.
inline constexpr std::string_view no_page = "none";

/// The words of such a table, in its order.
template <typename Words>
std::vector<std::string_view> words_of(const Words& table) {
  std::vector<std::string_view> words;
  for (const auto& row : table) {
    words.push_back(row.word);
  }
  return words;
}

/// Endings of the pictures that can be read, without the dot.
inline std::vector<std::string_view> scan_endings() {
  return {"tif", "tiff", "png", "jpg", "jpeg"};
}

}  // namespace fogline
