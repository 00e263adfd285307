#pragma once

#include <optional>
#include <vector>

namespace stats {

/// What one trial adds to a running total: `one` with `probability_of_one`, else `other`. An answer that is
/// right with probability p is {1, 0, p}; a trial of several answers under a fair coin is {one, other, 1/2}.
struct Gain {
  int one;
  int other;
  double probability_of_one;
};

/// The distribution of a running total of gains, from which stopped paths are taken out as it goes on. It
/// starts as the total 0 with probability 1.
///
/// Only additions and multiplications of non-negative numbers occur: after n trials each probability has a
/// relative error below n * 1e-15. At probability 1/2 it is exact to 53 trials. Probabilities below 1e-300
/// may come out as 0.
class RunningTotal {
 public:
  /// One more trial. @throws std::domain_error  for negative counts, a total beyond 1,000,000 or a
  /// probability outside 0 to 1.
  void add(const Gain& gain);

  /// Takes out the paths whose total is at least (at most) `total`, and gives their probability.
  double take_at_least(int total);
  double take_at_most(int total);

  /// The paths not yet taken out.
  double remaining() const;

  /// Smallest total that some path has for which `before` and the probability of that total or more sum to
  /// at most `allowed`; nothing when not even the largest has. A sum equal to `allowed` counts (see
  /// stats/level.h).
  std::optional<int> smallest_total(double before, double allowed) const;

 private:
  int lowest_ = 0;  // total of the first place
  std::vector<double> probability_{1.0};
};

}  // namespace stats
