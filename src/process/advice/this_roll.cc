#include "process/advice/this_roll.h"

#include "process/own_process_film.h"
#include "process/paper_grade.h"

#include <fogline/process/light_and_development.h>

#include <algorithm>
#include <optional>
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

  std::vector<Fact<RescueStep>> all() {
    look_for_haze();
    doubt_tint();
    fix_again();
    wash_out_dye();
    clear_stain();
    clean();
    soak_out_rings();
    let_light_fade_dye();
    if (!steps_.empty()) {
      add(RescueStep::handle_with_care);
    } else {
      add(RescueStep::nothing_needed);
    }
    leave_silver_alone();
    return std::move(steps_);
  }

 private:
  void add(RescueStep step) { steps_.push_back(fact_of(step)); }
  [[nodiscard]] bool haze() const { return signs_.fixer_haze >= likely; }
  [[nodiscard]] bool dye() const { return signs_.dye_left >= likely; }

  void look_for_haze() {
    if (signs_.fixer_haze >= possible || (signs_.stained >= likely && !image_stain())) {
      add(RescueStep::look_for_haze);
    }
  }

  void doubt_tint() {
    if (dye() && signs_.tint_may_be_stock) {
      add(RescueStep::doubt_tint);
    }
  }

  void fix_again() {
    if (haze()) {
      add(RescueStep::fix_milky);
    } else if (dye() && !fixing_proven(ground_)) {
      add(RescueStep::fix_for_dye);
    }
  }

  void wash_out_dye() {
    if (!dye()) {
      return;
    }
    add(RescueStep::wash_out_dye);
  }

  [[nodiscard]] bool image_stain() const {
    return signs_.image_stain >= possible || signs_.image_stain > signs_.stained;
  }

  void clear_stain() {
    if (signs_.stained < likely || image_stain()) {
      return;
    }
    add(RescueStep::clear_stain);
  }

  void clean() {
    if (signs_.dirty >= likely) {
      add(RescueStep::blow_off_dust);
    }
    if (signs_.drying_marks >= likely) {
      add(RescueStep::wipe_drying_marks);
    }
  }

  void soak_out_rings() {
    if (signs_.drying_marks >= likely) {
      add(RescueStep::soak_out_rings);
    }
  }

  void let_light_fade_dye() {
    if (dye()) {
      add(RescueStep::fade_dye);
    }
  }

  /// Paper for the roll's density range, where one can be named.
  void tell_paper() {
    const std::optional<Quantity> asked = asked_paper_range(ground_.roll);
    if (!asked) {
      return;
    }
    const double range = asked->value;
    if (ground_.card != nullptr && ground_.card->print_with == PrintWith::condenser) {
      steps_.push_back(fact_of(RescueStep::print_on_by_condenser, {range * condenser_factor}));
    } else {
      steps_.push_back(fact_of(RescueStep::print_on, {range}));
    }
  }

  void leave_silver_alone() {
    if (signs_.not_developed >= likely) {
      add(RescueStep::not_developed);
      return;
    }
    if (signs_.not_exposed >= likely) {
      add(RescueStep::not_exposed);
      return;
    }
    if (signs_.past_mending >= likely) {
      add(RescueStep::retouch);
    }
    if (image_stain()) {
      add(RescueStep::keep_stain_of_silver);
    }
    if (signs_.silver_off >= likely) {
      add(RescueStep::leave_silver);
      tell_paper();
    }
  }

  const AdviceGround& ground_;
  const RollSigns& signs_;
  std::vector<Fact<RescueStep>> steps_;
};

/// Whether no scan tells densities: then nothing is known of the film.
bool nothing_known(const RollMeasurement& roll) {
  return std::all_of(roll.scans.begin(), roll.scans.end(),
                     [](const ScanMeasurement& scan) { return scan.fitness == Fitness::unfit; });
}

}  // namespace

std::vector<Fact<RescueStep>> help_this_roll(const AdviceGround& ground, const RollSigns& signs) {
  if (nothing_known(ground.roll)) {
    return {fact_of(RescueStep::scan_again)};
  }
  if (why_own_process(ground.roll, ground.card)) {
    return {fact_of(RescueStep::nothing_chromogenic)};
  }
  return Steps(ground, signs).all();
}

}  // namespace fogline
