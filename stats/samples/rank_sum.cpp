#include "stats/samples/rank_sum.h"

#include <vector>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/samples/mean_difference.h"

namespace stats {

RankSum rank_sum(std::span<const double> x, std::span<const double> y, Alternative alternative,
                 const MonteCarlo& monte_carlo) {
  require_count("number of x", std::ssize(x), 1, 100'000);
  require_count("number of y", std::ssize(y), 1, 100'000);
  std::vector<double> both(x.begin(), x.end());
  both.insert(both.end(), y.begin(), y.end());
  std::vector<double> ranks;
  double sum = 0;
  for (const auto doubled : doubled_midranks(both)) {
    if (ranks.size() < x.size()) sum += double(doubled) / 2;
    ranks.push_back(double(doubled));
  }
  const std::span all(ranks);
  const double n = double(x.size());
  return {sum - n * (n + 1) / 2,
          mean_difference_test(all.first(x.size()), all.subspan(x.size()), alternative, monte_carlo)};
}

}  // namespace stats
