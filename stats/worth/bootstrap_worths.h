#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/permutation.h"
#include "stats/share/interval.h"
#include "stats/worth/pair_count.h"

namespace stats {

/// How far worths would differ had other answers been given to the same comparisons.
struct BootstrapWorths {
  std::vector<Interval> interval;      ///< of each worth against the reference; percentiles of the refits
  std::vector<double> standard_error;  ///< likewise, their standard deviation
  int refits;                          ///< with finite worths
  int infinite;                        ///< resamples without, which are left out
};

/// Bootstrap of `fit_worths` with the logistic model: as many answers to each row, drawn with replacement from those given to
/// it, and fitted again. Refits agree with `fit_worths` to 1e-7.
///
/// @param items, counts, reference, order_effect  as `fit_worths`.
/// @param confidence   strictly between 0 and 1.
/// @param monte_carlo  draws: resamples, 1 to 1,000,000. The result is the same for every number of threads.
/// @param threads      1 to 256.
/// @return  nothing where the worths themselves are not finite, and where no resample's are.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: an approximation for many answers to each pair; where a row has a few, its resamples vary too little, and where
/// all answers to it agree not at all. With 4 items and 20 answers to a pair intervals at 0.95 cover the true difference of
/// the ends in 0.94 of simulated cases (tests/stats).
/// Source: B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap (1993), chapter 13.
std::optional<BootstrapWorths> bootstrap_worths(int items, std::span<const PairCount> counts, int reference,
                                                bool order_effect, double confidence,
                                                const MonteCarlo& monte_carlo = {.seed = 1, .draws = 2'000},
                                                int threads = 1);

}  // namespace stats
