#include <fogline/process/light_and_development.h>

namespace fogline {

namespace {

constexpr double diffusion_aim = 0.58;
constexpr double condenser_aim = 0.45;

constexpr std::array<FactRow<AimSource>, 5> rows{{
    {AimSource::diffusion, "diffusion"},
    {AimSource::condenser, "condenser"},
    {AimSource::scanning, "scanning"},
    {AimSource::card, "card"},
    {AimSource::option, "option"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<AimSource>> fact_rows<AimSource>() {
  return rows;
}

Aim aim_for(const RollCard* card, std::optional<double> wanted) {
  Aim aim;
  if (wanted) {
    aim.contrast_index = *wanted;
    aim.source = AimSource::option;
  } else if (card != nullptr && card->aim_contrast_index) {
    aim.contrast_index = *card->aim_contrast_index;
    aim.source = AimSource::card;
  } else if (card != nullptr && card->print_with == PrintWith::condenser) {
    aim.contrast_index = condenser_aim;
    aim.source = AimSource::condenser;
  } else if (card != nullptr && card->print_with == PrintWith::scan) {
    aim.contrast_index = diffusion_aim;
    aim.source = AimSource::scanning;
  } else {
    aim.contrast_index = diffusion_aim;
    aim.source = AimSource::diffusion;
  }
  const bool likeness_wanted = card != nullptr && card->aim_like && !card->aim_contrast_index;
  if (likeness_wanted && !wanted) {
    aim.unknown_like = card->aim_like;
  }
  return aim;
}

}  // namespace fogline
