#include "tables/scan_tables.h"

#include <cmath>

namespace fogline {

namespace {

std::vector<Weighted> weighted_from(const KnowledgeTable& table, std::string_view key,
                                    NumberRange range = any_share) {
  constexpr std::size_t value_and_share = 2;
  std::vector<Weighted> values;
  for (const std::vector<double>& row : table.lists(key, range, value_and_share)) {
    values.push_back({row[0], row[1]});
  }
  return values;
}

VeilPopulation veil_from(const KnowledgeTable& table) {
  VeilPopulation veil;
  veil.least_density = table.number("least_density", any_density);
  veil.most_density = table.number("most_density", any_density);
  veil.patchiness = weighted_from(table, "patchiness");
  return veil;
}

std::vector<TintSignature> signatures_from(const KnowledgeTable& table) {
  constexpr std::size_t channels_and_share = most_channels + 1;
  std::vector<TintSignature> signatures;
  for (const auto& row : table.lists("signatures", any_share, channels_and_share)) {
    signatures.push_back({{row[0], row[1], row[2]}, row[3]});
  }
  return signatures;
}

VeilPopulation dye_from(const KnowledgeTable& table) {
  VeilPopulation dye = veil_from(table);
  const std::vector<double> blues = table.numbers("blue", any_share);
  const double pink_share = table.number("pink_share", any_share);
  const auto add = [&](const std::vector<double>& others, bool pink) {
    const double each =
        (pink ? pink_share : 1.0 - pink_share) / static_cast<double>(others.size() * blues.size());
    for (const double other : others) {
      for (const double blue : blues) {
        dye.signatures.push_back(
            {pink ? PerChannel<double>{other, 1.0, blue} : PerChannel<double>{1.0, other, blue},
             each});
      }
    }
  };
  add(table.numbers("pink_red", any_share), true);
  add(table.numbers("bluish_green", any_share), false);
  return dye;
}

VeilPopulation haze_from(const KnowledgeTable& table) {
  constexpr NumberRange wavelengths_nm{380.0, 780.0};
  constexpr NumberRange powers{0.0, 4.0};
  VeilPopulation haze = veil_from(table);
  const std::vector<double> band_nm = table.numbers("band_nm", wavelengths_nm, most_channels);
  for (const Weighted& power : weighted_from(table, "powers", powers)) {
    TintSignature signature;
    signature.weight = power.weight;
    for (std::size_t c = 0; c < band_nm.size(); ++c) {
      signature.share[c] = std::pow(band_nm[2] / band_nm[c], power.value);
    }
    haze.signatures.push_back(signature);
  }
  return haze;
}

VeilShares shares_from(const KnowledgeTable& table) {
  VeilShares shares;
  shares.none = table.number("none", any_share);
  shares.dye = table.number("dye", any_share);
  shares.haze = table.number("haze", any_share);
  shares.yellow = table.number("yellow", any_share);
  shares.dye_and_haze = table.number("dye_and_haze", any_share);
  shares.dye_and_yellow = table.number("dye_and_yellow", any_share);
  shares.mask = table.number("mask", any_share);
  return shares;
}

StainPopulation stain_from(const KnowledgeTable& table) {
  StainPopulation stain;
  stain.share = table.number("share", any_share);
  stain.least = table.number("least_density", any_density);
  stain.most = table.number("most_density", any_density);
  stain.green_shares = weighted_from(table, "green_shares");
  return stain;
}

}  // namespace

TintKnowledge tints_from(const KnowledgeTable& top) {
  TintKnowledge tints;
  tints.shares = shares_from(top.table("shares"));
  tints.dye = dye_from(top.table("dye"));
  tints.haze = haze_from(top.table("haze"));
  const KnowledgeTable yellow = top.table("yellow");
  tints.yellow = veil_from(yellow);
  tints.yellow.signatures = signatures_from(yellow);
  const KnowledgeTable mask = top.table("mask");
  tints.mask = veil_from(mask);
  tints.mask.signatures = signatures_from(mask);
  tints.colour_film_hues_density =
      top.table("colour_film").number("least_hues_density", any_density);
  tints.stain = stain_from(top.table("stain"));
  const KnowledgeTable clean = top.table("clean");
  tints.own_sd_density = clean.number("own_sd_density", any_density);
  tints.told_base_sd_density = clean.number("told_base_sd_density", any_density);
  tints.clean_textures = weighted_from(clean, "textures");
  tints.natural_slope_sd = clean.number("slope_sd", any_share);
  tints.angle_slope_part = clean.number("angle_slope_part", any_share);
  const KnowledgeTable limit = top.table("limit");
  for (const auto& row : limit.lists("signatures", any_share, most_channels)) {
    tints.limit_signatures.push_back({row[0], row[1], row[2]});
  }
  tints.useful_limit_density = limit.number("useful_density", any_density);
  tints.finished_picture_trust = top.table("finished_picture").number("trust", any_share);
  return tints;
}

}  // namespace fogline
