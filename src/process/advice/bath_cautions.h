#pragma once

#include <string>

namespace fogline {

/// One sentence of care for whoever handles a bath. Goes along wherever advice names one, so that
/// advice read alone (in JSON) carries it.
std::string bath_caution();

/// What a scan can't show of fixing and washing, and which tests do.
std::string unseen_by_scan();

}  // namespace fogline
