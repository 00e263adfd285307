#include "stats/share/coverage.h"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <vector>

#include "stats/arguments.h"
#include "stats/share/approximate_interval.h"

namespace stats {
namespace {

constexpr int kMostCoverageTrials = 10'000;

/// The limits for each number right; both grow with it.
struct LimitsByCorrect {
  std::vector<double> lower;
  std::vector<double> upper;
};

LimitsByCorrect limits_by_correct(IntervalMethod method, int trials, double confidence) {
  require_count("trials", trials, 1, kMostCoverageTrials);
  LimitsByCorrect limits;
  for (int correct = 0; correct <= trials; ++correct) {
    const auto [lower, upper] = share_interval(method, correct, trials, confidence);
    limits.lower.push_back(lower);
    limits.upper.push_back(upper);
  }
  return limits;
}

/// Probability, at `share`, of the numbers right whose interval holds `held`.
double probability_of_holding(const LimitsByCorrect& limits, double held, double share) {
  const auto first = std::lower_bound(limits.upper.begin(), limits.upper.end(), held) - limits.upper.begin();
  const auto end = std::upper_bound(limits.lower.begin(), limits.lower.end(), held) - limits.lower.begin();
  if (first >= end) return 0;
  const boost::math::binomial right(double(limits.lower.size()) - 1, share);
  return cdf(right, double(end - 1)) - (first == 0 ? 0.0 : cdf(right, double(first - 1)));
}

/// Where the coverage may jump, in order.
std::vector<double> jumps_between(double lowest, double highest, const LimitsByCorrect& limits) {
  std::vector<double> jumps{lowest, highest};
  for (const auto* side : {&limits.lower, &limits.upper})
    for (const double limit : *side)
      if (limit > lowest && limit < highest) jumps.push_back(limit);
  std::sort(jumps.begin(), jumps.end());
  return jumps;
}

}  // namespace

Interval share_interval(IntervalMethod method, int correct, int trials, double confidence) {
  switch (method) {
    case IntervalMethod::clopper_pearson:
      return clopper_pearson(correct, trials, confidence);
    case IntervalMethod::mid_p:
      return mid_p(correct, trials, confidence);
    case IntervalMethod::wilson:
      return wilson(correct, trials, confidence);
    case IntervalMethod::jeffreys:
      return jeffreys(correct, trials, confidence);
    case IntervalMethod::likelihood:
      break;
  }
  return likelihood_interval(correct, trials, confidence);
}

double coverage(IntervalMethod method, int trials, double share, double confidence) {
  require_closed_probability("share", share);
  return probability_of_holding(limits_by_correct(method, trials, confidence), share, share);
}

LeastCoverage least_coverage(IntervalMethod method, int trials, double confidence, double lowest,
                             double highest) {
  require_closed_probability("lowest", lowest);
  require_between("highest", highest, lowest, 1);
  const LimitsByCorrect limits = limits_by_correct(method, trials, confidence);
  const std::vector<double> jumps = jumps_between(lowest, highest, limits);
  LeastCoverage least{1, lowest};
  for (std::size_t i = 1; i < jumps.size(); ++i) {
    const double inside = (jumps[i - 1] + jumps[i]) / 2;
    for (const double end : {jumps[i - 1], jumps[i]}) {
      const double held = probability_of_holding(limits, inside, end);
      if (held < least.coverage) least = {held, end};
    }
  }
  return least;
}

}  // namespace stats
