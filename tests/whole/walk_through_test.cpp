#include <gtest/gtest.h>

#include <sstream>

#include "whole/program.h"

namespace {

/// The commands of the README's walk-through, verbatim.
std::string walk_through() {
  const std::string readme = content_of(std::filesystem::path(SOURCE_FOLDER) / "README.md");
  const std::size_t begin = readme.find("<!-- walk-through"),
                    end = readme.find("<!-- end of the walk-through -->");
  std::istringstream lines(readme.substr(begin, end - begin));
  std::string script = "set -e\n";
  bool inside = false;
  for (std::string line; std::getline(lines, line);) {
    if (line == "```sh" || line == "```")
      inside = line == "```sh";
    else if (inside)
      script += line + "\n";
  }
  return script;
}

TEST(WalkThrough, GoesFromNothingToFindings) {
  Folder folder;
  folder.write("walk.sh", walk_through());
  const std::string program = std::filesystem::path(BLINDSWAP_PROGRAM).parent_path();
  const std::string command = "cd '" + folder.path().string() + "' && PATH='" + program +
                              "':\"$PATH\" sh walk.sh >stdout 2>stderr </dev/null";
  EXPECT_EQ(std::system(command.c_str()), 0) << content_of(folder / "stderr");
  const std::string out = content_of(folder / "stdout");
  for (const char* expected : {"commitment  ", "12 of 16", "kept trial 16, Ada",
                               "16 answers compared, 0 differ", "chain head  ", "exact p", "everything fits"})
    EXPECT_NE(out.find(expected), std::string::npos) << expected << " is missing in\n" << out;
  EXPECT_GT(content_of(folder / "report.html").size(), 5000u);
  EXPECT_GT(content_of(folder / "report.json").size(), 1000u);
  EXPECT_NE(content_of(folder / "papers/first-1-helper-sheet.txt").find("muted"), std::string::npos);
}

}  // namespace
