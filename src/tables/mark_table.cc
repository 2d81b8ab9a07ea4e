#include "tables/scan_tables.h"

namespace fogline {

namespace {

SignWeight sign_from(const KnowledgeTable& table, std::string_view key) {
  const KnowledgeTable sign = table.table(key);
  return {sign.number("even", any_weight), sign.number("weight", any_weight)};
}

ScoreWorth worth_from(const KnowledgeTable& table) {
  constexpr NumberRange worths{0.01, 10.0};
  const KnowledgeTable worth = table.table("worth");
  return {worth.number("even", any_weight), worth.number("worth", worths)};
}

MarkSize size_from(const KnowledgeTable& table) {
  return {table.number("least_mm", any_mm), table.number("most_mm", any_mm)};
}

SpotScore spot_from(const KnowledgeTable& table) {
  SpotScore spot;
  spot.most_colour = table.number("most_colour", any_share);
  spot.stands_out = sign_from(table, "stands_out");
  spot.stands_out_in_picture = sign_from(table, "stands_out_in_picture");
  spot.even_edge = sign_from(table, "even_edge");
  spot.colour = sign_from(table, "colour");
  return spot;
}

DustKnowledge dust_from(const KnowledgeTable& table) {
  DustKnowledge dust;
  dust.size = size_from(table);
  dust.least_contrast = table.number("least_contrast", any_density);
  dust.contrast = sign_from(table, "contrast");
  dust.edge = sign_from(table, "edge");
  dust.beyond = sign_from(table, "beyond");
  dust.sigmas = sign_from(table, "sigmas");
  dust.crowd = sign_from(table, "crowd");
  dust.worth = worth_from(table);
  return dust;
}

BellKnowledge bell_from(const KnowledgeTable& table) {
  BellKnowledge bell;
  bell.size = size_from(table);
  bell.least_coarse_mm = table.number("least_coarse_mm", any_mm);
  bell.least_contrast = table.number("least_contrast", any_density);
  bell.stands_out = sign_from(table, "stands_out");
  bell.even_edge = sign_from(table, "even_edge");
  bell.round_weight = table.number("round_weight", any_weight);
  bell.crowd_weight = table.number("crowd_weight", any_weight);
  bell.gone = sign_from(table, "gone");
  bell.colour = sign_from(table, "colour");
  bell.worth = worth_from(table);
  return bell;
}

FibreKnowledge fibre_from(const KnowledgeTable& table) {
  FibreKnowledge fibre;
  fibre.length = size_from(table);
  fibre.most_width_mm = table.number("most_width_mm", any_mm);
  fibre.alone = sign_from(table, "alone");
  fibre.length_mm = sign_from(table, "length_mm");
  fibre.spread = sign_from(table, "spread");
  fibre.uneven = sign_from(table, "uneven");
  fibre.width_mm = sign_from(table, "width_mm");
  fibre.unbranched = sign_from(table, "unbranched");
  fibre.square = sign_from(table, "square");
  fibre.crowd_weight = table.number("crowd_weight", any_weight);
  fibre.worth = worth_from(table);
  return fibre;
}

ScratchKnowledge scratch_from(const KnowledgeTable& table) {
  ScratchKnowledge scratch;
  scratch.least_mm = table.number("least_mm", any_mm);
  scratch.least_coarse_mm = table.number("least_coarse_mm", any_mm);
  scratch.most_width_mm = table.number("most_width_mm", any_mm);
  scratch.strength = sign_from(table, "strength");
  scratch.one_sided = sign_from(table, "one_sided");
  scratch.length_mm = sign_from(table, "length_mm");
  scratch.inside_weight = table.number("inside_weight", any_weight);
  scratch.crossing_weight = table.number("crossing_weight", any_weight);
  scratch.at_border_weight = table.number("at_border_weight", any_weight);
  scratch.beside_weight = table.number("beside_weight", any_weight);
  scratch.worth = worth_from(table);
  return scratch;
}

RingKnowledge ring_from(const KnowledgeTable& table) {
  RingKnowledge ring;
  ring.least_radius_mm = table.number("least_radius_mm", any_mm);
  ring.most_radius_mm = table.number("most_radius_mm", any_mm);
  ring.rim_mm = table.number("rim_mm", any_mm);
  ring.least_rim_density = table.number("least_rim_density", any_density);
  ring.most_rim_density = table.number("most_rim_density", any_density);
  const KnowledgeTable score = table.table("score");
  ring.score.constant = score.number("constant", any_weight);
  ring.score.seen = score.number("seen", any_weight);
  ring.score.spread = score.number("spread", any_weight);
  ring.score.alone = score.number("alone", any_weight);
  ring.score.log_radius = score.number("log_radius", any_weight);
  ring.score.evidence = score.number("evidence", any_weight);
  ring.score.twins = score.number("twins", any_weight);
  return ring;
}

}  // namespace

MarkKnowledge marks_from(const KnowledgeTable& top) {
  MarkKnowledge marks;
  marks.told_from = top.table("told").number("from_confidence", any_share);
  marks.spot = spot_from(top.table("spot"));
  marks.dust = dust_from(top.table("dust"));
  const KnowledgeTable pinhole = top.table("pinhole");
  marks.pinhole = {pinhole.number("most_mm", any_mm), sign_from(pinhole, "gone"),
                   worth_from(pinhole)};
  marks.bell = bell_from(top.table("air_bell"));
  marks.fibre = fibre_from(top.table("fibre"));
  marks.scratch = scratch_from(top.table("scratch"));
  marks.ring = ring_from(top.table("ring"));
  return marks;
}

}  // namespace fogline
