#pragma once

#include "process/advice/advise.h"
#include "process/advice/roll_signs.h"

namespace fogline {

/// The next roll's stop bath: half a minute, longer for tabular-grain film where dye is left or
/// can't be told.
BathAdvice advise_stop(const RollCard* card, const RollSigns& signs, const BathPriors& priors);

/// The next roll's fixer: two or three times the measured clearing time, else the usual time of its
/// kind; renewed where it clears too slowly, has taken its silver, or the film says so.
BathAdvice advise_fix(const RollCard* card, const RollSigns& signs, const BathPriors& priors);

/// The next roll's wash: fills of growing length and a rest, one fill more where dye is left;
/// running water where the card washes so or the fixer hardens.
BathAdvice advise_wash(const RollCard* card, const RollSigns& signs, const BathPriors& priors);

/// What a bath's time on the card is called beside the least one wanted.
BathChange change_to(std::optional<double> time_s, double least_s, double most_s);

}  // namespace fogline
