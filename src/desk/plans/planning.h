#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "desk/shelf/shelf.h"
#include "plan/plan.h"
#include "plan/requirement.h"
#include "plan/sealed_plan.h"
#include "sitting/sitting.h"

namespace desk {

/// What the organiser asks for. Everything else of the plan follows from the campaign.
struct PlanTyped {
  std::string name;
  std::string protocol = "abx";
  std::string rig;
  std::vector<std::string> listeners;
  bool one_at_a_time = false;
  std::vector<std::string> comparisons;      ///< "heavy-pair/thin-pair"
  bool all_against_baseline = false;         ///< every other cable of the campaign against the baseline
  std::vector<std::string> identical_pairs;  ///< cables to be compared with themselves
  std::vector<std::string>
      known_differences;  ///< "heavy-pair:0.22ohm": with and without a resistor in series
  int trials = 16;        ///< of each comparison, in all
  int sittings = 1;
  bool split_trials = false;  ///< every comparison in every sitting, its trials shared out
  int spares = 2;
  std::vector<int> looks;  ///< trials of a claim after which is looked, the last all of them; none: a fixed number
  std::string spending = "obrien-fleming";  ///< of the level over the looks; or "pocock"
  std::string primary;  ///< "" for pooled, or a listener
  std::string level = "0.05";
  std::string effect = "0.90";
  bool as_connected = false;
  std::string weighting = "pink-k";
  std::vector<std::string> trims;  ///< "thin-pair=2": steps, instead of the predicted ones
  std::string level_tolerance_db = "0.1";
  std::vector<std::string> excerpts;  ///< "title" or "title,start,end"
  int practice_trials = 2;
  int block_trials = 12;
  int break_minutes = 10;
  int swap_seconds = 30;
  int presentation_seconds = 15;
  std::vector<std::string> do_not_judge_by;  ///< conditions left out of the plan's
  bool dry_run = false;                      ///< check and show, seal nothing
  std::string supplied_seed_hex;             ///< for demonstrations: the report says so
};

/// A plan as it was sealed.
struct SealedNow {
  plan::Plan plan;
  plan::SealedPlan sealed;
  std::vector<plan::Requirement> requirements;
  std::vector<double> minutes;  ///< a sitting
};

/// Seals a plan: checks it, draws its seed, keeps both and starts its chain.
/// @throws text::BadInput for a plan that does not hang together or that could not succeed; nothing is kept then.
SealedNow seal_plan(const Path& campaign, const PlanTyped& typed, const sitting::Clock& clock);

/// A plan of the campaign, read back and found to fit its commitment.
struct OpenedPlan {
  plan::Plan plan;
  plan::SealedPlan sealed;
};

/// @param name  "" for the only plan there is.
/// @throws text::BadInput with the nearest name, or when "" leaves a choice.
OpenedPlan open_plan(const store::Campaign& campaign, const std::string& name);

/// Keeps who received the commitment.
void record_handover(const Path& campaign, const std::string& plan, const std::string& who,
                     const std::string& how, const sitting::Clock& clock);

/// Ends a plan before its last sitting.
void end_plan_early(const Path& campaign, const std::string& plan, const std::string& who,
                    const std::string& reason, bool had_seen_answers_and_order, const sitting::Clock& clock);

/// Discloses the order of a plan.
void unseal_plan(const Path& campaign, const std::string& plan, const sitting::Clock& clock);

}  // namespace desk
