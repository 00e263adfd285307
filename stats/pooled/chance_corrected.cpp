#include "stats/pooled/chance_corrected.h"

#include <cstddef>
#include <limits>

#include "stats/arguments.h"
#include "stats/pooled/beta_binomial.h"

namespace stats {
namespace {

void require_guessing(double chance) {
  require_between("chance", chance, 0, 1 - std::numeric_limits<double>::epsilon());
}

}  // namespace

TotalDistribution chance_corrected(int trials, double chance, double mean, double gamma) {
  require_count("trials", trials, 1, 10'000);
  require_guessing(chance);
  const TotalDistribution heard = beta_binomial(trials, mean, gamma);
  TotalDistribution right(heard.size());
  TotalDistribution guessed(heard.size() + 1);  // number right of the trials not heard
  guessed[0] = 1;
  for (std::size_t h = heard.size(), missed = 0; h-- > 0; ++missed) {
    for (std::size_t guesses = 0; guesses <= missed; ++guesses)
      right[h + guesses] += heard[h] * guessed[guesses];
    for (std::size_t guesses = missed + 1; guesses > 0; --guesses)
      guessed[guesses] = guessed[guesses] * (1 - chance) + guessed[guesses - 1] * chance;
    guessed[0] *= 1 - chance;
  }
  return right;
}

BetaBinomialFit fit_chance_corrected(std::span<const SubjectCount> subjects, double chance) {
  require_guessing(chance);
  return fitted_beta_binomial(subjects, chance);
}

}  // namespace stats
