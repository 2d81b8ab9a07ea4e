#include "words/film_words.h"

#include "record/invented_judgement.h"
#include "said.h"
#include "words/schema_words.h"

#include <cmath>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::vector<std::string> tint_said(const Tint& tint) {
  return tint_sentences(tint, DensityUnits::density);
}

Tint tint_of(TintKind kind) {
  Tint tint;
  tint.kind = kind;
  tint.components = {{kind, invented::density(0.084, 0.021), 0.97}};
  tint.may_be_stock = false;
  return tint;
}

TEST(TintWords, TellEveryKindByWordsOfItsOwn) {
  std::set<std::string> sentences;
  std::set<std::string_view> names;
  for (const auto& row : schema_words<TintKind>().rows) {
    if (row.kind == TintKind::none) {
      continue;
    }
    const auto said = tint_said(tint_of(row.kind));
    ASSERT_EQ(said.size(), 1U) << row.word;
    EXPECT_EQ(fault_of(said), "");
    EXPECT_THAT(said.front(), HasSubstr("0.08 ± 0.02"));
    EXPECT_THAT(said.front(), EndsWith("(97 %)."));
    EXPECT_THAT(said.front(), Not(HasSubstr("unknown")));
    sentences.insert(said.front());
    names.insert(tint_name(row.kind));
  }
  EXPECT_EQ(sentences.size(), schema_words<TintKind>().rows.size() - 1);
  EXPECT_EQ(names.size(), sentences.size());
}

TEST(TintWords, SayWhereATintsDensityIsMeasured) {
  EXPECT_THAT(tint_said(tint_of(TintKind::dye_left)).front(),
              HasSubstr("in the channel that it darkens most"));
  EXPECT_THAT(tint_said(tint_of(TintKind::fixer_haze)).front(), HasSubstr("in unexposed film"));
  EXPECT_THAT(tint_said(tint_of(TintKind::image_stain)).front(),
              HasSubstr("at a silver density of 1"));
}

TEST(TintWords, GiveEachComponentASentenceInItsOrder) {
  const auto said = tint_said(invented::dye());
  ASSERT_EQ(said.size(), 2U);
  EXPECT_THAT(said[0], StartsWith("Dye is left"));
  EXPECT_THAT(said[1], AllOf(HasSubstr("yellow stain"), EndsWith("(56 %).")));
}

TEST(TintWords, DoubtAVeilThatMayBeTheStocks) {
  Tint tint = tint_of(TintKind::dye_left);
  tint.may_be_stock = true;
  ASSERT_EQ(tint_said(tint).size(), 2U);
  EXPECT_THAT(tint_said(tint).back(), HasSubstr("base_tint on the roll card"));
  // What grows with silver isn't the base's.
  tint = tint_of(TintKind::image_stain);
  tint.may_be_stock = true;
  EXPECT_EQ(tint_said(tint).size(), 1U);
}

TEST(TintWords, SayWhatWouldShowWhereNoneDoes) {
  Tint tint;
  tint.kind = TintKind::none;
  tint.confidence = 0.98;
  EXPECT_THAT(tint_said(tint), ElementsAre("No tint shows (98 %)."));
  tint.detection_limit = 0.034;
  EXPECT_THAT(tint_said(tint), ElementsAre("No tint shows (98 %); one of 0.03 would."));
  EXPECT_THAT(tint_sentences(tint, DensityUnits::stops),
              ElementsAre("No tint shows (98 %); one of 0.11 stops would."));
}

TEST(TintWords, SayWhyATintIsNotTold) {
  Tint tint;
  tint.kind = Unknown::grey_scan;
  EXPECT_THAT(tint_said(tint), ElementsAre(StartsWith("Its tint can't be told. The scan is grey")));
}

TEST(MarkWords, NameEveryKindInOneAndInMany) {
  std::set<std::string_view> names;
  for (const auto& row : schema_words<MarkKind>().rows) {
    EXPECT_FALSE(mark_name(row.kind).empty()) << row.word;
    EXPECT_FALSE(marks_name(row.kind).empty()) << row.word;
    names.insert(mark_name(row.kind));
  }
  EXPECT_EQ(names.size(), schema_words<MarkKind>().rows.size());
}

TEST(MarkWords, SayDenserFromThinner) {
  Mark mark = invented::mark(MarkKind::dust, {}, 1.0, 0.117, 0.9);
  EXPECT_EQ(mark_contrast_text(mark, DensityUnits::density), "denser by 0.12");
  mark.contrast_density = -0.31;
  EXPECT_EQ(mark_contrast_text(mark, DensityUnits::density), "thinner by 0.31");
  mark.contrast_density = -0.30103;
  EXPECT_EQ(mark_contrast_text(mark, DensityUnits::stops), "thinner by 1.00 stops");
  for (const Known<double>& none :
       {Known<double>(Unknown::uneven_surround), Known<double>(INFINITY), Known<double>(NAN)}) {
    mark.contrast_density = none;
    EXPECT_EQ(mark_contrast_text(mark, DensityUnits::density), "–");
  }
}

TEST(MarkWords, GiveSizesNoFinerThanTheyAreKnown) {
  const auto size = [](double mm) {
    return mark_size_text(invented::mark(MarkKind::dust, {}, mm, 0.1, 0.9));
  };
  EXPECT_EQ(size(0.04), "under 0.1 mm");
  EXPECT_EQ(size(0.1), "0.1 mm");
  EXPECT_EQ(size(1.449), "1.4 mm");
  EXPECT_EQ(size(9.94), "9.9 mm");
  EXPECT_EQ(size(128.4), "128 mm");
}

TEST(MarkWords, CountTheMostFrequentFirst) {
  const Mark dust = invented::mark(MarkKind::dust, {}, 1.0, 0.1, 0.9);
  const Mark bell = invented::mark(MarkKind::air_bell, {}, 1.0, 0.1, 0.9);
  EXPECT_EQ(mark_counts({}), "");
  EXPECT_EQ(mark_counts({&dust}), "1 piece of dust");
  EXPECT_EQ(mark_counts({&dust, &bell, &dust}), "2 pieces of dust, 1 air bell");
  EXPECT_EQ(mark_counts({&dust, &bell, &bell, &bell}), "3 air bells, 1 piece of dust");
}

}  // namespace
}  // namespace fogline
