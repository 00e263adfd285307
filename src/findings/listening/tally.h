#pragma once

#include <optional>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Which answers are counted.
struct Counting {
  std::optional<int> listener{};  ///< one listener's alone; nothing: everybody's
  bool spoiled = false;           ///< trials spoiled in time as well
  bool late_spoiled = true;       ///< trials spoiled too late
  bool first_answers = false;     ///< as first given, before corrections
};

/// The listener whose test is the plan's primary one; nothing when it is pooled.
/// @throws std::domain_error  when the plan names neither.
std::optional<int> primary_listener(const plan::Plan& plan);

/// The trials of a comparison, played in a sitting that was held, whose fate is among those counted; answered
/// or not.
std::vector<const TrialEvidence*> trials_of(const Evidence& evidence, int comparison,
                                            const Counting& counting = {});

/// The exact test of a comparison's answers, counted one way: the re-draw of the coins given the answers.
Tested tested(const Evidence& evidence, int comparison, const Counting& counting);

/// P(as few scoring or fewer) of the same answers; 1 without answers.
double p_of_so_few(const Evidence& evidence, int comparison, const Counting& counting);

/// How many answers each trial has, trials without answers left out.
std::vector<int> answers_by_trial(const Evidence& evidence, int comparison, const Counting& counting);

/// The trials after which a look stopped a claim with this primary test; nothing where none did.
std::optional<int> stopped_after(const plan::Plan& plan, plan::Kind kind, const Tested& primary);

/// The exact limits beside the primary test of a claim that is looked at, by the same stage-wise order as its p; nothing for
/// any other comparison.
std::optional<Limits> limits_with_looks(const Evidence& evidence, int comparison, const Counting& counting);

/// The exact limits beside a tally; 0 and 1 without answers.
Limits limits_of(const plan::Plan& plan, const Tally& tally, bool several_listeners);

/// Whether more than one listener's answers are counted.
bool of_several_listeners(const Evidence& evidence, int comparison, const Counting& counting);

}  // namespace findings
