#pragma once

#include "record/fields.h"

#include <fogline/record/record_json.h>

// The tables of the roll card, of what is concluded, and of the whole record.

namespace fogline {

template <>
const Fields<DevelopmentCard>& fields_of();
template <>
const Fields<StopCard>& fields_of();
template <>
const Fields<FixCard>& fields_of();
template <>
const Fields<WashCard>& fields_of();
template <>
const Fields<TargetCard>& fields_of();
template <>
const Fields<MeteredTone>& fields_of();
template <>
const Fields<RollCard>& fields_of();

template <>
const Fields<UnfitScan>& fields_of();
template <>
const Fields<Finding>& fields_of();
template <>
const Fields<Aim>& fields_of();
template <>
const Fields<CauseProbabilities>& fields_of();
template <>
const Fields<LightOrTime>& fields_of();
template <>
const Fields<CurveJudgement>& fields_of();

template <>
const Fields<RollRecord>& fields_of();

}  // namespace fogline
