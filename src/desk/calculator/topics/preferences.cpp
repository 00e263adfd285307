#include <algorithm>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/preference/bootstrap_worths.h"
#include "stats/preference/circular_triads.h"
#include "stats/preference/estimability.h"
#include "stats/preference/preference_agreement.h"
#include "stats/preference/worth.h"
#include "text/error.h"

namespace desk {
namespace {

Figures triads_figures(const Given& given) {
  const auto found = stats::circular_triads(given.count_rows("wins"), given.draws());
  Figures figures{"consistency of one listener's preferences",
                  {{"circular_triads", "circular triads", static_cast<long long>(found.triads),
                    "three items, each preferred to the next in a circle"},
                   {"expected", "by guessing", found.expected, "on average"},
                   {"most", "at most", static_cast<long long>(found.most), "for so many items"},
                   {"zeta", "consistency zeta", found.zeta, "1 if one ranking holds all preferences"}}};
  add_permutation_p(figures, found.test, "as few circular triads or fewer, by guessing");
  return figures;
}

Figures alike_figures(const Given& given) {
  const auto found = stats::preference_agreement(given.count_rows("wins"), given.draws());
  Figures figures{"agreement of several listeners' preferences",
                  {{"agreements", "agreements", static_cast<long long>(found.agreements),
                    "pairs of listeners with the same preference, over all pairs of items"},
                   {"u", "coefficient u", found.u, "1 if all prefer alike, 0 by chance"},
                   {"lowest_u", "at least", found.lowest_u, "for so many listeners"}}};
  add_permutation_p(figures, found.test, "as many agreements or more, by guessing");
  figures.add("chi_square", "chi-square", known(found.chi_square),
              found.chi_square ? "an approximation, for comparison with published ones"
                               : "not defined for two listeners");
  figures.add("degrees_of_freedom", "degrees of freedom", known(found.degrees_of_freedom), "of it");
  return figures;
}

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
  const auto found = stats::estimable_worths(items, counts, options.order_effect);
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
  if (options.model == stats::PreferenceModel::normal || options.bias_reduced)
    throw text::BadInput(
        "--bootstrap refits the logistic model by maximum likelihood; leave out --model and --bias-reduced");
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

Figures worths_figures(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  const auto counts = given.has("pairs") ? counts_of_pairs(table) : counts_of_wins(table);
  int items = 0;
  for (const auto& count : counts) items = std::max({items, count.first + 1, count.second + 1});
  const bool normal = given.one_of("model", {"logistic", "normal"}) == "normal";
  const stats::WorthOptions options{
      .model = normal ? stats::PreferenceModel::normal : stats::PreferenceModel::logistic,
      .order_effect = given.has("order"),
      .bias_reduced = given.has("bias-reduced")};
  refuse_infinite(items, counts, options);
  const auto fit = stats::fit_worths(items, counts, given.count("reference", 1, items) - 1, options);
  if (!fit) throw text::BadInput("the worths could not be fitted: the information is singular");
  Figures figures{
      "worths of items from preferences",
      {{"items", "items", static_cast<long long>(items)},
       {"model", "model", given.word("model"),
        normal ? "Thurstone's case V" : "Bradley-Terry, with ties Davidson's"},
       {"log_likelihood", "log likelihood", fit->log_likelihood, "without coefficients"},
       {"deviance", "deviance", fit->deviance, "from a probability for every row"},
       {"degrees_of_freedom", "degrees of freedom", static_cast<long long>(fit->degrees_of_freedom)},
       {"null_deviance", "deviance of equal worths", fit->null_deviance, "and no order effect"}}};
  if (fit->order_effect) {
    figures.add("order_effect", "order effect", *fit->order_effect, "added to the worth of the first");
    figures.add("order_error", "its standard error", *fit->order_error);
  }
  if (fit->tie_weight) {
    figures.add("tie_weight", "tie weight nu", *fit->tie_weight,
                "of a tie against either preference, equal items");
    figures.add("log_tie_error", "standard error of log nu", *fit->log_tie_error);
  }
  Series worth{"worth", "worth", fit->worth},
      error{"worth_error", options.bias_reduced ? "its standard error" : "standard error", {}};
  for (int i = 0; i < items; ++i)
    error.values.push_back(fit->difference_error(i, given.count("reference", 1, items) - 1));
  figures.series = {worth, error};
  if (given.has("bootstrap")) add_bootstrap(figures, given, items, counts, options);
  return figures;
}

Argument wins_argument(const std::string& counts) {
  return {"wins",
          "A row for each item, in it " + counts +
              " to each item in the same order, 0 to itself; semicolon between rows",
          Argument::required, Shape::rows};
}

}  // namespace

Topic preferences_topic() {
  return {"Preferences, two items at a time",
          {{"triads",
            "How consistent one listener's preferences are",
            "\"0,1,1,1,1; 0,0,1,1,1; 0,0,0,1,0; 0,0,0,0,1; 0,0,1,0,0\"",
            {wins_argument("1 where it was preferred"), seed_argument(), draws_argument()},
            triads_figures},
           {"alike",
            "Whether several listeners prefer alike, each pair compared once by each",
            "\"0,5,6; 1,0,5; 0,1,0\"",
            {wins_argument("how many preferred it"), seed_argument(), draws_argument()},
            alike_figures},
           {"worths",
            "Worths of items, from any numbers of preferences (Bradley-Terry, Davidson, Thurstone)",
            "\"0,3,2,2; 12,0,11,3; 13,4,0,5; 13,12,10,0\"",
            {{"counts", "A row for each item: how often it was preferred to each; semicolon between rows",
              Argument::required, Shape::rows},
             {"--pairs",
              "Rows are instead: first item, second item (from 1), preferences for the first, ties, "
              "preferences for the "
              "second",
              "", Shape::flag},
             {"--model", "logistic, or normal (no ties)", "logistic"},
             {"--order", "Being presented first may have an effect", "", Shape::flag},
             {"--bias-reduced", "Firth's correction: finite for any preferences", "", Shape::flag},
             {"--reference", "The item whose worth is 0", "1"},
             {"--bootstrap", "Intervals by so many refits of resampled answers", ""},
             level_argument(),
             seed_argument()},
            worths_figures}}};
}

}  // namespace desk
