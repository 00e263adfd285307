#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/association/kendall.h"
#include "stats/association/spearman.h"
#include "stats/association/theil_sen.h"
#include "stats/samples/mean_difference.h"
#include "stats/samples/repeated_ranks.h"
#include "stats/samples/signed_rank.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

/// Beyond, tau is left out: its draws would take too long.
constexpr std::size_t kMostForTau = 2'000;

long long count_of(const std::vector<double>& values) { return std::ssize(values); }

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

std::string difference_against(stats::Alternative alternative) {
  if (alternative == stats::Alternative::greater) return "a difference this large or larger";
  if (alternative == stats::Alternative::less) return "a difference this small or smaller";
  return "a difference this far from 0 or farther";
}

std::string welch_words(double level, bool defined) {
  if (!defined) return "needs two values on each side, and a spread that is neither 0 nor extreme";
  return "two-sided " + per_cent(1 - level) + ", approximation (Welch)";
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
                  {{"pairs", "pairs", count_of(x)},
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
  if (x.size() > kMostForTau) return figures;
  const auto kendall = stats::kendall(x, y, alternative, given.draws());
  figures.add("tau_b", "Kendall's tau-b", kendall->tau_b, "with S = " + std::to_string(kendall->score));
  figures.add("tau_p", "p of tau", kendall->test.p,
              kendall->test.exact ? "exact" : "of " + std::to_string(kendall->test.draws) + " draws");
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

Figures line_figures(const Given& given) {
  const std::vector<double> x = given.list("x"), y = given.list("y");
  require_equally_many(x, y);
  const double level = given.level("level");
  const auto found = stats::theil_sen(x, y, 1 - level);
  if (!found) throw text::BadInput("all x are equal: there is no slope");
  Figures figures{
      "line through " + std::to_string(x.size()) + " pairs by the median slope",
      {{"pairs", "pairs", count_of(x)},
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
      "Numbers beside numbers",
      {{"correlate",
        "Rank correlation of x with y",
        "--x 1,2,3,4 --y 2,1,3,4",
        {x, y, alternative_argument(), level_argument(), seed_argument(), draws_argument()},
        correlate_figures},
       {"differ",
        "Difference of the means of x and y",
        "--x 12,15,18,20 --y 21,25,28",
        {x, y, alternative_argument(), level_argument(), seed_argument(), draws_argument()},
        differ_figures},
       {"line",
        "Line through x and y by the median slope, with its interval",
        "--x 1,2,3,4,5,6 --y 1.26,1.27,1.12,1.16,1.03,0.9",
        {x, y, level_argument()},
        line_figures},
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
