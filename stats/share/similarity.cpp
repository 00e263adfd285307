#include "stats/share/similarity.h"

#include "stats/arguments.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

double similarity_share_wrong(double heard, double chance) {
  require_open_probability("heard", heard);
  require_open_probability("chance", chance);
  return (1 - heard) * (1 - chance);
}

SimilarityOfTrials from_wrong_answers(const PowerOfTrials& wrong) {
  std::optional<int> most_correct;
  if (wrong.minimum_correct) most_correct = wrong.trials - *wrong.minimum_correct;
  return {wrong.trials, most_correct, wrong.size, wrong.power};
}

std::optional<SimilarityOfTrials> from_wrong_answers(const std::optional<PowerOfTrials>& wrong) {
  if (!wrong) return std::nullopt;
  return from_wrong_answers(*wrong);
}

}  // namespace

double similarity_p(int correct, int trials, double heard, double chance) {
  require_correct_of_trials(correct, trials);
  return chance_of_at_least(trials - correct, trials, similarity_share_wrong(heard, chance));
}

std::optional<int> most_correct_for_similarity(int trials, double level, double heard, double chance) {
  return similarity_of_trials(trials, level, heard, chance).most_correct;
}

SimilarityOfTrials similarity_of_trials(int trials, double level, double heard, double chance) {
  const double wrong = similarity_share_wrong(heard, chance);
  return from_wrong_answers(power_of_trials(1 - chance, trials, level, wrong));
}

std::optional<SimilarityOfTrials> smallest_similarity_trials_first(double target, double level, double heard,
                                                                   double chance, int limit) {
  const double wrong = similarity_share_wrong(heard, chance);
  return from_wrong_answers(smallest_trials_first(target, 1 - chance, level, wrong, limit));
}

std::optional<SimilarityOfTrials> smallest_similarity_trials_stable(double target, double level, double heard,
                                                                    double chance, int limit) {
  const double wrong = similarity_share_wrong(heard, chance);
  return from_wrong_answers(smallest_trials_stable(target, 1 - chance, level, wrong, limit));
}

}  // namespace stats
