#include <fogline/process/aim.h>

namespace fogline {

namespace {

constexpr double diffusion_aim = 0.58;
constexpr double condenser_aim = 0.45;

}  // namespace

Aim aim_for(const RollCard* card, std::optional<double> wanted) {
  Aim aim;
  if (wanted) {
    aim.contrast_index = *wanted;
    aim.source = "the aim you gave";
  } else if (card != nullptr && card->aim_contrast_index) {
    aim.contrast_index = *card->aim_contrast_index;
    aim.source = "the aim on your roll card";
  } else if (card != nullptr && card->print_with == PrintWith::condenser) {
    aim.contrast_index = condenser_aim;
    aim.source = "the usual aim for condenser light";
  } else if (card != nullptr && card->print_with == PrintWith::scan) {
    aim.contrast_index = diffusion_aim;
    aim.source = "the usual aim for scanning";
  } else {
    aim.contrast_index = diffusion_aim;
    aim.source = "the usual aim for diffusion light";
  }
  const bool likeness_wanted = card != nullptr && card->aim_like && !card->aim_contrast_index;
  if (likeness_wanted && !wanted) {
    aim.source += ", because the contrast of \"" + *card->aim_like + "\" isn't known here";
  }
  return aim;
}

}  // namespace fogline
