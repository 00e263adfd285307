#include <cmath>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/evidence/betting.h"
#include "stats/evidence/confidence_sequence.h"
#include "stats/evidence/e_process.h"
#include "stats/evidence/hedged_capital.h"
#include "stats/evidence/shared_e_process.h"
#include "text/error.h"

namespace desk {
namespace {

constexpr int most_candidates = 100'000;
const std::string any_time = "valid whenever it is looked at";

void add_evidence(Figures& figures, const std::string& key, const std::string& label, double log_e,
                  double level, const std::string& note) {
  figures.add(key, label, std::exp(log_e), note);
  figures.add(key + "_reaches_level", "  reaches 1/level", log_e >= -std::log(level) * (1 - 1e-12));
}

Figures evidence_figures(const Given& given) {
  const int trials = given.count("trials", 1, stats::kMostTrials),
            correct = given.count("correct", 0, trials);
  const double chance = given.chance(), level = given.level("level"), share = given.number("share");
  Figures figures{"evidence that may be looked at after every trial",
                  {{"correct", "right so far", correct},
                   {"trials", "trials so far", trials},
                   {"chance", "chance", chance},
                   {"level", "level", level, "reached by an e-value of 1/level"}}};
  add_evidence(figures, "e_likelihood_ratio", "likelihood ratio",
               stats::log_likelihood_ratio(correct, trials, chance, share), level,
               "e-process against the share " + given.word("share") + ", fixed beforehand");
  add_evidence(figures, "e_upper_mixture", "mixture above chance",
               stats::log_upper_beta_mixture(correct, trials, chance, 1, 1), level,
               "e-process, uniform over the shares above chance");
  add_evidence(figures, "e_mixture", "mixture of all", stats::log_beta_mixture(correct, trials, chance, 1, 1),
               level, "e-process, two-sided, uniform over all shares");
  add_limits(figures, "share", "share right", stats::beta_confidence_sequence(correct, trials, 1 - level),
             per_cent(1 - level) + " confidence sequence, " + any_time);
  return figures;
}

Figures shared_figures(const Given& given) {
  const double level = given.level("level"), bet = given.number("bet");
  stats::SharedEProcess fixed(bet), mixture;
  Series trial{"trial", "trial", {}}, one{"e_fixed", "bet " + given.word("bet"), {}},
      all{"e_mixture", "all bets", {}};
  for (const std::vector<int>& counts : given.colon_counts("trials")) {
    if (counts.size() != 2) throw text::BadInput("a trial must be two counts, right:wrong");
    fixed.add(counts[0], counts[1]);
    mixture.add(counts[0], counts[1]);
    trial.values.push_back(static_cast<double>(trial.values.size() + 1));
    one.values.push_back(std::exp(fixed.log_value()));
    all.values.push_back(std::exp(mixture.log_value()));
  }
  Figures figures{"evidence of shared trials, bets on the majority",
                  {{"trials", "trials", std::ssize(trial.values)}, {"level", "level", level}},
                  {trial, one, all}};
  add_evidence(figures, "e_fixed_now", "bet " + given.word("bet"), fixed.log_value(), level, any_time);
  add_evidence(figures, "e_mixture_now", "all bets from 0 to 1", mixture.log_value(), level, any_time);
  return figures;
}

Figures betting_figures(const Given& given) {
  const std::vector<double> observations = given.list("observations");
  const double level = given.level("level"), mean = given.number("mean");
  const std::vector<double> candidates =
      stats::candidate_midpoints(given.count("candidates", 1, most_candidates));
  const auto survivors = stats::hedged_survivors(observations, candidates, level);
  const stats::HoeffdingStep hoeffding = stats::hoeffding_sequence(observations, level).back();
  Figures figures{"mean of observations between 0 and 1, by betting",
                  {{"observations", "observations", std::ssize(observations)},
                   {"level", "level", level},
                   {"mean_tested", "mean tested", mean}}};
  add_limits(figures, "hedged", "mean", stats::interval_around(survivors.back(), candidates),
             per_cent(1 - level) + " confidence sequence by hedged bets, " + any_time);
  add_limits(figures, "hoeffding", "mean",
             {std::fmax(0, hoeffding.centre - hoeffding.half_width),
              std::fmin(1, hoeffding.centre + hoeffding.half_width)},
             "the same by weighted Hoeffding bounds");
  add_evidence(figures, "e_kelly", "evidence for more", stats::log_kelly_capital(observations, mean).back(),
               level, "e-process against a mean of at most " + given.word("mean"));
  add_evidence(figures, "e_hedged", "evidence for another",
               stats::log_hedged_capital(observations, mean, level).back(), level,
               "e-process against the mean " + given.word("mean"));
  return figures;
}

Figures strength_figures(const Given& given) {
  const double p = given.number("p"), kappa = given.number("kappa");
  stats::require_closed_probability("p", p);
  const double least = stats::vovk_sellke_bound(p);
  return {"how strong a p is at most",
          {{"p", "p", p},
           {"kappa", "kappa", kappa},
           {"e_value", "e-value", stats::calibrated_e(p, kappa),
            "kappa p^(kappa - 1), valid at one stopping time"},
           {"least_bayes_factor", "smallest Bayes factor", least,
            "-e p ln p (Vovk, Sellke): of the null against any such alternative"},
           {"largest_odds", "largest odds", 1 / least, "against the null: a bound of the evidence"}}};
}

}  // namespace

Topic evidence_topic() {
  return {"Evidence at any time",
          {{"evidence",
            "e-processes and a confidence sequence of a number right",
            "12 16",
            {{"correct", "Right answers so far"},
             {"trials", "Trials so far"},
             {"--share", "Share right fixed beforehand, for the likelihood ratio", "0.75"},
             chance_argument(),
             level_argument()},
            evidence_figures},
           {"shared",
            "The same for trials that several listeners share, however they influence each other",
            "3:0 2:1 3:0 1:2 3:0",
            {{"trials", "A trial each: right answers, colon, wrong answers", Argument::required, Shape::list},
             {"--bet", "Bet on the majority, from -1 to 1, fixed beforehand", "0.5"},
             level_argument()},
            shared_figures},
           {"betting",
            "The mean of ratings between 0 and 1: limits and evidence at any time",
            "1 1 0 1 0,5 1",
            {{"observations", "Between 0 and 1, " + list_form, Argument::required, Shape::list},
             {"--mean", "Mean to be tested", "0.5"},
             {"--candidates", "Candidates for the mean", "1000"},
             level_argument()},
            betting_figures},
           {"strength",
            "How much evidence a p can mean at most",
            "0.05",
            {{"p", "A p-value"}, {"--kappa", "Of the calibrator, between 0 and 1", "0.5"}},
            strength_figures}}};
}

}  // namespace desk
