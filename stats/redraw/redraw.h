#pragma once

#include <optional>
#include <span>
#include <vector>

namespace stats {

/// The exact re-draw of the coins. Everybody's answers are given and stay as they are; only the hidden coin
/// of each trial is drawn again. A trial then adds `one` or `other` to the total, each with probability 1/2,
/// independently of the other trials. The total's distribution is exact however the answers within a trial
/// depend on each other, which a binomial on the total is not.

/// What one trial adds to the total: `one` if its coin falls one way, `other` if the other. Both 0 or more.
/// In ABX: the number of answers "A" and the number of answers "B". In a paired preference with unknown
/// order: the answers for the first and for the second place.
struct Split {
  int one;
  int other;
};

/// Distribution of the total: place s holds P(total = s), for s from 0 to the sum N of all counts. No trials:
/// {1}.
///
/// Accuracy: exact while at most 53 trials have one != other, since every probability is a multiple of 2^-53;
/// with T such trials beyond that, each probability has a relative error below T * 2^-53 (only halving and
/// addition of non-negative numbers occur). Probabilities below 1e-300 may come out as 0.
/// @throws std::domain_error  for a negative count or a sum above 1,000,000.
std::vector<double> redraw_distribution(std::span<const Split> splits);

/// One-sided p: P(total >= observed).
///
/// @param observed  the total seen: one that the splits can give.
/// @throws std::domain_error  for an observed total that no fall of the coins gives, and as
/// `redraw_distribution`. Example: 16 trials each {3, 0} or {0, 3} (three answers always alike), 36 of 48
/// right: 0.0384, as 12 of 16. One answer a trial: the binomial tail at 1/2.
double redraw_at_least(std::span<const Split> splits, int observed);

/// P(total <= observed), likewise.
double redraw_at_most(std::span<const Split> splits, int observed);

/// Two-sided p: P(|total - N/2| >= |observed - N/2|), compared in whole numbers so that ties are exact.
double redraw_two_sided(std::span<const Split> splits, int observed);

/// Smallest total that these splits can give with P(total >= s) <= level; nothing when even the largest has
/// more.
/// @param level  strictly between 0 and 1. A tail equal to the level counts (see stats/level.h).
std::optional<int> redraw_minimum(std::span<const Split> splits, double level);

/// What the one-sided test could have done with trials of so many answers each, where all answers of a trial
/// are alike. Each trial adds all of its answers to the total with probability `share`, else none; what is
/// needed is the minimum of the re-draw of {answers, 0}.
///
/// @param answers  1 or more for each trial.
/// @param level    as above; so are the refusals below.

/// Probability that the total reaches the minimum; 0 where nothing would be supported.
/// @param share  between 0 and 1.
/// Example: eight trials of 3 answers and eight of 1 at 0.05, share 0.9: 0.956.
double redraw_power(std::span<const int> answers, double level, double share);

/// Smallest share at which that probability is at least `probability`, to an error below 1e-12; nothing where
/// nothing would be supported. Computed from the design alone, never from a result.
/// @param probability  strictly between 0 and 1.
/// Example: the same trials, 0.8: 0.822. One answer a trial: `smallest_share_caught` at chance 1/2.
std::optional<double> redraw_share_caught(std::span<const int> answers, double level, double probability);

}  // namespace stats
