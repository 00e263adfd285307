#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "reference/interpreter.h"
#include "tier.h"

/// Compares what R or Python gives for many calls of a function with ours.
namespace reference {

/// How far two numbers may lie apart: `relative` times the reference's, or `absolute` where that is more.
struct Tolerance {
  double relative;
  double absolute = 1e-300;
};

/// Over the tolerance: above 1. Nothing is like nothing, and infinity like the same infinity.
inline double apart(double ours, double theirs, const Tolerance& tolerance) {
  if (ours == theirs || (std::isnan(ours) && std::isnan(theirs))) return 0;
  const double difference = std::abs(ours - theirs);
  if (!std::isfinite(difference)) return std::numeric_limits<double>::infinity();
  return difference / std::max(tolerance.relative * std::abs(theirs), tolerance.absolute);
}

inline std::string listed(const Numbers& numbers) {
  std::ostringstream text;
  text.precision(17);
  text << '{';
  for (double number : numbers) text << ' ' << number;
  text << " }";
  return text.str();
}

inline std::string described(const Function& function, const Call& call) {
  std::string text = function.script + ": " + function.name + "(" + function.arguments + ") of";
  for (const Numbers& list : call.arguments) text += ' ' + listed(list);
  return text;
}

/// Compares ours with the reference's, number by number; tells of the first five calls that differ, and leaves
/// the largest difference, in parts of the tolerance, in the test's record.
inline void expect_alike(const Function& function, const std::vector<Call>& calls,
                         const std::function<Numbers(const Call&)>& ours, const Tolerance& tolerance) {
  const std::vector<Numbers> answers = ask(function, calls);
  double farthest = 0;
  int differing = 0;
  for (std::size_t i = 0; i < calls.size(); ++i) {
    const Numbers own = ours(calls[i]);
    ASSERT_EQ(own.size(), answers[i].size()) << described(function, calls[i]);
    bool differs = false;
    for (std::size_t j = 0; j < own.size(); ++j) {
      const double distance = apart(own[j], answers[i][j], tolerance);
      farthest = std::max(farthest, distance);
      differs = differs || distance > 1;
    }
    if (differs && ++differing <= 5)
      ADD_FAILURE() << described(function, calls[i]) << "\nours:   " << listed(own)
                    << "\nreference: " << listed(answers[i]);
  }
  EXPECT_EQ(differing, 0) << "of " << calls.size() << " calls of " << function.name;
  testing::Test::RecordProperty(function.name + "_apart", listed({farthest}));
}

class AgainstR : public testing::Test {
 protected:
  void SetUp() override {
    if (tier() == "quick") GTEST_SKIP() << "a minute of comparisons with R and SciPy: not in the quick tier";
    if (!has_r()) GTEST_SKIP() << "needs R: Debian package r-base-core";
  }
};

class AgainstPsych : public AgainstR {
 protected:
  void SetUp() override {
    AgainstR::SetUp();
    if (!IsSkipped() && !has_package("psych")) GTEST_SKIP() << "needs psych: Debian package r-cran-psych";
  }
};

class AgainstPython : public testing::Test {
 protected:
  void SetUp() override {
    if (tier() == "quick") GTEST_SKIP() << "a minute of comparisons with R and SciPy: not in the quick tier";
    if (python_with_scipy().empty()) GTEST_SKIP() << "needs SciPy: Debian package python3-scipy";
  }
};

}  // namespace reference
