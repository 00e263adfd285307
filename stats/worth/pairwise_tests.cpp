#include "stats/worth/pairwise_tests.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "stats/multiplicity.h"
#include "stats/worth/worth_likelihood.h"

namespace stats {

std::optional<std::vector<PairwiseTest>> pairwise_tests(int items, std::span<const PairCount> counts,
                                                        const WorthOptions& options) {
  if (options.bias_reduced) throw std::domain_error("tests of pairs need a fit without bias reduction");
  const auto fit = fit_worths(items, counts, 0, options);
  if (!fit) return std::nullopt;
  std::vector<PairwiseTest> tests;
  std::vector<double> all_p;
  for (int i = 0; i < items; ++i)
    for (int j = i + 1; j < items; ++j) {
      const WorthLikelihood equal(items, counts, std::pair(i, j), options);
      const double ratio =
          std::max(0.0, 2 * (fit->log_likelihood - equal.log_likelihood(largest_parameters(equal))));
      const double p = std::erfc(std::sqrt(ratio / 2));
      tests.push_back({i, j, fit->worth[std::size_t(i)] - fit->worth[std::size_t(j)],
                       fit->difference_error(i, j), ratio, p, 1});
      all_p.push_back(p);
    }
  const auto adjusted = holm(all_p);
  for (std::size_t pair = 0; pair < tests.size(); ++pair) tests[pair].adjusted_p = adjusted[pair];
  return tests;
}

}  // namespace stats
