// Facts for tests of tables of words: one of each member, with a number for each that its row
// names.
#pragma once

#include <fogline/base/fact.h>

#include <set>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {

template <typename Kind>
std::vector<Fact<Kind>> one_of_each() {
  std::vector<Fact<Kind>> facts;
  for (const FactRow<Kind>& row : fact_rows<Kind>()) {
    // Has no words of its own: its sentence comes with it.
    if (row.code == "told") {
      continue;
    }
    Fact<Kind> fact = fact_of(row.kind);
    for (const std::string_view name : row.numbers) {
      if (!name.empty()) {
        fact.numbers.push_back(1.25);
      }
    }
    for (const std::string_view name : row.names) {
      if (!name.empty()) {
        fact.names.emplace_back("invented");
      }
    }
    facts.push_back(fact);
  }
  return facts;
}

/// Codes are what reports publish: lower case, joined by hyphens, each once.
template <typename Kind>
void expect_codes() {
  std::set<std::string> codes;
  for (const FactRow<Kind>& row : fact_rows<Kind>()) {
    const std::string code(row.code);
    EXPECT_FALSE(code.empty());
    EXPECT_EQ(code.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string::npos)
        << code;
    EXPECT_TRUE(codes.insert(code).second) << code;
  }
}

/// A whole sentence with nothing left to fill, and no word of blame.
inline void expect_sentence(const std::string& sentence) {
  ASSERT_FALSE(sentence.empty());
  EXPECT_EQ(sentence.find_first_of("{}"), std::string::npos) << sentence;
  EXPECT_EQ(sentence.back(), '.') << sentence;
  EXPECT_EQ(sentence.find(" bad"), std::string::npos) << sentence;
  EXPECT_EQ(sentence.find("  "), std::string::npos) << sentence;
}

}  // namespace fogline
