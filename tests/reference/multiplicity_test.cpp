// Adjusted p-values against R's p.adjust.
#include "stats/multiplicity.h"

#include "reference/draws.h"

namespace reference {
namespace {

using Multiplicity = AgainstR;

/// p-values of a family, often with ties, 0 and 1.
Numbers family(Draws& draws) {
  Numbers p;
  const int tests = draws.size(60), kind = draws.whole(1, 4);
  for (int i = 0; i < tests; ++i)
    p.push_back(kind == 1   ? draws.share()
                : kind == 2 ? draws.closed_share()
                : kind == 3 ? draws.whole(0, 5) / 5.
                            : std::pow(draws.share(), 6));
  return p;
}

TEST_F(Multiplicity, AdjustedPAreThoseOfPAdjust) {
  const auto calls = drawn(500, 10'000, [](Draws& draws) -> std::vector<Numbers> { return {family(draws)}; });
  const auto ours = [](const Call& call) {
    Numbers all;
    for (const auto adjust : {stats::bonferroni, stats::holm, stats::hochberg, stats::hommel,
                              stats::benjamini_hochberg, stats::benjamini_yekutieli}) {
      const Numbers adjusted = adjust(call.list(0));
      all.insert(all.end(), adjusted.begin(), adjusted.end());
    }
    return all;
  };
  expect_alike({"multiplicity.R", "adjusted", "p"}, calls, ours, {1e-13});
}

}  // namespace
}  // namespace reference
