#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace text {

/// Edits (insert, delete, replace, exchange of two neighbours) that turn one word into the other, in bytes.
/// Optimal string alignment: no part is edited twice.
std::size_t edit_distance(std::string_view one, std::string_view other);

/// The name that `word` probably meant: one that differs only in case, else the first of those with the
/// fewest edits, if these are at most a third of the longer word (1 edit always counts in words of two
/// letters and more).
std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& names);

/// `; did you mean "NAME"?` for the nearest name, or "" when none is near.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& names);

}  // namespace text
