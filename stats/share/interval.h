#pragma once

namespace stats {

/// Limits of an interval for a true share, 0 <= lower <= upper <= 1 (or of a difference, see
/// mean_difference.h).
struct Interval {
  double lower;
  double upper;
};

/// Every function below takes
/// @param correct     right answers, 0 to `trials`.
/// @param trials      answers given, 1 to 1,000,000.
/// @param confidence  strictly between 0 and 1: 0.95 for 95 %. Checked also with nothing or everything right.
/// @throws std::domain_error  naming the argument, its value and its range.

/// Exact two-sided interval: the true shares that neither exact one-sided test at (1 - confidence)/2 rejects.
/// It covers the true share at least as often as `confidence`, usually more. Lower is exactly 0 with nothing
/// right, upper exactly 1 with everything right.
///
/// Example: 12 of 16 at 0.95 gives 0.476 to 0.927.
/// Source: C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404.
Interval clopper_pearson(int correct, int trials, double confidence);

/// Exact one-sided limits: the share at which `correct` or more (for the upper: or fewer) has probability
/// exactly 1 - confidence. The lower limit is above the chance level just when the one-sided exact test at 1
/// - confidence supports the result.
///
/// Example: 12 of 16 at 0.95 gives a lower limit of 0.516.
double clopper_pearson_lower(int correct, int trials, double confidence);
double clopper_pearson_upper(int correct, int trials, double confidence);

/// Score interval of Wilson, without correction for continuity: an approximation, whose coverage is near
/// `confidence` on average and below it for some shares (how far: coverage.h).
///
/// Source: E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209.
Interval wilson(int correct, int trials, double confidence);

/// One-sided score limits (approximations likewise).
double wilson_lower(int correct, int trials, double confidence);
double wilson_upper(int correct, int trials, double confidence);

}  // namespace stats
