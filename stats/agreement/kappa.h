#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "stats/agreement/count_table.h"
#include "stats/agreement/ratings.h"

namespace stats {

/// Agreement of two raters who put the same things into categories.
struct CohenKappa {
  double kappa;
  double observed_agreement;   ///< raw agreement: share of things put alike
  double expected_agreement;   ///< by chance, from the raters' own shares
  double standard_error;       ///< asymptotic, for an interval around kappa
  double null_standard_error;  ///< asymptotic if the true kappa is 0, for a test of that alone
  std::int64_t things;
  double largest_kappa;  ///< the most that kappa could be with the raters' own shares
};

/// Cohen's kappa, unweighted.
///
/// @param counts  square, 2 or more categories: row by the first rater, column by the second. In all 1 to
/// 1,000,000.
/// @return  nothing when both raters put everything into the same one category: kappa is then 0/0, and says
/// nothing
///          about agreement.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: J. Cohen, Educ. Psychol. Meas. 20 (1960) 37; both standard errors: J. L. Fleiss, J. Cohen and B.
/// S. Everitt, Psychol. Bull. 72 (1969) 323.
std::optional<CohenKappa> cohen_kappa(const CountTable& counts);

/// Agreement of several raters on subjects put into categories.
struct FleissKappa {
  double kappa;
  double observed_agreement;   ///< share of agreeing pairs of ratings, averaged over subjects
  double expected_agreement;   ///< by chance, from the shares of the categories
  double null_standard_error;  ///< asymptotic if the true kappa is 0, for a test of that alone
};

/// Fleiss' kappa.
///
/// @param counts  a row for each subject, a column for each category (2 or more): how many raters chose it.
/// Every row
///                has the same sum, the number of raters, 2 or more. In all at most 1,000,000.
/// @return  nothing when every rating is in the same one category: kappa is then 0/0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: J. L. Fleiss, Psychol. Bull. 76 (1971) 378; standard error: J. L. Fleiss, J. C. M. Nee and J. R.
/// Landis, Psychol. Bull. 86 (1979) 974, which replaces that of 1971.
std::optional<FleissKappa> fleiss_kappa(const CountTable& counts);

/// Agreement on one category against all others.
struct CategoryKappa {
  std::optional<double> kappa;  ///< nothing where nobody or everybody chose the category: 0/0
  double null_standard_error;   ///< asymptotic if the true kappa is 0; the same for every category
};

/// Fleiss' kappa of each category. Weighted by p (1 - p), where p is the category's share, their mean is
/// `fleiss_kappa`. Arguments, refusals and sources as there.
std::vector<CategoryKappa> fleiss_category_kappas(const CountTable& counts);

/// Agreement of several known raters, each with shares of categories of their own.
struct CongerKappa {
  double kappa;
  double observed_agreement;  ///< share of agreeing pairs of ratings, as in Fleiss' kappa
  double expected_agreement;  ///< by chance, from the raters' own shares, averaged over pairs of raters
};

/// Conger's kappa ("exact kappa" of several raters): for two raters it is Cohen's. Fleiss' kappa takes the
/// raters for exchangeable and is never larger.
///
/// @param ratings  complete: an answer of every rater for every subject; sizes as `require_ratings`.
/// @return  nothing when every rating is in the same one category: kappa is then 0/0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: A. J. Conger, Psychol. Bull. 88 (1980) 322.
std::optional<CongerKappa> conger_kappa(const Ratings& ratings);

}  // namespace stats
