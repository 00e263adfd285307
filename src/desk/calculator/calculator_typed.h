#pragma once

#include <string>
#include <vector>

#include "desk/calculator/calculator.h"
#include "stats/agreement.h"
#include "stats/agreement_permutation.h"
#include "stats/permutation.h"
#include "stats/redraw.h"

namespace desk {

/// How the calculator reads what was typed. `name` is the argument's name in messages.
/// @throws text::BadInput     for what cannot be read: name, what was expected, what was found.
/// @throws std::domain_error  for what is outside its range.

/// A whole number from `lowest` to `highest`.
int typed_count(const std::string& name, const std::string& typed, int lowest, int highest);

/// A number with decimal point or comma, or a fraction of two: "0.333", "0,333", "1/3".
double typed_share(const std::string& name, const std::string& typed);

/// A share strictly between 0 and 1: a level of significance, a power.
double typed_level(const std::string& name, const std::string& typed);

/// Numbers separated by spaces or semicolons, which may have decimal commas: "0,5;0,7"; or by commas alone,
/// and then with decimal points: "0.5,0.7". A list of one comma and no other mark, "1,5", is refused, since
/// it may be one number or two. A comma before a space separates: "1, 2".
/// @param words  the arguments, as if joined by spaces; at least one number in all.
std::vector<double> typed_list(const std::string& name, const std::vector<std::string>& words);

/// Rows of counts: each argument one or more rows, separated by semicolons; counts by commas or spaces.
/// @return  at least one row; all rows of equal length.
stats::CountTable typed_table(const std::vector<std::string>& words);

/// "2:1".
stats::Split typed_split(const std::string& typed);

/// A listener each: 1 right, 0 wrong, - or . missing. All of equal length.
std::vector<stats::Marks> typed_marks(const std::vector<std::string>& words);

/// "two-sided", "greater" or "less".
stats::Alternative typed_alternative(const std::string& typed);

stats::MonteCarlo typed_draws(const DrawsTyped& typed);

}  // namespace desk
