#include "process/own_process_film.h"

#include <algorithm>

namespace fogline {

std::optional<Unknown> why_own_process(const RollMeasurement& roll, const RollCard* card) {
  if (card != nullptr && card->film_type) {
    return card->film_type == FilmType::chromogenic ? std::optional(Unknown::own_process)
                                                    : std::nullopt;
  }
  const bool colour =
      std::any_of(roll.scans.begin(), roll.scans.end(), [](const ScanMeasurement& scan) {
        const Unknown why = scan.tint.kind ? Unknown::not_told : scan.tint.kind.why().kind;
        return why == Unknown::mask_of_colour_stock || why == Unknown::colours_in_pictures;
      });
  return colour ? std::optional(Unknown::colour_film) : std::nullopt;
}

}  // namespace fogline
