#pragma once

#include "record/judgement_tables.h"

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

namespace fogline {

/// Fills a record at random by walking the very tables that write and read it: fields there or
/// absent, lists empty or long, numbers of every size, names as odd as files can have.
class RandomWalker : public FieldWalker {
 public:
  explicit RandomWalker(std::uint64_t seed) : random_(seed) {}

  bool enter(std::string_view, Presence presence, bool) override {
    return presence == Presence::required || presence == Presence::kept || below(2) == 0;
  }
  void leave() override {}
  std::size_t begin_list(std::size_t) override {
    constexpr std::uint64_t long_lists = 40;
    constexpr std::uint64_t longest = 30;
    if (below(long_lists) == 0) {
      return below(longest);
    }
    return below(2) == 0 ? 0 : 1 + below(2);
  }
  void begin_fixed_list(std::size_t) override {}
  void enter_item(std::size_t) override {}

  void number(double& value, NumberRange range) override {
    value = drawn_number();
    if (range == NumberRange::not_negative) {
      value = std::abs(value);
    } else if (range == NumberRange::probability) {
      value = std::uniform_real_distribution<>()(random_);
    }
  }
  void whole(int& value) override {
    constexpr std::uint64_t usual = 20;
    constexpr std::uint64_t extremes = 30;
    const std::uint64_t kind = below(extremes);
    value = kind == 0   ? std::numeric_limits<int>::max()
            : kind == 1 ? std::numeric_limits<int>::min()
                        : static_cast<int>(below(usual));
  }
  void truth(bool& value) override { value = below(2) == 0; }
  void text(std::string& value) override {
    static const std::vector<std::string> pieces{"strip",
                                                 ".tif",
                                                 " ",
                                                 "\"",
                                                 "\\",
                                                 "/",
                                                 "\n",
                                                 "\x01\x1f\x7f",
                                                 std::string(1, '\0'),
                                                 "\xC3\xA9",
                                                 "\xE2\x82\xAC",
                                                 "\xF0\x9F\x8E\x9E",
                                                 "{}",
                                                 "[",
                                                 "null",
                                                 "\xEF\xBF\xBD"};
    value.clear();
    for (std::uint64_t length = below(4); length > 0; --length) {
      value += pieces[below(pieces.size())];
    }
  }
  bool word(std::size_t& place, std::span<const std::string_view> words) override {
    place = below(words.size());
    return true;
  }
  [[nodiscard]] bool wants_repeats() const override { return false; }

 protected:
  void begin_object() override {}

 private:
  std::uint64_t below(std::uint64_t end) { return random_() % end; }

  double drawn_number() {
    constexpr std::uint64_t kinds = 10;
    switch (below(kinds)) {
      case 0:
        return std::numeric_limits<double>::max();
      case 1:
        return std::numeric_limits<double>::denorm_min();
      case 2:
        return -std::numeric_limits<double>::min();
      case 3:
        return 0.0;
      case 4:
        return static_cast<double>(below(100));
      case 5: {
        // Any finite pattern of bits.
        const auto drawn = std::bit_cast<double>(random_());
        return std::isfinite(drawn) ? drawn : 1.0;
      }
      default:
        return std::normal_distribution<>(0.5, 1.0)(random_);
    }
  }

  std::mt19937_64 random_;
};

inline RollRecord random_record(std::uint64_t seed) {
  RollRecord record;
  RandomWalker walker(seed);
  walker.object([&] { walk_fields(walker, record); });
  return record;
}

}  // namespace fogline
