#include "findings/scale/scale.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "findings/evidence.h"
#include "findings/listening/tally.h"
#include "findings/scale/words.h"
#include "stats/worth/estimability.h"
#include "stats/worth/goodness_of_fit.h"
#include "stats/worth/pairwise_tests.h"
#include "stats/worth/quasi_variance.h"
#include "stats/worth/worth.h"

namespace findings {
namespace {

constexpr stats::MonteCarlo kFitDraws{.seed = 1, .draws = 999};
/// Of a quasi-variance, as a share of the largest.
constexpr double kRounding = 1e-6;

/// The cables of claims with answers, and what was answered, by who was played first.
struct Answers {
  std::vector<std::string> titles;
  std::vector<stats::PairCount> counts;
  int answers = 0;
  int claims = 0;
};

Answers answers_of(const Evidence& evidence) {
  const plan::Plan& plan = evidence.plan;
  Answers all;
  std::map<std::string, int> places;
  const auto place_of = [&](int specimen) {
    const std::string title = plan::title_of(plan.specimens.at(static_cast<std::size_t>(specimen)));
    const auto [entry, is_new] = places.try_emplace(title, static_cast<int>(places.size()));
    if (is_new) all.titles.push_back(title);
    return entry->second;
  };
  // The baseline first: it is the scale's zero.
  for (std::size_t i = 0; i < plan.specimens.size(); ++i)
    if (!plan.baseline.empty() && plan::title_of(plan.specimens[i]) == plan.baseline)
      place_of(static_cast<int>(i));
  std::map<std::pair<int, int>, stats::PairCount> counts;
  std::set<int> used;
  for (int i = 0; i < static_cast<int>(plan.comparisons.size()); ++i) {
    const plan::Comparison& comparison = plan.comparisons[static_cast<std::size_t>(i)];
    if (comparison.kind != plan::Kind::claim) continue;
    const int of[] = {place_of(comparison.first), place_of(comparison.second)};
    if (of[0] == of[1]) continue;
    bool any = false;
    for (const TrialEvidence* trial : trials_of(evidence, i)) {
      const int first = of[trial->sides.at(0)], second = of[1 - trial->sides.at(0)];
      for (const auto& [listener, answer] : trial->answers) {
        auto& count =
            counts.try_emplace({first, second}, stats::PairCount{first, second, 0, 0, 0}).first->second;
        const bool for_first_cable = answer == trial->coin, first_cable_first = trial->sides.at(0) == 0;
        ++(for_first_cable == first_cable_first ? count.first_preferred : count.second_preferred);
        ++all.answers;
        any = true;
      }
    }
    if (any) used.insert({of[0], of[1]});
    all.claims += any;
  }
  for (const auto& [pair, count] : counts) all.counts.push_back(count);
  // Cables that nobody answered about have no place.
  std::vector<int> kept(all.titles.size(), -1);
  std::vector<std::string> titles;
  for (std::size_t i = 0; i < all.titles.size(); ++i)
    if (used.contains(static_cast<int>(i))) {
      kept[i] = static_cast<int>(titles.size());
      titles.push_back(all.titles[i]);
    }
  for (auto& count : all.counts) {
    count.first = kept[static_cast<std::size_t>(count.first)];
    count.second = kept[static_cast<std::size_t>(count.second)];
  }
  all.titles = std::move(titles);
  return all;
}

std::vector<std::vector<std::string>> titled_groups(const std::vector<std::string>& titles,
                                                    const std::vector<int>& groups) {
  std::vector<std::vector<std::string>> all(
      static_cast<std::size_t>(*std::max_element(groups.begin(), groups.end()) + 1));
  for (std::size_t i = 0; i < titles.size(); ++i)
    all[static_cast<std::size_t>(groups[i])].push_back(titles[i]);
  return all;
}

void take_fit(const stats::WorthFit& fit, const std::vector<std::string>& titles, PreferenceScale& scale) {
  std::vector<double> quasi;
  if (titles.size() > 2) quasi = stats::quasi_variances(fit.covariance).variance;
  const double largest = quasi.empty() ? 0 : *std::max_element(quasi.begin(), quasi.end());
  for (std::size_t i = 0; i < titles.size(); ++i) {
    auto& cable = scale.cables.emplace_back();
    cable.title = titles[i];
    cable.worth = fit.worth[i];
    cable.standard_error = fit.difference_error(static_cast<int>(i), 0);
    // A cable that stands in every comparison has none of its own: 0 but for rounding.
    if (!quasi.empty() && quasi[i] > -kRounding * largest)
      cable.quasi_error = quasi[i] > kRounding * largest ? std::sqrt(quasi[i]) : 0;
  }
  scale.order_effect = *fit.order_effect;
  scale.order_error = *fit.order_error;
}

void test(const Answers& all, PreferenceScale& scale) {
  const int items = static_cast<int>(all.titles.size());
  const stats::WorthOptions options{.order_effect = true};
  const auto pairs = stats::pairwise_tests(items, all.counts, options).value();
  for (const stats::PairwiseTest& pair : pairs)
    scale.pairs.push_back({pair.first, pair.second, pair.difference, pair.adjusted_p});
  const auto fit = stats::goodness_of_fit(items, all.counts, options, kFitDraws).value();
  if (fit.degrees_of_freedom > 0 && fit.simulated) {
    scale.fit_p = fit.simulated->p;
    scale.fit_p_standard_error = fit.simulated->standard_error;
  }
}

}  // namespace

std::optional<PreferenceScale> preference_scale_of(const Evidence& evidence) {
  if (plan::protocol_of(evidence.plan).has_right_answer()) return std::nullopt;
  const Answers all = answers_of(evidence);
  if (all.claims < 2) return std::nullopt;
  const int items = static_cast<int>(all.titles.size());
  PreferenceScale scale;
  scale.answers = all.answers;
  const auto found = stats::estimable_worths(items, all.counts, true);
  if (found.estimability == stats::Estimability::disconnected) {
    scale.state = PreferenceScale::State::apart;
    scale.groups = titled_groups(all.titles, found.groups);
  } else {
    const bool corrected = found.estimability == stats::Estimability::separated;
    const auto fit =
        stats::fit_worths(items, all.counts, 0, {.order_effect = true, .bias_reduced = corrected});
    if (!fit) return std::nullopt;
    if (corrected) scale.state = PreferenceScale::State::corrected;
    take_fit(*fit, all.titles, scale);
    if (!corrected) test(all, scale);
  }
  scale.sentence = sentence_of(scale, evidence.plan);
  return scale;
}

}  // namespace findings
