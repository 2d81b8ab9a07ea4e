#pragma once

#include <nlohmann/json_fwd.hpp>

namespace fogline {

/// Brings a report of any revision into the form that the tables read (see record_json.cc for what
/// each revision added). What an older report only said in a sentence becomes a fact that is told
/// by this sentence, so that it is written again word for word. Also puts each fact's sentence
/// beside it, for a fact that this program doesn't know.
void bring_up_to_date(nlohmann::ordered_json& report, int revision);

}  // namespace fogline
