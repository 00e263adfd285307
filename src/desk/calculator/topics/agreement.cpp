#include <algorithm>
#include <numeric>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/resampling/agreement_permutation.h"
#include "stats/agreement/kappa.h"
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

Figures kappa_figures(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  const auto agreement = stats::cohen_kappa(table);
  if (!agreement) refuse_one_category();
  std::optional<double> z;
  if (agreement->null_standard_error > 0) z = agreement->kappa / agreement->null_standard_error;
  return {"Cohen's kappa of two raters",
          {{"counts", "counts", counts_words(table), "row: first rater; column: second"},
           {"things", "things rated", agreement->things},
           {"observed_agreement", "observed agreement", agreement->observed_agreement,
            "share of things put alike"},
           {"expected_agreement", "expected agreement", agreement->expected_agreement,
            "by chance, from the raters' shares"},
           {"kappa", "kappa", agreement->kappa, "unweighted"},
           {"standard_error", "standard error", agreement->standard_error,
            "asymptotic, for an interval (Fleiss, Cohen and Everitt 1969)"},
           {"null_standard_error", "null standard error", agreement->null_standard_error,
            "asymptotic if the true kappa is 0, for a test of that (the same)"},
           {"z", "z", known(z), "kappa / null standard error"}}};
}

Figures fleiss_figures(const Given& given) {
  const stats::CountTable table = given.count_rows("counts");
  const auto agreement = stats::fleiss_kappa(table);
  if (!agreement) refuse_one_category();
  const long long raters = std::accumulate(table.front().begin(), table.front().end(), 0LL);
  std::optional<double> z;
  if (agreement->null_standard_error > 0) z = agreement->kappa / agreement->null_standard_error;
  return {"Fleiss' kappa of several raters",
          {{"subjects", "subjects", std::ssize(table)},
           {"categories", "categories", std::ssize(table.front())},
           {"raters", "raters of each subject", raters},
           {"observed_agreement", "observed agreement", agreement->observed_agreement,
            "share of pairs of ratings alike"},
           {"expected_agreement", "expected agreement", agreement->expected_agreement,
            "by chance, from the categories' shares"},
           {"kappa", "kappa", agreement->kappa},
           {"null_standard_error", "null standard error", agreement->null_standard_error,
            "asymptotic if the true kappa is 0, for a test of that (Fleiss, Nee and Landis 1979)"},
           {"z", "z", known(z), "kappa / null standard error"}}};
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
      "Agreement",
      {{"kappa",
        "Cohen's kappa of two raters",
        "\"88,10,2; 14,40,6; 18,10,12\"",
        {{"counts", "Square table: a row for each category of the first rater, semicolon between rows",
          Argument::required, Shape::rows}},
        kappa_figures},
       {"fleiss",
        "Fleiss' kappa of several raters",
        "\"0,3; 1,2; 3,0; 3,0\"",
        {{"counts", "A row for each subject, a count for each category, semicolon between rows",
          Argument::required, Shape::rows}},
        fleiss_figures},
       {"agree",
        "Whether listeners are right on the same trials",
        "1101 1011 1-01",
        {{"marks", "A listener each: 1 right, 0 wrong, - or . missing", Argument::required, Shape::raters},
         seed_argument(),
         draws_argument()},
        agree_figures}}};
}

}  // namespace desk
