#pragma once

#include <string>
#include <vector>

#include "findings/bench/coverage.h"
#include "findings/bench/doubts.h"
#include "findings/bench/feature_test.h"
#include "findings/bench/repeatability.h"

namespace findings {

/// What there is to say of a campaign's readings before anybody listens.
struct BenchFindings {
  std::string title, baseline;
  Coverage coverage;
  std::vector<Doubt> doubts;
  std::vector<BenchComparison> comparisons;
  std::vector<FeatureTest> features;
};

}  // namespace findings
