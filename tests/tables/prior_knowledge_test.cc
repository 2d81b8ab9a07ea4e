// Every key of every shipped table: it is read, checked, has a source beside it, and reaches the
// knowledge that the core gets.
#include "base/refusal_of.h"
#include "tables/calibration_text.h"
#include "tables/knowledge_files.h"

#include <fogline/base/refusal.h>
#include <fogline/tables/read_tables.h>

#include <algorithm>
#include <array>
#include <bit>
#include <functional>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <toml++/toml.h>

namespace fogline {
namespace {

std::string text_of(const toml::table& table) {
  std::ostringstream text;
  text << table;
  return text.str();
}

/// All knowledge, one file's text taken for the shipped one.
PriorKnowledge with_file(std::string_view name, const std::string& text) {
  return prior_knowledge_from([&](std::string_view wanted) -> std::string_view {
    return wanted == name ? std::string_view(text) : calibration_text(wanted);
  });
}

/// How one file's text is refused; nothing where it isn't.
std::optional<FileError> refusal_of(std::string_view name, const std::string& text) {
  return test::refusal_of([&] { with_file(name, text); });
}

/// Expects one file's text to be refused at a key, with the file's name and a line of it.
void expect_refused(std::string_view name, const std::string& text, Refusal why,
                    const std::string& key) {
  const std::optional<FileError> refusal = refusal_of(name, text);
  ASSERT_TRUE(refusal) << name << ": " << key;
  EXPECT_EQ(refusal->file(), name);
  EXPECT_EQ(refusal->why().kind, why) << key;
  EXPECT_EQ(refusal->why().names, std::vector<std::string>{key});
  const auto lines = std::count(text.begin(), text.end(), '\n');
  EXPECT_GE(refusal->why().numbers.front(), 1.0);
  EXPECT_LE(refusal->why().numbers.front(), static_cast<double>(lines + 1));
}

/// A key that holds a value, as the tables that lead to it and its own name.
struct Leaf {
  std::vector<std::string> tables;
  std::string key;

