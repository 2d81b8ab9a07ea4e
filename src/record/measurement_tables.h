#pragma once

#include "record/fields.h"

#include <fogline/roll/roll_measurement.h>

// The tables of everything that a measurement holds.

namespace fogline {

template <>
const Fields<Quantity>& fields_of();
template <>
const Fields<BoxPx>& fields_of();
template <>
const Fields<PointMm>& fields_of();
template <>
const Fields<BaseFog>& fields_of();
template <>
const Fields<Caution>& fields_of();

template <>
const Fields<Transfer>& fields_of();
template <>
const Fields<ScanInfo>& fields_of();
template <>
const Fields<ZeroReport>& fields_of();
template <>
const Fields<StripMeasurement>& fields_of();
template <>
const Fields<FrameTone>& fields_of();
template <>
const Fields<FrameMeasurement>& fields_of();
template <>
const Fields<ScanMeasurement>& fields_of();
template <>
const Fields<Outline>& fields_of();
template <>
const Fields<ScanCalibration>& fields_of();
template <>
const Fields<BudgetLine>& fields_of();
template <>
const Fields<DoubtBudget>& fields_of();
template <>
const Fields<TintComponent>& fields_of();
template <>
const Fields<Tint>& fields_of();
template <>
const Fields<Mark>& fields_of();

template <>
const Fields<CurveTable>& fields_of();
template <>
const Fields<ExposedStep>& fields_of();
template <>
const Fields<CharacteristicCurve>& fields_of();
template <>
const Fields<CurveReadings>& fields_of();
template <>
const Fields<IsoSpeed>& fields_of();
template <>
const Fields<ZoneDensity>& fields_of();
template <>
const Fields<ZonePlacement>& fields_of();
template <>
const Fields<ExposureScale>& fields_of();
template <>
const Fields<RollMedians>& fields_of();
template <>
const Fields<UnreadFile>& fields_of();

/// Whether its visual density can.
bool can_be_told(const BaseFog& base_fog);

/// The steps of a wedge in a scan, whose codes are grey or of three channels.
void walk_steps(FieldWalker& walker, std::vector<StepMeasurement>& steps, int channels);

/// What is read from a roll's curve, as fields of the object that tells of contrast. `base`: what
/// lies under its net densities.
void walk_sensitometry(FieldWalker& walker, Known<Sensitometry>& sensitometry, double base);

}  // namespace fogline
