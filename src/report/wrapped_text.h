#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "report/content/document.h"

namespace report {

/// `words` on lines of at most `width` characters (code points), broken at spaces, inside a word only where it alone is
/// too long. Each line ends in a newline.
/// @param first,rest  what the first line and the others begin with; at least 1 character narrower than `width`.
std::string wrapped(std::string_view words, std::size_t width, std::string_view first = "",
                    std::string_view rest = "");

/// The table in plain text, at most `width` characters wide and begun with `indent` spaces: its widest columns of words
/// are narrowed until it fits, and their cells wrapped. The caption is left to the caller.
std::string wrapped_table(const Table& table, std::size_t width, std::size_t indent);

}  // namespace report
