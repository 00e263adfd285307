#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/association/bootstrap_rho.h"
#include "stats/association/item_permutation.h"
#include "stats/association/kendall.h"
#include "stats/association/partial_rho.h"
#include "stats/association/spearman.h"
#include "stats/association/theil_sen.h"
#include "text/error.h"

namespace desk {
namespace {

/// Beyond, tau is left out: its draws would take too long.
constexpr std::size_t kMostForTau = 2'000;

std::string smallest_rho_words(const std::optional<stats::SmallestRho>& smallest) {
  if (!smallest) return "two-sided, exact: no pairing of these x and y reaches the level";
  return smallest->exact ? "two-sided, of any pairing of these x and y, exact"
                         : "two-sided, of so many untied pairs, approximation by Student's t";
}

std::string rho_against(stats::Alternative alternative) {
  if (alternative == stats::Alternative::greater) return "rho this large or larger";
  if (alternative == stats::Alternative::less) return "rho this small or smaller";
  return "rho this far from 0 or farther";
}

void require_equally_many(const std::vector<double>& x, const std::vector<double>& y) {
  if (x.size() != y.size())
    throw text::BadInput("x and y must be equally many, got " + std::to_string(x.size()) + " x and " +
                         std::to_string(y.size()) + " y");
}

Figures correlate_figures(const Given& given) {
  const std::vector<double> x = given.list("x");
  const std::vector<double> y = given.list("y");
  require_equally_many(x, y);
  const stats::Alternative alternative = given.alternative();
  const double level = given.level("level");
  const auto correlation = stats::spearman(x, y, alternative, given.draws());
  if (!correlation) throw text::BadInput("all x or all y are equal: there is no rank correlation");
  const auto smallest = stats::smallest_significant_rho(x, y, level);
  Figures figures{"rank correlation of " + std::to_string(x.size()) + " pairs",
                  {{"pairs", "pairs", std::ssize(x)},
                   {"alternative", "alternative", given.word("alternative")},
                   {"level", "level", level},
                   {"rho", "Spearman's rho", correlation->rho, "ties by mid-ranks"}}};
  add_permutation_p(figures, correlation->test, rho_against(alternative));
  figures.figures.push_back({"smallest_attainable_p", "smallest attainable p",
                             known(stats::smallest_attainable_p(x, y, alternative)),
                             "by any pairing of these x and y"});
  figures.figures.push_back({"smallest_rho", "smallest |rho| at the level",
                             known(smallest ? std::optional(smallest->rho) : std::nullopt),
                             smallest_rho_words(smallest)});
  if (given.has("bootstrap")) {
    const stats::MonteCarlo resamples{given.draws().seed, given.count("bootstrap", 1, 1'000'000)};
    const auto interval = stats::bootstrap_rho(x, y, 1 - level, resamples);
    if (!interval) throw text::BadInput("no resample has a correlation: too few pairs");
    add_limits(figures, "rho", "rho", interval->interval,
               per_cent(1 - level) + " by the bootstrap, an approximation");
    figures.add("undefined", "undefined", static_cast<long long>(interval->undefined), "resamples left out");
  }
  if (x.size() > kMostForTau) return figures;
  const auto kendall = stats::kendall(x, y, alternative, given.draws());
  figures.add("tau_b", "Kendall's tau-b", kendall->tau_b, "with S = " + std::to_string(kendall->score));
  figures.add("tau_p", "p of tau", kendall->test.p,
              kendall->test.exact ? "exact" : "of " + std::to_string(kendall->test.draws) + " draws");
  figures.add("tau_smallest_p", "smallest attainable p of tau",
              known(stats::smallest_attainable_kendall_p(x, y, alternative)),
              "by any pairing of these x and y");
  return figures;
}

/// Columns of numbers, each as long as the first list.
std::vector<std::vector<double>> columns_of(const Given& given, const std::string& name, std::size_t length) {
  std::vector<std::vector<double>> columns;
  for (const auto& row : given.ratings(name)) {
    auto& column = columns.emplace_back();
    for (const auto& value : row) {
      if (!value) throw text::BadInput("a value of " + name + " is missing");
      column.push_back(*value);
    }
    if (column.size() != length)
      throw text::BadInput("each of " + name + " must have as many values as x, got " +
                           std::to_string(column.size()) + " and " + std::to_string(length));
  }
  return columns;
}

Figures partial_figures(const Given& given) {
  const std::vector<double> x = given.list("x"), y = given.list("y");
  require_equally_many(x, y);
  const auto found = stats::partial_rho(x, y, columns_of(given, "controls", x.size()), given.draws());
  if (!found) throw text::BadInput("x or y goes wholly with the controls: nothing is left to correlate");
  Figures figures{
      "rank correlation beyond what goes with other properties",
      {{"items", "items", std::ssize(x)},
       {"rho", "partial rho", found->rho, "of what the controls' ranks leave of the ranks"},
       {"degrees_of_freedom", "degrees of freedom", static_cast<long long>(found->degrees_of_freedom)},
       {"t_p", "two-sided p", found->t_p, "by Student's t, an approximation"}}};
  figures.add("permutation_p", "p by permutation", found->test.p,
              (found->test.exact ? "every order" : std::to_string(found->test.draws) + " orders") +
                  std::string(" of what is left of x; likewise an approximation"));
  return figures;
}

Figures item_pairs_figures(const Given& given) {
  const std::vector<double> values = given.list("values"), outcomes = given.list("outcomes");
  const int items = static_cast<int>(values.size());
  const auto first = given.counts("first", 1, items), second = given.counts("second", 1, items);
  if (first.size() != outcomes.size() || second.size() != outcomes.size())
    throw text::BadInput("first, second and outcomes must be equally many, got " +
                         std::to_string(first.size()) + ", " + std::to_string(second.size()) + " and " +
                         std::to_string(outcomes.size()));
  std::vector<stats::ItemPair> pairs;
  for (std::size_t i = 0; i < outcomes.size(); ++i)
    pairs.push_back({first[i] - 1, second[i] - 1, outcomes[i]});
  const auto kind =
      given.has("signed") ? stats::PairValue::signed_difference : stats::PairValue::absolute_difference;
  const stats::Alternative alternative = given.alternative();
  const double level = given.level("level");
  const auto found = stats::permute_by_item(values, pairs, kind, alternative, given.draws());
  if (!found) throw text::BadInput("all differences or all outcomes are equal: there is no rank correlation");
  Figures figures{"rank correlation over pairs that share items",
                  {{"items", "items", std::ssize(values)},
                   {"pairs", "pairs", std::ssize(outcomes)},
                   {"rho", "Spearman's rho", found->rho,
                    given.has("signed") ? "outcome against first less second"
                                        : "outcome against the difference's size"}}};
  add_permutation_p(figures, found->test, "the values given to the items in any order");
  if (values.size() <= stats::kExactItems)
    figures.add("smallest_attainable_p", "smallest attainable p",
                known(stats::smallest_attainable_p_by_item(values, pairs, kind, alternative)),
                "by any order of these values");
  if (values.size() >= 3)
    if (const auto interval = stats::bootstrap_rho_by_item(values, pairs, kind, 1 - level))
      add_limits(figures, "rho", "rho", interval->interval,
                 per_cent(1 - level) + " by the bootstrap of items, an approximation");
  return figures;
}

Figures line_figures(const Given& given) {
  const std::vector<double> x = given.list("x"), y = given.list("y");
  require_equally_many(x, y);
  const double level = given.level("level");
  const auto found = stats::theil_sen(x, y, 1 - level);
  if (!found) throw text::BadInput("all x are equal: there is no slope");
  Figures figures{
      "line through " + std::to_string(x.size()) + " pairs by the median slope",
      {{"pairs", "pairs", std::ssize(x)},
       {"slopes", "slopes", static_cast<long long>(found->slopes), "of all two pairs with different x"},
       {"slope", "median slope", found->slope, "Theil-Sen"},
       {"intercept", "intercept", found->intercept, "median of y less slope times median of x"}}};
  const std::string words = found->interval ? "two-sided, at least " + per_cent(1 - level)
                                            : "so few pairs cannot give " + per_cent(1 - level);
  const auto limit = [&](double stats::Interval::*side) {
    return known(found->interval ? std::optional((*found->interval).*side) : std::nullopt);
  };
  figures.add("slope_lower", "slope from", limit(&stats::Interval::lower), words);
  figures.add("slope_upper", "slope to", limit(&stats::Interval::upper), words);
  return figures;
}

}  // namespace

Topic association_topic() {
  const Argument x{"--x", "First numbers, " + list_form, Argument::required, Shape::list},
      y{"--y", "Second numbers, likewise", Argument::required, Shape::list};
  return {"What goes with what",
          {{"correlate",
            "Rank correlation of x with y",
            "--x 1,2,3,4 --y 2,1,3,4",
            {x,
             y,
             alternative_argument(),
             level_argument(),
             seed_argument(),
             draws_argument(),
             {"--bootstrap", "Interval of rho by so many resamples", ""}},
            correlate_figures},
           {"partial",
            "Rank correlation of x with y beyond what goes with other properties",
            "--x 1,2,3,4,5,6,7 --y 2,1,4,3,6,5,7 --controls \"1 1 2 2 3 3 4\"",
            {x,
             y,
             {"--controls", "A row for each other property; semicolon between rows", Argument::required,
              Shape::raters},
             seed_argument(),
             draws_argument()},
            partial_figures},
           {"item-pairs",
            "Rank correlation over pairs that share items, permuted by item",
            "--values 0.048,0.075,0.2,0.9 --first 1,1,1,2 --second 2,3,4,4 --outcomes 0.5,0.6,0.9,0.8",
            {{"--values", "A property of each item, " + list_form, Argument::required, Shape::list},
             {"--first", "First item of each pair, from 1", Argument::required, Shape::list},
             {"--second", "Second item of each", Argument::required, Shape::list},
             {"--outcomes", "What came of each", Argument::required, Shape::list},
             {"--signed", "Outcomes go with first less second, not with the size of the difference", "",
              Shape::flag},
             alternative_argument(),
             level_argument(),
             seed_argument(),
             draws_argument()},
            item_pairs_figures},
           {"line",
            "Line through x and y by the median slope, with its interval",
            "--x 1,2,3,4,5,6 --y 1.26,1.27,1.12,1.16,1.03,0.9",
            {x, y, level_argument()},
            line_figures}}};
}

}  // namespace desk
