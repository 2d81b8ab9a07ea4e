#include "tables/scan_tables.h"

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

FilmKnowledge films_from(const KnowledgeTable& top) {
  const KnowledgeTable scanned = top.table("as_scanned");
  FilmKnowledge films;
  films.highlight = net_from(scanned, "highlight");
  films.edge_print = net_from(scanned, "edge_print");
  films.leader = net_from(scanned, "leader");
  films.opaque = net_from(scanned, "opaque");
  films.grey_base = density_from(scanned, "grey_base");
  films.clear_base_135 = density_from(scanned, "clear_base_135");
  films.clear_base_share_135 = scanned.number("clear_base_share_135", any_share);
  films.clear_base = density_from(scanned, "clear_base");
  return films;
}

}  // namespace fogline
