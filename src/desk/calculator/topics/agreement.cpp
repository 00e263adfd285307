#include <algorithm>
#include <limits>
#include <numeric>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/agreement/gwet.h"
#include "stats/agreement/kappa.h"
#include "stats/agreement/weighted_kappa.h"
#include "stats/resampling/agreement_permutation.h"
#include "stats/resampling/bootstrap_agreement.h"
#include "text/error.h"

namespace desk {
namespace {

[[noreturn]] void refuse_one_category() {
  throw text::BadInput("everything is in one category: kappa is 0/0 and says nothing of agreement");
}

/// "88 10 2; 14 40 6", as a check on what was read.
std::string counts_words(const stats::CountTable& table) {
  std::string words;
  for (const auto& row : table) {
    words += words.empty() ? "" : "; ";
    for (std::size_t i = 0; i < row.size(); ++i) words += (i == 0 ? "" : " ") + std::to_string(row[i]);
  }
  return words;
}

double answered(const stats::Marks& marks) {
  return static_cast<double>(
      std::count_if(marks.begin(), marks.end(), [](const auto& mark) { return mark.has_value(); }));
}

double right(const stats::Marks& marks) {
  return static_cast<double>(std::count(marks.begin(), marks.end(), std::optional(true)));
}

stats::AgreementWeights weights_of(const Given& given, std::size_t categories) {
  const std::string& word = given.one_of("weights", {"none", "linear", "quadratic"});
  const int count = static_cast<int>(categories);
  if (word == "linear") return stats::linear_weights(count);
  return word == "quadratic" ? stats::quadratic_weights(count) : stats::identity_weights(count);
}

Argument weights_argument() {
  return {"--weights", "none, linear or quadratic: how far apart ordered categories disagree", "none"};
}

void add_z(Figures& figures, double kappa, double null_standard_error) {
  figures.add("z", "z", null_standard_error > 0 ? Value(kappa / null_standard_error) : Value(),
              "kappa / null standard error");
}

Figures kappa_figures(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  const auto whole = stats::cohen_kappa(table);
  const auto weighted = whole ? stats::weighted_kappa(table, weights_of(given, table.size())) : std::nullopt;
  if (!weighted) refuse_one_category();
  const bool unweighted = given.word("weights") == "none";
  Figures figures{"Cohen's kappa of two raters",
                  {{"counts", "counts", counts_words(table), "row: first rater; column: second"},
                   {"things", "things rated", whole->things},
                   {"weights", "weights", given.word("weights")},
                   {"observed_agreement", "observed agreement", weighted->observed_agreement,
                    unweighted ? "share of things put alike" : "mean weight"},
                   {"expected_agreement", "expected agreement", weighted->expected_agreement,
                    "by chance, from the raters' shares"},
                   {"kappa", "kappa", weighted->kappa, unweighted ? "unweighted" : "weighted"},
                   {"standard_error", "standard error", weighted->standard_error,
                    "asymptotic, for an interval (Fleiss, Cohen and Everitt 1969)"},
                   {"null_standard_error", "null standard error", weighted->null_standard_error,
                    "asymptotic if the true kappa is 0, for a test of that (the same)"}}};
  add_z(figures, weighted->kappa, weighted->null_standard_error);
  if (unweighted)
    figures.add("largest_kappa", "largest kappa", whole->largest_kappa,
                "possible with the raters' own shares");
  return figures;
}

Figures fleiss_figures(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  const auto agreement = stats::fleiss_kappa(table);
  if (!agreement) refuse_one_category();
  const long long raters = std::accumulate(table.front().begin(), table.front().end(), 0LL);
  Figures figures{"Fleiss' kappa of several raters",
                  {{"subjects", "subjects", std::ssize(table)},
                   {"categories", "categories", std::ssize(table.front())},
                   {"raters", "raters of each subject", raters},
                   {"observed_agreement", "observed agreement", agreement->observed_agreement,
                    "share of pairs of ratings alike"},
                   {"expected_agreement", "expected agreement", agreement->expected_agreement,
                    "by chance, from the categories' shares"},
                   {"kappa", "kappa", agreement->kappa},
                   {"null_standard_error", "null standard error", agreement->null_standard_error,
                    "asymptotic if the true kappa is 0, for a test of that (Fleiss, Nee and Landis 1979)"}},
                  {{"category_kappa", "kappa of the category", {}}}};
  add_z(figures, agreement->kappa, agreement->null_standard_error);
  for (const stats::CategoryKappa& category : stats::fleiss_category_kappas(table))
    figures.series[0].values.push_back(category.kappa.value_or(std::numeric_limits<double>::quiet_NaN()));
  return figures;
}

Figures gwet_figures(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  const stats::CountTable subjects = given.has("two-raters") ? stats::by_subject(table) : table;
  const auto found = stats::gwet_ac2(subjects, weights_of(given, subjects.front().size()));
  if (!found) throw text::BadInput("no subject has two answers: there is no agreement to speak of");
  const double confidence = 1 - given.level("level");
  Figures figures{
      "Gwet's coefficient",
      {{"subjects", "subjects", found->subjects},
       {"weights", "weights", given.word("weights"), "none: AC1, else AC2"},
       {"observed_agreement", "observed agreement", found->observed_agreement},
       {"expected_agreement", "expected agreement", found->expected_agreement,
        "by chance, as this coefficient has it"},
       {"coefficient", "coefficient", found->coefficient,
        "does not collapse when nearly all is in one category"},
       {"standard_error", "standard error", known(found->standard_error), "asymptotic (Gwet 2008)"}}};
  if (const auto drawn = stats::bootstrap_agreement(subjects, confidence, given.draws(), 1,
                                                    {.alpha = false, .fleiss_kappa = false})
                             .gwet_ac1;
      drawn && given.word("weights") == "none")
    add_limits(figures, "coefficient", "coefficient", drawn->interval,
               "percentile bootstrap over subjects, " + per_cent(confidence));
  return figures;
}

Figures agree_figures(const Given& given) {
  const std::vector<stats::Marks> raters = given.marks("marks");
  const auto shared = stats::permutation_agreement(raters, given.draws());
  std::optional<double> raw;
  if (shared.pairs > 0) raw = static_cast<double>(shared.agreeing) / static_cast<double>(shared.pairs);
  Figures figures{"right on the same trials",
                  {{"listeners", "listeners", std::ssize(raters)},
                   {"trials", "trials", std::ssize(raters.front())},
                   {"agreeing", "pairs alike", shared.agreeing, "both right or both wrong on a trial"},
                   {"pairs", "pairs of marks", shared.pairs, "both answered the trial"},
                   {"raw_agreement", "raw agreement", known(raw)}},
                  {{"answered", "answered", {}}, {"right", "right", {}}}};
  add_permutation_p(figures, shared.test,
                    "one-sided: as many alike or more, beyond the listeners' own shares");
  for (const stats::Marks& marks : raters) {
    figures.series[0].values.push_back(answered(marks));
    figures.series[1].values.push_back(right(marks));
  }
  return figures;
}

}  // namespace

Topic agreement_topic() {
  return {
      "Agreement on categories",
      {{"kappa",
        "Cohen's kappa of two raters, weighted or not",
        "\"88,10,2; 14,40,6; 18,10,12\"",
        {{"counts", "Square table: a row for each category of the first rater, semicolon between rows",
          Argument::required, Shape::rows},
         weights_argument()},
        kappa_figures},
       {"fleiss",
        "Fleiss' kappa of several raters",
        "\"0,3; 1,2; 3,0; 3,0\"",
        {{"counts", "A row for each subject, a count for each category, semicolon between rows",
          Argument::required, Shape::rows}},
        fleiss_figures},
       {"gwet",
        "Gwet's AC1 or AC2 of two or more raters",
        "\"118,5; 2,0\" --two-raters",
        {{"counts", "A row for each subject, a count for each category, semicolon between rows",
          Argument::required, Shape::rows},
         {"--two-raters", "The table is one of two raters, as for kappa", "", Shape::flag},
         weights_argument(),
         level_argument(),
         seed_argument(),
         {"--draws", "Number of resamples", "10000"}},
        gwet_figures},
       {"agree",
        "Whether listeners are right on the same trials",
        "1101 1011 1-01",
        {{"marks", "A listener each: 1 right, 0 wrong, - or . missing", Argument::required, Shape::raters},
         seed_argument(),
         draws_argument()},
        agree_figures}}};
}

}  // namespace desk
