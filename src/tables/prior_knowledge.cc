#include "process/prior_knowledge.h"

#include "tables/calibration_text.h"
#include "tables/development_priors.h"
#include "tables/knowledge_files.h"
#include "tables/roll_population.h"
#include "tables/scan_tables.h"

#include <fogline/tables/read_tables.h>

namespace fogline {

PriorKnowledge prior_knowledge_from(const CalibrationText& text_of) {
  KnowledgeFile baths(text_of, "baths.toml");
  KnowledgeFile development(text_of, "development.toml");
  KnowledgeFile devices(text_of, "devices.toml");
  KnowledgeFile films(text_of, "films.toml");
  KnowledgeFile marks(text_of, "marks.toml");
  KnowledgeFile rolls(text_of, "roll_population.toml");
  KnowledgeFile tints(text_of, "tints.toml");
  PriorKnowledge knowledge;
  knowledge.population = roll_population_from(rolls.top(), devices.top(), films.top());
  knowledge.process = {development_from(development.top()), baths_from(baths.top())};
  knowledge.scan = {devices_from(devices.top()), films_from(films.top(), devices.top()),
                    tints_from(tints.top()), marks_from(marks.top())};
  for (const KnowledgeFile* file :
       {&baths, &development, &devices, &films, &marks, &rolls, &tints}) {
    file->refuse_rest();
  }
  return knowledge;
}

std::shared_ptr<const PriorKnowledge> shipped_prior_knowledge() {
  return std::make_shared<const PriorKnowledge>(prior_knowledge_from(calibration_text));
}

std::shared_ptr<const ScanKnowledge> shipped_scan_knowledge() {
  const auto knowledge = shipped_prior_knowledge();
  return {knowledge, &knowledge->scan};
}

}  // namespace fogline
