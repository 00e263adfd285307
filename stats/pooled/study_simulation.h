#pragma once

#include <cstdint>
#include <vector>

namespace stats {

/// A study of several comparisons, in each of which every rater answers the same number of trials of their
/// own (nothing is shared between raters).
struct StudyDesign {
  int raters;       ///< 1 to 1,000
  int comparisons;  ///< 1 to 100
  int trials;       ///< of a rater in a comparison, 1 or more; trials times comparisons at most 1,000
  double chance;    ///< probability that a guess is right, strictly between 0 and 1
  double level;     ///< of all comparisons together, strictly between 0 and 1
};

/// How raters differ: each one's share right is drawn once, from the beta distribution with this mean and
/// gamma (see stats/pooled/beta_binomial.h), and is the same in all comparisons.
struct RaterAbility {
  double mean;
  double gamma;
};

/// Numbers of simulated studies by the number of comparisons that Holm's test supports: 0, 1, ..., all.
struct SimulatedStudies {
  std::vector<std::int64_t> by_supported;

  double share_with_any() const;   ///< of studies with at least one comparison supported
  double share_with_all() const;   ///< of studies with every comparison supported
  double share_supported() const;  ///< of comparisons supported
};

/// Simulates studies: the answers of all raters are pooled in each comparison, the one-sided binomial p is
/// found, and the comparisons are judged together by Holm's method.
///
/// The answers are drawn comparison by comparison from the beta-binomial distribution given the rater's
/// answers so far (Polya's urn), so that no share is drawn; each count has its probability to an error below
/// 2^-50 (stats/pooled/count_sampler.h). Studies come in fixed blocks of 500, each with its own seed (seed
/// plus the number of its block): the result is the same for every number of threads.
///
/// @param studies  1 to 1,000,000,000.
/// @param threads  1 to 256.
/// @throws std::domain_error  naming the argument, its value and its range.
///
/// Example: 8 raters, 4 comparisons, 16 trials, chance 1/2, level 0.05, ability of mean 0.6 and gamma 0.05:
/// any in 0.785 of studies.
SimulatedStudies simulate_studies(const StudyDesign& design, const RaterAbility& ability,
                                  std::int64_t studies, std::uint64_t seed, int threads = 1);

}  // namespace stats
