#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "protocols/protocol.h"

namespace plan {

/// A cable as it is connected: the same cable may stand in a plan more than once, under more tags.
struct Specimen {
  std::string cable;
  std::string series_resistance_ohm;  ///< a stated resistor in series, as typed; "" for none
  int trim_steps = 0;                 ///< attenuation, in steps of the amplifier's volume control
};

/// What a comparison is for. Controls are analysed apart and belong to no family.
enum class Kind { claim, identical_pair, known_difference };

std::string_view name_of(Kind kind);

struct Comparison {
  int first = 0;   ///< index of a specimen
  int second = 0;  ///< index of a specimen
  Kind kind = Kind::claim;
  std::string
      predicted_difference_db;  ///< second minus first, trims not counted, as printed when sealed; "" unknown
};

/// One sitting: who attends, and how many trials each of its comparisons gets.
struct Part {
  std::vector<int> comparisons;
  int trials_each = 0;
  std::vector<int> listeners;
};

struct Excerpt {
  std::string title;
  std::string start;
  std::string end;
};

/// When a comparison cannot be judged, apart from too few answers. Sealed, so that nobody chooses afterwards.
struct Judging {
  bool tags_or_trims_wrong = true;
  bool separation_not_kept = true;
  bool identical_pair_heard = true;
  bool known_difference_not_heard = true;
};

/// Everything that is settled before the first trial. Measured numbers are kept as typed.
struct Plan {
  std::string name;
  std::string sealed_at;    ///< RFC 3339
  std::string seed_origin;  ///< "drawn from the operating system", or "supplied"
  std::string protocol;
  std::string order_rule;
  std::string rig;
  std::string baseline;  ///< a cable, or ""
  std::vector<std::string> listeners;
  std::string attendance;  ///< "together" or "one at a time"
  std::vector<Specimen> specimens;
  std::vector<Comparison> comparisons;
  std::vector<Part> sittings;
  int spares_each = 2;

  std::string primary_test;  ///< "pooled", or the name of one listener
  std::string level = "0.05";
  std::string family = "holm";
  std::string effect_share = "0.90";                     ///< the share right worth finding
  std::string stopping_rule = "fixed number of trials";  ///< or looks: plan/looks.h
  Judging judging;
  std::string level_tolerance_db = "0.1";

  std::string levels;  ///< "trimmed" or "as connected"
  std::string trim_weighting;
  std::string volume_step_db;
  std::vector<Excerpt>
      excerpts;  ///< used in turn, two trials each: trial n plays excerpt floor((n - 1) / 2) mod count, so
                 ///< that each is heard with the references in both orders
  int practice_trials = 2;
  int block_trials = 12;
  int break_minutes = 10;
  int swap_seconds = 30;
  int presentation_seconds = 15;
};

/// The plan as it is sealed (seal::canonical_text gives its one text).
nlohmann::json to_json(const Plan& plan);

/// Reads a sealed plan back and checks it.
/// @throws std::domain_error naming what is missing, of the wrong type, not known, or fails `check`.
Plan from_json(const nlohmann::json& value);

/// Checks that the plan hangs together: names given and different, indices in range, every claim somewhere in a
/// sitting, known words, numbers that are numbers.
/// @throws text::BadInput naming the field, what was found and what was expected.
void check(const Plan& plan);

/// The protocol whose rule draws this plan's orders.
/// @throws std::domain_error when this program does not know the rule.
const protocols::Protocol& protocol_of(const Plan& plan);

/// What the listeners and everybody else call a comparison: "heavy-pair / thin-pair".
std::string title_of(const Plan& plan, const Comparison& comparison);

/// "heavy-pair" or "heavy-pair + 0.22 ohm".
std::string title_of(const Specimen& specimen);

}  // namespace plan
