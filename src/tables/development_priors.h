#pragma once

#include "process/process_priors.h"
#include "tables/knowledge_table.h"

namespace fogline {

/// Priors of development and baths from `development.toml` and `baths.toml`. Throw FileError as
/// `devices_from`.
DevelopmentPriors development_from(const KnowledgeTable& top);
BathPriors baths_from(const KnowledgeTable& top);

}  // namespace fogline
