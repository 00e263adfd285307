#include "stats/evidence/confidence_sequence.h"

#include <cmath>

#include "stats/arguments.h"
#include "stats/evidence/e_process.h"
#include "stats/root.h"

namespace stats {
namespace {

/// The root between 0 and successes/trials of height = successes log p + failures log(1 - p), which rises
/// there; `height` is below its largest value.
double likelihood_root(double successes, double failures, double height) {
  const auto beyond = [=](double p) { return successes * std::log(p) + failures * std::log1p(-p) - height; };
  const double low = std::exp(height / successes);  // where successes log p alone is the height
  const double high = successes / (successes + failures);
  if (failures == 0 || low < 1e-300 || beyond(low) >= 0) return low;
  return root_between(beyond, low, high);
}

}  // namespace

Interval beta_confidence_sequence(int correct, int trials, double confidence, double a, double b) {
  require_level("confidence", confidence);
  const double log_at_half = log_beta_mixture(correct, trials, 0.5, a, b);
  // log e at chance p is log_at_half - trials log 2 - (correct log p + wrong log(1 - p)).
  const double height = log_at_half - trials * std::log(2.0) + std::log1p(-confidence);
  const double wrong = trials - correct;
  return {correct == 0 ? 0.0 : likelihood_root(correct, wrong, height),
          wrong == 0 ? 1.0 : 1 - likelihood_root(wrong, correct, height)};
}

}  // namespace stats
