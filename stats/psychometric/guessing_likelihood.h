#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "stats/psychometric/curve_link.h"

namespace stats {

/// How a share right comes about: by F where the difference is noticed, by `chance` where it is not, and `lapse` of the
/// trials are wrong whatever is noticed: P(right) = chance + (1 - chance - lapse) F.
struct GuessingModel {
  CurveLink link = CurveLink::logit;
  double chance = 0.5;
  double lapse = 0;
};

/// Answers given under the same conditions.
struct GuessingRow {
  std::vector<double> predictors;
  std::int64_t right = 0;
  std::int64_t trials = 0;
  double offset = 0;  ///< added to the predictors' sum
  int listener = 0;   ///< for listeners who differ
};

/// Likelihood of right answers by F(sum of coefficient times predictor), for one curve for all or for listeners who are apart
/// from it by a normally distributed shift of the sum. Parameters: the coefficients, and for listeners who differ the
/// standard deviation of the shift, whose sign says nothing.
class GuessingLikelihood {
 public:
  GuessingLikelihood(std::vector<GuessingRow> rows, const GuessingModel& model, bool listeners_differ);

  std::size_t size() const { return size_; }

  struct At {
    double value = 0;  ///< log likelihood without binomial coefficients
    std::vector<double> slope;
    std::vector<double> observed;  ///< information, row after row: less the second derivatives
    std::vector<double> expected;  ///< likewise; empty for listeners who differ
  };

  At at(const std::vector<double>& parameters) const;

 private:
  void add_row(const GuessingRow& row, double sum, double deviate, At& found) const;
  void add_listener(std::span<const GuessingRow> rows, const std::vector<double>& parameters,
                    At& found) const;

  std::vector<GuessingRow> rows_;  ///< by listener
  GuessingModel model_;
  bool listeners_differ_;
  std::size_t predictors_, size_;
};

/// Where Newton's steps from `start` end; the observed information there is positive definite. Nothing where they do not settle.
struct LargestGuessing {
  std::vector<double> parameters;
  GuessingLikelihood::At at;
};

std::optional<LargestGuessing> largest_from(const GuessingLikelihood& likelihood, std::vector<double> start);

/// Logarithm of the number of orders of the answers, which makes log likelihoods those of counts.
double log_orders(std::span<const GuessingRow> rows);

}  // namespace stats
