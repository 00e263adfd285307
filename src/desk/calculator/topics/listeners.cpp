#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/blinding/blinding_index.h"
#include "stats/pooled/beta_binomial.h"
#include "stats/pooled/chance_corrected.h"
#include "stats/pooled/cochran_q.h"
#include "stats/pooled/overdispersion.h"
#include "stats/pooled/study_simulation.h"
#include "stats/pooled/trend.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

/// "3/10": right of trials.
std::vector<stats::SubjectCount> subjects_of(const Given& given) {
  std::vector<stats::SubjectCount> subjects;
  for (const std::string& word : given.words("listeners")) {
    const std::size_t bar = word.find('/');
    const auto correct = text::whole_number(word.substr(0, bar));
    const auto trials = text::whole_number(bar == std::string::npos ? "" : word.substr(bar + 1));
    if (!correct || !trials || *trials < 1 || *trials > 10'000 || *correct < 0 || *correct > *trials)
      throw text::BadInput("a listener must be right answers of trials, like 7/10, at most 10000; got \"" +
                           word + "\"");
    subjects.push_back({static_cast<int>(*correct), static_cast<int>(*trials)});
  }
  return subjects;
}

void add_fit(Figures& figures, const std::string& key, const std::string& what,
             const stats::BetaBinomialFit& fit) {
  figures.add(key + "_mean", what, fit.mean, "maximum likelihood, beta-binomial");
  figures.add(key + "_mean_error", "  standard error", known(fit.mean_error), "observed information");
  figures.add(key + "_gamma", "  gamma", known(fit.gamma), "0: all alike; 1: all or nothing");
  figures.add(key + "_gamma_error", "  standard error", known(fit.gamma_error), "observed information");
  figures.add(key + "_p", "  p against gamma 0", fit.half_chi_square_p,
              "likelihood ratio, approximation, conservative for few");
}

Figures spread_figures(const Given& given) {
  const std::vector<stats::SubjectCount> subjects = subjects_of(given);
  Figures figures{"do listeners differ in their share right?",
                  {{"listeners", "listeners", std::ssize(subjects)},
                   {"dispersion", "dispersion", known(stats::pearson_dispersion(subjects)),
                    "Pearson's X2 / degrees of freedom; about 1 if all are alike"},
                   {"tarone_z", "Tarone's Z", known(stats::tarone_z(subjects))},
                   {"tarone_normal_p", "its normal p", known(stats::tarone_normal_p(subjects)),
                    "one-sided, approximation"}}};
  if (const auto exact = stats::tarone_exact(subjects, given.draws()))
    add_permutation_p(figures, *exact,
                      "one-sided, given the total right: listeners differ this much or more");
  add_fit(figures, "right", "mean share right", stats::fit_beta_binomial(subjects));
  if (given.has("chance"))
    add_fit(figures, "heard", "mean share heard", stats::fit_chance_corrected(subjects, given.chance()));
  figures.add("note", "mind", std::string("with few listeners, no difference shown is no licence to pool"));
  return figures;
}

Figures cochran_figures(const Given& given) {
  std::vector<std::vector<bool>> subjects;
  for (const auto& row : given.count_rows("marks")) {
    subjects.emplace_back();
    for (const int mark : row) {
      if (mark > 1)
        throw text::BadInput("marks must be 1 for right and 0 for wrong, got " + std::to_string(mark));
      subjects.back().push_back(mark == 1);
    }
  }
  const auto q = stats::cochran_q(subjects, given.draws());
  if (!q)
    throw text::BadInput("every row is all right or all wrong: Q is 0/0 and says nothing of the conditions");
  Figures figures{"do conditions differ in their share right?",
                  {{"rows", "rows", std::ssize(subjects), "a listener or trial each"},
                   {"q", "Cochran's Q", q->q},
                   {"degrees_of_freedom", "degrees of freedom", q->degrees_of_freedom},
                   {"chi_square_p", "chi-square p", q->chi_square_p, "approximation"}},
                  {{"right", "right in the condition", {q->column_sums.begin(), q->column_sums.end()}}}};
  add_permutation_p(figures, q->permutation, "within rows: Q this large or larger");
  return figures;
}

Figures trend_figures(const Given& given) {
  const auto trend = stats::trend_over_trials(given.whole_marks("marks"), given.alternative(), given.draws());
  Figures figures{"do right answers come early or late?",
                  {{"sum", "sum of trial numbers of the right", trend.sum},
                   {"expected", "expected without a trend", trend.expected}}};
  add_permutation_p(figures, trend.p, given.word("alternative") + "; greater: learning, less: fatigue");
  return figures;
}

Figures studies_figures(const Given& given) {
  const stats::StudyDesign design{given.count("listeners", 1, 1'000), given.count("comparisons", 1, 100),
                                  given.count("trials", 1, 1'000), given.chance(), given.level("level")};
  const stats::RaterAbility ability{given.number("share"), given.number("gamma")};
  const auto studies =
      stats::simulate_studies(design, ability, given.count("studies", 1, 100'000'000),
                              static_cast<std::uint64_t>(given.count("seed", 0, 2'000'000'000)), 2);
  return {"simulated studies of listeners who differ",
          {{"any", "any comparison supported", studies.share_with_any(), "share of studies, by Holm"},
           {"all", "all supported", studies.share_with_all()},
           {"share_supported", "comparisons supported", studies.share_supported(), "on average"}}};
}

Figures blinding_figures(const Given& given) {
  const auto rows = given.count_rows("guesses");
  if (rows.size() != 2 || rows.front().size() != 3)
    throw text::BadInput(
        "guesses must be two rows of three: first, second, don't know; for those given the first, then the "
        "second");
  const stats::Guesses first{rows[0][0], rows[0][1], rows[0][2]}, second{rows[1][0], rows[1][1], rows[1][2]};
  const double confidence = 1 - given.level("level");
  Figures figures{"did the blind hold, by their guesses?", {}};
  const auto add = [&](const std::string& key, const std::string& label, const auto& index,
                       const std::string& note) {
    figures.add(key, label, index ? Value(index->index) : Value(), note);
    if (!index) return;
    figures.add(key + "_standard_error", "  standard error", index->standard_error);
    add_limits(figures, key, " ", index->two_sided, "two-sided " + per_cent(confidence) + ", approximation");
  };
  add("bang_first", "Bang's index, given the first",
      stats::bang_index(first.first, first.second, first.dont_know, confidence),
      "1 unblinded, 0 as by chance, -1 all wrong");
  add("bang_second", "Bang's index, given the second",
      stats::bang_index(second.second, second.first, second.dont_know, confidence), "likewise");
  add("james", "James' index", stats::james_index(first, second, confidence),
      "1 all don't know, 0.5 as by chance, 0 all right");
  return figures;
}

}  // namespace

Topic listeners_topic() {
  return {
      "Listeners, trials and the blind",
      {{"spread",
        "Whether listeners differ in their share right",
        "3/10 5/10 6/10 9/10 --chance 0.5",
        {{"listeners", "Right answers of trials for each, like 7/10", Argument::required, Shape::list},
         {"--chance", "Also fit the share heard, with this chance of a guess", ""},
         seed_argument(),
         draws_argument()},
        spread_figures},
       {"cochran",
        "Whether conditions differ in their share right (Cochran's Q)",
        "\"1 0 1; 1 1 0; 1 0 0\"",
        {{"marks", "A row for each listener: 1 right, 0 wrong in each condition", Argument::required,
          Shape::rows},
         seed_argument(),
         draws_argument()},
        cochran_figures},
       {"trend",
        "Whether right answers come early or late: fatigue or learning",
        "00101101 01101111",
        {{"marks", "A listener each, in the order of trials: 1 right, 0 wrong", Argument::required,
          Shape::raters},
         alternative_argument(),
         seed_argument(),
         draws_argument()},
        trend_figures},
       {"studies",
        "What a design finds if listeners differ, by simulation",
        "--share 0.6 --gamma 0.05",
        {{"--share", "Mean share right of listeners"},
         {"--gamma", "How much they differ: 0 not at all", "0.05"},
         {"--listeners", "Listeners", "8"},
         {"--comparisons", "Comparisons of the family", "4"},
         {"--trials", "Trials of each listener in each", "16"},
         chance_argument(),
         level_argument(),
         {"--studies", "Number of studies", "100000"},
         {"--seed", "Seed", "1"}},
        studies_figures},
       {"blinding",
        "Indices of blinding from guesses",
        "\"82 25 170; 27 29 83\"",
        {{"guesses", "Two rows, for those given the first and the second: guessed first, second, don't know",
          Argument::required, Shape::rows},
         level_argument()},
        blinding_figures}}};
}

}  // namespace desk
