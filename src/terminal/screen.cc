#include "terminal/screen.h"

#include "terminal/text_judgement.h"
#include "terminal/text_layout.h"
#include "words/columns.h"
#include "words/recipe.h"
#include "words/report_words.h"
#include "words/roll_numbers.h"
#include "words/screen_words.h"
#include "words/sections.h"
#include "words/story.h"
#include "words/verdict.h"

#include <algorithm>
#include <vector>

// Pieces are laid out one by one; where they take more lines than a screen has, the least weighty
// are left out until the rest fits.

namespace fogline {
namespace {

// What may be left out, by how soon it is: of two pieces of one weight the later goes first.
enum class Weight {
  note,        ///< a caution that is only a note, a doubt
  advice,      ///< how to scan better
  number,      ///< a number of the roll
  caution,     ///< a caution that weighs
  more_steps,  ///< tonight's second step and those that follow
  trust,       ///< what the scan may be trusted for
  kept         ///< never left out
};

struct Piece {
  std::size_t group = 0;
  Weight weight = Weight::kept;
  std::string text;
};

class Draft {
 public:
  Draft(int width, bool color) : width_(width), color_(color) {}

  void heading(std::string_view title) { titles_.emplace_back(title); }

  [[nodiscard]] bool has_told(const std::string& sentence) const { return told_.has(sentence); }

  /// One piece: what `put` writes below the last heading.
  template <typename Put>
  void add(Weight weight, const Put& put) {
    TextLayout piece(width_, color_);
    put(piece);
    if (!piece.text().empty()) {
      pieces_.push_back({titles_.size() - 1, weight, piece.text()});
    }
  }

  void paragraph(Weight weight, const std::string& sentence) {
    if (!sentence.empty()) {
      told_.add(sentence);
      add(weight, [&](TextLayout& piece) { piece.paragraph(sentence); });
    }
  }

  void item(Weight weight, char sign, const std::string& sentence) {
    if (!told_.has(sentence)) {
      told_.add(sentence);
      add(weight, [&](TextLayout& piece) { piece.item(sign, sentence); });
    }
  }

  [[nodiscard]] std::string text() const {
    TextLayout whole(width_, color_);
    std::size_t group = titles_.size();
    for (const Piece& piece : pieces_) {
      if (piece.group != group) {
        group = piece.group;
        whole.heading(titles_[group]);
        whole.block(titles_[group].empty() ? "\n" : "");
      }
      whole.block(piece.text);
    }
    return whole.text();
  }

  void shorten_to(std::size_t lines) {
    const auto lines_now = [&] {
      const std::string now = text();
      return static_cast<std::size_t>(std::count(now.begin(), now.end(), '\n'));
    };
    while (lines_now() > lines) {
      const auto least =
          std::min_element(pieces_.rbegin(), pieces_.rend(),
                           [](const Piece& a, const Piece& b) { return a.weight < b.weight; });
      if (least == pieces_.rend() || least->weight == Weight::kept) {
        return;
      }
      pieces_.erase(std::next(least).base());
    }
  }

 private:
  int width_;
  bool color_;
  std::vector<std::string> titles_;
  std::vector<Piece> pieces_;
  Told told_;
};

void draft_verdict(Draft& draft, const Verdict& verdict) {
  draft.heading(section_of(SectionId::verdict).title);
  draft.paragraph(Weight::kept, verdict.judgement);
  draft.paragraph(Weight::kept, verdict.also);
}

void draft_tonight(Draft& draft, const Advice& advice) {
  draft.heading(section_of(SectionId::tonight).title);
  Weight weight = Weight::kept;
  std::size_t count = 0;
  for (const TonightStep& step : tonight_steps(advice)) {
    if (count++ < short_list_steps) {
      draft.item(weight, '-', step.what);
      weight = Weight::more_steps;
    }
  }
}

void draft_numbers(Draft& draft, const std::vector<RollNumber>& numbers) {
  draft.heading(numbers_title());
  std::size_t name_width = 0;
  std::size_t value_width = 0;
  for (const RollNumber& number : numbers) {
    name_width = std::max(name_width, columns(number.name) + 2);
    value_width = std::max(value_width, columns(number.value) + 2);
  }
  for (const RollNumber& number : numbers) {
    draft.add(Weight::number, [&](TextLayout& piece) {
      piece.row(padded(number.name, name_width) + padded(number.value, value_width), number.note);
    });
  }
}

void draft_objections(Draft& draft, const RollRecord& record, const Verdict& verdict) {
  draft.paragraph(tells_little(record.measurement) ? Weight::kept : Weight::trust, verdict.trust);
  for (const Objection& objection : objections_of(record)) {
    const bool is_note = objection.severity == Severity::note;
    if (!draft.has_told(objection.sentence)) {
      draft.item(is_note ? Weight::note : Weight::caution, is_note ? '-' : '!',
                 objection.files + objection.sentence);
    }
  }
}

void draft_scanning(Draft& draft, const RollRecord& record) {
  draft.heading(section_of(SectionId::better_scanning).title);
  for (const std::string& sentence : scan_advice(record)) {
    draft.item(Weight::advice, '-', sentence);
  }
  draft.item(Weight::kept, '-', std::string(whole_setup_sentence()));
}

}  // namespace

std::string screen_text(const RollRecord& record, const TextOptions& options) {
  const Verdict verdict = verdict_of(record, options.units);
  Draft draft(std::max(options.width, least_text_width), options.color);
  draft_verdict(draft, verdict);
  if (record.judgement.advice) {
    draft_tonight(draft, *record.judgement.advice);
    draft.heading(section_of(SectionId::next_roll).title);
    draft.add(Weight::kept, [&](TextLayout& piece) { put_next_roll(piece, record); });
  }
  const std::vector<RollNumber> numbers = roll_numbers(record, options.units);
  if (numbers.empty()) {
    draft.heading(section_of(SectionId::trust).title);
    draft.item(Weight::trust, '-', verdict.reading);
  } else {
    draft_numbers(draft, numbers);
    draft.heading(objections_title());
  }
  draft_objections(draft, record, verdict);
  if (tells_little(record.measurement)) {
    draft_scanning(draft, record);
  }
  draft.heading("");
  draft.paragraph(Weight::kept, rest_sentence(options.page));
  draft.shorten_to(screen_lines);
  return draft.text();
}

}  // namespace fogline
