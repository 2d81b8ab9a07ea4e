#include <fogline/process/light_and_development.h>

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
  EXPECT_EQ(aim_for(&card, {}).source, AimSource::scanning);
  card.print_with = PrintWith::condenser;
  EXPECT_EQ(aim_for(&card, {}).contrast_index, 0.45);
  EXPECT_EQ(aim_for(&card, {}).source, AimSource::condenser);
}

TEST(Aim, OptionGoesBeforeCardBeforeUse) {
  RollCard card;
  card.print_with = PrintWith::condenser;
  card.aim_contrast_index = 0.52;
  EXPECT_EQ(aim_for(&card, {}).contrast_index, 0.52);
  EXPECT_EQ(aim_for(&card, {}).source, AimSource::card);
  EXPECT_EQ(aim_for(&card, 0.7).contrast_index, 0.7);
  EXPECT_EQ(aim_for(&card, 0.7).source, AimSource::option);
}

TEST(Aim, LikenessThatIsNotKnownIsSaid) {
  RollCard card;
  card.aim_like = "harbour";
  const Aim aim = aim_for(&card, {});
  EXPECT_EQ(aim.contrast_index, 0.58);
  EXPECT_EQ(aim.source, AimSource::diffusion);
  EXPECT_EQ(aim.unknown_like, "harbour");
  EXPECT_FALSE(aim_for(&card, 0.6).unknown_like);
  card.aim_contrast_index = 0.5;
  EXPECT_FALSE(aim_for(&card, {}).unknown_like);
}

}  // namespace
}  // namespace fogline
