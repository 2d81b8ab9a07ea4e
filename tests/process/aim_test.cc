#include <fogline/process/aim.h>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

// Both within what Stroebel et al., Basic Photographic Materials and Processes, give (from memory):
// 0.56 to 0.62 for diffusion light, 0.42 to 0.48 for condensers.
TEST(Aim, FollowsTheLight) {
  RollCard card;
  EXPECT_EQ(aim_for(nullptr, {}).contrast_index, 0.58);
  EXPECT_EQ(aim_for(&card, {}).contrast_index, 0.58);
  card.print_with = PrintWith::scan;
  EXPECT_EQ(aim_for(&card, {}).contrast_index, 0.58);
  EXPECT_EQ(aim_for(&card, {}).source, "the usual aim for scanning");
  card.print_with = PrintWith::condenser;
  EXPECT_EQ(aim_for(&card, {}).contrast_index, 0.45);
  EXPECT_EQ(aim_for(&card, {}).source, "the usual aim for condenser light");
}

TEST(Aim, OptionGoesBeforeCardBeforeUse) {
  RollCard card;
  card.print_with = PrintWith::condenser;
  card.aim_contrast_index = 0.52;
  EXPECT_EQ(aim_for(&card, {}).contrast_index, 0.52);
  EXPECT_EQ(aim_for(&card, {}).source, "the aim on your roll card");
  EXPECT_EQ(aim_for(&card, 0.7).contrast_index, 0.7);
  EXPECT_EQ(aim_for(&card, 0.7).source, "the aim you gave");
}

TEST(Aim, LikenessThatIsNotKnownIsSaid) {
  RollCard card;
  card.aim_like = "harbour";
  const Aim aim = aim_for(&card, {});
  EXPECT_EQ(aim.contrast_index, 0.58);
  EXPECT_THAT(aim.source, testing::HasSubstr("\"harbour\" isn't known here"));
  EXPECT_EQ(aim_for(&card, 0.6).source, "the aim you gave");
}

}  // namespace
}  // namespace fogline
