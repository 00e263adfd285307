#include <algorithm>
#include <numeric>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/level.h"
#include "stats/multiplicity.h"
#include "stats/pooled/combination.h"
#include "stats/redraw/poisson_binomial.h"
#include "stats/redraw/redraw.h"
#include "stats/redraw/redraw_fixed.h"
#include "stats/redraw/redraw_layouts.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

long long reaching(const std::vector<double>& p, double level) {
  return std::count_if(p.begin(), p.end(), [&](double one) { return stats::reaches(one, level); });
}

std::vector<stats::Split> splits_of(const std::vector<std::vector<int>>& trials) {
  std::vector<stats::Split> splits;
  for (const auto& trial : trials) splits.push_back({trial[0], trial[1]});
  return splits;
}

/// The total's distribution, by the way the truth was drawn.
stats::TotalDistribution drawn_again(const Given& given, const std::vector<std::vector<int>>& trials) {
  const bool all_coins =
      std::all_of(trials.begin(), trials.end(), [](const auto& trial) { return trial.size() == 2; });
  if (given.has("fixed")) {
    if (!all_coins) throw text::BadInput("--fixed needs two counts a trial, like 2:1");
    return stats::redraw_fixed(splits_of(trials), given.count("fixed", 0, static_cast<int>(trials.size())));
  }
  return all_coins ? stats::redraw_distribution(splits_of(trials)) : stats::redraw_layouts(trials);
}

std::string drawn_how(const Given& given) {
  return given.has("fixed") ? "every arrangement of the fixed numbers equally likely"
                            : "every layout of a trial equally likely";
}

void add_total(Figures& figures, const stats::TotalDistribution& distribution, int observed, double level) {
  const double p = stats::total_at_least(distribution, observed);
  const auto minimum = stats::total_minimum(distribution, level);
  figures.add("p_one_sided", "one-sided p", p, "exact: a total this large or larger");
  figures.add("p_two_sided", "two-sided p", stats::total_two_sided_by_distance(distribution, observed),
              "exact: a total this far from its mean or farther");
  figures.add("reaches_level", "reaches the level", stats::reaches(p, level), "by the one-sided p");
  figures.add("minimum_total", "total needed", known(minimum),
              minimum ? "for a one-sided p at most the level" : "impossible: not even the largest total");
}

Figures redraw_figures(const Given& given) {
  const auto trials = given.colon_counts("trials");
  const stats::TotalDistribution distribution = drawn_again(given, trials);
  const int largest = static_cast<int>(distribution.size()) - 1;
  const int observed = given.count("observed", 0, largest);
  if (distribution[static_cast<std::size_t>(observed)] == 0)
    throw text::BadInput("observed must be a total that the trials can give, got " + given.word("observed"));
  const double level = given.level("level");
  long long answers = 0;
  for (const auto& trial : trials) answers = std::accumulate(trial.begin(), trial.end(), answers);
  Figures figures{"re-draw of the truth of " + std::to_string(trials.size()) + " trials",
                  {{"trials", "trials", std::ssize(trials)},
                   {"answers", "answers", answers},
                   {"drawn", "drawn", drawn_how(given), "the answers stay as they are"},
                   {"observed", "observed total", observed},
                   {"level", "level", level}}};
  add_total(figures, distribution, observed, level);
  return figures;
}

