#pragma once

#include <optional>
#include <span>

#include "stats/permutation.h"
#include "stats/pooled/subject_count.h"

namespace stats {

/// Do subjects differ more in their share right than chance alone makes them differ? The null hypothesis: one
/// common share right for every trial of every subject.
///
/// Arguments of the functions below
/// @param subjects  1 to 10,000, with at most 100,000 trials in all; numbers of trials may differ.
/// @throws std::domain_error  naming the argument, its value and its range.

/// Pearson's X^2 over its degrees of freedom, sum of (x - n s)^2 / (n s (1 - s)) over k - 1, where s is the
/// pooled share right: about 1 under the null, larger when subjects differ.
/// @return  nothing for a single subject and when everything is right or everything wrong.
/// Example: 3 4 5 5 5 6 6 6 7 8 9 10, each of 10: 1.756.
std::optional<double> pearson_dispersion(std::span<const SubjectCount> subjects);

/// Tarone's Z = (S - sum n) / sqrt(2 sum n (n - 1)) with S = sum of (x - n s)^2 / (s (1 - s)).
/// @return  nothing for a single subject, when everything is right or wrong, or no subject has two trials.
/// Example: the same subjects: 1.575.
/// Source: R. E. Tarone, Biometrika 66 (1979) 585.
std::optional<double> tarone_z(std::span<const SubjectCount> subjects);

/// One-sided p of Tarone's Z by the normal distribution: an approximation with no sure level. Its true size
/// at 0.05 for k subjects of n trials (enumerated, tests/stats): 0.0365 for 4 of 16, 0.0440 for 8 of 16 and
/// 0.0455 for 12 of 10 at a share of 0.5; 0.0375, 0.0431 and 0.0453 at 0.7.
/// Example: the same subjects: 0.0577.
std::optional<double> tarone_normal_p(std::span<const SubjectCount> subjects);

/// One-sided p of Tarone's Z given the total number right: under the null every placement of the right
/// answers over all trials is equally likely, whatever the common share, so that this test holds its level at
/// every share.
///
/// @return  nothing when Z is nothing. Exact where it takes up to 4 * 10^6 steps (12 subjects of 16 trials with
///          ease; fewer where numbers of trials differ), beyond drawn at random. Its true size never
///          passes the level: at 0.05 it is 0.0421, 0.0452 and 0.0438 for the designs above at 0.5
///          (enumerated).
/// Example: the same subjects: 0.0578.
std::optional<PermutationP> tarone_exact(std::span<const SubjectCount> subjects,
                                         const MonteCarlo& monte_carlo = {});

}  // namespace stats
