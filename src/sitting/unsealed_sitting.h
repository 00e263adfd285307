#pragma once

#include <map>
#include <string>
#include <vector>

#include "plan/plan.h"
#include "plan/sealed_plan.h"
#include "protocols/order.h"
#include "sitting/event_log.h"
#include "sitting/state.h"

namespace sitting {

/// What became of a trial.
enum class Fate {
  counted,       ///< counts
  spoiled,       ///< withdrawn in time; answers, if any, are shown apart
  late_spoiled,  ///< withdrawn too late: counts, and is shown
  not_played     ///< a spare that was not needed
};

/// A trial with its truth.
struct ScoredTrial {
  int number = 0;
  int comparison = 0;  ///< index into the plan's comparisons
  Fate fate = Fate::not_played;
  int coin = 0;                     ///< the index of the answer that scores
  std::vector<int> sides;           ///< what each presentation played: 0 the comparison's first, 1 its second
  std::map<std::string, int> last;  ///< by listener: index of the answer that counts
  std::map<std::string, int> first;  ///< by listener: index of the answer first given
};

/// The only door to the order for findings.
class UnsealedSitting {
 public:
  /// @throws text::NotNow until the plan's chain holds that it was unsealed.
  /// @throws text::BadInput when plan, seed or sitting are not those that were committed to and disclosed.
  UnsealedSitting(const plan::Plan& plan, const plan::SealedPlan& sealed, int number, const EventLog& log);

  const State& state() const { return state_; }
  const std::vector<ScoredTrial>& trials() const { return trials_; }
  /// The plan's specimen that a tag was on; -1 for a tag of no specimen.
  int specimen_of(int tag) const;
  const std::string& head_hex() const { return head_hex_; }

 private:
  State state_;
  std::vector<ScoredTrial> trials_;
  std::map<int, int> specimen_by_tag_;
  std::string head_hex_;
};

}  // namespace sitting
