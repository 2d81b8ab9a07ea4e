// Whole files or none.

#include "files/write_file.h"

#include "pixels/test_files.h"

#include <fogline/base/error.h>

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

TEST(WriteFile, RefusesInOneSentenceAndLeavesNothing) {
  const test::TempFolder folder;
  for (const std::string& path : {folder.file("absent/page"), folder.path().string()}) {
    try {
      write_file(path, "x");
      FAIL() << path;
    } catch (const FileError& error) {
      EXPECT_EQ(error.file(), path);
      EXPECT_EQ(std::string(error.what()).rfind(path + " can't be written", 0), 0U);
    }
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
  EXPECT_THROW(write_file("/dev/full", "x"), FileError);
}

}  // namespace
}  // namespace fogline
