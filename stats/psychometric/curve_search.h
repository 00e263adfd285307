#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/psychometric/psychometric_function.h"

namespace stats {

/// Rows with an intercept and a level, as given; without those that have no trials.
std::vector<GuessingRow> rows_of(std::span<const LevelCount> counts);

/// The search behind `psychometric_function`. Levels are put between -1/2 and 1/2: level = centre + range * unit, and
/// slopes belong to that unit. All log likelihoods without binomial coefficients.
class CurveSearch {
 public:
  CurveSearch(std::span<const LevelCount> counts, const PsychometricOptions& options);

  double centre() const { return centre_; }
  double range() const { return range_; }
  double log_orders_of_answers() const { return log_orders(rows_); }

  /// Sum of the predictors at the threshold.
  double target_sum(double lapse) const;

  struct Best {
    double intercept, slope, spread, lapse, log_likelihood;
  };

  /// The highest peak; nothing where none has finite parameters.
  std::optional<Best> best() const;

  /// Of one curve for all listeners.
  double pooled_log_likelihood() const;

  /// A jump from chance to all right, or back, one level in between anywhere: the bound that infinite slopes reach.
  struct Step {
    double log_likelihood = 0;
    Interval between{0, 0};  ///< as given; the same level twice where the jump is at it
    double lapse = 0;
  };
  Step best_step() const;

  /// The same share at all levels, in the listener's own for listeners who differ.
  double flat_log_likelihood() const;

  /// The largest with the threshold, or the slope, held.
  double best_at_threshold(double unit) const;
  double best_at_slope(double slope) const;

 private:
  template <typename Value>
  double largest_over_lapses(const Value& value, double* where = nullptr) const;
  std::optional<Best> best_of(double lapse, bool listeners_differ) const;
  std::vector<double> intercepts_of(double slope) const;
  /// With one predictor; from each of the starts.
  double best_of_rows(std::vector<GuessingRow> rows, double lapse, const std::vector<double>& starts) const;
  Step step_of(double lapse) const;
  double flat_of(double lapse) const;
  double constant_log_likelihood(double share) const;
  double step_log_likelihood(double lapse, double unit, bool upwards, double target) const;

  PsychometricOptions options_;
  std::vector<GuessingRow> rows_;  ///< predictors 1 and the level in units
  std::vector<double> units_;      ///< the different levels, rising
  double centre_ = 0, range_ = 1;
};

}  // namespace stats
