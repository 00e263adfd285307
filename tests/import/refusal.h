#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "import/import.h"
#include "text/error.h"

/// The whole text of the refusal of `act`, or "accepted".
template <class Act>
std::string refusal(const Act& act) {
  try {
    act();
  } catch (const text::BadInput& error) {
    return error.what();
  }
  return "accepted";
}

/// Everything a reading may need to be named for.
inline const imported::Assignment named = {"bell wire", "living room", "", "", 1};

/// The refusal of a file of curves, with cable and rig named.
inline std::string curve_refusal(const std::string& content, const std::string& name = "f.csv") {
  return refusal([&] { imported::parse({name, content}, named); });
}

/// The refusal of a table of cables.
inline std::string cable_refusal(const std::string& content) {
  return refusal([&] { imported::parse({"c.csv", content}, {}); });
}

/// The only reading of a file of curves that is read without a warning.
inline imported::Reading one(const std::string& content, const std::string& name = "f.csv") {
  const imported::Parsed parsed = imported::parse({name, content}, named);
  EXPECT_EQ(parsed.readings.size(), 1U);
  EXPECT_EQ(parsed.warnings, std::vector<std::string>{});
  return parsed.readings.at(0);
}
