#pragma once

#include <optional>
#include <string>
#include <vector>

#include "findings/exploration/exploration.h"
#include "findings/scale/scale.h"
#include "plan/plan.h"

namespace findings {

/// How a comparison ends. Never "identical".
enum class Verdict { supported, not_shown, cannot_be_judged };

/// Answers counted one way: `score` of `answers` over `trials`.
/// ABX: right answers. Preference: answers for the comparison's first cable.
struct Tally {
  int score = 0;
  int answers = 0;
  int trials = 0;  ///< with at least one answer
};

/// A tally with its exact p: the re-draw of the coins given the answers; one-sided where an answer can be
/// right, two-sided where not; stage-wise where the trials could be stopped at looks. No answers: p = 1.
struct Tested {
  Tally tally;
  double p = 1;
};

/// The exact limits (Clopper-Pearson) that stand beside the p: where it is one-sided, each at 1 - the plan's
/// level; where it is two-sided, each at 1 - level/2, an interval at 1 - level. Where the trials could be stopped at
/// looks, exact by the same stage-wise order as the p. For several listeners they treat all answers as independent.
struct Limits {
  double share = 0;  ///< score / answers
  double lower = 0;
  double upper = 1;
  bool treats_answers_as_independent = false;
};

/// "Had the long-run share right been `share` or more, a sitting like this would have supported it at least
/// `probability` of the time." From the answers that each analysed trial has, taken as alike within a trial,
/// and the family's first step, never from the share observed.
struct WouldHaveBeenCaught {
  int trials = 0;
  int answers = 0;
  double level = 0;
  int needed = 0;  ///< answers that had to score; answers + 1 if none would do
  /// Where the plan looks: what each look needs of so many answers; nothing where it cannot support.
  struct AtLook {
    int trials = 0;
    int answers = 0;
    std::optional<int> needed;
  };
  std::vector<AtLook> at_looks;
  double probability = 0.8;
  std::optional<double> share;          ///< nothing when no share could have been caught
  std::optional<double> hearing_share;  ///< (share - 1/2) / (1 - 1/2); nothing where no answer can be right
  std::optional<double> probability_at_effect;  ///< of support at the plan's share worth finding
};

/// One listener's result on one comparison: the second family.
struct ListenerResult {
  int listener = 0;
  Tested tested;
  double p_adjusted = 1;
  Limits limits;
  std::optional<double> sign_test_p;  ///< preference: two-sided binomial on the same answers
};

/// Agreement of the listeners within one comparison, on right/wrong or on the cable preferred.
struct Agreement {
  int trials = 0;  ///< answered by at least two listeners
  int pairs = 0;   ///< pairs of answers compared
  int agreeing_pairs = 0;
  double raw = 0;           ///< agreeing_pairs / pairs
  std::optional<double> p;  ///< "on the same trials beyond their own shares"; exact or simulated
  std::optional<double> p_standard_error;  ///< when simulated
  std::optional<double> fleiss_kappa;      ///< only where every counted trial was answered by all
  std::vector<std::vector<int>> counts;    ///< per trial: how many scored, how many did not
  bool nearly_all_in_one = false;          ///< kappa is not printed then, only the counts
  bool together = false;                   ///< listeners sat together: "not independent"
};

/// The level of the two cables at the load, second less first.
struct LevelFinding {
  std::string state;      ///< "matched", "measured, not matched", "predicted only" or "not verified"
  std::string weighting;  ///< its title
  std::optional<double> measured_db;          ///< mean over channels and moments, trims as set
  bool measured_completely = false;           ///< mono or both channels, at start and end of every sitting
  std::optional<double> largest_measured_db;  ///< of one channel at one moment, farthest from 0
  std::optional<double> drift_db;             ///< end less start, farthest from 0 over specimens and channels
  std::optional<double> predicted_db;         ///< trims not counted
  double trim_db = 0;                         ///< attenuation of the second less that of the first, as set
  std::optional<double> predicted_as_set_db;  ///< predicted_db - trim_db
  double tolerance_db = 0.1;
};

/// What remains of the response difference after the trims as set, 20 Hz to 20 kHz.
struct ResidualFinding {
  double minimum_db = 0, maximum_db = 0, rms_db = 0, largest_db = 0, frequency_of_largest_hz = 0;
  double low_hz = 0, high_hz = 0;  ///< the band it was taken over
};

/// The measured response of the second cable less that of the first, nothing trimmed.
struct DeviationFinding {
  double largest_db = 0, frequency_of_largest_hz = 0, rms_db = 0, weighted_level_db = 0;
  double low_hz = 0, high_hz = 0;
  std::optional<double> repeatability_db;  ///< largest difference between repeats of one cable, 0 or more
};

/// A curve for the report: frequency against dB, second less first.
struct Curve {
  std::vector<double> frequency_hz;
  std::vector<double> difference_db;
};

/// Pace: presentations that connected the same cable again against those that changed it.
struct Pace {
  bool recorded = false;
  int same = 0, changed = 0;                                ///< at the places of a trial where both occur
  double mean_same_s = 0, mean_changed_s = 0;               ///< time since the presentation before
  std::optional<double> difference_s, lower_s, upper_s, p;  ///< changed less same, 95 % interval
  std::optional<double> p_standard_error;                   ///< when simulated
  int overruns = 0;  ///< more than 3 s beyond the plan's swap time and presentation together
};

/// One comparison, with all that stands beside it.
struct ComparisonFinding {
  Exploration exploration;           ///< what else the answers show, no part of the verdict
  std::optional<int> stopped_after;  ///< trials after which a look found it supported and stopped it
  int comparison = 0;
  std::string title;
  std::string first, second;  ///< specimens' titles
  plan::Kind kind = plan::Kind::claim;
  Verdict verdict = Verdict::cannot_be_judged;
  std::vector<std::string> reasons;  ///< why it cannot be judged
  std::string sentence;              ///< the finding in words

