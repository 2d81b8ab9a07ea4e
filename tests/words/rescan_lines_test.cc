#include "words/rescan_lines.h"

#include "said.h"

#include <algorithm>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Contains;
using testing::HasSubstr;

std::vector<std::string> texts_of(const std::vector<std::string_view>& lines) {
  return {lines.begin(), lines.end()};
}

TEST(RescanLines, AreSentencesSaidOnce) {
  const auto flatbed = texts_of(flatbed_lines());
  const auto camera = texts_of(camera_lines());
  std::set<std::string> all(flatbed.begin(), flatbed.end());
  all.insert(camera.begin(), camera.end());
  EXPECT_EQ(all.size(), flatbed.size() + camera.size());
  for (const std::string& line : all) {
    EXPECT_EQ(fault_of(std::string_view(line)), "") << line;
    EXPECT_TRUE(line.ends_with('.')) << line;
  }
}

// Without these a scan tells no density, or only indicative ones.
TEST(RescanLines, AskForAllThatDensityNeeds) {
  const auto flatbed = texts_of(flatbed_lines());
  EXPECT_THAT(flatbed.front(), HasSubstr("positive"));
  for (const char* needed : {"16 bits", "automatic", "linear tone curve", "one fixed exposure",
                             "80 to 95 %", "Density zero", "opaque", "TIFF"}) {
    EXPECT_THAT(flatbed, Contains(HasSubstr(needed))) << needed;
  }
  const auto camera = texts_of(camera_lines());
  for (const char* needed : {"linear 16-bit TIFF", "Manual exposure", "below full scale", "Mask",
                             "density zero", "lens capped"}) {
    EXPECT_THAT(camera, Contains(HasSubstr(needed))) << needed;
  }
}

}  // namespace
}  // namespace fogline
