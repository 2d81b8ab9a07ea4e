#include "tables/scan_tables.h"

#include <cmath>

namespace fogline {

namespace {

UsualNet net_from(const KnowledgeTable& table, const std::string& name) {
  return {table.number(name + "_density", any_density),
          table.number(name + "_sd_share", any_share)};
}

UsualDensity density_from(const KnowledgeTable& table, const std::string& name) {
  return {table.number(name + "_density", any_density), table.number(name + "_sd", any_density)};
}

}  // namespace

FilmKnowledge films_from(const KnowledgeTable& top, const KnowledgeTable& devices) {
  FilmKnowledge films;
  // An uncalibrated scanner reads silver denser, by a factor that is known so well.
  const KnowledgeTable print = top.table("edge_print");
  const KnowledgeTable angle = devices.table("expected_angle");
  films.edge_print = {
      print.number("density", any_density) * angle.number("scanner_factor", any_callier),
      std::hypot(print.number("sd_share", any_share), angle.number("scanner_sd_share", any_share))};
  const KnowledgeTable scanned = top.table("as_scanned");
  films.highlight = net_from(scanned, "highlight");
  films.leader = net_from(scanned, "leader");
  films.opaque = net_from(scanned, "opaque");
  const KnowledgeTable base = top.table("base_fog");
  films.grey_base = density_from(base, "grey_base");
  films.clear_base = density_from(base, "clear_base");
  films.clear_base_share_135 = base.number("clear_base_share_135", any_share);
  films.least_support_density = top.table("support").number("least_density", any_density);
  return films;
}

}  // namespace fogline