  Tested primary;
  std::optional<double> p_adjusted;  ///< within the family; controls have none
  Limits limits;
  WouldHaveBeenCaught would_have_been_caught;
  int missing = 0, spoiled = 0, late_spoiled = 0;
  Tested with_spoiled;                  ///< all answers, spoiled trials too
  Tested without_spoiled;               ///< late-spoiled trials left out as well
  std::optional<Tested> first_answers;  ///< when corrections changed any
  std::vector<ListenerResult> listeners;
  std::optional<Agreement> agreement;  ///< two listeners or more
  bool opposed = false;                ///< preference: listeners steadily prefer opposite cables

  LevelFinding level;
  std::optional<double> loop_resistance_first_ohm, loop_resistance_second_ohm;
  std::optional<double> loop_resistance_spread_ohm;  ///< the larger of the two cables' spreads of repeats
  std::string first_line_words, second_line_words;   ///< what each cable's prediction is made from
  std::optional<ResidualFinding> predicted_residual;
  std::optional<DeviationFinding> measured;
  std::optional<Curve> predicted_curve;  ///< second less first, trims not counted
  std::optional<Curve> measured_curve;
  std::string level_sentence;     ///< the level in words
  std::string response_sentence;  ///< the response in words; "" when neither predicted nor measured
  std::vector<std::string> cautions;
};

/// The outcome over comparisons against one measured difference: exploratory.
struct Correlation {
  std::string measure;  ///< "loop resistance, ohm"
  std::string outcome;  ///< "share right", or the share for the cable that the next line names
  std::string against;  ///< "absolute difference", or "signed difference" and which cable less which
  std::vector<int> comparisons;
  std::vector<double> x, y;
  std::optional<double> rho;  ///< nothing when one side is constant or fewer than two comparisons are left
  double p = 1;
  double p_adjusted = 1;  ///< Benjamini-Hochberg over the list
  std::optional<double> p_standard_error;
  std::optional<double> smallest_attainable_p;
  /// At the list's first step. Nothing: "cannot reach it" where `smallest_attainable_p` is known, else not
  /// computed.
  std::optional<double> rho_needed;
  bool rho_needed_is_exact = true;  ///< else by Student's t, for untied values
  bool permuted_by_cable =
      false;  ///< among more than 8 cables the least p and the rho needed are not computed
  bool unequal_trials = false;
  std::string sentence;
};

/// Everything a report says of one plan.
struct Findings {
  std::vector<ComparisonFinding> comparisons;  ///< in the plan's order, controls among them
  int family = 0;                              ///< claims
  double level = 0;
  std::vector<Correlation> correlations;
  Pace pace;
  std::vector<AnswerShare> answer_shares;           ///< over all comparisons of an ABX plan; explored
  std::optional<PreferenceScale> preference_scale;  ///< over all claims of a preference plan; explored
  std::vector<std::string> conditions;              ///< the sittings' conditions, gap and excerpts, in words
  std::vector<std::string> cautions;                ///< over the whole plan
  std::vector<std::string> limits_of_the_method;    ///< what the record can and cannot show
};

}  // namespace findings
