#include <algorithm>
#include <cmath>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/preference/preference_table.h"
#include "stats/worth/bootstrap_worths.h"
#include "stats/worth/estimability.h"
#include "stats/worth/goodness_of_fit.h"
#include "stats/worth/pairwise_tests.h"
#include "stats/worth/quasi_variance.h"
#include "stats/worth/worth.h"
#include "text/error.h"

namespace desk {
namespace {

std::vector<stats::PairCount> counts_of_wins(const stats::CountTable& wins) {
  stats::require_preferences(wins, 2);
  std::vector<stats::PairCount> counts;
  for (std::size_t i = 0; i < wins.size(); ++i)
    for (std::size_t j = i + 1; j < wins.size(); ++j)
      counts.push_back({static_cast<int>(i), static_cast<int>(j), wins[i][j], 0, wins[j][i]});
  return counts;
}

/// Rows of first item, second item (from 1), preferences for the first, ties, preferences for the second.
std::vector<stats::PairCount> counts_of_pairs(const stats::CountTable& pairs) {
  std::vector<stats::PairCount> counts;
  for (const auto& row : pairs) {
    if (row.size() != 5 || row[0] < 1 || row[1] < 1)
      throw text::BadInput(
          "a row of --pairs must be first item, second item (from 1), preferences for the first, ties, "
          "preferences for the "
          "second; row " +
          std::to_string(counts.size() + 1) + " is not");
    counts.push_back({row[0] - 1, row[1] - 1, row[2], row[3], row[4]});
  }
  return counts;
}

/// "1; 2, 3": the items of each group, from 1.
std::string groups_words(const std::vector<int>& groups) {
  std::string words;
  for (int group = 0; group <= *std::max_element(groups.begin(), groups.end()); ++group) {
    std::string items;
    for (std::size_t i = 0; i < groups.size(); ++i)
      if (groups[i] == group) items += (items.empty() ? "" : ", ") + std::to_string(i + 1);
    words += (words.empty() ? "" : "; ") + items;
  }
  return words;
}

void refuse_infinite(int items, const std::vector<stats::PairCount>& counts,
                     const stats::WorthOptions& options) {
  const auto found = stats::estimable_worths(items, counts, options.order_effect, options.ties_as_halves);
  if (found.estimability == stats::Estimability::disconnected)
    throw text::BadInput(
        "the items fall into groups that were never compared with each other: " + groups_words(found.groups) +
        "\ncompare at least one item of each with one of another");
  if (found.estimability == stats::Estimability::separated && !options.bias_reduced)
    throw text::BadInput(
        "some worths, ties or the order effect would be infinite: preferences do not go round among all "
        "items (those that "
        "they go round: " +
        groups_words(found.groups) + ")\n--bias-reduced gives finite ones; more answers may, too");
}

void add_bootstrap(Figures& figures, const Given& given, int items,
                   const std::vector<stats::PairCount>& counts, const stats::WorthOptions& options) {
  if (options.model == stats::PreferenceModel::normal || options.bias_reduced || options.ties_as_halves)
    throw text::BadInput(
        "--bootstrap refits the logistic model by maximum likelihood, ties as ties; leave out --model, "
        "--bias-reduced and --ties-as-halves");
  const double confidence = 1 - given.level("level");
  const stats::MonteCarlo monte_carlo{static_cast<std::uint64_t>(given.count("seed", 0, 2'147'483'647)),
                                      given.count("bootstrap", 1, 1'000'000)};
  const auto found = stats::bootstrap_worths(items, counts, given.count("reference", 1, items) - 1,
                                             options.order_effect, confidence, monte_carlo);
  if (!found) throw text::BadInput("no resample has finite worths");
  figures.add("refits", "refits", static_cast<long long>(found->refits),
              "resamples of the answers to each row");
  figures.add("infinite", "infinite", static_cast<long long>(found->infinite), "resamples left out");
  Series lower{"worth_lower", per_cent(confidence) + " from", {}}, upper{"worth_upper", "to", {}};
  for (const stats::Interval& interval : found->interval) {
    lower.values.push_back(interval.lower);
    upper.values.push_back(interval.upper);
  }
  figures.series.insert(figures.series.end(), {lower, upper});
}

/// What is fitted: the counts and how.
struct Asked {
  std::vector<stats::PairCount> counts;
  int items = 0;
  stats::WorthOptions options;
};

Asked asked_of(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  Asked asked{given.has("pairs") ? counts_of_pairs(table) : counts_of_wins(table), 0, {}};
  for (const auto& count : asked.counts)
    asked.items = std::max({asked.items, count.first + 1, count.second + 1});
  if (given.one_of("model", {"logistic", "normal"}) == "normal")
    asked.options.model = stats::PreferenceModel::normal;
  asked.options.order_effect = given.has("order");
  asked.options.bias_reduced = given.has("bias-reduced");
  asked.options.ties_as_halves = given.has("ties-as-halves");
  refuse_infinite(asked.items, asked.counts, asked.options);
  return asked;
}

void add_goodness_of_fit(Figures& figures, const Given& given, const Asked& asked) {
  const stats::MonteCarlo monte_carlo{static_cast<std::uint64_t>(given.count("seed", 0, 2'147'483'647)), 999};
  const auto found = stats::goodness_of_fit(asked.items, asked.counts, asked.options, monte_carlo);
  figures.add("fit_chi_square_p", "p of the deviance", known(found->chi_square_p),
              "by chi-square, for many answers to a row; small: worths alone do not explain them");
  figures.add("fit_simulated_p", "p of it by simulation",
              known(found->simulated ? std::optional(found->simulated->p) : std::nullopt),
              "answers drawn 999 times from the worths; for few answers too");
}

std::vector<double> quasi_errors(const stats::WorthFit& fit) {
  std::vector<double> errors;
  for (const double variance : stats::quasi_variances(fit.covariance).variance)
    errors.push_back(std::sqrt(variance));  // not-a-number below 0
  return errors;
}

Figures worths_figures(const Given& given) {
  const Asked asked = asked_of(given);
  const auto& [counts, items, options] = asked;
  const int reference = given.count("reference", 1, items) - 1;
  const auto fit = stats::fit_worths(items, counts, reference, options);
  if (!fit) throw text::BadInput("the worths could not be fitted: the information is singular");
  const bool normal = options.model == stats::PreferenceModel::normal;
  Figures figures{
      "worths of items from preferences",
      {{"items", "items", static_cast<long long>(items)},
       {"model", "model", given.word("model"),
        normal ? "Thurstone's case V" : "Bradley-Terry, with ties Davidson's"},
       {"log_likelihood", "log likelihood", fit->log_likelihood, "without coefficients"},
       {"deviance", "deviance", fit->deviance, "from a probability for every row"},
       {"degrees_of_freedom", "degrees of freedom", static_cast<long long>(fit->degrees_of_freedom)},
       {"null_deviance", "deviance of equal worths", fit->null_deviance, "and no order effect"}}};
  if (!options.bias_reduced) add_goodness_of_fit(figures, given, asked);
  if (fit->order_effect) {
    figures.add("order_effect", "order effect", *fit->order_effect, "added to the worth of the first");
    figures.add("order_error", "its standard error", *fit->order_error);
  }
  if (fit->tie_weight) {
    figures.add("tie_weight", "tie weight nu", *fit->tie_weight,
                "of a tie against either preference, equal items");
    figures.add("log_tie_error", "standard error of log nu", *fit->log_tie_error);
  }
  Series worth{"worth", "worth", fit->worth}, error{"worth_error", "standard error", {}};
  for (int i = 0; i < items; ++i) error.values.push_back(fit->difference_error(i, reference));
  figures.series = {worth, error};
  if (items > 2) figures.series.push_back({"quasi_error", "quasi standard error", quasi_errors(*fit)});
  if (given.has("bootstrap")) add_bootstrap(figures, given, items, counts, options);
  return figures;
}

Figures pairwise_figures(const Given& given) {
  const Asked asked = asked_of(given);
  const auto tests = stats::pairwise_tests(asked.items, asked.counts, asked.options).value();
  Figures figures{"which items differ in worth, by everything answered about all",
                  {{"items", "items", static_cast<long long>(asked.items)},
                   {"pairs", "pairs", std::ssize(tests), "adjusted over all, by Holm"},
                   {"test", "test", std::string("likelihood ratio"), "an approximation for many answers"}}};
  Series first{"first", "item", {}}, second{"second", "less item", {}}, difference{"difference", "worth", {}},
      error{"standard_error", "standard error", {}}, ratio{"likelihood_ratio", "likelihood ratio", {}},
      p{"p", "p", {}}, adjusted{"p_adjusted", "adjusted p", {}};
  for (const stats::PairwiseTest& test : tests) {
    first.values.push_back(test.first + 1);
    second.values.push_back(test.second + 1);
    difference.values.push_back(test.difference);
    error.values.push_back(test.standard_error);
    ratio.values.push_back(test.likelihood_ratio);
    p.values.push_back(test.p);
    adjusted.values.push_back(test.adjusted_p);
  }
  figures.series = {first, second, difference, error, ratio, p, adjusted};
  return figures;
}

std::vector<Argument> fit_arguments(const std::vector<Argument>& more) {
  std::vector<Argument> arguments{
      {"counts", "A row for each item: how often it was preferred to each; semicolon between rows",
       Argument::required, Shape::rows},
      {"--pairs",
       "Rows are instead: first item, second item (from 1), preferences for the first, ties, preferences for "
       "the second",
       "", Shape::flag},
      {"--model", "logistic, or normal (no model of ties)", "logistic"},
      {"--order", "Being presented first may have an effect", "", Shape::flag},
      {"--ties-as-halves", "Half a preference for either instead of a model of ties", "", Shape::flag}};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

}  // namespace

Topic worths_topic() {
  return {
      "Worths of items, from preferences",
      {{"worths", "Worths of items, from any numbers of preferences (Bradley-Terry, Davidson, Thurstone)",
        "\"0,3,2,2; 12,0,11,3; 13,4,0,5; 13,12,10,0\"",
        fit_arguments({{"--bias-reduced", "Firth's correction: finite for any preferences", "", Shape::flag},
                       {"--reference", "The item whose worth is 0", "1"},
                       {"--bootstrap", "Intervals by so many refits of resampled answers", ""},
                       level_argument(),
                       seed_argument()}),
        worths_figures},
       {"pairwise", "Which two items differ in worth, each pair tested and adjusted over all",
        "\"0,3,2,2; 12,0,11,3; 13,4,0,5; 13,12,10,0\"", fit_arguments({}), pairwise_figures}}};
}

}  // namespace desk
