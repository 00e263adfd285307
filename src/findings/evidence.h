#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "electrical/cable.h"
#include "electrical/load.h"
#include "electrical/response.h"
#include "hearing/level_curve.h"
#include "plan/plan.h"

namespace findings {

/// What became of a trial: spoiled trials are left out, those spoiled too late count as answered.
enum class Fate { counted, spoiled, late_spoiled, not_played };

/// One trial with its truth and everybody's answers. Listeners are indices into the plan's list, answers
/// indices into the protocol's.
struct TrialEvidence {
  int sitting = 0;
  int number = 0;
  Fate fate = Fate::not_played;
  std::string spoil_words;  ///< reason, by whom
  int coin = 0;             ///< the answer with this index scores
  std::vector<int> sides;   ///< per presentation: 0 the comparison's first, 1 its second
  std::map<int, int> answers;
  std::map<int, int> first_answers;
  std::map<int, std::string> sureness;  ///< by listener, of the answer that counts; those who said how sure
  std::map<int, std::string> corrections;  ///< by listener: why the answer was changed
  std::vector<int> missing;                ///< listeners who attended and gave no answer, or withdrew theirs
  std::vector<std::optional<double>>
      started_s;  ///< per presentation, within the sitting; empty if no time is known

  bool was_withdrawn(int listener) const {
    return first_answers.contains(listener) && !answers.contains(listener);
  }
  /// Whether the first answer was changed or withdrawn.
  bool was_corrected(int listener) const {
    return first_answers.contains(listener) &&
           (was_withdrawn(listener) || answers.at(listener) != first_answers.at(listener));
  }
};

/// A level at the loudspeaker terminals, trims set.
struct TerminalLevel {
  int sitting = 0;
  int specimen = 0;
  std::string channel;  ///< "left", "right" or "mono"
  std::string moment;   ///< "start" or "end"
  double level_db = 0;
};

/// One sitting's conditions, as recorded.
struct SittingEvidence {
  int number = 0;
  bool held = false;
  bool ended_early = false;
  std::string began_at;  ///< when the order was drawn, "" if never
  std::string way, opened_at, ended_at, ended_by, end_reason, head_hex;
  bool ender_had_seen = false;  ///< who ended it early had seen both answers and order
  std::vector<std::pair<std::string, std::string>> head_shown_to;  ///< who; how and when, before unsealing
  std::string helper;                                              ///< as told, "" when not
  std::string tagged_by;
  std::vector<std::pair<std::string, std::string>> characters;  ///< listener and what was added to the order
  std::vector<std::pair<std::string, std::string>> facts;       ///< title and value
  struct Declaration {
    std::string who, moment, words;
    bool kept = false;
  };
  std::vector<Declaration> declarations;
  struct Remark {
    std::string who, text;
  };
  std::vector<Remark> notes, cues;
  std::vector<std::string> keyed_by;
  bool keyed_with_helpers_sheet = false;
  int compared_answers = 0;  ///< of second entries
  int differing_answers = 0;
  int planned_trials = 0;
  int stopped_trials = 0;  ///< of these, left out after a look stopped their comparison
  int settled_trials = 0;
  bool wrong_tag_reported = false;  ///< a trial was spoiled for a wrong tag after its answers were in
};

/// A measured response of one cable on the plan's rig, at the load's terminals; repeats apart.
struct MeasuredResponse {
  std::vector<hearing::LevelCurve> repeats;
  std::vector<std::string> sources;  ///< file and number of each reading
};

/// What is known of a cable from its readings.
struct CableEvidence {
  std::optional<electrical::Cable> line;             ///< from the mean of the per-cable readings
  std::optional<double> loop_resistance_spread_ohm;  ///< largest less least of the repeats, if repeated
  int lcr_readings = 0;
  MeasuredResponse response;
  std::string line_words{};  ///< where the line's constants come from, and what of the skin effect it has
};

/// The rig as the circuit sees it.
struct RigEvidence {
  std::string name;
  std::string description;  ///< source, load and programme in words
  std::optional<electrical::Source> source;
  std::optional<electrical::Load> load;
};

/// One of all the campaign's sealed plans, for the list in every report.
struct PlanLine {
  std::string name, protocol, sealed_at,
      state;  ///< state: "sealed", "in progress", "ended early", "unsealed"
  std::string commitment_hex;
};

/// Everything that findings are made from.
struct Evidence {
  std::string campaign_title;
  plan::Plan plan;
  std::string commitment_hex, seed_hex;
  std::string first_shown_at;  ///< when the commitment first left the organiser's hands, "" if never
  std::string sealed_at, unsealed_at;
  std::vector<std::pair<std::string, std::string>> commitment_shown_to;  ///< who; how and when
  bool plan_ended_early = false;
  std::string plan_ended_by, plan_end_reason;
  bool ender_had_seen = false;
  std::vector<SittingEvidence> sittings;
  std::vector<std::vector<TrialEvidence>> trials;  ///< by comparison of the plan
  std::vector<TerminalLevel> levels;
  std::map<std::string, CableEvidence> cables;  ///< by name
  RigEvidence rig;
  std::vector<PlanLine> all_plans;
};

}  // namespace findings
