#pragma once

#include <span>
#include <vector>

namespace stats {

/// Tests and confidence sequences for the mean of bounded observations that may be stopped at any time: the
/// observations lie in [0, 1] (rescale ratings first) and have, given the past, all the same mean; nothing
/// else is assumed of them.
///
/// Source: I. Waudby-Smith and A. Ramdas, Estimating means of bounded random variables by betting, J. R.
/// Stat. Soc. B 86 (2024) 1.
///
/// All functions take
/// @param observations  1 to 1,000,000, each between 0 and 1.
/// @param level         strictly between 0 and 1: 0.05 for a confidence of 95 %.
/// @throws std::domain_error  naming the argument, its value and its range.

/// The interval after one more observation is centre - half_width to centre + half_width. Its ends can lie
/// outside 0 to 1: cut them off there.
struct HoeffdingStep {
  double centre;
  double half_width;
};

/// Predictable plug-in Hoeffding confidence sequence, one step for each observation: with probability at
/// least 1 - level the mean lies in all the intervals at once. With the weight w_t = min(1,
/// sqrt(8 ln(2/level)/(t ln(1 + t)))) the centre is sum(w x)/sum(w) and the half-width (ln(2/level) +
/// sum(w^2)/8)/sum(w).
/// Example: the 16 answers 1101110111101101 at 0.05: 0.752 +- 0.360.
std::vector<HoeffdingStep> hoeffding_sequence(std::span<const double> observations, double level);

/// Approximate Kelly betting against "the mean is at most `mean`": logarithm of the capital after each
/// observation, an e-process (e_process.h). The bet on the next observation is (m - mean)/(v + (m - mean)^2)
/// from the mean m and variance v so far (running_moments.h), cut off to 0 to cap/mean.
/// @param mean  strictly between 0 and 1.
/// @param cap   above 0, at most 1: the largest share of the capital that may be lost at once. At 1 the capital
///              can fall to 0 (minus infinity) and stays there.
/// Example: the 16 answers above against 1/2 with cap 1/2: capital 4.507.
std::vector<double> log_kelly_capital(std::span<const double> observations, double mean, double cap = 0.5);

/// Hedged betting against "the mean is `mean`": logarithm of the capital after each observation, an
/// e-process. Half the capital bets that the mean is larger and half that it is smaller, and the capital is
/// the better of the two halves: with the bet b_t = sqrt(2 ln(2/level)/(v t ln(1 + t))) and the variance v so
/// far, prod(1 + min(b, cap/mean)(x - mean))/2 and prod(1 - min(b, cap/(1 - mean))(x - mean))/2.
/// hedged_capital.h has the confidence sequence, many means at once.
/// @param mean   between 0 and 1.
/// @param level  here only the size of the bets: those that suit a test at this level.
/// @param cap    above 0, at most 1, as above.
/// Example: the 16 answers above against 1/2 at 0.05: capital 4.005.
std::vector<double> log_hedged_capital(std::span<const double> observations, double mean, double level,
                                       double cap = 0.5);

/// The bets b_t of the hedged capital, before they are cut off.
std::vector<double> hedged_bets(std::span<const double> observations, double level);

}  // namespace stats
