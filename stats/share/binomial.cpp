#include "stats/share/binomial.h"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>

#include "stats/arguments.h"
#include "stats/level.h"

namespace stats {
namespace {

boost::math::binomial distribution(int correct, int trials, double chance) {
  require_correct_of_trials(correct, trials);
  require_open_probability("chance", chance);
  return boost::math::binomial(trials, chance);
}

double sum_of_small_probabilities(int correct, int trials, double chance) {
  const boost::math::binomial guessing(trials, chance);
  const double limit = pdf(guessing, correct) * (1 + 1e-7);
  double sum = 0;
  for (int count = 0; count <= trials; ++count) {
    const double probability = pdf(guessing, count);
    if (probability <= limit) sum += probability;
  }
  return std::min(1.0, sum);
}

}  // namespace

double chance_of_at_least(int correct, int trials, double chance) {
  const auto guessing = distribution(correct, trials, chance);
  return correct == 0 ? 1.0 : cdf(complement(guessing, correct - 1));
}

double chance_of_at_most(int correct, int trials, double chance) {
  return cdf(distribution(correct, trials, chance), correct);
}

double chance_of_exactly(int correct, int trials, double chance) {
  return pdf(distribution(correct, trials, chance), correct);
}

double two_sided(int correct, int trials, double chance) {
  const double upper = chance_of_at_least(correct, trials, chance);
  const double lower = chance_of_at_most(correct, trials, chance);
  if (chance == 0.5) return std::min(1.0, 2 * std::min(upper, lower));
  return sum_of_small_probabilities(correct, trials, chance);
}

std::optional<int> minimum_correct(int trials, double level, double chance) {
  require_count("trials", trials, 1, kMostTrials);
  require_level("level", level);
  require_open_probability("chance", chance);
  int lowest = 1;
  int reaching = trials + 1;
  while (lowest < reaching) {
    const int middle = (lowest + reaching) / 2;
    if (reaches(chance_of_at_least(middle, trials, chance), level))
      reaching = middle;
    else
      lowest = middle + 1;
  }
  if (reaching > trials) return std::nullopt;
  return reaching;
}

std::optional<int> minimum_correct_two_sided(int trials, double level) {
  require_level("level", level);
  return minimum_correct(trials, level / 2, 0.5);
}

}  // namespace stats
