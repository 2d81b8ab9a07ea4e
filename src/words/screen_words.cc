#include "words/screen_words.h"

#include "words/caution_words.h"
#include "words/report_words.h"
#include "words/story.h"

#include <fogline/words/refusal_words.h>

#include <algorithm>

namespace fogline {
namespace {

/// A caution and the scans to which it applies.
struct SharedCaution {
  const Caution* caution = nullptr;
  std::vector<std::string> files;
};

std::vector<SharedCaution> shared_cautions(const RollMeasurement& measurement) {
  std::vector<SharedCaution> shared;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const Caution& caution : scan.cautions) {
      auto known = std::find_if(shared.begin(), shared.end(), [&](const SharedCaution& each) {
        return each.caution->fact == caution.fact && each.caution->why == caution.why;
      });
      if (known == shared.end()) {
        known = shared.insert(shared.end(), {&caution, {}});
      }
      known->files.push_back(short_name(scan.info.file));
    }
  }
  std::stable_sort(shared.begin(), shared.end(),
                   [](const SharedCaution& a, const SharedCaution& b) {
                     return a.caution->severity > b.caution->severity;
                   });
  return shared;
}

/// Which scans a caution is for, where not for all; more than two are counted.
std::string files_words(const SharedCaution& shared, std::size_t scans) {
  constexpr std::size_t most_named = 2;
  const std::vector<std::string>& files = shared.files;
  if (files.size() == scans) {
    return "";
  }
  if (files.size() > most_named) {
    return std::to_string(files.size()) + " of " + std::to_string(scans) + " scans: ";
  }
  return files.front() + (files.size() == most_named ? " and " + files.back() : "") + ": ";
}

/// Whether a caution tells already for what reason a value is missing.
bool tells(CautionKind caution, Unknown why) {
  switch (why) {
    case Unknown::nothing_opaque:
      return caution == CautionKind::glare_of_calibration || caution == CautionKind::glare_unknown;
    case Unknown::no_zero_for_base:
    case Unknown::lamp_colour_hidden:
      return caution == CautionKind::bare_light_hidden;
    case Unknown::grey_scan:
      return caution == CautionKind::grey_scan;
    default:
      return false;
  }
}

}  // namespace

std::string_view numbers_title() {
  return "The roll in numbers";
}

std::string_view objections_title() {
  return "How far to trust them";
}

std::vector<Objection> objections_of(const JudgedRoll& roll) {
  std::vector<Objection> objections;
  for (const UnreadFile& file : roll.measurement.unread) {
    objections.push_back({Severity::unfit, "", sentence_of_refusal(file.file, file.why)});
  }
  const std::size_t scans = roll.measurement.scans.size();
  const std::vector<SharedCaution> cautions = shared_cautions(roll.measurement);
  for (const SharedCaution& shared : cautions) {
    objections.push_back(
        {shared.caution->severity, files_words(shared, scans), caution_sentence(*shared.caution)});
  }
  for (const Unsure& unsure : unsure_of(roll)) {
    const bool is_told =
        unsure.why && std::any_of(cautions.begin(), cautions.end(), [&](const SharedCaution& each) {
          return tells(each.caution->fact.kind, *unsure.why);
        });
    if (!is_told) {
      objections.push_back({Severity::note, "", unsure.sentence});
    }
  }
  return objections;
}

std::string rest_sentence(const std::optional<std::string>& page) {
  return page ? "All of it: " + *page + ", or here with --full."
              : std::string("All of it: with --full.");
}

}  // namespace fogline
