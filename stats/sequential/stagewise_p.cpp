#include "stats/sequential/stagewise_p.h"

#include <algorithm>

#include <vector>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {
namespace {

void check_stagewise_limit(const StoppingRule& rule, int observed, double confidence) {
  require_count("looks", std::ssize(rule.looks), 1, kMostTrials);
  require_count("observed", observed, 0, std::ssize(rule.looks));
  require_level("confidence", confidence);
}

/// The share at which an end with `observed` or beyond has this probability, which grows with the share.
double share_of_stagewise_p(const StoppingRule& rule, int observed, double probability) {
  const auto excess = [&](double share) {
    const std::vector<Gain> gains(rule.looks.size(), {1, 0, share});
    return stagewise_p(rule, gains, observed) - probability;
  };
  return root_between(excess, 0.0, 1.0, 40);
}

}  // namespace

double stagewise_p(const StoppingRule& rule, std::span<const Gain> gains, int observed) {
  require_count("looks", std::ssize(rule.looks), 1, kMostTrials);
  require_count("number of gains", std::ssize(gains), std::ssize(rule.looks), std::ssize(rule.looks));
  require_count("observed", observed, 0, kMostTrials);
  RunningTotal total;
  double p = 0;
  for (std::size_t i = 0; i + 1 < gains.size(); ++i) {
    total.add(gains[i]);
    if (rule.looks[i].support) p += total.take_at_least(*rule.looks[i].support);
  }
  total.add(gains.back());
  return std::min(1.0, p + total.take_at_least(observed));
}

double stagewise_lower(const StoppingRule& rule, int observed, double confidence) {
  check_stagewise_limit(rule, observed, confidence);
  return observed == 0 ? 0.0 : share_of_stagewise_p(rule, observed, 1 - confidence);
}

double stagewise_upper(const StoppingRule& rule, int observed, double confidence) {
  check_stagewise_limit(rule, observed, confidence);
  if (observed == std::ssize(rule.looks)) return 1;
  return share_of_stagewise_p(rule, observed + 1, confidence);
}

}  // namespace stats
