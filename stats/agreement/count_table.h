#pragma once

#include <cstdint>
#include <vector>

namespace stats {

/// Counts in rows and columns, every row of equal length. Either two raters' answers (row by the first rater,
/// column by the second), or a row for each subject and a column for each category: how many raters chose it.
using CountTable = std::vector<std::vector<int>>;

/// Checks what every function that takes a table asks of it: 1 or more rows of the same 2 to 1,000 columns,
/// no count below 0, the sum of all counts 1 to 1,000,000.
///
/// @return  the sum of all counts.
/// @throws std::domain_error  naming the argument, its value and its range.
std::int64_t checked_total(const CountTable& counts);

/// The same for a table with as many rows as columns.
std::int64_t checked_square_total(const CountTable& counts);

std::int64_t row_sum(const std::vector<int>& row);

std::vector<std::int64_t> column_sums(const CountTable& counts);

/// A square table of two raters as a table of subjects: a row for each subject, with the two answers in the
/// columns of their categories. So the statistics of many raters can be had for two.
///
/// @throws std::domain_error  as `checked_square_total`, and where the sum of the counts times the categories
/// is above 10,000,000.
/// Example: {{1, 2}, {0, 0}} gives {{2, 0}, {1, 1}, {1, 1}}.
CountTable by_subject(const CountTable& two_raters);

}  // namespace stats
