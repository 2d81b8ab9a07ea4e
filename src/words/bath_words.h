#pragma once

#include <fogline/process/advice.h>

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// One sentence of care for whoever handles a bath. Goes along wherever advice names one, so that
/// advice read alone (in JSON) carries it.
inline constexpr std::string_view bath_caution =
    "With any bath: gloves, eyes guarded, fresh air; no vessel goes back to food; used fixer "
    "carries silver and goes to a licensed collection, not down the drain; the maker's safety "
    "sheet and local rules come first.";

/// Why a bath is advised as it is, a sentence each.
std::vector<std::string> bath_sentences(const BathAdvice& advice);

/// One reason of it.
std::string bath_sentence(const Fact<BathReason>& reason, const BathAdvice& advice);

}  // namespace fogline
