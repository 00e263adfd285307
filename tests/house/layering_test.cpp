#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

namespace {

namespace fs = std::filesystem;

const fs::path root = SOURCE_FOLDER;

struct Row {
  std::vector<std::string> ours;     // folders or headers, as from the root
  std::vector<std::string> outside;  // prefixes
};

std::vector<std::string> words(const std::string& cell) {
  std::istringstream stream(cell);
  return {std::istream_iterator<std::string>(stream), {}};
}

std::map<std::string, Row> table() {
  std::map<std::string, Row> rows;
  std::ifstream file(root / "src/layers.txt");
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::vector<std::string> cells;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, '|');) cells.push_back(cell);
    rows[words(cells.at(0)).at(0)] = {words(cells.at(1)), words(cells.at(2))};
  }
  return rows;
}

std::vector<fs::path> sources_in(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(root / folder))
    if (const auto end = entry.path().extension(); end == ".cpp" || end == ".h")
      files.push_back(fs::relative(entry.path(), root));
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<std::string> includes_of(const fs::path& file) {
  static const std::regex include(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
  std::vector<std::string> found;
  std::ifstream stream(root / file);
  for (std::string line; std::getline(stream, line);)
    if (std::smatch match; std::regex_search(line, match, include)) found.push_back(match[1]);
  return found;
}

bool starts_with_folder(const std::string& path, const std::string& folder) {
  return path == folder || path.starts_with(folder + "/");
}

/// "text/error.h" as from the root, "" when it is none of ours.
std::string our_path(const std::string& include) {
  for (const char* base : {"src/", ""})
    if (fs::exists(root / (base + include))) return base + include;
  return "";
}

bool is_standard(const std::string& include) {
  return include.find('.') == std::string::npos && include.find('/') == std::string::npos;
}

bool is_system(const std::string& include) {
  static const std::set<std::string> allowed = {"unistd.h", "fcntl.h"};
  return allowed.contains(include);
}

std::string verdict(const std::string& folder, const Row& row, const std::string& include) {
  if (is_standard(include) || is_system(include)) return "";
  if (const std::string ours = our_path(include); !ours.empty()) {
    if (starts_with_folder(ours, folder)) return "";
    for (const std::string& allowed : row.ours)
      if (starts_with_folder(ours, allowed)) return "";
    std::string list;
    for (const std::string& allowed : row.ours) list += " " + allowed;
    return folder + " may include of ours:" + list;
  }
  for (const std::string& prefix : row.outside)
    if (include.starts_with(prefix)) return "";
  std::string list;
  for (const std::string& prefix : row.outside) list += " " + prefix;
  return folder + " may include from outside:" + list;
}

TEST(Layering, EveryIncludeIsOneThatItsFolderMayHave) {
  for (const auto& [folder, row] : table()) {
    if (!fs::exists(root / folder)) continue;
    for (const fs::path& file : sources_in(folder))
      for (const std::string& include : includes_of(file))
        EXPECT_EQ(verdict(folder, row, include), "") << file << " includes " << include;
  }
}

TEST(Layering, AForbiddenIncludeIsNamed) {
  const Row row{{"src/text"}, {"sqlite3.h"}};
  EXPECT_EQ(verdict("src/plan", row, "text/error.h"), "");
  EXPECT_EQ(verdict("src/plan", row, "vector"), "");
  EXPECT_EQ(verdict("src/plan", row, "seal/digest.h"), "src/plan may include of ours: src/text");
  EXPECT_EQ(verdict("src/plan", row, "sodium.h"), "src/plan may include from outside: sqlite3.h");
}

TEST(Layering, EveryFolderOfTheHouseHasItsRow) {
  const auto rows = table();
  for (const auto& entry : fs::directory_iterator(root / "src"))
    if (entry.is_directory()) {
      EXPECT_TRUE(rows.contains("src/" + entry.path().filename().string())) << entry.path();
    }
  EXPECT_TRUE(rows.contains("stats"));
  EXPECT_TRUE(rows.contains("protocols"));
}

TEST(Layering, TheDoorsForPagesKnowOnlyTheStandardLibrary) {
  for (const char* door : {"src/sitting/listener_door.h", "src/sitting/helper_door.h"})
    for (const std::string& include : includes_of(door))
      EXPECT_TRUE(is_standard(include)) << door << ": " << include;
}

TEST(Layering, WhatServesListenersKnowsNothingOfTheHelper) {
  int files = 0;
  for (const fs::path& file : sources_in("src/web")) {
    if (!file.filename().string().starts_with("listener_")) continue;
    ++files;
    for (const std::string& include : includes_of(file)) {
      EXPECT_EQ(include.find("helper"), std::string::npos) << file << ": " << include;
      EXPECT_EQ(include.find("organiser"), std::string::npos) << file << ": " << include;
    }
  }
  EXPECT_GE(files, 2);
}

TEST(Layering, CommandLineParsingStandsInAtMostEightFiles) {
  int files = 0;
  for (const fs::path& file : sources_in("src")) {
    const auto includes = includes_of(file);
    files += std::any_of(includes.begin(), includes.end(),
                         [](const std::string& include) { return include.starts_with("CLI/"); });
  }
  EXPECT_LE(files, 8);
}

TEST(Layering, EveryTestFileIsBuilt) {
  std::ifstream built(fs::path(BUILD_FOLDER) / "built_tests.txt");
  const std::string text{std::istreambuf_iterator<char>(built), {}};
  ASSERT_FALSE(text.empty());
  for (const fs::path& file : sources_in("tests"))
    if (file.string().ends_with("_test.cpp")) {
      EXPECT_NE(text.find((root / file).string() + "\n"), std::string::npos) << file << " is not built";
    }
}

TEST(Layering, TheTopLevelIsFixed) {
  const std::set<std::string> allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md",
                                         "LICENSE",        "src",       "stats",
                                         "protocols",      "tests",     "example_sessions"};
  for (const auto& entry : fs::directory_iterator(root)) {
    const std::string name = entry.path().filename().string();
    if (name.front() != '.' && !name.starts_with("build")) {
      EXPECT_TRUE(allowed.contains(name)) << name;
    }
  }
}

}  // namespace
