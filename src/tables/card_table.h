#pragma once

#include "words/schema_words.h"

#include <fogline/base/refusal.h>

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <toml++/toml.h>

namespace fogline {

/// What people may write for a value, and what it means.
template <typename Meaning>
using Words = std::vector<std::pair<std::string_view, Meaning>>;

/// One table of a roll card, read key by key. Every read checks what is there and throws FileError
/// with line, key and what was expected; a key that isn't there gives nothing.
/// `refuse_others` then names whatever was never asked for.
class CardTable {
 public:
  /// `name` is the table's own, empty for the top of the card.
  CardTable(const toml::table& table, std::string file, std::string name);

  /// A table within this one; an empty one where it isn't there.
  [[nodiscard]] CardTable table(std::string_view key);
  [[nodiscard]] bool has(std::string_view key) const;
  /// Tables of one name, each headed [[key]]; none where it isn't there.
  [[nodiscard]] std::vector<CardTable> tables(std::string_view key);

  /// Any text but an empty one.
  [[nodiscard]] std::optional<std::string> text(std::string_view key);
  /// A calendar day, written 2026-05-01 with or without quotes.
  [[nodiscard]] std::optional<std::string> date(std::string_view key);
  /// Minutes and seconds, written "9:30", as seconds.
  [[nodiscard]] std::optional<double> time_s(std::string_view key);
  /// A number from `least` to `most`; `otherwise` tells of any other value.
  [[nodiscard]] std::optional<double> number(std::string_view key, double least, double most,
                                             Refusal otherwise);
  [[nodiscard]] std::optional<int> count(std::string_view key);
  /// Numbers from `least` to `most`, at least `fewest` of them; empty where the key isn't there.
  [[nodiscard]] std::vector<double> numbers(std::string_view key, double least, double most,
                                            std::size_t fewest, Refusal otherwise);

  /// Shutter times as marked, in quotes ("1/60", "2") or numbers of seconds; as seconds.
  [[nodiscard]] std::vector<double> shutter_times_s(std::string_view key);
  [[nodiscard]] std::optional<double> shutter_time_s(std::string_view key);

  template <typename Meaning>
  [[nodiscard]] std::optional<Meaning> word(std::string_view key, const Words<Meaning>& words) {
    const toml::node* node = take(key);
    if (node == nullptr) {
      return std::nullopt;
    }
    const auto found = node->value_exact<std::string_view>();
    std::vector<std::string_view> allowed;
    for (const auto& [written, meaning] : words) {
      if (found == written) {
        return meaning;
      }
      allowed.push_back(written);
    }
    refuse(*node, key, Refusal::card_wants_word, listed(allowed));
  }

  /// A kind by the word that reports have for it, and all words that it may be.
  template <typename Kind>
  [[nodiscard]] std::optional<Kind> kind(std::string_view key) {
    Words<Kind> words;
    for (const SchemaWord<Kind>& row : schema_words<Kind>().rows) {
      words.emplace_back(row.word, row.kind);
    }
    return word(key, words);
  }
  template <typename Kind>
  static std::string kinds_listed() {
    std::vector<std::string_view> words;
    for (const SchemaWord<Kind>& row : schema_words<Kind>().rows) {
      words.push_back(row.word);
    }
    return listed(words);
  }

  /// Throws for the first key that no read asked for.
  void refuse_others() const;

  /// Throws at the line of a key's value; `other` is the second name of the refusal, if it has one.
  [[noreturn]] void refuse(const toml::node& node, std::string_view key, Refusal why,
                           const std::string& other = "") const;
  /// Throws at the line of this table: the key isn't there.
  [[noreturn]] void refuse_missing(std::string_view key, Refusal why,
                                   const std::string& other = "") const;
  /// Throws at the line of a key that is there.
  [[noreturn]] void complain(std::string_view key, Refusal why,
                             const std::string& other = "") const;
  /// Words that a key may have, as a card has them: "cubic", "tabular".
  static std::string listed(const std::vector<std::string_view>& words);

 private:
  /// The value of a key, which counts as asked for; nullptr where it isn't there.
  const toml::node* take(std::string_view key);
  [[nodiscard]] std::string full_name(std::string_view key) const;
  [[noreturn]] void refuse_at(const toml::source_region& place, std::string_view key, Refusal why,
                              const std::string& other) const;

  const toml::table& table_;
  std::string file_;
  std::string name_;
  std::set<std::string, std::less<>> asked_;
};

}  // namespace fogline
