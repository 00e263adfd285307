#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace store {

using Pairs = std::vector<std::pair<std::string, std::string>>;
using Columns = std::vector<std::vector<double>>;

/// Pairs in order as a JSON array of two-element arrays.
/// @throws text::BadInput when a text is not UTF-8.
std::string text_of_pairs(const Pairs& pairs);
/// @throws text::BadInput when `text` is anything else.
Pairs pairs_of_text(const std::string& text);

/// Names in order as a JSON array.
/// @throws text::BadInput when a name is not UTF-8.
std::string text_of_names(const std::vector<std::string>& names);
/// @throws text::BadInput when `text` is anything else.
std::vector<std::string> names_of_text(const std::string& text);

/// Columns of numbers one after the other, each number as its 8 bytes of IEEE 754, lowest first.
/// @throws std::invalid_argument when the columns are not equally long.
std::string bytes_of_columns(const Columns& columns);
/// @throws text::BadInput when the bytes cannot be `count` equally long columns.
Columns columns_of_bytes(std::string_view bytes, std::size_t count);

}  // namespace store
