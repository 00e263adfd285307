#pragma once

#include <optional>

#include "stats/share/interval.h"

namespace stats {

/// What the subjects of one arm guessed they had been given: the first treatment, the second, or "don't
/// know".
struct Guesses {
  int first;
  int second;
  int dont_know;
};

/// An index of blinding with its standard error and limits. The limits are approximations by the normal
/// distribution and are not cut at the ends of the index's range.
struct BlindingIndex {
  double index;
  double standard_error;
  Interval two_sided;   ///< at `confidence`
  double lower, upper;  ///< one-sided limits, each at `confidence`
};

/// Bang's index of one arm: the share of right guesses less the share of wrong ones, "don't know" counting
/// with neither. 1: all guess right, the arm is unblinded; 0: as many right as wrong; -1: all guess wrong.
///
/// @param right       number of subjects of the arm who guessed what they had been given; `wrong` and
///                    `dont_know` likewise. Each 0 or more, in all 1 to 1,000,000.
/// @param confidence  strictly between 0 and 1.
/// @return  nothing when nobody guessed: all said "don't know".
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: the index is exact. The limits are approximations: with 30 subjects of whom 30 % are right, 30 %
/// wrong and 40 % don't know, the two-sided interval at 0.95 covers 0 with probability 0.935, the one-sided
/// lower limit with 0.940 (exact sums, tests/stats).
/// Example: 82 right, 25 wrong, 170 don't know: 0.206, standard error 0.035, one-sided limits at 0.95
/// 0.148 and 0.264 (which the paper prints as its interval).
/// Source: H. Bang, L. Ni and C. E. Davis, Control. Clin. Trials 25 (2004) 143.
std::optional<BlindingIndex> bang_index(int right, int wrong, int dont_know, double confidence);

/// James' index of both arms together: 1 when all say "don't know", 1/2 when guesses are as by chance, 0 when
/// all guess right. Weights: 0 for a right guess, 1/2 for a wrong one, 1 for "don't know".
///
/// @param given_first   the guesses of those who were given the first treatment; each count 0 or more.
/// @param given_second  likewise the second. In all 1 to 1,000,000.
/// @param confidence    strictly between 0 and 1.
/// @return  nothing when all who guessed guessed the same, and rightly: no wrong guess is then expected by
///          chance (0/0). With only "don't know" the index is 1 and its standard error 0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: the index is exact. The standard error is the delta method's, which is the paper's formula; with
/// 30 subjects in either arm who guess right, wrong and "don't know" as above, the two-sided interval at 0.95
/// covers the true 0.7 with probability 0.939 (exact sums, tests/stats).
/// Example: {82, 25, 170} and {27, 29, 83} give 0.748, 0.705 to 0.791 at 0.95.
/// Source: K. E. James, D. A. Bloch, K. K. Lee, H. C. Kraemer and R. K. Fuller, Stat. Med. 15 (1996) 1421.
std::optional<BlindingIndex> james_index(const Guesses& given_first, const Guesses& given_second,
                                         double confidence);

}  // namespace stats
