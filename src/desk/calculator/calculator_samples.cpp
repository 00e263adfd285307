#include <string>

#include "desk/calculator/calculator.h"
#include "desk/calculator/calculator_permutation.h"
#include "desk/calculator/calculator_typed.h"
#include "stats/mean_difference.h"
#include "stats/spearman.h"
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
  const double per_cent = text::number(text::significant(100 * (1 - level), 6)).value();
  return "two-sided " + text::shortest(per_cent) + " %, approximation (Welch)";
}

}  // namespace

Figures calculate(const CorrelateTyped& typed) {
  const std::vector<double> x = typed_list("x", typed.x);
  const std::vector<double> y = typed_list("y", typed.y);
  if (x.size() != y.size())
    throw text::BadInput("x and y must be equally many, got " + std::to_string(x.size()) + " x and " +
                         std::to_string(y.size()) + " y");
  const stats::Alternative alternative = typed_alternative(typed.alternative);
  const double level = typed_level("level", typed.level);
  const auto correlation = stats::spearman(x, y, alternative, typed_draws(typed.monte_carlo));
  if (!correlation) throw text::BadInput("all x or all y are equal: there is no rank correlation");
  const auto smallest = stats::smallest_significant_rho(x, y, level);
  Figures figures{"rank correlation of " + std::to_string(x.size()) + " pairs",
                  {{"pairs", "pairs", count_of(x)},
                   {"alternative", "alternative", typed.alternative},
                   {"level", "level", level},
                   {"rho", "Spearman's rho", correlation->rho, "ties by mid-ranks"}}};
  add_permutation_p(figures, correlation->test, rho_against(alternative));
  figures.figures.push_back({"smallest_attainable_p", "smallest attainable p",
                             known(stats::smallest_attainable_p(x, y, alternative)),
                             "by any pairing of these x and y"});
  figures.figures.push_back({"smallest_rho", "smallest |rho| at the level",
                             known(smallest ? std::optional(smallest->rho) : std::nullopt),
                             smallest_rho_words(smallest)});
  return figures;
}

Figures calculate(const DifferTyped& typed) {
  const std::vector<double> x = typed_list("x", typed.x);
  const std::vector<double> y = typed_list("y", typed.y);
  const stats::Alternative alternative = typed_alternative(typed.alternative);
  const double level = typed_level("level", typed.level);
  const auto test = stats::mean_difference_test(x, y, alternative, typed_draws(typed.monte_carlo));
  const auto interval = stats::welch_interval(x, y, 1 - level);
  Figures figures{"difference of two means",
                  {{"x_values", "values of x", count_of(x)},
                   {"y_values", "values of y", count_of(y)},
                   {"alternative", "alternative", typed.alternative},
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

}  // namespace desk
