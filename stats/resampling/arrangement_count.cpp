#include "stats/resampling/arrangement_count.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stats {
namespace {

std::int64_t pairs(std::int64_t n) { return n * (n - 1) / 2; }

/// One rater on one trial: where the count of this rater's right marks stands within a state's number.
struct Digit {
  std::size_t stride;
  std::size_t most;
};

/// The raters who answered each trial.
std::vector<std::vector<Digit>> digits_by_trial(std::span<const Answered> raters, std::size_t trials,
                                                std::size_t& states) {
  std::vector<std::vector<Digit>> by_trial(trials);
  states = 1;
  for (const Answered& rater : raters) {
    const auto most = static_cast<std::size_t>(rater.right());
    for (const std::size_t trial : rater.trials) by_trial[trial].push_back({states, most});
    states *= most + 1;
  }
  return by_trial;
}

double steps_needed(std::span<const Answered> raters, std::size_t trials, std::int64_t most_pairs) {
  double states = 1;
  for (const Answered& rater : raters) states *= double(rater.right() + 1);
  return states * double(most_pairs + 1) * double(trials) * std::exp2(double(raters.size()));
}

/// Ways to reach the states, number by number of agreeing pairs, after one more trial.
std::vector<double> after_trial(const std::vector<double>& before, const std::vector<Digit>& answering,
                                std::size_t states, std::size_t width) {
  std::vector<double> after(before.size());
  const std::size_t choices = std::size_t{1} << answering.size();
  for (std::size_t choice = 0; choice < choices; ++choice) {
    std::size_t step = 0;
    std::int64_t right = 0;
    for (std::size_t i = 0; i < answering.size(); ++i)
      if ((choice >> i) & 1U) step += answering[i].stride, ++right;
    const auto alike = static_cast<std::size_t>(pairs(right) + pairs(std::ssize(answering) - right));
    for (std::size_t state = 0; state < states; ++state) {
      const bool fits = std::all_of(answering.begin(), answering.end(), [&](const Digit& digit) {
        const auto place = static_cast<std::size_t>(&digit - answering.data());
        return ((choice >> place) & 1U) == 0 || state / digit.stride % (digit.most + 1) < digit.most;
      });
      if (!fits) continue;
      const double* from = &before[state * width];
      double* to = &after[(state + step) * width + alike];
      for (std::size_t agreeing = 0; agreeing + alike < width; ++agreeing) to[agreeing] += from[agreeing];
    }
  }
  return after;
}

/// Only ratios are used: a power of two brings the largest to between 1 and 2 and rounds nothing.
void keep_in_range(std::vector<double>& weights) {
  const int exponent = std::ilogb(*std::max_element(weights.begin(), weights.end()));
  for (double& weight : weights) weight = std::scalbn(weight, -exponent);
}

}  // namespace

std::int64_t Answered::right() const { return std::count(marks.begin(), marks.end(), char{1}); }

std::optional<double> share_of_arrangements(std::span<const Answered> raters, std::size_t trials,
                                            std::int64_t agreeing) {
  std::int64_t most_pairs = 0;
  std::vector<std::int64_t> answers(trials);
  for (const Answered& rater : raters)
    for (const std::size_t trial : rater.trials) ++answers[trial];
  for (const std::int64_t count : answers) most_pairs += pairs(count);
  if (steps_needed(raters, trials, most_pairs) > kMostCountingSteps) return std::nullopt;

  std::size_t states = 1;
  const auto by_trial = digits_by_trial(raters, trials, states);
  const auto width = static_cast<std::size_t>(most_pairs + 1);
  std::vector<double> weights(states * width);
  weights[0] = 1;
  for (const auto& answering : by_trial) {
    weights = after_trial(weights, answering, states, width);
    keep_in_range(weights);
  }
  const auto placed =
      weights.end() - std::ssize(weights) / static_cast<std::ptrdiff_t>(states);  // every right mark placed
  const double all = std::accumulate(placed, weights.end(), 0.0);
  return std::min(1.0, std::accumulate(placed + agreeing, weights.end(), 0.0) / all);
}

}  // namespace stats
