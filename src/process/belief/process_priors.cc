#include "process/process_priors.h"

#include <algorithm>

namespace fogline {

double ByFilmType::of(std::optional<FilmType> type) const {
  if (type == FilmType::cubic) {
    return cubic;
  }
  return type == FilmType::tabular ? tabular : std::max(cubic, tabular);
}

}  // namespace fogline
