#include "stats/resampling/agreement_permutation.h"

#include <algorithm>
#include <array>
#include <boost/math/distributions/hypergeometric.hpp>

#include "stats/arguments.h"
#include "stats/random.h"
#include "stats/resampling/arrangement_count.h"

namespace stats {
namespace {

/// How many of the raters placed so far are wrong [0] and right [1] on each trial.
using Tally = std::vector<std::array<std::int64_t, 2>>;

/// Places one more rater (or takes one away, by -1) and returns the agreeing pairs with those already there.
std::int64_t place(Tally& tally, const Answered& rater, int by) {
  std::int64_t agreeing = 0;
  for (std::size_t i = 0; i < rater.trials.size(); ++i) {
    auto& alike = tally[rater.trials[i]][static_cast<std::size_t>(rater.marks[i])];
    agreeing += alike;
    alike += by;
  }
  return agreeing;
}

std::int64_t agreeing_pairs(std::span<const Answered> raters, std::size_t trials) {
  Tally tally(trials);
  std::int64_t agreeing = 0;
  for (const Answered& rater : raters) agreeing += place(tally, rater, 1);
  return agreeing;
}

std::int64_t answered_pairs(std::span<const Marks> raters) {
  std::int64_t pairs = 0;
  for (std::size_t trial = 0; trial < raters.front().size(); ++trial) {
    const auto answers =
        std::count_if(raters.begin(), raters.end(), [=](const Marks& m) { return m[trial].has_value(); });
    pairs += answers * (answers - 1) / 2;
  }
  return pairs;
}

/// Calls `visit(k, P(k))` for every k of a draw of `drawn` from `all`, `marked` of which are marked.
template <typename Visit>
void for_each_hypergeometric(std::int64_t marked, std::int64_t drawn, std::int64_t all, const Visit& visit) {
  if (all == 0) return visit(0, 1.0);
  const boost::math::hypergeometric draw(static_cast<unsigned>(marked), static_cast<unsigned>(drawn),
                                         static_cast<unsigned>(all));
  for (std::int64_t k = std::max<std::int64_t>(0, marked + drawn - all); k <= std::min(marked, drawn); ++k)
    visit(k, pdf(draw, static_cast<unsigned>(k)));
}

/// Two raters with `common` trials answered by both: first how many of each one's right marks fall on those,
/// then on how many of them both are right.
double p_of_two(const Answered& one, const Answered& other, std::int64_t common, std::int64_t agreeing) {
  double p = 0;
  for_each_hypergeometric(one.right(), common, std::ssize(one.marks), [&](std::int64_t r, double p_r) {
    for_each_hypergeometric(other.right(), common, std::ssize(other.marks), [&](std::int64_t s, double p_s) {
      for_each_hypergeometric(r, s, common, [&](std::int64_t both, double p_both) {
        if (common - r - s + 2 * both >= agreeing) p += p_r * p_s * p_both;
      });
    });
  });
  return std::min(1.0, p);
}

PermutationP p_of_many(std::vector<Answered> raters, std::size_t trials, std::int64_t seen,
                       const MonteCarlo& monte_carlo) {
  if (const auto share = share_of_arrangements(raters, trials, seen)) return exact_p(*share);
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (Answered& rater : raters) random.shuffle(std::span(rater.marks));
    reaching += agreeing_pairs(raters, trials) >= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

std::vector<Answered> answered(std::span<const Marks> raters) {
  std::vector<Answered> all;
  for (const Marks& marks : raters) {
    Answered rater;
    for (std::size_t trial = 0; trial < marks.size(); ++trial)
      if (marks[trial]) {
        rater.trials.push_back(trial);
        rater.marks.push_back(*marks[trial] ? 1 : 0);
      }
    all.push_back(std::move(rater));
  }
  return all;
}

}  // namespace

SharedMarks permutation_agreement(std::span<const Marks> raters, const MonteCarlo& monte_carlo) {
  require_count("number of raters", std::ssize(raters), 2, 100);
  const auto trials = std::ssize(raters.front());
  require_count("number of trials", trials, 1, 1'000);
  for (const Marks& marks : raters) require_count("entries of a rater", std::ssize(marks), trials, trials);
  require_draws(monte_carlo);

  const auto all = answered(raters);
  const std::int64_t agreeing = agreeing_pairs(all, static_cast<std::size_t>(trials));
  const std::int64_t pairs = answered_pairs(raters);
  if (all.size() == 2) return {agreeing, pairs, exact_p(p_of_two(all[0], all[1], pairs, agreeing))};
  return {agreeing, pairs, p_of_many(all, static_cast<std::size_t>(trials), agreeing, monte_carlo)};
}

}  // namespace stats
