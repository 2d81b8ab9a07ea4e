#include "process/own_process_film.h"

#include <algorithm>

namespace fogline {

std::optional<Unknown> why_own_process(const RollMeasurement& roll, const RollCard* card) {
  if (card != nullptr && card->film_type) {
    return card->film_type == FilmType::chromogenic ? std::optional(Unknown::own_process)
                                                    : std::nullopt;
  }
  const bool masked =
      std::any_of(roll.scans.begin(), roll.scans.end(), [](const ScanMeasurement& scan) {
        return !scan.tint.kind && scan.tint.kind.why().kind == Unknown::mask_of_colour_stock;
      });
  return masked ? std::optional(Unknown::colour_film) : std::nullopt;
}

}  // namespace fogline
