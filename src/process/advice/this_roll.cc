#include "process/advice/this_roll.h"

#include "process/advice/bath_cautions.h"
#include "process/advice/paper_words.h"

#include <algorithm>
#include <utility>

namespace fogline {
namespace {

/// Whether the card proves that fixing was long enough in a fixer that wasn't spent, so that a left
/// dye needs no fixer again.
bool fixing_proven(const AdviceGround& ground) {
  if (ground.card == nullptr) {
    return false;
  }
  const FixCard& fix = ground.card->fix;
  const BathPriors& priors = ground.priors.baths;
  return fix.time_s && fix.clearing_time_s && fix.fresh_clearing_time_s &&
         *fix.clearing_time_s < priors.clearing_when_spent * *fix.fresh_clearing_time_s &&
         *fix.time_s >= priors.fix_over_clearing.tabular * *fix.clearing_time_s;
}

/// The list of things to do, each kept once and in the order it is added.
class Steps {
 public:
  Steps(const AdviceGround& ground, const RollSigns& signs) : ground_(ground), signs_(signs) {}

  std::vector<std::string> all() {
    look_for_haze();
    doubt_tint();
    fix_again();
    wash_out_dye();
    clear_stain();
    clean();
    soak_out_rings();
    let_light_fade_dye();
    if (!steps_.empty()) {
      steps_.push_back(bath_caution());
    } else {
      steps_.emplace_back("Nothing needs doing to this film.");
    }
    leave_silver_alone();
    return std::move(steps_);
  }

 private:
  [[nodiscard]] bool haze() const { return signs_.fixer_haze >= likely; }
  [[nodiscard]] bool dye() const { return signs_.dye_left >= likely; }

  void look_for_haze() {
    if (signs_.fixer_haze >= possible || (signs_.stained >= likely && !image_stain())) {
      steps_.emplace_back(
          "Look first: hold the clear film over black and let light fall on it. Milky or creamy "
          "patches are silver salt that isn't fixed out; an even, see-through tint is not.");
    }
  }

  void doubt_tint() {
    if (dye() && signs_.tint_may_be_stock) {
      steps_.emplace_back(
          "The tint may be this film's own: compare earlier rolls of it, and if the next wash "
          "doesn't lighten it, leave it be.");
    }
  }

  void fix_again() {
    if (haze()) {
      steps_.emplace_back(
          "If it is milky: 3 to 5 minutes in fresh fixer at about 20 °C, moved all the time (plain "
          "thiosulfate 10 minutes), then the full wash. Room light does no harm now.");
    } else if (dye() && !fixing_proven(ground_)) {
      steps_.emplace_back(
          "3 minutes in fresh fixer at about 20 °C, then the full wash: left dye harms nothing by "
          "itself, but it also points to short or tired fixing.");
    }
  }

  void wash_out_dye() {
    if (!dye()) {
      return;
    }
    steps_.emplace_back(
        "For the dye: three more fills of water at 20 to 24 °C, standing 5 minutes each. If colour "
        "is left, 2 minutes in sodium sulfite, 20 g to the litre, then 5 minutes of wash.");
  }

  [[nodiscard]] bool image_stain() const {
    return signs_.image_stain >= possible || signs_.image_stain > signs_.stained;
  }

  void clear_stain() {
    if (signs_.stained < likely || image_stain()) {
      return;
    }
    steps_.emplace_back(
        "For an even yellow stain: rinse well in three fills of water, then 2 minutes in citric "
        "acid, 20 g to the litre, in a vessel of its own, then wash. Acid never goes into fixer or "
        "sulfite, nor film from sulfite into acid unrinsed: it gives off sulfur dioxide.");
  }

  void clean() {
    if (signs_.dirty >= likely) {
      steps_.emplace_back(
          "Dust: blow it off the dry film with a rubber bulb; what sticks comes off in a wash. "
          "Never wipe wet emulsion.");
    }
    if (signs_.drying_marks >= likely) {
      steps_.emplace_back(
          "Drying marks: on the dry film, breathe on the shiny side only and wipe it with a "
          "lint-free cloth. Never wipe wet emulsion.");
    }
  }

  void soak_out_rings() {
    if (signs_.drying_marks >= likely) {
      steps_.emplace_back(
          "Rings that stay are in the emulsion: soak the film once for 20 to 30 minutes in water "
          "at "
          "20 °C, add wetting agent at the end, and dry it evenly without hot air. Often that "
          "improves them, not always.");
    }
  }

  void let_light_fade_dye() {
    if (dye()) {
      steps_.emplace_back(
          "Last of all, and only once a residual-silver test has shown that fixing is complete: "
          "one to three days of window light fade what dye is left.");
    }
  }

  void leave_silver_alone() {
    if (signs_.not_developed >= likely) {
      steps_.emplace_back("No picture can be brought back, and no bath helps.");
      return;
    }
    if (signs_.not_exposed >= likely) {
      steps_.emplace_back("There is no picture on it to bring back.");
      return;
    }
    if (signs_.past_mending >= likely) {
      steps_.emplace_back(
          "Retouch the print or the scan where scratches, air bells or uneven places show: they "
          "are "
          "in the film, and no bath mends them.");
    }
    if (image_stain()) {
      steps_.emplace_back(
          "The stain that grows with silver belongs to staining developers: leave it, and try "
          "no bath against it.");
    }
    if (signs_.silver_off >= likely) {
      steps_.emplace_back(
          "Too much or too little silver: leave the film as it is and adjust the print or scan.");
      const auto print_with = ground_.card != nullptr ? ground_.card->print_with : std::nullopt;
      if (const auto hint = printing_hint(ground_.roll, print_with)) {
        steps_.push_back(*hint);
      }
    }
  }

  const AdviceGround& ground_;
  const RollSigns& signs_;
  std::vector<std::string> steps_;
};

/// Whether no scan tells densities: then nothing is known of the film.
bool nothing_known(const RollMeasurement& roll) {
  return std::all_of(roll.scans.begin(), roll.scans.end(),
                     [](const ScanMeasurement& scan) { return scan.fitness == Fitness::unfit; });
}

}  // namespace

std::vector<std::string> help_this_roll(const AdviceGround& ground, const RollSigns& signs) {
  if (nothing_known(ground.roll)) {
    return {
        "Nothing can be said of this film before it is scanned again; do nothing to it on the "
        "word of this scan."};
  }
  if (ground.card != nullptr && ground.card->film_type == FilmType::chromogenic) {
    return {
        "Nothing needs doing to this film: the colour of its base is its own, and its picture "
        "is dye."};
  }
  return Steps(ground, signs).all();
}

}  // namespace fogline
