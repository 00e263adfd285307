#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace desk {

/// `words` as shown in messages.
std::string quoted(const std::string& words);

/// The stretches between any of `separators`; empty ones are left out.
std::vector<std::string> split(const std::string& words, std::string_view separators);

/// @throws text::BadInput  if `typed` is no whole number.
long long whole(const std::string& name, const std::string& typed);

/// @throws text::BadInput     if `typed` is no whole number.
/// @throws std::domain_error  if it is below `lowest` or above `highest`.
int count_of(const std::string& name, const std::string& typed, int lowest, int highest);

/// The elements of a list, as documented at `Given::list`.
///
/// @throws text::BadInput  if there is none, or a comma may be decimal or may separate.
std::vector<std::string> list_elements(const std::string& name, const std::vector<std::string>& words);

}  // namespace desk
