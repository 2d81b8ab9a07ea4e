#include "process/advice/bath_cautions.h"

namespace fogline {

std::string bath_caution() {
  return "With any bath: gloves, eyes guarded, fresh air; no vessel goes back to food; used fixer "
         "carries silver and goes to a licensed collection, not down the drain; the maker's safety "
         "sheet and local rules come first.";
}

std::string unseen_by_scan() {
  // ISO 18917: iodine-amylose, methylene blue, silver sulfide; within 14 days of processing.
  return "A scan shows neither thiosulfate left in the film nor silver complexes that didn't "
         "dissolve: a residual-thiosulfate test within two weeks (ISO 18917) and a residual-silver "
         "drop test on clear film do.";
}

}  // namespace fogline
