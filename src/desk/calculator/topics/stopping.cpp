#include <cmath>
#include <limits>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/sequential/group_sequential.h"
#include "stats/sequential/rules_on_counts.h"
#include "stats/sequential/spending_rule.h"
#include "stats/sequential/sprt.h"

namespace desk {
namespace {

const double never = std::numeric_limits<double>::quiet_NaN();
constexpr int most_looks = 100;

double bound(const std::optional<int>& count) { return count ? *count : never; }

/// What a rule does when every answer is a guess, and at a share right.
void add_operation(Figures& figures, const stats::StoppingRule& rule, double chance, double share) {
  const stats::Operation guessing = stats::operate(rule, chance), hearing = stats::operate(rule, share);
  figures.add("false_alarms", "false alarms", guessing.support,
              "exact: support when every answer is a guess");
  figures.add("expected_trials_guessing", "trials on average", guessing.expected_trials,
              "exact: when every answer is a guess");
  figures.add("share", "share right", share);
  figures.add("power", "power", hearing.support, "exact: support at that share");
  figures.add("given_up", "given up", hearing.give_up, "exact: at that share");
  figures.add("expected_trials", "trials on average", hearing.expected_trials, "exact: at that share");
}

Figures sprt_figures(const Given& given) {
  const stats::Sprt test{given.chance(), given.number("share"), given.level("level"), given.level("missed")};
  const int trials = given.count("trials", 1, 10'000);
  const stats::SprtLines lines = stats::sprt_lines(test);
  const stats::StoppingRule rule = stats::sprt_rule(test, trials);
  Figures figures{
      "sequential probability ratio test",
      {{"chance", "chance", test.chance},
       {"level", "false alarms wanted", test.alpha},
       {"missed_wanted", "missed wanted", test.beta},
       {"trials", "ended after", trials, "trials, undecided"},
       {"slope", "slope of the lines", lines.slope},
       {"upper_intercept", "support line at 0", lines.upper_intercept},
       {"lower_intercept", "give-up line at 0", lines.lower_intercept}},
      {{"trial", "trial", {}}, {"support_from", "support from", {}}, {"give_up_to", "give up at", {}}}};
  add_operation(figures, rule, test.chance, test.alternative);
  figures.add("expected_trials_wald", "Wald's approximation",
              stats::sprt_expected_trials_wald(test, test.alternative),
              "of the trials on average at that share, never ended");
  for (int n = 1; n <= trials; ++n) {
    const stats::Look& look = rule.looks[static_cast<std::size_t>(n - 1)];
    figures.series[0].values.push_back(n);
    figures.series[1].values.push_back(look.support && *look.support <= n ? *look.support : never);
    figures.series[2].values.push_back(bound(look.give_up));
  }
  return figures;
}

stats::Spending spending_of(const Given& given) {
  return given.one_of("spending", {"obrien-fleming", "pocock"}) == "pocock" ? stats::Spending::pocock
                                                                            : stats::Spending::obrien_fleming;
}

Figures looks_figures(const Given& given) {
  const std::vector<int> looks = given.counts("looks", 1, stats::kMostTrials);
  const double level = given.level("level"), chance = given.chance();
  stats::require_looks(looks, looks.back());
  std::vector<double> spent;
  for (const int look : looks)
    spent.push_back(stats::level_spent(spending_of(given), level, double(look) / looks.back()));
  const stats::StoppingRule rule = stats::spending_rule(looks, spent, chance);
  Figures figures{"several looks at one level, exact on counts",
                  {{"chance", "chance", chance},
                   {"level", "level", level},
                   {"spending", "spending", given.word("spending")}},
                  {{"look_after", "look after", {}},
                   {"spent", "level spent", spent},
                   {"support_from", "support from", {}}}};
  add_operation(figures, rule, chance, given.number("share"));
  for (const int look : looks) {
    figures.series[0].values.push_back(look);
    figures.series[2].values.push_back(bound(rule.looks[static_cast<std::size_t>(look - 1)].support));
  }
  return figures;
}

Figures peeking_figures(const Given& given) {
  const int trials = given.count("trials", 1, 100'000), first = given.count("first", 1, trials);
  const double level = given.level("level"), chance = given.chance();
  const stats::StoppingRule rule = stats::unadjusted_rule(trials, level, chance, first);
  Figures figures{"looking after every trial at the full level, which must not be done",
                  {{"trials", "trials", trials},
                   {"first", "first look after", first},
                   {"chance", "chance", chance},
                   {"level", "level", level, "of each look"}}};
  add_operation(figures, rule, chance, given.number("share"));
  return figures;
}

Figures boundary_figures(const Given& given) {
  const int looks = given.count("looks", 1, most_looks);
  const double level = given.level("level");
  const stats::Sides sides = given.has("one-sided") ? stats::Sides::one : stats::Sides::two;
  const double pocock = stats::pocock_constant(looks, level, sides);
  const double obrien_fleming = stats::obrien_fleming_constant(looks, level, sides);
  std::vector<double> fractions;
  Series look{"look", "look", {}}, constant{"pocock", "Pocock", {}},
      falling{"obrien_fleming", "O'Brien-Fleming", {}};
  for (int k = 1; k <= looks; ++k) {
    fractions.push_back(double(k) / looks);
    look.values.push_back(k);
    constant.values.push_back(pocock);
    falling.values.push_back(obrien_fleming * std::sqrt(double(looks) / k));
  }
  return {"boundaries of a normal score at equal looks",
          {{"looks", "looks", looks},
           {"level", "level", level, given.has("one-sided") ? "one-sided" : "two-sided, both sides together"},
           {"pocock_constant", "Pocock's constant", pocock},
           {"obrien_fleming_constant", "O'Brien-Fleming's constant", obrien_fleming},
           {"note", "on counts", std::string("an approximation; calc looks is exact on counts")}},
          {look,
           constant,
           falling,
           {"spending_pocock", "spending, Pocock type",
            stats::spending_boundary(stats::Spending::pocock, level, fractions, sides)},
           {"spending_obrien_fleming", "spending, O'Brien-Fleming type",
            stats::spending_boundary(stats::Spending::obrien_fleming, level, fractions, sides)}}};
}

}  // namespace

Topic stopping_topic() {
  const Argument share{"--share", "Long-run share right that is worth finding", "0.75"};
  return {"Stopping rules",
          {{"sprt",
            "Wald's sequential test: its bounds, exact error rates and numbers of trials",
            "--share 0.75",
            {share,
             chance_argument(),
             level_argument(),
             {"--missed", "Wanted probability of giving up at that share", "0.1"},
             {"--trials", "Ended undecided after so many trials", "100"}},
            sprt_figures},
           {"looks",
            "Bounds for planned looks, exact on counts",
            "8 16 24",
            {{"looks", "Trials after which is looked, the last is the end", Argument::required, Shape::list},
             {"--spending", "obrien-fleming or pocock", "obrien-fleming"},
             share,
             chance_argument(),
             level_argument()},
            looks_figures},
           {"peeking",
            "What looking after every trial does to the rate of false alarms",
            "16",
            {{"trials", "Trials at most"},
             {"--first", "First look after so many trials", "1"},
             share,
             chance_argument(),
             level_argument()},
            peeking_figures},
           {"boundary",
            "Group-sequential boundaries of a normal score",
            "5",
            {{"looks", "Equal looks"}, level_argument(), {"--one-sided", "One side only", "", Shape::flag}},
            boundary_figures}}};
}

}  // namespace desk
