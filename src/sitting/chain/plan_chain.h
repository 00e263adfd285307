#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "plan/sealed_plan.h"
#include "sitting/sitting.h"

namespace sitting {

/// A sitting's chain head that was given to somebody before the plan was unsealed: from then on its answers are bound.
struct HeadShown {
  int sitting = 0;
  std::string head_hex, who, how, at;
};

/// What happened to a plan as a whole: its own chain, kept as sitting 0.
struct PlanStory {
  std::string sealed_at;
  std::vector<Remark> shown_to;
  std::vector<std::string> shown_at;  ///< when, one for each of `shown_to`
  std::vector<HeadShown> heads_shown;
  bool ended_early = false;
  std::string ended_by, end_reason;
  bool ender_had_seen = false;  ///< who ended it had seen both answers and order: no finding can be supported
  bool unsealed = false;
  std::string unsealed_at;
  std::string disclosed;  ///< the seed in hex, then the head of each sitting when it was unsealed
};

PlanStory story_of(const EventLog& log, const plan::SealedPlan& sealed);

/// Starts the plan's chain with its commitment. @throws text::NotNow when it is started already.
void record_sealing(EventLog& log, const plan::SealedPlan& sealed, const Clock& clock);

/// Keeps who received the commitment, and how.
void record_shown(EventLog& log, const plan::SealedPlan& sealed, const Clock& clock, const std::string& who,
                  const std::string& how);

/// Keeps who received the chain head of a sitting that has ended, and how.
/// @throws text::NotNow before its end, and once the plan is unsealed.
void record_head_shown(EventLog& log, const Sitting& sitting, const plan::SealedPlan& sealed,
                       const Clock& clock, const std::string& who, const std::string& how);

/// Ends a plan before its last sitting. Running sittings are ended with it.
void end_plan_early(EventLog& log, const plan::Plan& plan, const plan::SealedPlan& sealed, const Clock& clock,
                    const std::string& who, const std::string& reason, bool had_seen_answers_and_order);

/// Discloses the order: keeps the seed and every sitting's head in the plan's chain, after which no answer is taken.
/// @throws text::NotNow while a sitting has not ended; of a plan that was ended early, while one that was held has not.
void unseal(EventLog& log, const plan::Plan& plan, const plan::SealedPlan& sealed, const Clock& clock);

}  // namespace sitting
