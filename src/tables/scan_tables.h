#pragma once

#include "roll/scan_knowledge.h"
#include "tables/knowledge_table.h"

namespace fogline {

/// Each from its file of `calibration/`. All throw FileError where a key is missing, unknown, of
/// another type or out of range, or a table names no source.
DeviceKnowledge devices_from(const KnowledgeTable& top);
FilmKnowledge films_from(const KnowledgeTable& top, const KnowledgeTable& devices);
TintKnowledge tints_from(const KnowledgeTable& top);
MarkKnowledge marks_from(const KnowledgeTable& top);

}  // namespace fogline
