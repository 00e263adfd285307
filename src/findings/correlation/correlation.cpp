#include "findings/correlation/correlation.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "findings/correlation/measures.h"
#include "findings/correlation/outcome.h"
#include "findings/listening/verdict.h"
#include "findings/words/numbers.h"
#include "stats/association/item_permutation.h"
#include "stats/association/spearman.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "text/number.h"

namespace findings {
namespace {

using stats::Alternative;

std::vector<const ComparisonFinding*> unbarred_claims(const Evidence& evidence, const Findings& findings) {
  std::vector<const ComparisonFinding*> claims;
  for (const ComparisonFinding& finding : findings.comparisons)
    if (finding.kind == plan::Kind::claim && bars(evidence, findings, finding).empty())
      claims.push_back(&finding);
  return claims;
}

/// Differences that are alike but for rounding become ties.
std::vector<double> with_ties(std::vector<double> values) {
  double largest = 0;
  for (const double value : values) largest = std::max(largest, std::abs(value));
  const double step = largest * 1e-9;
  if (step > 0)
    for (double& value : values) value = std::round(value / step) * step;
  return values;
}

void take_test(const std::optional<stats::RankCorrelation>& result, Correlation& correlation) {
  if (!result) return;
  correlation.rho = result->rho;
  correlation.p = result->test.p;
  if (!result->test.exact) correlation.p_standard_error = result->test.standard_error;
}

/// The places of the pairs' cables in a list of cables, and the cables' own values.
struct Items {
  std::vector<double> values;
  std::vector<stats::ItemPair> pairs;
};

Items items_of(const Measure& measure, const Evidence& evidence, const Correlation& correlation) {
  std::map<std::pair<std::string, int>, int> places;
  Items items;
  const auto place_of = [&](int index) {
    const auto& specimen = evidence.plan.specimens.at(static_cast<std::size_t>(index));
    const auto [entry, is_new] =
        places.try_emplace({title_of(specimen), specimen.trim_steps}, static_cast<int>(places.size()));
    if (is_new) items.values.push_back(*measure.of_specimen(evidence, index));
    return entry->second;
  };
  for (std::size_t i = 0; i < correlation.comparisons.size(); ++i) {
    const auto& comparison =
        evidence.plan.comparisons.at(static_cast<std::size_t>(correlation.comparisons[i]));
    const int first = place_of(comparison.first);
    const int second = place_of(comparison.second);
    if (first != second) items.pairs.push_back({first, second, correlation.y[i]});
  }
  return items;
}

stats::PairValue pair_value(const Outcome& outcome) {
  return outcome.absolute ? stats::PairValue::absolute_difference : stats::PairValue::signed_difference;
}

void test_by_cable(const Measure& measure, const Evidence& evidence, const Outcome& outcome,
                   Correlation& correlation) {
  correlation.permuted_by_cable = true;
  const auto [values, pairs] = items_of(measure, evidence, correlation);
  if (pairs.size() < 2) return;
  const auto value = pair_value(outcome);
  take_test(stats::permute_by_item(values, pairs, value, Alternative::two_sided), correlation);
  if (std::ssize(values) <= stats::kExactItems)
    correlation.smallest_attainable_p =
        stats::smallest_attainable_p_by_item(values, pairs, value, Alternative::two_sided);
}

void test_by_comparison(Correlation& correlation) {
  take_test(stats::spearman(correlation.x, correlation.y, Alternative::two_sided), correlation);
  correlation.smallest_attainable_p =
      stats::smallest_attainable_p(correlation.x, correlation.y, Alternative::two_sided);
}

std::optional<Correlation> correlation_with(const Measure& measure, const Evidence& evidence,
                                            const Outcome& outcome,
                                            const std::vector<const ComparisonFinding*>& claims) {
  if (!outcome.absolute && !measure.has_sign) return std::nullopt;
  if (!outcome.benchmark && !measure.of_specimen) return std::nullopt;
  Correlation correlation;
  correlation.measure = measure.name;
  correlation.outcome = outcome.name;
  correlation.against = outcome.against;
  std::set<int> trials;
  for (const ComparisonFinding* claim : claims) {
    const auto second_less_first = difference(measure, evidence, *claim);
    if (!second_less_first) continue;
    correlation.comparisons.push_back(claim->comparison);
    correlation.x.push_back(outcome.difference_of(*claim, *second_less_first));
    correlation.y.push_back(outcome.share_of(*claim));
    trials.insert(claim->primary.tally.trials);
  }
  if (static_cast<int>(correlation.comparisons.size()) < kFewestComparisons) return std::nullopt;
  correlation.unequal_trials = trials.size() > 1;
  correlation.x = with_ties(std::move(correlation.x));
  if (outcome.benchmark) {
    test_by_comparison(correlation);
  } else {
    test_by_cable(measure, evidence, outcome, correlation);
  }
  return correlation;
}

void add_rho_needed(const Measure& measure, const Evidence& evidence, const Outcome& outcome, double level,
                    Correlation& correlation) {
  if (!correlation.smallest_attainable_p || !stats::reaches(*correlation.smallest_attainable_p, level))
    return;
  if (correlation.permuted_by_cable) {
    const auto [values, pairs] = items_of(measure, evidence, correlation);
    correlation.rho_needed =
        stats::smallest_significant_rho_by_item(values, pairs, pair_value(outcome), level);
  } else if (const auto needed = stats::smallest_significant_rho(correlation.x, correlation.y, level)) {
    correlation.rho_needed = needed->rho;
    correlation.rho_needed_is_exact = needed->exact;
  }
}

std::string needed_words(const Correlation& correlation) {
  if (correlation.rho_needed)
    return " At the list's first step the level needs a rho of at least " +
           text::fixed(*correlation.rho_needed, 3) +
           (correlation.rho_needed_is_exact ? "" : " (approximately, for untied values)") + ", either way.";
  if (correlation.smallest_attainable_p)
    return std::string(" At the list's first step so few ") +
           (correlation.permuted_by_cable ? "cables" : "comparisons") + " cannot reach the level.";
  return " The rho that the level needs was not computed: more than " + std::to_string(stats::kExactItems) +
         " cables.";
}

bool varies(const std::vector<double>& values) {
  return std::any_of(values.begin(), values.end(), [&](double value) { return value != values.front(); });
}

std::string sentence_of(const Correlation& correlation, std::size_t list, double level) {
  const std::string what =
      correlation.outcome + " goes with " + correlation.measure + " (" + correlation.against + ")";
  const std::string over = " over " + std::to_string(correlation.x.size()) + " comparisons";
  if (!correlation.rho)
    return "Exploratory: whether " + what + over + " cannot be said: " +
           (varies(correlation.x) && varies(correlation.y)
                ? "too few of them set different cables against each other."
                : "one side does not vary.");
  std::string text = "Exploratory: ";
  text += stats::reaches(correlation.p_adjusted, level) ? what : "it is not shown that " + what;
  text += ": Spearman's rho " + text::fixed(*correlation.rho, 2) + over + ", " +
          (correlation.p_standard_error ? "simulated" : "exact") + " two-sided " + p_words(correlation.p) +
          ", " + text::p_value(correlation.p_adjusted) + " after Benjamini-Hochberg over " +
          counted(static_cast<int>(list), "measure") + ".";
  if (correlation.permuted_by_cable)
    text += " Comparisons share cables, so the values were permuted among the cables.";
  text += needed_words(correlation);
  if (correlation.unequal_trials) text += " The comparisons have unequal numbers of trials.";
  return text;
}

}  // namespace

std::vector<Correlation> correlations_of(const Evidence& evidence, const Findings& findings) {
  const auto claims = unbarred_claims(evidence, findings);
  const Outcome outcome = outcome_of(evidence.plan, claims);
  std::vector<Correlation> list;
  std::vector<const Measure*> measured;
  std::vector<double> p;
  for (const Measure& measure : measures())
    if (auto correlation = correlation_with(measure, evidence, outcome, claims)) {
      p.push_back(correlation->p);
      list.push_back(std::move(*correlation));
      measured.push_back(&measure);
    }
  const auto adjusted = stats::benjamini_hochberg(p);
  for (std::size_t i = 0; i < list.size(); ++i) {
    list[i].p_adjusted = adjusted[i];
    add_rho_needed(*measured[i], evidence, outcome, findings.level / static_cast<double>(list.size()),
                   list[i]);
    list[i].sentence = sentence_of(list[i], list.size(), findings.level);
  }
  return list;
}

}  // namespace findings
