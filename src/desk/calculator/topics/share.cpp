#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/level.h"
#include "stats/share/binomial.h"
#include "stats/share/interval.h"
#include "stats/share/power.h"

namespace desk {
namespace {

constexpr double caught_in = 0.8;  // "at least 80 times in 100"

std::string two_sided_rule(double chance) {
  return chance == 0.5 ? "exact: twice the smaller tail"
                       : "exact: sum of all counts no more probable than this one";
}

/// One-sided limits at confidence 1 - level and two-sided intervals at the same.
void add_intervals(Figures& figures, int correct, int trials, double level) {
  const double confidence = 1 - level;
  const std::string sure = per_cent(confidence);
  const stats::Interval exact = stats::clopper_pearson(correct, trials, confidence);
  const stats::Interval score = stats::wilson(correct, trials, confidence);
  const std::string one = "one-sided " + sure + ", exact (Clopper-Pearson)";
  const std::string two = "two-sided " + sure + ", exact (Clopper-Pearson)";
  const std::string approximation = "two-sided " + sure + ", approximation (Wilson)";
  for (const Figure& figure : {Figure{"lower_limit", "lower limit of the share",
                                      stats::clopper_pearson_lower(correct, trials, confidence), one},
                               {"upper_limit", "upper limit of the share",
                                stats::clopper_pearson_upper(correct, trials, confidence), one},
                               {"clopper_pearson_lower", "exact interval from", exact.lower, two},
                               {"clopper_pearson_upper", "exact interval to", exact.upper, two},
                               {"wilson_lower", "Wilson interval from", score.lower, approximation},
                               {"wilson_upper", "Wilson interval to", score.upper, approximation}})
    figures.figures.push_back(figure);
}

/// What a test of this design would have caught, whatever came out.
void add_caught(Figures& figures, int trials, double level, double chance) {
  const auto share = stats::smallest_share_caught(trials, level, chance, caught_in);
  std::optional<double> heard;
  if (share && *share >= chance) heard = stats::share_heard(*share, chance);
  figures.figures.push_back({"share_caught", "share that would have been caught", known(share),
                             "had the long-run share been this or more: supported at least 80 times in 100"});
  figures.figures.push_back({"heard_when_caught", "heard in this share of trials", known(heard),
                             "the same, if the rest is guessed"});
}

Figures right_figures(const Given& given) {
  const int trials = given.count("trials", 1, stats::kMostTrials);
  const int correct = given.count("correct", 0, trials);
  const double chance = given.chance();
  const double level = given.level("level");
  const double p = stats::chance_of_at_least(correct, trials, chance);
  Figures figures{
      given.word("correct") + " of " + given.word("trials") + " right",
      {{"correct", "right", correct},
       {"trials", "trials", trials},
       {"chance", "chance", chance, "of a guess to be right"},
       {"level", "level", level},
       {"share_right", "share right", double(correct) / trials},
       {"p_one_sided", "one-sided p", p, "exact: this many or more right by guessing alone"},
       {"p_two_sided", "two-sided p", stats::two_sided(correct, trials, chance), two_sided_rule(chance)},
       {"p_or_fewer", "p of so few", stats::chance_of_at_most(correct, trials, chance),
        "exact: this many or fewer right"},
       {"reaches_level", "reaches the level", stats::reaches(p, level), "by the one-sided p"},
       {"minimum_correct", "right needed", known(stats::minimum_correct(trials, level, chance)),
        "for a one-sided p at most the level"}}};
  add_intervals(figures, correct, trials, level);
  add_caught(figures, trials, level, chance);
  return figures;
}

}  // namespace

Topic share_topic() {
  return {"Right answers",
          {{"right",
            "So many right: exact p, intervals, and what would have been caught",
            "12 16",
            {{"correct", "Right answers"}, {"trials", "Trials"}, chance_argument(), level_argument()},
            right_figures}}};
}

}  // namespace desk
