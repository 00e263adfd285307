#pragma once

#include <string>

#include "desk/calculator/figures.h"
#include "stats/permutation.h"

namespace desk {

/// Adds the p of a permutation test, whether it is exact, and else its draws and its standard error by them.
/// @param against  what counts against the null: "as many or more agreeing pairs".
void add_permutation_p(Figures& figures, const stats::PermutationP& test, const std::string& against);

}  // namespace desk
