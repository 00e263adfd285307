#include <string>
#include <tuple>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/level.h"
#include "stats/share/approximate_interval.h"
#include "stats/share/binomial.h"
#include "stats/share/coverage.h"
#include "stats/share/heard.h"
#include "stats/share/interval.h"
#include "stats/share/power.h"
#include "stats/share/similarity.h"
#include "text/number.h"

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
  add_limits(figures, "jeffreys", "Jeffreys interval", stats::jeffreys(correct, trials, confidence),
             "two-sided " + sure + ", approximation (Jeffreys)");
  add_limits(figures, "mid_p", "mid-p interval", stats::mid_p(correct, trials, confidence),
             "two-sided " + sure + ", approximation (mid-p)");
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

/// How often intervals truly hold the share.
Figures coverage_figures(const Given& given) {
  const int trials = given.count("trials", 1, 10'000);
  const double share = given.number("share"), confidence = 1 - given.level("level");
  Figures figures{"how often intervals of " + given.word("trials") + " trials hold the true share",
                  {{"trials", "trials", trials},
                   {"share", "share right", share},
                   {"confidence", "confidence", confidence}}};
  using Method = stats::IntervalMethod;
  for (const auto& [key, label, method] :
       {std::tuple("clopper_pearson", "exact (Clopper-Pearson)", Method::clopper_pearson),
        std::tuple("mid_p", "mid-p", Method::mid_p), std::tuple("wilson", "Wilson", Method::wilson),
        std::tuple("jeffreys", "Jeffreys", Method::jeffreys),
        std::tuple("likelihood", "likelihood", Method::likelihood)}) {
    figures.add(key, label, stats::coverage(method, trials, share, confidence), "at that share, exact");
    const stats::LeastCoverage least = stats::least_coverage(method, trials, confidence);
    figures.add(std::string(key) + "_least", "  at the worst share", least.coverage,
                "at or beside " + text::significant(least.share, 3));
  }
  return figures;
}

Figures similar_figures(const Given& given) {
  const int trials = given.count("trials", 1, stats::kMostTrials),
            correct = given.count("correct", 0, trials);
  const double heard = given.number("heard"), chance = given.chance(), level = given.level("level");
  const double p = stats::similarity_p(correct, trials, heard, chance);
  const auto most = stats::most_correct_for_similarity(trials, level, heard, chance);
  const stats::HeardEstimate estimate = stats::estimate_heard(correct, trials, chance, 1 - level);
  Figures figures{
      "no more than so many could tell?",
      {{"correct", "right", correct},
       {"trials", "trials", trials},
       {"chance", "chance", chance, "of a guess to be right"},
       {"heard_tested", "heard in this share of trials", heard, "would be too much to call similar"},
       {"level", "level", level},
       {"p", "p of similarity", p, "exact: so few right or fewer, if that share is heard"},
       {"similar", "shown to be similar", stats::reaches(p, level)},
       {"most_correct", "right at most", known(most),
        most ? "for similarity" : "impossible: not even none right"},
       {"heard_estimate", "heard, estimated", estimate.heard,
        estimate.below_chance ? "fewer right than by chance: raised to 0"
                              : "(share right - chance)/(1 - chance)"},
       {"heard_upper_limit", "heard at most", stats::heard_upper(correct, trials, chance, 1 - level),
        "one-sided " + per_cent(1 - level) + ", exact"}}};
  add_limits(figures, "heard", "heard", estimate.limits, "two-sided " + per_cent(1 - level) + ", exact");
  return figures;
}

}  // namespace

Topic share_topic() {
  return {"Right answers",
          {{"right",
            "So many right: exact p, intervals, and what would have been caught",
            "12 16",
            {{"correct", "Right answers"}, {"trials", "Trials"}, chance_argument(), level_argument()},
            right_figures},
           {"coverage",
            "How often each interval holds the true share, exactly",
            "16 --share 0.75",
            {{"trials", "Trials, up to 10,000"}, {"--share", "True share right", "0.5"}, level_argument()},
            coverage_figures},
           {"similar",
            "Whether few right answers show that hardly anybody could tell",
            "9 30 --heard 0.3 --chance 1/3",
            {{"correct", "Right answers"},
             {"trials", "Trials"},
             {"--heard", "Share of trials heard that would be too much"},
             chance_argument(),
             level_argument()},
            similar_figures}}};
}

}  // namespace desk
