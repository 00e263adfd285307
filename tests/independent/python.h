#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

/// The lines that tests/independent/`script` prints when `input` is its standard input.
inline std::vector<std::string> lines_from_python(const std::string& script, const std::string& input) {
  std::string pattern = (std::filesystem::temp_directory_path() / "blindswap-XXXXXX").string();
  const int descriptor = mkstemp(pattern.data());
  EXPECT_GE(descriptor, 0);
  std::ofstream(pattern) << input;
  const std::string command =
      std::string(PYTHON3) + " -B '" SOURCE_FOLDER "/tests/independent/" + script + "' < '" + pattern + "'";
  std::ostringstream output;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 65536> part{};
  while (const std::size_t size = std::fread(part.data(), 1, part.size(), pipe))
    output.write(part.data(), static_cast<std::streamsize>(size));
  EXPECT_EQ(pclose(pipe), 0) << script;
  close(descriptor);
  std::filesystem::remove(pattern);
  std::vector<std::string> lines;
  std::istringstream stream(output.str());
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}
