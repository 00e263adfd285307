#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/samples/mean_difference.h"
#include "stats/samples/rank_sum.h"
#include "stats/samples/repeated_ranks.h"
#include "stats/samples/signed_rank.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

long long count_of(const std::vector<double>& values) { return std::ssize(values); }

std::string difference_against(stats::Alternative alternative) {
  if (alternative == stats::Alternative::greater) return "a difference this large or larger";
  if (alternative == stats::Alternative::less) return "a difference this small or smaller";
  return "a difference this far from 0 or farther";
}

std::string welch_words(double level, bool defined) {
  if (!defined) return "needs two values on each side, and a spread that is neither 0 nor extreme";
  return "two-sided " + per_cent(1 - level) + ", approximation (Welch)";
}

Figures rank_sum_figures(const Given& given) {
  const std::vector<double> x = given.list("x"), y = given.list("y");
  const auto found = stats::rank_sum(x, y, given.alternative(), given.draws());
  Figures figures{"whether one sample is larger (Wilcoxon's rank sum)",
                  {{"x_values", "values of x", count_of(x)},
                   {"y_values", "values of y", count_of(y)},
                   {"alternative", "alternative", given.word("alternative")},
                   {"pairs_won", "pairs that x wins", found.pairs_won,
                    "of " + std::to_string(x.size() * y.size()) + ", ties half"}}};
  add_permutation_p(figures, found.test, "every division into samples of these sizes equally likely");
  return figures;
}

Figures differ_figures(const Given& given) {
  const std::vector<double> x = given.list("x");
  const std::vector<double> y = given.list("y");
  const stats::Alternative alternative = given.alternative();
  const double level = given.level("level");
  const auto test = stats::mean_difference_test(x, y, alternative, given.draws());
  const auto interval = stats::welch_interval(x, y, 1 - level);
  Figures figures{"difference of two means",
                  {{"x_values", "values of x", count_of(x)},
                   {"y_values", "values of y", count_of(y)},
                   {"alternative", "alternative", given.word("alternative")},
                   {"level", "level", level},
                   {"x_mean", "mean of x", stats::mean(x)},
                   {"y_mean", "mean of y", stats::mean(y)},
                   {"mean_difference", "difference", stats::mean_difference(x, y), "x less y"}}};
  add_permutation_p(figures, test, difference_against(alternative));
  const std::string words = welch_words(level, interval.has_value());
  figures.figures.push_back({"welch_lower", "interval from",
                             known(interval ? std::optional(interval->lower) : std::nullopt), words});
  figures.figures.push_back(
      {"welch_upper", "interval to", known(interval ? std::optional(interval->upper) : std::nullopt), words});
  return figures;
}

Figures paired_figures(const Given& given) {
  const std::vector<double> differences = given.list("differences");
  const stats::Alternative alternative = given.alternative();
  const auto found = stats::signed_rank(differences, alternative, given.draws());
  Figures figures{"differences of two conditions (Wilcoxon's signed ranks)",
                  {{"differences", "differences", count_of(differences)},
                   {"zeros", "of these 0", static_cast<long long>(found.zeros), "left out"},
                   {"alternative", "alternative", given.word("alternative")},
                   {"positive_sum", "rank sum of the positive", found.positive_sum, "ties by mid-ranks"}}};
  add_permutation_p(figures, found.test, "every sign equally likely");
  return figures;
}

/// A row each listener; nothing missing.
std::vector<std::vector<double>> whole_rows(const Given& given, const std::string& name) {
  std::vector<std::vector<double>> rows;
  for (const auto& row : given.ratings(name)) {
    rows.emplace_back();
    for (const auto& value : row) {
      if (!value)
        throw text::BadInput("every listener must rate every item; one of listener " +
                             std::to_string(rows.size()) + " is missing");
      rows.back().push_back(*value);
    }
  }
  return rows;
}

Figures items_figures(const Given& given) {
  const auto rows = whole_rows(given, "ratings");
  const auto found = stats::friedman(rows, given.draws());
  if (!found) throw text::BadInput("every listener gave all items the same: there is nothing to test");
  Figures figures{"whether items differ, from the ranks within each listener",
                  {{"listeners", "listeners", std::ssize(rows)},
                   {"items", "items", std::ssize(rows.front())},
                   {"chi_square", "Friedman's chi-square", found->chi_square, "corrected for ties"},
                   {"concordance", "Kendall's W", found->concordance, "1 if all rank alike"}},
                  {{"rank_sum", "rank sum of each item", found->rank_sums}}};
  add_permutation_p(figures, found->test, "a chi-square this large or larger");
  const auto trend = stats::page(rows, stats::Alternative::greater, given.draws());
  figures.add("page", "Page's L", trend->statistic,
              "for items that were foreseen to rise in the order given");
  figures.add("page_expected", "L by chance", trend->expected, "on average");
  figures.add("page_p", "one-sided p of L", trend->test.p,
              trend->test.exact ? "exact" : "of " + std::to_string(trend->test.draws) + " draws");
  return figures;
}

}  // namespace

Topic samples_topic() {
  const Argument x{"--x", "First numbers, " + list_form, Argument::required, Shape::list},
      y{"--y", "Second numbers, likewise", Argument::required, Shape::list};
  return {
      "Samples",
      {{"differ",
        "Difference of the means of x and y",
        "--x 12,15,18,20 --y 21,25,28",
        {x, y, alternative_argument(), level_argument(), seed_argument(), draws_argument()},
        differ_figures},
       {"rank-sum",
        "Whether x is larger than y, by ranks",
        "--x 12,15,18,20 --y 21,25,28",
        {x, y, alternative_argument(), seed_argument(), draws_argument()},
        rank_sum_figures},
       {"paired",
        "Whether differences of two conditions lie on one side of 0",
        "1.1 2.2 0.3 -0.1",
        {{"differences", "One for each listener, " + list_form, Argument::required, Shape::list},
         alternative_argument(),
         seed_argument(),
         draws_argument()},
        paired_figures},
       {"items",
        "Whether items differ where every listener rates all of them, and whether they rise",
        "\"1 2 3; 4 5 9; 0 1 2\"",
        {{"ratings", "A row for each listener, items in the order foreseen, if any; semicolon between rows",
          Argument::required, Shape::raters},
         seed_argument(),
         draws_argument()},
        items_figures}}};
}

}  // namespace desk
