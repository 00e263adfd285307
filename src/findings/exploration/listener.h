#pragma once

#include "findings/evidence.h"
#include "findings/exploration/exploration.h"
#include "stats/permutation.h"

namespace findings {

/// One listener's part of `exploration_of`.
/// @param trials  of the comparison, those that count; the listener answered at least one.
ListenerExploration listener_exploration(const std::vector<const TrialEvidence*>& trials, int listener);

/// One listener's answers "A" in these trials; p 1 without answers.
AnswerShare answer_share(const std::vector<const TrialEvidence*>& trials, int listener);

ExploredP explored(const stats::PermutationP& test);

/// How it is drawn where there is too much to count.
inline constexpr stats::MonteCarlo kExplorationDraws{.seed = 1, .draws = 9'999};

}  // namespace findings
