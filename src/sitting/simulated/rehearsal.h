#pragma once

#include <span>
#include <vector>

#include "plan/plan.h"
#include "plan/sealed_plan.h"
#include "sitting/event_log.h"
#include "sitting/simulated/simulated_listener.h"
#include "sitting/sitting.h"

namespace sitting {

/// The simulated listeners of a plan, one for each of its listeners, in its order.
using Company = std::vector<SimulatedListener*>;

/// A clock that stands still until it is moved by hand.
class HandClock {
 public:
  /// Starts at 2000-01-01T00:00:00Z.
  HandClock();
  void pass(std::chrono::seconds time) { now_ += time; }
  /// A clock that reads this one, which must outlive it.
  Clock reading() const {
    return [this] { return now_; };
  }

 private:
  std::chrono::system_clock::time_point now_;
};

/// A plan with a given seed and its commitment.
plan::SealedPlan sealed_with(const plan::Plan& plan, const seal::Digest& seed);

/// Plays a whole live sitting from opening to end: every planned trial that no look stops, everybody answering each. The sitting must be
/// new; `clock` is the one it reads, and is moved by the plan's pace.
///
/// @param sealed   of the sitting's plan: the rehearsal holds the seed, the sitting's doors do not give it away.
/// @throws std::domain_error unless there is a simulated listener for each of the plan's.
void rehearse(Sitting& sitting, const plan::SealedPlan& sealed, const Company& company, HandClock& clock);

/// Plays every sitting of a plan on an empty log, from sealing to unsealing.
void rehearse_plan(EventLog& log, const plan::Plan& plan, const plan::SealedPlan& sealed,
                   const Company& company);

}  // namespace sitting
