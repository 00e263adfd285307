#pragma once

#include <string>
#include <vector>

#include "desk/calculator/calculation.h"
#include "stats/permutation.h"
#include "stats/share/interval.h"

namespace desk {

Topic share_topic();
Topic design_topic();
Topic pooled_topic();
Topic agreement_topic();
Topic association_topic();
Topic samples_topic();
Topic factors_topic();
Topic campaigns_topic();
Topic preferences_topic();
Topic worths_topic();
Topic threshold_topic();
Topic discrimination_topic();
Topic stopping_topic();
Topic evidence_topic();
Topic listeners_topic();
Topic ratings_topic();
Topic cables_topic();
Topic hearing_topic();

/// The part of the cables' topic that has a source and a load.
std::vector<Calculation> circuit_calculations();

/// Arguments that many calculations take.
Argument level_argument();
Argument chance_argument();
Argument alternative_argument();
Argument seed_argument();
Argument draws_argument();

/// How a list is typed, for descriptions.
extern const std::string list_form;

/// Adds the p of a permutation test, whether it is exact, and else its draws and its standard error by them.
/// @param against  what counts against the null: "as many or more agreeing pairs".
void add_permutation_p(Figures& figures, const stats::PermutationP& test, const std::string& against);

/// Adds two limits, as KEY_lower and KEY_upper.
void add_limits(Figures& figures, const std::string& key, const std::string& label,
                const stats::Interval& limits, const std::string& note);

/// "95 %" for 0.95.
std::string per_cent(double share);

}  // namespace desk
