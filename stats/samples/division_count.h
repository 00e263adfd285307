#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "stats/permutation.h"

namespace stats {

/// In how many ways `all` things are divided into `chosen` and the rest, a whole number as far as doubles hold them.
/// @param chosen  at most `all`.
double number_of_divisions(std::size_t chosen, std::size_t all);

/// Share of all divisions of whole-numbered values into a first sample of `chosen` and the rest whose
/// difference of means (first less rest) counts against that of the division given, in which the first
/// `chosen` values are the first sample. Counted value by value through the sums that the first sample can
/// have.
///
/// @return  nothing when a value is no whole number, there are more than 1,000 values, or it takes more than
///          10^8 steps.
std::optional<double> share_of_divisions(std::span<const double> values, std::size_t chosen,
                                         Alternative alternative);

}  // namespace stats
