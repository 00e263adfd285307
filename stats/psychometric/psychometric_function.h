#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/psychometric/guessing_likelihood.h"
#include "stats/share/interval.h"

namespace stats {

/// Answers at one level of a stimulus: of a level difference in dB, of a resistance.
struct LevelCount {
  double level;
  int right;
  int trials;
  int listener = 0;  ///< counts where listeners differ
};

struct PsychometricOptions {
  CurveLink link = CurveLink::logit;
  double chance = 0.5;
  double lapse = 0;                       ///< share of trials that are wrong whatever is noticed
  std::optional<double> most_lapse = {};  ///< fits the lapse between `lapse` and this
  std::optional<double> target_right =
      {};                    ///< share right at the threshold; else where half is noticed, F = 1/2
  double confidence = 0.95;  ///< of the intervals
  /// Listeners' curves are shifted against each other, normally on the scale of the link. For listeners who answer at
  /// several levels or several times.
  bool listeners_differ = false;
};

/// What the answers say of a threshold.
enum class CurveState {
  found,
  flat,  ///< the share right may not depend on the level at all: there is no threshold
  step   ///< it jumps from chance to all right: the threshold lies between two levels, the slope is infinite
};

/// Standard errors, of the information expected or observed at the estimate.
struct CurveErrors {
  double intercept, slope, covariance;  ///< the third between the two
  double threshold;                     ///< by the delta method
};

/// A curve of share right against level: chance + (1 - chance - lapse) F(intercept + slope level).
struct PsychometricFunction {
  CurveState state;
  double flat_likelihood_ratio;  ///< twice what the log likelihood loses with the same share at all levels
  double flat_p;                 ///< its tail of chi-square with one degree of freedom, an approximation
  double log_likelihood;  ///< of the counts, binomial coefficients included; its bound where it is a step
  double lapse;           ///< as given or fitted

  /// Nothing for a step.
  std::optional<double> intercept, slope;
  std::optional<CurveErrors> expected_error;  ///< nothing for listeners who differ, too
  std::optional<CurveErrors> observed_error;  ///< the lapse held where it was fitted
  std::optional<double> deviance, pearson;    ///< from a share for each row; nothing for listeners who differ
  int degrees_of_freedom;                     ///< of the two

  std::optional<double> threshold;  ///< only where found
  std::optional<Interval>
      threshold_interval;  ///< by the likelihood: what it does not lower by more than chi-square allows
  std::optional<double> slope_lower, slope_upper;  ///< likewise, where found; nothing where there is no bound
  bool threshold_beyond_levels = false;            ///< outside all levels presented
  std::optional<Interval> jump;  ///< for a step: the levels between which it lies, or the level

  /// For listeners who differ: standard deviation of their shifts, and whether it is above 0, by half the tail of chi-square.
  std::optional<double> listener_spread, listener_p;
};

/// @param counts  1 to 10,000 with trials, of two different levels or more.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// The highest peak: with guesses there may be several, so the likelihood is looked at over all slopes before Newton's steps
/// climb each. The threshold belongs to a typical listener where they differ. A threshold is given only where a likelihood
/// interval of the slope excludes 0: then the interval of the threshold is bounded on both sides.
/// Accuracy: estimates 1e-9, limits 1e-7 of the spread of levels (tests/reference). Intervals are approximations for many
/// answers: with six levels of 40 trials at 0.95 the threshold's covers the true one in 0.950 of simulated cases
/// where there is one, with 12 trials in 0.951; where nothing is noticed one is given in 0.042 (tests/simulation).
/// Example: levels -2 -1 0 1 2 3, 40 trials each, right 21 22 26 33 37 40; probit, chance 1/2: threshold at 0.75 right 0.602.
/// Source: F. A. Wichmann and N. J. Hill, Percept. Psychophys. 63 (2001) 1293 and 1314, but with likelihood intervals.
PsychometricFunction psychometric_function(std::span<const LevelCount> counts,
                                           const PsychometricOptions& options = {});

}  // namespace stats
