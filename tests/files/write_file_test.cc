// Whole files or none.

#include "files/write_file.h"

#include "base/refusal_of.h"
#include "pixels/test_files.h"

#include <filesystem>
#include <string>

#include <gtest/gtest.h>
#include <sys/stat.h>

namespace fogline {
namespace {

namespace fs = std::filesystem;

std::string text_of(const std::string& path) {
  const auto bytes = test::bytes_of(path);
  return {bytes.begin(), bytes.end()};
}

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(WriteFile, WritesAndReplaces) {
  const test::TempFolder folder;
  const std::string path = folder.file("page.html");
  write_file(path, "first");
  EXPECT_EQ(text_of(path), "first");
  const std::string large(3'000'000, 'x');
  write_file(path, large);
  EXPECT_EQ(text_of(path), large);
  write_file(path, "");
  EXPECT_EQ(text_of(path), "");
  EXPECT_EQ(files_in(folder.path()), 1U);
}

TEST(WriteFile, FollowsALink) {
  const test::TempFolder folder;
  write_file(folder.file("real"), "old");
  fs::create_symlink(folder.file("real"), folder.file("link"));
  write_file(folder.file("link"), "new");
  EXPECT_EQ(text_of(folder.file("real")), "new");
  EXPECT_TRUE(fs::is_symlink(folder.file("link")));
}

TEST(WriteFile, RightsAreTheUsersUsual) {
  const test::TempFolder folder;
  const mode_t old_mask = ::umask(022);
  write_file(folder.file("page"), "x");
  ::umask(old_mask);
  EXPECT_EQ(fs::status(folder.file("page")).permissions(), fs::perms(0644));
}

TEST(WriteFile, DevicesAreWrittenAsTheyAre) {
  EXPECT_NO_THROW(write_file("/dev/null", "x"));
  EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

TEST(WriteFile, RefusesAndLeavesNothing) {
  const test::TempFolder folder;
  for (const std::string& path : {folder.file("absent/page"), folder.path().string()}) {
    const auto refusal = test::refusal_of([&] { write_file(path, "x"); });
    ASSERT_TRUE(refusal) << path;
    EXPECT_EQ(refusal->file(), path);
    EXPECT_EQ(refusal->why().kind, Refusal::cant_write);
    // Why the system wouldn't.
    ASSERT_EQ(refusal->why().names.size(), 1U);
    EXPECT_NE(refusal->why().names.front(), "");
  }
  EXPECT_EQ(files_in(folder.path()), 0U);
  // The file beside the folder of the second attempt is gone as well.
  for (const auto& entry : fs::directory_iterator(folder.path().parent_path())) {
    EXPECT_NE(entry.path().string().rfind(folder.path().string() + ".", 0), 0U);
  }
}

TEST(WriteFile, AFullDiskIsSaid) {
  if (!fs::exists("/dev/full")) {
    GTEST_SKIP() << "no /dev/full";
  }
  EXPECT_EQ(test::kind_of_refusal([&] { write_file("/dev/full", "x"); }), Refusal::cant_write);
}

}  // namespace
}  // namespace fogline
