#include "words/film_words.h"

#include "base/member_names.h"
#include "words/judgement_words.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace fogline {
namespace {

struct MarkWord {
  MarkKind kind;
  std::string_view one;
  std::string_view many;
};

constexpr std::array<MarkWord, 16> mark_words{{
    {MarkKind::drying_mark, "drying mark", "drying marks"},
    {MarkKind::air_bell, "air bell", "air bells"},
    {MarkKind::dust, "dust", "pieces of dust"},
    {MarkKind::fibre, "fibre", "fibres"},
    {MarkKind::scratch, "scratch", "scratches"},
    {MarkKind::surge, "surge mark", "surge marks"},
    {MarkKind::light_leak, "light leak", "light leaks"},
    {MarkKind::contact_mark, "contact mark", "contact marks"},
    {MarkKind::pinhole, "pinhole", "pinholes"},
    {MarkKind::kink_mark, "kink mark", "kink marks"},
    {MarkKind::static_mark, "static mark", "static marks"},
    {MarkKind::bromide_drag, "bromide drag", "bromide drags"},
    {MarkKind::low_level, "band of low developer", "bands of low developer"},
    {MarkKind::fingerprint, "fingerprint", "fingerprints"},
    {MarkKind::interference_rings, "Newton's rings", "Newton's rings"},
    {MarkKind::unknown, "mark of unknown kind", "marks of unknown kind"},
}};

static_assert(in_order_and_complete(mark_words));

const MarkWord& word_of(MarkKind kind) {
  return mark_words[static_cast<std::size_t>(kind)];
}

std::string component_words(TintKind kind) {
  switch (kind) {
    case TintKind::dye_left:
      return "Dye is left in the film";
    case TintKind::sensitising_dye:
      return "Sensitising dye is left in the film";
    case TintKind::antihalation_dye:
      return "Anti-halation dye is left in the film";
    case TintKind::fixer_haze:
      return "The clear film looks milky, as where fixing is incomplete (look at it by reflected "
             "light on black)";
    case TintKind::yellow_stain:
      return "An even yellow stain lies on the clear film";
    case TintKind::image_stain:
      return "A stain grows with the silver";
    case TintKind::none:
      break;
  }
  return "A tint of unknown kind is there";
}

std::string_view measure_words(TintKind kind) {
  switch (kind) {
    case TintKind::fixer_haze:
      return " in unexposed film";
    case TintKind::image_stain:
      return " in blue at a silver density of 1";
    case TintKind::none:
    case TintKind::dye_left:
    case TintKind::sensitising_dye:
    case TintKind::antihalation_dye:
    case TintKind::yellow_stain:
      break;
  }
  return " in the channel that it darkens most";
}

std::string component_sentence(const TintComponent& component, DensityUnits units) {
  return component_words(component.kind) + ": " + sentence_from_density(component.density, units) +
         std::string(measure_words(component.kind)) + " (" + chance_text(component.confidence) +
         ").";
}

}  // namespace

std::vector<std::string> tint_sentences(const Tint& tint, DensityUnits units) {
  std::vector<std::string> sentences;
  for (const TintComponent& component : tint.components) {
    sentences.push_back(component_sentence(component, units));
  }
  const bool any_veil = std::any_of(tint.components.begin(), tint.components.end(),
                                    [](const auto& c) { return c.kind != TintKind::image_stain; });
  if (any_veil && tint.may_be_stock) {
    sentences.emplace_back(
        "It may be this film's own colour: what its clean base looks like isn't known yet "
        "(base_tint on the roll card).");
  }
  if (!tint.kind && tint.components.empty()) {
    sentences.push_back("Its tint can't be told. " + unknown_sentence(tint.kind.why()));
  } else if (tint.kind == TintKind::none) {
    std::string text = "No tint shows (" + chance_text(tint.confidence) + ")";
    if (tint.detection_limit) {
      text += "; one of " +
              sentence_from_density({*tint.detection_limit, 0.0, {}, {}, {}, false}, units) +
              " would";
    }
    sentences.push_back(text + ".");
  }
  return sentences;
}

std::string_view tint_name(TintKind kind) {
  switch (kind) {
    case TintKind::dye_left:
      return "dye left";
    case TintKind::sensitising_dye:
      return "sensitising dye left";
    case TintKind::antihalation_dye:
      return "anti-halation dye left";
    case TintKind::fixer_haze:
      return "milky film";
    case TintKind::yellow_stain:
      return "yellow stain";
    case TintKind::image_stain:
      return "stain that grows with the silver";
    case TintKind::none:
      break;
  }
  return "of unknown kind";
}

std::string_view mark_name(MarkKind kind) {
  return word_of(kind).one;
}

std::string_view marks_name(MarkKind kind) {
  return word_of(kind).many;
}

std::string mark_contrast_text(const Mark& mark, DensityUnits units) {
  if (!mark.contrast_density || !std::isfinite(*mark.contrast_density)) {
    return "–";
  }
  const double contrast = *mark.contrast_density;
  return std::string(contrast < 0.0 ? "thinner by " : "denser by ") +
         sentence_from_density({std::abs(contrast), 0.0, {}, {}, {}, false}, units);
}

std::string mark_size_text(const Mark& mark) {
  constexpr double least_mm = 0.1;
  constexpr double whole_from_mm = 10.0;
  if (mark.size_mm < least_mm) {
    return "under 0.1 mm";
  }
  return text_from_number(mark.size_mm, mark.size_mm < whole_from_mm ? 1 : 0) + " mm";
}

std::string mark_counts(const std::vector<const Mark*>& marks) {
  std::map<MarkKind, int> counts;
  for (const Mark* mark : marks) {
    ++counts[mark->kind];
  }
  std::vector<std::pair<MarkKind, int>> sorted(counts.begin(), counts.end());
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::string text;
  for (const auto& [kind, count] : sorted) {
    const bool one = count == 1;
    text += text.empty() ? "" : ", ";
    text += std::to_string(count) + " ";
    text += one && kind == MarkKind::dust ? "piece of dust"
                                          : std::string(one ? mark_name(kind) : marks_name(kind));
  }
  return text;
}

}  // namespace fogline
