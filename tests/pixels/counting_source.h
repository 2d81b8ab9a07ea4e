#pragma once

// Counts how often a file's pixels are decoded.

#include "pixels/open_picture.h"

#include <atomic>
#include <memory>
#include <string>
#include <utility>

namespace fogline::test {

/// Hands on another source's blocks and counts their samples; forks count together.
class CountingSource final : public BlockSource {
 public:
  using Counter = std::shared_ptr<std::atomic<std::int64_t>>;

  CountingSource(std::unique_ptr<BlockSource> source, Counter samples)
      : source_(std::move(source)), samples_(std::move(samples)) {}

  void read_blocks(const RegionPx& region, const BlockSink& sink) override {
    source_->read_blocks(region, [&](const Block& block) {
      *samples_ += static_cast<std::int64_t>(block.area.width) * block.area.height * block.channels;
      sink(block);
    });
  }
  [[nodiscard]] int rows_together() const override { return source_->rows_together(); }
  [[nodiscard]] int columns_together() const override { return source_->columns_together(); }
  [[nodiscard]] bool random_access() const override { return source_->random_access(); }
  [[nodiscard]] std::size_t working_bytes() const override { return source_->working_bytes(); }
  [[nodiscard]] std::unique_ptr<BlockSource> fork() const override {
    return std::make_unique<CountingSource>(source_->fork(), samples_);
  }

 private:
  std::unique_ptr<BlockSource> source_;
  Counter samples_;
};

/// A scan that tells how often its file was read.
class CountedScan {
 public:
  explicit CountedScan(OpenedPicture picture)
      : samples_(std::make_shared<std::atomic<std::int64_t>>(0)),
        samples_a_pass_(static_cast<std::int64_t>(picture.info.width_px) * picture.info.height_px *
                        picture.info.channels) {
    picture.info.transfer = picture.curve.transfer;
    picture.blocks = std::make_unique<CountingSource>(std::move(picture.blocks), samples_);
    scan_ = std::make_unique<ScanFile>(std::move(picture));
  }
  explicit CountedScan(const std::string& path) : CountedScan(open_picture(path)) {}

  ScanSource& source() { return *scan_; }
  [[nodiscard]] double passes() const {
    return static_cast<double>(*samples_) / static_cast<double>(samples_a_pass_);
  }

 private:
  CountingSource::Counter samples_;
  std::int64_t samples_a_pass_;
  std::unique_ptr<ScanFile> scan_;
};

}  // namespace fogline::test