/// "10@1/2": trials and their chance.
stats::TrialGroup group_of(const std::string& word) {
  const std::size_t at = word.find('@'), bar = word.find('/');
  const auto trials = text::whole_number(word.substr(0, at));
  const auto above = text::number(at == std::string::npos ? "" : word.substr(at + 1, bar - at - 1));
  const auto below = bar == std::string::npos ? 1.0 : text::number(word.substr(bar + 1));
  if (!trials || !above || !below || *below == 0)
    throw text::BadInput("a group must be trials and their chance, like 10@1/2; got \"" + word + "\"");
  stats::require_count("trials of \"" + word + "\"", *trials, 0, 20'000);
  return {static_cast<int>(*trials), *above / *below};
}

Figures mixed_figures(const Given& given) {
  std::vector<stats::TrialGroup> groups;
  int trials = 0;
  for (const std::string& word : given.words("groups")) {
    groups.push_back(group_of(word));
    trials += groups.back().trials;
  }
  const stats::TotalDistribution distribution = stats::poisson_binomial(groups);
  const int correct = given.count("correct", 0, trials);
  Figures figures{"right answers of trials with different chances",
                  {{"trials", "trials", trials},
                   {"correct", "right", correct},
                   {"level", "level", given.level("level")}}};
  add_total(figures, distribution, correct, given.level("level"));
  return figures;
}

Figures adjust_figures(const Given& given) {
  const std::vector<double> p = given.list("p");
  const double level = given.level("level");
  Figures figures{"adjusted p-values of a family",
                  {{"tests", "tests", std::ssize(p)}, {"level", "level", level, "of the whole family"}},
                  {{"p", "p", p}}};
  const std::string any = "holds the chance of any false one",
                    positive = any + ", if tests are not negatively dependent",
                    rate = "holds the expected share of false ones";
  using Adjusted = std::vector<double>;
  for (const auto& [key, label, adjusted, holds] :
       {std::tuple("bonferroni", "Bonferroni", Adjusted(stats::bonferroni(p)), any),
        std::tuple("holm", "Holm", Adjusted(stats::holm(p)), any),
        std::tuple("hochberg", "Hochberg", Adjusted(stats::hochberg(p)), positive),
        std::tuple("hommel", "Hommel", Adjusted(stats::hommel(p)), positive),
        std::tuple("benjamini_hochberg", "Benjamini-Hochberg", Adjusted(stats::benjamini_hochberg(p)), rate),
        std::tuple("benjamini_yekutieli", "Benjamini-Yekutieli", Adjusted(stats::benjamini_yekutieli(p)),
                   rate + ", whatever the dependence")}) {
    figures.add(std::string(key) + "_supported", std::string("supported by ") + label,
                reaching(adjusted, level), holds);
    figures.series.push_back({key, label, adjusted});
  }
  return figures;
}

Figures combine_figures(const Given& given) {
  const std::vector<double> p = given.list("p");
  const std::vector<double> weights = given.has("weights") ? given.list("weights") : std::vector<double>();
  const stats::CombinedP fisher = stats::fisher_combination(p),
                         stouffer = stats::stouffer_combination(p, weights);
  return {"one p from several independent ones",
          {{"tests", "tests", std::ssize(p)},
           {"fisher_chi_square", "Fisher's chi-square", fisher.statistic,
            std::to_string(2 * p.size()) + " degrees of freedom"},
           {"fisher_p", "Fisher's p", fisher.p, "conservative for exact tests of counts"},
           {"stouffer_z", "Stouffer's z", stouffer.statistic, weights.empty() ? "equal weights" : "weighted"},
           {"stouffer_p", "Stouffer's p", stouffer.p, "likewise"}}};
}

}  // namespace

Topic pooled_topic() {
  return {
      "Several listeners and several tests",
      {{"redraw",
        "Exact p of trials that several listeners answer, by the re-draw of the hidden truth",
        "3:0 2:1 0:3 3:0 --observed 11",
        {{"trials",
          "A trial each: right answers under each layout that was equally likely, colon between: for a coin "
          "answers \"A\":answers \"B\"",
          Argument::required, Shape::list},
         {"--observed", "Right answers in all"},
         {"--fixed", "Exactly so many trials had the first layout, in any order (no coins)", ""},
         level_argument()},
        redraw_figures},
       {"mixed",
        "Right answers of trials with different chances, exactly",
        "10@1/2 12@1/3 --correct 14",
        {{"groups", "Trials and the chance of a guess, like 10@1/2", Argument::required, Shape::list},
         {"--correct", "Right answers in all"},
         level_argument()},
        mixed_figures},
       {"combine",
        "One p from several independent tests",
        ".01 .2 .3",
        {{"p", "One-sided p-values, " + list_form, Argument::required, Shape::list},
         {"--weights", "For Stouffer's method, one for each", "", Shape::list}},
        combine_figures},
       {"adjust",
        "p-values of a family, adjusted",
        ".01 .04 .03",
        {{"p", "p-values, " + list_form + "; a planned test that was not carried out counts as 1",
          Argument::required, Shape::list},
         level_argument()},
        adjust_figures}}};
}

}  // namespace desk
