#include "stats/effects/two_shares.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// Right answers of the second campaign, given both sums of a table of two by two, at any odds ratio.
class GivenSums {
 public:
  GivenSums(int right_1, int trials_1, int right_2, int trials_2)
      : least_(std::max(0, right_1 + right_2 - trials_1)), most_(std::min(trials_2, right_1 + right_2)) {
    const auto log_choose = [](int n, int k) {
      return std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
    };
    for (int count = least_; count <= most_; ++count)
      logs_.push_back(log_choose(trials_2, count) + log_choose(trials_1, right_1 + right_2 - count));
  }

  int least() const { return least_; }
  int most() const { return most_; }

  std::vector<double> probabilities(double log_odds) const {
    std::vector<double> all;
    double top = -kInfinite, sum = 0;
    for (std::size_t i = 0; i < logs_.size(); ++i) top = std::max(top, logs_[i] + log_odds * double(i));
    for (std::size_t i = 0; i < logs_.size(); ++i) {
      all.push_back(std::exp(logs_[i] + log_odds * double(i) - top));
      sum += all.back();
    }
    for (double& one : all) one /= sum;
    return all;
  }

  /// Probability of `count` or more.
  double upper_tail(int count, double log_odds) const {
    const auto all = probabilities(log_odds);
    double sum = 0;
    for (std::size_t i = all.size(); i-- > std::size_t(count - least_);) sum += all[i];
    return sum;
  }
  double lower_tail(int count, double log_odds) const {
    const auto all = probabilities(log_odds);
    double sum = 0;
    for (std::size_t i = 0; i <= std::size_t(count - least_); ++i) sum += all[i];
    return sum;
  }
  double mean(double log_odds) const {
    const auto all = probabilities(log_odds);
    double sum = 0;
    for (std::size_t i = 0; i < all.size(); ++i) sum += all[i] * (least_ + double(i));
    return sum;
  }

 private:
  int least_, most_;
  std::vector<double> logs_;
};

/// Where a growing function of the logarithm is 0.
template <typename Growing>
double odds_where(const Growing& growing) {
  double reach = 1;
  while (reach < 700 && (growing(-reach) > 0 || growing(reach) < 0)) reach *= 2;
  return std::exp(root_between(growing, -reach, reach));
}

}  // namespace

TwoShares compare_shares(int right_1, int trials_1, int right_2, int trials_2, double confidence) {
  require_count("trials of the first", trials_1, 1, 100'000);
  require_count("trials of the second", trials_2, 1, 100'000);
  require_count("right of the first", right_1, 0, trials_1);
  require_count("right of the second", right_2, 0, trials_2);
  require_level("confidence", confidence);
  TwoShares found{};
  const double share_1 = double(right_1) / trials_1, share_2 = double(right_2) / trials_2;
  const Interval first = wilson(right_1, trials_1, confidence),
                 second = wilson(right_2, trials_2, confidence);
  found.difference = share_2 - share_1;
  found.difference_interval = {found.difference - std::hypot(share_2 - second.lower, first.upper - share_1),
                               found.difference + std::hypot(second.upper - share_2, share_1 - first.lower)};
  const GivenSums given(right_1, trials_1, right_2, trials_2);
  const auto null = given.probabilities(0);
  const double seen = null[std::size_t(right_2 - given.least())];
  for (const double one : null)
    if (one <= seen * (1 + 1e-7)) found.p += one;
  found.p = std::min(1.0, found.p);
  if (given.least() == given.most()) return found;
  const double tail = (1 - confidence) / 2;
  Interval limits{0, kInfinite};
  if (right_2 > given.least())
    limits.lower = odds_where([&](double log_odds) { return given.upper_tail(right_2, log_odds) - tail; });
  if (right_2 < given.most())
    limits.upper = odds_where([&](double log_odds) { return tail - given.lower_tail(right_2, log_odds); });
  found.odds_ratio = right_2 == given.least() ? 0
                     : right_2 == given.most()
                         ? kInfinite
                         : odds_where([&](double log_odds) { return given.mean(log_odds) - right_2; });
  found.odds_ratio_interval = limits;
  return found;
}

}  // namespace stats
