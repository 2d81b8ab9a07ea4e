#include "words/screen_words.h"

#include "words/report_words.h"
#include "words/story.h"

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
        return each.caution->message == caution.message;
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

/// The words of a sentence up to the one that tells it from most others.
std::string_view beginning(std::string_view sentence) {
  constexpr int words = 5;
  std::size_t end = 0;
  for (int i = 0; i < words && end != std::string_view::npos; ++i) {
    end = sentence.find_first_of(" ,.:", end + 1);
  }
  return sentence.substr(0, end);
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
    objections.push_back({Severity::unfit, "", file.message});
  }
  const std::size_t scans = roll.measurement.scans.size();
  std::vector<std::string_view> begun;
  for (const SharedCaution& shared : shared_cautions(roll.measurement)) {
    begun.push_back(beginning(shared.caution->message));
    objections.push_back(
        {shared.caution->severity, files_words(shared, scans), shared.caution->message});
  }
  for (const std::string& sentence : unsure_sentences(roll)) {
    if (std::find(begun.begin(), begun.end(), beginning(sentence)) == begun.end()) {
      objections.push_back({Severity::note, "", sentence});
    }
  }
  return objections;
}

std::string rest_sentence(const std::optional<std::string>& page) {
  return page ? "All of it: " + *page + ", or here with --full."
              : std::string("All of it: with --full.");
}

}  // namespace fogline
