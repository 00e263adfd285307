#include <algorithm>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "stats/redraw/redraw.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

long long reaching(const std::vector<double>& p, double level) {
  return std::count_if(p.begin(), p.end(), [&](double one) { return stats::reaches(one, level); });
}

/// "2:1".
stats::Split split_of(const std::string& trial) {
  const std::size_t colon = trial.find(':');
  const auto one = text::whole_number(trial.substr(0, colon));
  const auto other = text::whole_number(colon == std::string::npos ? "" : trial.substr(colon + 1));
  if (!one || !other)
    throw text::BadInput("a trial must be two counts with a colon between, like 2:1; got \"" + trial + "\"");
  stats::require_count("first count of trial \"" + trial + "\"", *one, 0, stats::kMostTrials);
  stats::require_count("second count of trial \"" + trial + "\"", *other, 0, stats::kMostTrials);
  return {static_cast<int>(*one), static_cast<int>(*other)};
}

Figures redraw_figures(const Given& given) {
  std::vector<stats::Split> splits;
  long long answers = 0;
  for (const std::string& trial : given.words("trials")) {
    splits.push_back(split_of(trial));
    answers += splits.back().one + splits.back().other;
  }
  const int observed = given.count("observed", 0, 1'000'000);
  const double level = given.level("level");
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

Figures adjust_figures(const Given& given) {
  const std::vector<double> p = given.list("p");
  const double level = given.level("level");
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

}  // namespace

Topic pooled_topic() {
  return {"Several listeners and several tests",
          {{"redraw",
            "Exact p of trials that several listeners answer, by the re-draw of the coins",
            "3:0 2:1 0:3 3:0 --observed 11",
            {{"trials", "A trial each: answers \"A\", colon, answers \"B\"", Argument::required, Shape::list},
             {"--observed", "Right answers in all"},
             level_argument()},
            redraw_figures},
           {"adjust",
            "p-values of a family, adjusted",
            ".01 .04 .03",
            {{"p", "p-values, " + list_form + "; a planned test that was not carried out counts as 1",
              Argument::required, Shape::list},
             level_argument()},
            adjust_figures}}};
}

}  // namespace desk
