#include "words/refusal_tables.h"

#include <fogline/words/refusal_words.h>

#include <vector>

namespace fogline {

std::span<const FactWords<Refusal>> refusal_words() {
  static const std::vector<FactWords<Refusal>> all = [] {
    std::vector<FactWords<Refusal>> joined;
    for (const auto part :
         {refusals_of_files(), refusals_of_pictures(), refusals_of_cards(),
          refusals_of_references(), refusals_of_scanner_files(), refusals_of_knowledge(),
          refusals_of_calibration(), refusals_of_reports()}) {
      joined.insert(joined.end(), part.begin(), part.end());
    }
    return joined;
  }();
  return all;
}

std::string sentence_of_refusal(const std::string& file, const Fact<Refusal>& why) {
  if (!why.told.empty()) {
    return why.told;
  }
  const FactRow<Refusal>& row = fact_row(why.kind);
  std::vector<std::string_view> name_names{"file"};
  name_names.insert(name_names.end(), row.names.begin(), row.names.end());
  std::vector<std::string> names{file};
  names.insert(names.end(), why.names.begin(), why.names.end());
  return filled(refusal_words()[static_cast<std::size_t>(why.kind)].text, row.numbers, why.numbers,
                name_names, names);
}

std::string sentence_of(const FileError& error) {
  return sentence_of_refusal(error.file(), error.why());
}

}  // namespace fogline
