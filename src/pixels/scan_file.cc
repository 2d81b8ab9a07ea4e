#include "pixels/scan_file.h"

#include "files/input_file.h"

#include <algorithm>
#include <stdexcept>
#include <utility>
#include <vector>

namespace fogline {

namespace {

bool same_curve(const Transfer& a, const Transfer& b) {
  return a.kind == b.kind && a.exponent == b.exponent && a.scanner == b.scanner;
}

}  // namespace

ScanFile::ScanFile(OpenedPicture picture)
    : picture_(std::move(picture)), own_curve_(picture_.curve) {}

void ScanFile::check(const Transfer& transfer) const {
  const bool needs_exponent = transfer.kind == TransferKind::power;
  if (needs_exponent && !(transfer.exponent.value_or(0.0) > 0.0)) {
    throw std::invalid_argument("a power transfer needs an exponent above 0");
  }
  if (transfer.kind == TransferKind::curve && own_curve_.sampled == nullptr) {
    refuse(picture_.info.file, Refusal::no_own_tone_curve);
  }
  if (transfer.kind == TransferKind::scanner &&
      (transfer.scanner == nullptr || transfer.scanner->channels < picture_.info.channels)) {
    throw std::invalid_argument("a scanner's transfer needs a curve for each channel");
  }
}

ToneCurve ScanFile::curve_of(const Transfer& transfer) const {
  ToneCurve curve = own_curve_;
  curve.transfer = transfer;
  return curve;
}

Decoding ScanFile::decoding(const std::vector<Transfer>& transfers) const {
  Decoding result;
  result.channels = picture_.info.channels;
  result.top_code = picture_.top_code;
  for (const Transfer& transfer : transfers) {
    LightReading reading;
    reading.curve = curve_of(transfer);
    if (picture_.sample_type != SampleType::f32) {
      const int codes = picture_.sample_type == SampleType::u8 ? 256 : 65536;
      reading.tables = light_tables(reading.curve, codes, result.channels);
    }
    result.readings.push_back(std::move(reading));
  }
  return result;
}

void ScanFile::set_transfer(const Transfer& transfer) {
  check(transfer);
  picture_.curve = curve_of(transfer);
  picture_.info.transfer = transfer;
  picture_.info.transfer_known = true;
  if (transfer.source != TransferSource::assumed) {
    std::erase_if(picture_.info.cautions, [](const Caution& caution) {
      return caution.fact.kind == CautionKind::transfer_assumed;
    });
  }
}

double ScanFile::code_of(double light, int channel) const {
  return picture_.curve.code(light, channel);
}

ScanGrid ScanFile::survey(const SurveyPlan& plan, const Progress& progress) {
  const Transfer& present = picture_.curve.transfer;
  const int reduction =
      reduction_for(picture_.info.width_px, picture_.info.height_px, plan.most_pixels);
  std::vector<KeptGrid> grids = std::exchange(kept_grids_, {});
  const auto kept = std::find_if(grids.begin(), grids.end(), [&](const KeptGrid& one) {
    return one.grid.reduction == reduction && same_curve(one.transfer, present);
  });
  if (kept != grids.end()) {
    return std::move(kept->grid);
  }
  const bool codes_do = kept_codes_ != nullptr && (kept_codes_->step() == 1 || plan.learns_curve);
  ScanGrid grid =
      codes_do ? survey_kept_codes(plan.most_pixels, progress) : survey_file(plan, progress);
  if (!plan.learns_curve) {
    kept_codes_.reset();
  }
  return grid;
}

ScanGrid ScanFile::survey_file(const SurveyPlan& plan, const Progress& progress) {
  kept_codes_.reset();
  if (plan.learns_curve) {
    kept_codes_ = std::make_unique<KeptCodes>(picture_.info, picture_.sample_type, most_kept_bytes);
  }
  std::vector<Transfer> transfers{picture_.curve.transfer};
  transfers.insert(transfers.end(), plan.other_curves.begin(), plan.other_curves.end());
  std::for_each(transfers.begin() + 1, transfers.end(),
                [&](const Transfer& other) { check(other); });
  std::vector<ScanGrid> grids = survey_blocks(*picture_.blocks, picture_.info, decoding(transfers),
                                              plan.most_pixels, kept_codes_.get(), progress);
  for (std::size_t i = 1; i < grids.size(); ++i) {
    kept_grids_.push_back({transfers[i], std::move(grids[i])});
  }
  return std::move(grids.front());
}

ScanGrid ScanFile::survey_kept_codes(std::int64_t most_pixels, const Progress& progress) {
  ScanInfo info = picture_.info;
  info.width_px = kept_codes_->width();
  info.height_px = kept_codes_->height();
  std::vector<ScanGrid> grids = survey_blocks(
      *kept_codes_, info, decoding({picture_.curve.transfer}), most_pixels, nullptr, progress);
  grids.front().reduction *= kept_codes_->step();
  return std::move(grids.front());
}

}  // namespace fogline
