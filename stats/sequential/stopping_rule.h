#pragma once

#include <optional>
#include <span>
#include <vector>

#include "stats/sequential/running_total.h"

namespace stats {

/// What happens after one trial of a sequential test: support when the count of successes is at least
/// `support`, give up when it is at most `give_up`, else go on. Nothing in either: that way out is closed
/// here. A bound that the count cannot reach is allowed and does nothing.
struct Look {
  std::optional<int> support;
  std::optional<int> give_up;
};

/// Any rule of stopping on a running count: `looks[n - 1]` after trial n, for n = 1 to N. After trial N the
/// test ends in any case, undecided if no bound is reached.
///
/// Example: fifteen empty looks and then one with support 12 are the fixed test of 16 trials at 0.05. The
/// builders are in rules_on_counts.h, spending_rule.h, sprt.h and shared_stopping.h.
struct StoppingRule {
  std::vector<Look> looks;
};

/// How a test ends, or stands while it goes on.
enum class StoppingDecision { support, give_up, undecided };

/// Where a sequence of answers ends.
struct StoppingPoint {
  StoppingDecision decision;
  int trials;  ///< at which it was decided; for `undecided` the answers given
};

/// Follows a rule along a sequence of answers, 1 for right and 0 for wrong. Answers after the stop are not
/// looked at.
/// @throws std::domain_error  for an answer other than 0 and 1, for more answers than the rule has looks,
/// and for an impossible rule (see `operate`).
StoppingPoint follow(const StoppingRule& rule, std::span<const int> answers);

/// What a rule does.
struct Operation {
  double support;                     ///< probability of ending in support
  double give_up;                     ///< of giving up
  double undecided;                   ///< of reaching trial N with neither
  double expected_trials;             ///< mean number of trials
  std::vector<double> support_after;  ///< place n - 1: probability of support just after trial n
  std::vector<double> give_up_after;  ///< likewise of giving up
  std::vector<double> stop_after;     ///< likewise of the end, for any reason: it sums to 1
};

/// Exact operation of a rule when every answer is right with probability `share`, independently: with
/// `share` = chance, `support` is the true rate of false alarms; with a larger share it is the power.
///
/// @param rule   1 to 1,000,000 looks; bounds from 0 to 1,000,000, `give_up` below `support`.
/// @param share  between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: no approximation. All terms are non-negative, so each probability has a relative error below
/// N * 1e-15; exact at share 1/2 and N <= 53.
/// Time: N times the width of the region in which the test goes on.
///
/// Example: at 0.05, looking after each of 16 trials and stopping at the first success of the unadjusted
/// test, gives a false alarm in 0.0876, not 0.05.
/// Source: the forward recursion of P. Armitage, C. K. McPherson and B. C. Rowe, J. R. Stat. Soc. A 132
/// (1969) 235.
Operation operate(const StoppingRule& rule, double share);

/// The same for a total to which trial n adds `gains[n - 1]`: trials of different chances, or of several
/// answers. As many gains as looks.
Operation operate(const StoppingRule& rule, std::span<const Gain> gains);

/// @throws std::domain_error  unless `looks` are 1 or more trial numbers, each from 1 to `trials` and larger
/// than the one before.
void require_looks(std::span<const int> looks, int trials);

}  // namespace stats
