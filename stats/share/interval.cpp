#include "stats/share/interval.h"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>

#include "stats/arguments.h"

namespace stats {
namespace {

void check(int correct, int trials, double confidence) {
  require_correct_of_trials(correct, trials);
  require_level("confidence", confidence);
}

double exact_lower(int correct, int trials, double tail) {
  return correct == 0 ? 0.0 : boost::math::ibeta_inv(double(correct), trials - correct + 1.0, tail);
}

double exact_upper(int correct, int trials, double tail) {
  return correct == trials ? 1.0 : boost::math::ibetac_inv(correct + 1.0, double(trials - correct), tail);
}

double score_lower(int correct, int trials, double tail) {
  const double z = quantile(complement(boost::math::normal(), tail));
  const double x = correct;
  const double n = trials;
  return (x + z * z / 2 - z * std::sqrt(x * (n - x) / n + z * z / 4)) / (n + z * z);
}

double score_upper(int correct, int trials, double tail) {
  return 1 - score_lower(trials - correct, trials, tail);
}

}  // namespace

Interval clopper_pearson(int correct, int trials, double confidence) {
  check(correct, trials, confidence);
  const double tail = (1 - confidence) / 2;
  return {exact_lower(correct, trials, tail), exact_upper(correct, trials, tail)};
}

double clopper_pearson_lower(int correct, int trials, double confidence) {
  check(correct, trials, confidence);
  return exact_lower(correct, trials, 1 - confidence);
}

double clopper_pearson_upper(int correct, int trials, double confidence) {
  check(correct, trials, confidence);
  return exact_upper(correct, trials, 1 - confidence);
}

Interval wilson(int correct, int trials, double confidence) {
  check(correct, trials, confidence);
  const double tail = (1 - confidence) / 2;
  return {score_lower(correct, trials, tail), score_upper(correct, trials, tail)};
}

double wilson_lower(int correct, int trials, double confidence) {
  check(correct, trials, confidence);
  return score_lower(correct, trials, 1 - confidence);
}

double wilson_upper(int correct, int trials, double confidence) {
  check(correct, trials, confidence);
  return score_upper(correct, trials, 1 - confidence);
}

}  // namespace stats