  [[nodiscard]] std::string name() const {
    std::string name;
    for (const std::string& table : tables) {
      name += table + ".";
    }
    return name + key;
  }
  [[nodiscard]] toml::table& table_in(toml::table& whole) const {
    toml::table* at = &whole;
    for (const std::string& table : tables) {
      at = at->get(table)->as_table();
    }
    return *at;
  }
};

void add_leaves(const toml::table& table, const std::vector<std::string>& above,
                std::vector<Leaf>& leaves) {
  for (const auto& [key, node] : table) {
    if (const toml::table* inner = node.as_table()) {
      std::vector<std::string> deeper = above;
      deeper.emplace_back(key.str());
      add_leaves(*inner, deeper, leaves);
    } else if (key != "source") {
      leaves.push_back({above, std::string(key.str())});
    }
  }
}

void for_each_leaf(const std::function<void(std::string_view file, const toml::table& whole,
                                            const Leaf& leaf)>& visit) {
  for (const std::string_view file : knowledge_files) {
    const toml::table whole = toml::parse(calibration_text(file));
    std::vector<Leaf> leaves;
    add_leaves(whole, {}, leaves);
    ASSERT_FALSE(leaves.empty()) << file;
    for (const Leaf& leaf : leaves) {
      visit(file, whole, leaf);
    }
  }
}

/// The first number of a value, wherever it stands in lists.
toml::node& first_number(toml::node& node) {
  return node.is_array() ? first_number(*node.as_array()->get(0)) : node;
}

bool whole_leaf_is_list(toml::table whole, const Leaf& leaf) {
  return leaf.table_in(whole).get(leaf.key)->is_array();
}

void set_number(toml::node& node, double value) {
  if (auto* real = node.as_floating_point()) {
    *real = value;
  } else {
    *node.as_integer() = static_cast<std::int64_t>(value);
  }
}

TEST(PriorKnowledge, EveryValueReachesTheKnowledge) {
  const PriorKnowledge shipped = *shipped_prior_knowledge();
  for_each_leaf([&](std::string_view file, const toml::table& whole, const Leaf& leaf) {
    toml::table changed = whole;
    toml::node& number = first_number(*leaf.table_in(changed).get(leaf.key));
    const double value = *number.value<double>();
    // Small enough to stay in range at either end of it, and a whole one for whole numbers.
    const double step = number.is_integer() ? 1.0 : 1e-3;
    set_number(number, value + step);
    if (refusal_of(file, text_of(changed))) {
      set_number(number, value - step);
    }
    EXPECT_FALSE(with_file(file, text_of(changed)) == shipped) << file << ": " << leaf.name();
  });
}

TEST(PriorKnowledge, EveryKeyIsNeeded) {
  for_each_leaf([](std::string_view file, const toml::table& whole, const Leaf& leaf) {
    toml::table changed = whole;
    leaf.table_in(changed).erase(leaf.key);
    expect_refused(file, text_of(changed), Refusal::knowledge_key_missing, leaf.name());
  });
}

TEST(PriorKnowledge, EveryKeyIsANumberInRange) {
  for_each_leaf([](std::string_view file, const toml::table& whole, const Leaf& leaf) {
    toml::table changed = whole;
    leaf.table_in(changed).insert_or_assign(leaf.key, "much");
    expect_refused(file, text_of(changed),
                   whole_leaf_is_list(whole, leaf) ? Refusal::knowledge_wants_list
                                                   : Refusal::knowledge_wants_number,
                   leaf.name());
    changed = whole;
    set_number(first_number(*leaf.table_in(changed).get(leaf.key)), -100000.0);
    expect_refused(file, text_of(changed), Refusal::knowledge_out_of_range, leaf.name());
  });
}

TEST(PriorKnowledge, UnknownKeysAreRefused) {
  for_each_leaf([](std::string_view file, const toml::table& whole, const Leaf& leaf) {
    toml::table changed = whole;
    leaf.table_in(changed).insert_or_assign("surplus", 1.0);
    expect_refused(file, text_of(changed), Refusal::knowledge_key_unknown,
                   Leaf{leaf.tables, "surplus"}.name());
  });
}

TEST(PriorKnowledge, EveryHeadedTableWithValuesNamesItsSource) {
  int sources = 0;
  const std::function<void(std::string_view, const toml::table&, const std::vector<std::string>&)>
      visit = [&](std::string_view file, const toml::table& whole,
                  const std::vector<std::string>& above) {
        toml::table changed = whole;
        toml::table& here = Leaf{above, ""}.table_in(changed);
        std::vector<std::string> inner;
        for (const auto& [key, node] : here) {
          if (node.is_table() && !node.as_table()->is_inline()) {
            inner.emplace_back(key.str());
          }
        }
        for (const std::string& key : inner) {
          std::vector<std::string> deeper = above;
          deeper.push_back(key);
          visit(file, whole, deeper);
        }
        if (here.erase("source") > 0) {
          ++sources;
          std::string name;
          for (const std::string& table : above) {
            name += (name.empty() ? "" : ".") + table;
          }
          expect_refused(file, text_of(changed), Refusal::knowledge_without_source, name);
        }
      };
  for (const std::string_view file : knowledge_files) {
    visit(file, toml::parse(calibration_text(file)), {});
  }
  EXPECT_GT(sources, 40);
}

/// How many numbers of a struct that holds nothing else are 0.
template <typename Plain>
std::ptrdiff_t unset(const Plain& plain) {
  const auto numbers = std::bit_cast<std::array<double, sizeof(Plain) / sizeof(double)>>(plain);
  return std::count(numbers.begin(), numbers.end(), 0.0);
}

// A default one holds zeros alone, so a field that no table sets is left 0.
TEST(PriorKnowledge, EveryFieldIsSet) {
  const PriorKnowledge shipped = *shipped_prior_knowledge();
  EXPECT_EQ(unset(shipped.population), 0);
  EXPECT_EQ(unset(shipped.process.development), 0);
  EXPECT_EQ(unset(shipped.scan.devices), 0);
  EXPECT_EQ(unset(shipped.scan.films), 0);
  // Two signs are weighed from 0 on: the edge of dust, and the score of pinholes.
  EXPECT_EQ(unset(shipped.scan.marks), 2);
  const BathPriors& baths = shipped.process.baths;
  for (const double value :
       {baths.stop_s, baths.stop_longest_s, baths.fix_rapid_s.cubic, baths.fix_rapid_s.tabular,
        baths.fix_plain_s.cubic, baths.fix_plain_s.tabular, baths.fix_over_clearing.cubic,
        baths.fix_over_clearing.tabular, baths.fix_rapid_longest_s, baths.clearing_when_spent,
        baths.film_units_per_litre, baths.units_per_roll.cubic, baths.units_per_roll.tabular,
        static_cast<double>(baths.wash_extra_fill), baths.wash_rest_s, baths.wash_running_s}) {
    EXPECT_GT(value, 0.0);
  }
  EXPECT_FALSE(baths.wash_fills.empty());
  const TintKnowledge& tints = shipped.scan.tints;
  EXPECT_EQ(unset(tints.shares), 0);
  for (const VeilPopulation* veil : {&tints.dye, &tints.haze, &tints.yellow, &tints.mask}) {
    EXPECT_GT(veil->least_density, 0.0);
    EXPECT_GT(veil->most_density, veil->least_density);
    EXPECT_FALSE(veil->signatures.empty());
    EXPECT_FALSE(veil->patchiness.empty());
  }
  for (const double value :
       {tints.own_sd_density, tints.told_base_sd_density, tints.natural_slope_sd,
        tints.useful_limit_density, tints.finished_picture_trust, tints.stain.share,
        tints.stain.least, tints.stain.most}) {
    EXPECT_GT(value, 0.0);
  }
  EXPECT_FALSE(tints.clean_textures.empty());
  EXPECT_FALSE(tints.stain.green_shares.empty());
  EXPECT_FALSE(tints.limit_signatures.empty());
}

TEST(PriorKnowledge, WhatIsNoTomlIsRefusedWithItsLine) {
  const auto refusal = refusal_of("films.toml", "[edge_print]\ndensity = = 1");
  ASSERT_TRUE(refusal);
  EXPECT_EQ(refusal->why(), (Fact<Refusal>{Refusal::knowledge_no_toml, {2.0}, {}, {}}));
}

}  // namespace
}  // namespace fogline
