#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/association/kendall.h"
#include "stats/association/spearman.h"
#include "stats/samples/mean_difference.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

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

Figures correlate_figures(const Given& given) {
  const std::vector<double> x = given.list("x");
  const std::vector<double> y = given.list("y");
  if (x.size() != y.size())
    throw text::BadInput("x and y must be equally many, got " + std::to_string(x.size()) + " x and " +
                         std::to_string(y.size()) + " y");
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

}  // namespace

Topic samples_topic() {
  const Argument x{"--x", "First numbers, " + list_form, Argument::required, Shape::list},
      y{"--y", "Second numbers, likewise", Argument::required, Shape::list};
  return {"Numbers beside numbers",
          {{"correlate",
            "Rank correlation of x with y",
            "--x 1,2,3,4 --y 2,1,3,4",
            {x, y, alternative_argument(), level_argument(), seed_argument(), draws_argument()},
            correlate_figures},
           {"differ",
            "Difference of the means of x and y",
            "--x 12,15,18,20 --y 21,25,28",
            {x, y, alternative_argument(), level_argument(), seed_argument(), draws_argument()},
            differ_figures}}};
}

}  // namespace desk
