#include "findings/listening/pace.h"

#include <algorithm>

#include "findings/listening/tally.h"
#include "stats/samples/mean_difference.h"

namespace findings {
namespace {

constexpr double kConfidence = 0.95;

/// Times are read from a clock and written by hand: no overrun within this. Common practice, no source.
constexpr double kHandwritingSeconds = 3;

/// Where divisions are drawn, this many: a p of .05 is then known to .002, which is kept beside it.
constexpr stats::MonteCarlo kPaceDraws{.seed = 1, .draws = 9'999};

/// Seconds since the presentation before, of one place in a trial.
struct SwapTimes {
  std::vector<double> same, changed;
};

bool has_time(const TrialEvidence& trial) {
  return std::any_of(trial.started_s.begin(), trial.started_s.end(),
                     [](const auto& time) { return time.has_value(); });
}

std::map<std::size_t, SwapTimes> places_of(const Evidence& evidence) {
  std::map<std::size_t, SwapTimes> places;
  for (int i = 0; i < static_cast<int>(evidence.trials.size()); ++i)
    for (const TrialEvidence* trial : trials_of(evidence, i, {.spoiled = true}))
      for (std::size_t at = 1; at < std::min(trial->sides.size(), trial->started_s.size()); ++at) {
        const auto& before = trial->started_s[at - 1];
        const auto& now = trial->started_s[at];
        if (!before || !now) continue;
        SwapTimes& place = places[at];
        (trial->sides[at] == trial->sides[at - 1] ? place.same : place.changed).push_back(*now - *before);
      }
  return places;
}

void append(std::vector<double>& all, const std::vector<double>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

void compare(Pace& pace, const SwapTimes& compared) {
  pace.same = static_cast<int>(compared.same.size());
  pace.changed = static_cast<int>(compared.changed.size());
  if (!compared.same.empty()) pace.mean_same_s = stats::mean(compared.same);
  if (!compared.changed.empty()) pace.mean_changed_s = stats::mean(compared.changed);
  if (compared.same.empty() || compared.changed.empty()) return;
  pace.difference_s = stats::mean_difference(compared.changed, compared.same);
  const auto test =
      stats::mean_difference_test(compared.changed, compared.same, stats::Alternative::two_sided, kPaceDraws);
  pace.p = test.p;
  if (!test.exact) pace.p_standard_error = test.standard_error;
  if (const auto interval = stats::welch_interval(compared.changed, compared.same, kConfidence)) {
    pace.lower_s = interval->lower;
    pace.upper_s = interval->upper;
  }
}

}  // namespace

bool pace_is_recorded(const Evidence& evidence, int sitting) {
  return std::any_of(evidence.trials.begin(), evidence.trials.end(), [&](const auto& trials) {
    return std::any_of(trials.begin(), trials.end(), [&](const TrialEvidence& trial) {
      return trial.sitting == sitting && has_time(trial);
    });
  });
}

Pace pace_of(const Evidence& evidence) {
  Pace pace;
  SwapTimes compared;
  const double longest_s =
      evidence.plan.swap_seconds + evidence.plan.presentation_seconds + kHandwritingSeconds;
  for (const auto& [at, place] : places_of(evidence)) {
    pace.recorded = true;
    for (const auto* intervals : {&place.same, &place.changed})
      pace.overruns += static_cast<int>(std::count_if(intervals->begin(), intervals->end(),
                                                      [&](double seconds) { return seconds > longest_s; }));
    if (place.same.empty() || place.changed.empty()) continue;
    append(compared.same, place.same);
    append(compared.changed, place.changed);
  }
  compare(pace, compared);
  return pace;
}

}  // namespace findings
