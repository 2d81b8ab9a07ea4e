#include "simulator/foreign_json.h"

namespace filmsim {
namespace {

using Json = nlohmann::ordered_json;

Json lamp_json(const LampFallOff& lamp) {
  return {{"ratio", lamp.ratio},
          {"middle", {lamp.middle.x, lamp.middle.y}},
          {"power", lamp.power},
          {"aspect", lamp.aspect},
          {"vignetting", lamp.vignetting},
          {"hot_spots", lamp.hot_spots.size()},
          {"colour_drift", lamp.colour_drift}};
}

Json finish_json(const FinishedPicture& picture) {
  return {{"balance", picture.balance},
          {"saturation", picture.saturation},
          {"black_level", picture.black_level},
          {"white_level", picture.white_level},
          {"s_curve", picture.s_curve},
          {"roll_off", picture.roll_off},
          {"toe_lift", picture.toe_lift},
          {"local_contrast", picture.local_contrast},
          {"local_radius_mm", picture.local_radius_mm},
          {"noise_reduction", picture.noise_reduction},
          {"sharpening", picture.sharpening},
          {"sharpening_radius_px", picture.sharpening_radius_px}};
}

}  // namespace

Json foreign_json(const ForeignLaws& laws) {
  return {
      {"callier",
       {{"law", callier_law_name(laws.callier.law)},
        {"excess", laws.callier.excess},
        {"knee", laws.callier.knee},
        {"fog_scatters", laws.callier.fog_scatters}}},
      {"lamp", lamp_json(laws.lamp)},
      {"mask", {{"loss", laws.mask.loss}, {"reach_mm", laws.mask.reach_mm}}},
      {"halo",
       {{"share", laws.halo.share}, {"radius_mm", laws.halo.radius_mm}, {"tail", laws.halo.tail}}},
      {"surround_light", laws.surround_light},
      {"finish", laws.finish ? finish_json(*laws.finish) : Json()}};
}

}  // namespace filmsim
