#pragma once

#include "stats/worth/pair_count.h"
#include "stats/worth/worth.h"

namespace stats {

/// One row of a paired comparison at a difference x of worths (order effect included) and the logarithm t of the tie weight:
/// log likelihood, its slopes, and the expected information. Without a model of ties a tie is half a preference for either.
struct PairTerm {
  double value = 0;
  double by_x = 0, by_t = 0;
  double xx = 0, xt = 0, tt = 0;
};

PairTerm pair_term(const PairCount& count, PreferenceModel model, bool with_ties, double x, double log_tie);

/// Third derivatives of -log likelihood of a logistic row: its answers times the third cumulants of one.
struct PairThirds {
  double xxx = 0, xxt = 0, xtt = 0, ttt = 0;
};

PairThirds pair_thirds(const PairCount& count, bool with_ties, double x, double log_tie);

/// Probabilities of the answers to a row.
struct PairShares {
  double first, tie, second;
};

PairShares pair_shares(PreferenceModel model, bool with_ties, double x, double log_tie);

/// The largest log likelihood that any probabilities give the row.
double saturated(const PairCount& count, bool with_ties);

}  // namespace stats
