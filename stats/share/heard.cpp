#include "stats/share/heard.h"

#include <algorithm>

#include "stats/arguments.h"
#include "stats/share/power.h"

namespace stats {
namespace {

double heard_or_none(double share, double chance) { return share_heard(std::max(share, chance), chance); }

}  // namespace

HeardEstimate estimate_heard(int correct, int trials, double chance, double confidence) {
  const Interval right = clopper_pearson(correct, trials, confidence);
  require_open_probability("chance", chance);
  const double share = double(correct) / trials;
  return {heard_or_none(share, chance),
          share < chance,
          {heard_or_none(right.lower, chance), heard_or_none(right.upper, chance)}};
}

double heard_lower(int correct, int trials, double chance, double confidence) {
  require_open_probability("chance", chance);
  return heard_or_none(clopper_pearson_lower(correct, trials, confidence), chance);
}

double heard_upper(int correct, int trials, double chance, double confidence) {
  require_open_probability("chance", chance);
  return heard_or_none(clopper_pearson_upper(correct, trials, confidence), chance);
}

}  // namespace stats
