#include <limits>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/agreement/concordance.h"
#include "stats/agreement/intraclass.h"
#include "stats/agreement/krippendorff.h"
#include "stats/resampling/alpha_permutation.h"
#include "stats/resampling/bootstrap_agreement.h"
#include "text/error.h"

namespace desk {
namespace {

/// A row for each thing rated, from a row for each rater.
stats::Ratings by_thing(const Given::Numbers& raters) {
  stats::Ratings things(raters.front().size());
  for (const auto& rater : raters)
    for (std::size_t i = 0; i < things.size(); ++i) things[i].push_back(rater[i]);
  return things;
}

/// Rows without gaps.
std::vector<std::vector<double>> complete(const Given::Numbers& rows, const std::string& what) {
  std::vector<std::vector<double>> numbers;
  for (const auto& row : rows) {
    numbers.emplace_back();
    for (const auto& number : row) {
      if (!number) throw text::BadInput(what + " needs every rating; calc alpha takes missing ones");
      numbers.back().push_back(*number);
    }
  }
  return numbers;
}

stats::Metric metric_of(const Given& given) {
  const std::string& word = given.one_of("metric", {"nominal", "ordinal", "interval", "ratio"});
  if (word == "ordinal") return stats::Metric::ordinal;
  if (word == "interval") return stats::Metric::interval;
  return word == "ratio" ? stats::Metric::ratio : stats::Metric::nominal;
}

Figures alpha_figures(const Given& given) {
  const stats::Ratings ratings = by_thing(given.ratings("ratings"));
  const stats::Metric metric = metric_of(given);
  const auto alpha = stats::krippendorff_alpha(ratings, metric);
  if (!alpha)
    throw text::BadInput(
        "the ratings that can be paired do not vary: alpha is 0/0 and says nothing of agreement");
  const double confidence = 1 - given.level("level");
  Figures figures{
      "Krippendorff's alpha",
      {{"things", "things rated", std::ssize(ratings)},
       {"raters", "raters", std::ssize(ratings.front())},
       {"metric", "metric", given.word("metric")},
       {"answers", "ratings", alpha->answers},
       {"pairable", "of them pairable", alpha->pairable, "on things with two ratings or more"},
       {"observed_disagreement", "observed disagreement", alpha->observed_disagreement},
       {"expected_disagreement", "expected disagreement", alpha->expected_disagreement, "by chance"},
       {"alpha", "alpha", alpha->alpha, "1 perfect, 0 as by chance"}}};
  if (const auto drawn = stats::bootstrap_alpha(ratings, metric, confidence, given.draws())) {
    add_limits(figures, "alpha", "alpha", drawn->interval,
               "percentile bootstrap over things, " + per_cent(confidence));
    figures.add("undefined_resamples", "resamples without alpha", drawn->undefined, "left out");
  }
  if (const auto test = stats::permute_alpha(ratings, metric, given.draws()))
    add_permutation_p(figures, test->test,
                      "one-sided: alpha this large or larger, each rater's ratings in any order");
  return figures;
}

Figures concord_figures(const Given& given) {
  const auto raters = complete(given.ratings("ratings"), "concordance");
  const auto found = stats::concordance(raters, given.draws());
  if (!found) throw text::BadInput("no rater tells any two things apart: W is 0/0");
  Figures figures{"Kendall's concordance of rankings",
                  {{"raters", "raters", std::ssize(raters)},
                   {"things", "things ranked", std::ssize(raters.front())},
                   {"w", "W", found->w, "corrected for ties; 1: all rank alike"},
                   {"chi_square", "Friedman's chi-square", found->chi_square},
                   {"degrees_of_freedom", "degrees of freedom", found->freedom},
                   {"chi_square_p", "its p", found->chi_square_p, "approximation, rough with few raters"}},
                  {{"rank_sum", "sum of ranks", found->rank_sums}}};
  add_permutation_p(figures, found->permutation, "W this large or larger");
  return figures;
}

Figures icc_figures(const Given& given) {
  const auto raters = complete(given.ratings("ratings"), "the intraclass correlation");
  std::vector<std::vector<double>> things(raters.front().size());
  for (const auto& rater : raters)
    for (std::size_t i = 0; i < things.size(); ++i) things[i].push_back(rater[i]);
  const double confidence = 1 - given.level("level");
  const auto found = stats::intraclass(things, confidence);
  if (!found) throw text::BadInput("all ratings are equal: the intraclass correlation is 0/0");
  Figures figures{"intraclass correlations",
                  {{"things", "things rated", std::ssize(things)},
                   {"raters", "raters", std::ssize(raters)},
                   {"between_subjects", "mean square of things", found->between_subjects},
                   {"between_raters", "mean square of raters", found->between_raters},
                   {"residual", "residual mean square", found->residual}}};
  const auto add = [&](const std::string& key, const std::string& label,
                       const stats::IntraclassCorrelation& form, const std::string& note) {
    figures.add(key, label, form.value, note);
    add_limits(figures, key, " ", form.interval, per_cent(confidence));
  };
  add("icc_1_1", "ICC(1,1)", found->one_way_single, "each thing has other raters; one rating");
  add("icc_2_1", "ICC(2,1)", found->random_single, "agreement, the raters are a sample; one rating");
  add("icc_3_1", "ICC(3,1)", found->fixed_single, "consistency of these raters; one rating");
  add("icc_1_k", "ICC(1,k)", found->one_way_mean, "mean of all raters");
  add("icc_2_k", "ICC(2,k)", found->random_mean, "likewise");
  add("icc_3_k", "ICC(3,k)", found->fixed_mean, "likewise, Cronbach's alpha");
  figures.add("p", "p", found->two_way_test.p, "of no difference between things, F test");
  return figures;
}

}  // namespace

Topic ratings_topic() {
  const Argument ratings{"ratings", "A row for each rater, semicolon between rows; - where missing",
                         Argument::required, Shape::raters};
  return {"Agreement of ratings and rankings",
          {{"alpha",
            "Krippendorff's alpha, ratings may be missing",
            "\"1 2 3 3 2; 1 2 3 3 2; - 3 3 3 2\" --metric ordinal",
            {ratings,
             {"--metric", "nominal, ordinal, interval or ratio", "nominal"},
             level_argument(),
             seed_argument(),
             {"--draws", "Number of resamples and of random arrangements", "9999"}},
            alpha_figures},
           {"concord",
            "Kendall's W: whether raters rank alike",
            "\"1 6 3 2 5 4; 1 5 6 4 2 3; 6 3 2 5 4 1\"",
            {ratings, seed_argument(), draws_argument()},
            concord_figures},
           {"icc",
            "Intraclass correlations, six forms",
            "\"9 6 8 7 10 6; 2 1 4 1 5 2; 5 3 6 2 6 4\"",
            {ratings, level_argument()},
            icc_figures}}};
}

}  // namespace desk
