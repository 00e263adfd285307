#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "text/problem.h"

namespace text {

/// The largest file read and the longest line, in bytes.
inline constexpr std::size_t largest_file_bytes = 64U << 20U;
inline constexpr std::size_t longest_line_bytes = 1U << 16U;

/// The text of a file without a byte order mark.
std::string_view without_byte_order_mark(std::string_view content);

/// Takes the first line off `rest`, which may be ended by LF, CRLF or a lone CR, and gives it without that
/// end; nothing when `rest` is empty.
std::optional<std::string_view> next_line(std::string_view& rest);

/// Refuses what is not plain UTF-8 text of a sensible size.
/// @throws BadInput  naming file and place: UTF-16, NUL or other control characters, invalid UTF-8, more
///         than `largest_file_bytes`, a line longer than `longest_line_bytes`.
void refuse_unless_plain_text(const Problems& file);

/// Refuses a file at once, when no more of it can be read.
/// @throws BadInput  in the form of `Problems`.
[[noreturn]] void refuse_file(const Problems& file, const Problem& problem);

}  // namespace text
