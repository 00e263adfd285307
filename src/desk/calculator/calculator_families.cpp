#include <algorithm>
#include <string>

#include "desk/calculator/calculator.h"
#include "desk/calculator/calculator_typed.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "text/error.h"

namespace desk {
namespace {

long long reaching(const std::vector<double>& p, double level) {
  return std::count_if(p.begin(), p.end(), [&](double one) { return stats::reaches(one, level); });
}

}  // namespace

Figures calculate(const RedrawTyped& typed) {
  std::vector<stats::Split> splits;
  long long answers = 0;
  for (const std::string& trial : typed.splits) {
    splits.push_back(typed_split(trial));
    answers += splits.back().one + splits.back().other;
  }
  if (splits.empty()) throw text::BadInput("the re-draw needs at least one trial, like 2:1");
  const int observed = typed_count("observed", typed.observed, 0, 1'000'000);
  const double level = typed_level("level", typed.level);
  const double p = stats::redraw_at_least(splits, observed);
  const auto minimum = stats::redraw_minimum(splits, level);
  return {"re-draw of the coins of " + std::to_string(splits.size()) + " trials",
          {{"trials", "trials", std::ssize(splits)},
           {"answers", "answers", answers},
           {"observed", "observed total", observed},
           {"level", "level", level},
           {"p_one_sided", "one-sided p", p, "exact, the answers as they are: a total this large or larger"},
           {"p_two_sided", "two-sided p", stats::redraw_two_sided(splits, observed),
            "exact: a total this far from half of the answers or farther"},
           {"reaches_level", "reaches the level", stats::reaches(p, level), "by the one-sided p"},
           {"minimum_total", "total needed", known(minimum),
            minimum ? "for a one-sided p at most the level" : "impossible: not even the largest total"}}};
}

Figures calculate(const AdjustTyped& typed) {
  const std::vector<double> p = typed_list("p", typed.p);
  const double level = typed_level("level", typed.level);
  const std::vector<double> bonferroni = stats::bonferroni(p), holm = stats::holm(p),
                            benjamini_hochberg = stats::benjamini_hochberg(p);
  return {
      "adjusted p-values of a family",
      {{"tests", "tests", std::ssize(p)},
       {"level", "level", level, "of the whole family"},
       {"bonferroni_supported", "supported by Bonferroni", reaching(bonferroni, level),
        "holds the chance of any false one"},
       {"holm_supported", "supported by Holm", reaching(holm, level), "holds the chance of any false one"},
       {"benjamini_hochberg_supported", "supported by Benjamini-Hochberg",
        reaching(benjamini_hochberg, level), "holds the expected share of false ones"}},
      {{"p", "p", p},
       {"bonferroni", "Bonferroni", bonferroni},
       {"holm", "Holm", holm},
       {"benjamini_hochberg", "Benjamini-Hochberg", benjamini_hochberg}}};
}

}  // namespace desk
