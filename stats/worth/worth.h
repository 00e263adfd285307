#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/worth/pair_count.h"

namespace stats {

/// How a difference of worths becomes the probability of a preference.
enum class PreferenceModel {
  logistic,  ///< Bradley and Terry; with ties Davidson, with order effect Davidson and Beaver
  normal     ///< Thurstone's case V; no model of ties
};

struct WorthOptions {
  PreferenceModel model = PreferenceModel::logistic;
  bool order_effect = false;
  /// Firth's penalty, which removes the first term of the bias and keeps every estimate finite; logistic only.
  bool bias_reduced = false;
  /// Half a preference for either instead of a model of ties. Standard errors then take a tie for as much as a preference.
  bool ties_as_halves = false;
};

/// Worths of items from preferences, by maximum likelihood.
struct WorthFit {
  /// Of each item, 0 for the reference. Logistic: log odds of being preferred to it, without ties; normal: in units of the
  /// standard deviation of a difference.
  std::vector<double> worth;
  /// Of the worths, item by item; 0 for the reference. By the expected information.
  std::vector<std::vector<double>> covariance;
  std::optional<double> order_effect;  ///< added to the worth of the item presented first
  std::optional<double> order_error;   ///< its standard error
  /// nu: of two items of the same worth a tie is nu times as probable as the preference for one of them.
  std::optional<double> tie_weight;
  std::optional<double> log_tie_error;  ///< standard error of its logarithm
  double log_likelihood;  ///< without the coefficients that count orders of answers, without penalty
  double deviance;        ///< twice the distance to a model with a probability of its own for every row
  int degrees_of_freedom;
  double null_deviance;  ///< of equal worths and no order effect, ties as in the fit

  /// Standard error of worth[i] - worth[j].
  double difference_error(int i, int j) const;
};

/// P(first preferred), P(tie), P(second preferred) = e^(x/2), nu, e^(-x/2), each by their sum, where x is the difference of
/// worths and the order effect; nu is fitted where there are ties, else 0. Normal: Phi(x).
///
/// @param items, counts  as `require_pair_counts`; each row has a deviance of its own, so that rows of the same pair in the
///                       same order should be added up.
/// @param reference      item, whose worth is 0.
/// @return  nothing where the estimates are not finite (see `estimable_worths`), unless bias-reduced; and where items were
///          never compared with each other.
/// @throws std::domain_error  naming the argument, its value and its range; for a model of ties or bias reduction with the normal model.
/// Accuracy: worths to 1e-9 (tests/stats, tests/reference).
/// Example: 3 of 15 prefer A to B: worth of B log(12/3) = 1.386.
/// Source: R. A. Bradley and M. E. Terry, Biometrika 39 (1952) 324; R. R. Davidson, J. Am. Stat. Assoc. 65 (1970) 317; R. R.
/// Davidson and R. J. Beaver, Biometrics 33 (1977) 693, whose gamma is e^-order; D. Firth, Biometrika 80 (1993) 27.
std::optional<WorthFit> fit_worths(int items, std::span<const PairCount> counts, int reference = 0,
                                   const WorthOptions& options = {});

}  // namespace stats
