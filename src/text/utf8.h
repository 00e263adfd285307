#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace text {

/// One code point and the bytes it takes.
struct CodePoint {
  char32_t value = 0;
  std::size_t bytes = 0;
};

/// The code point that `utf8` begins with; nothing when it is empty or does not begin with valid UTF-8.
std::optional<CodePoint> first_code_point(std::string_view utf8);

/// Whether a code point is a control character: C0 (tab included), DEL or C1.
bool is_control(char32_t code_point);

/// Byte offset of the first byte that is not part of valid UTF-8 (RFC 3629: no overlong forms, no surrogates,
/// nothing above U+10FFFF); nothing when all of `bytes` is valid.
std::optional<std::size_t> first_invalid_utf8(std::string_view bytes);

/// Whether all of `bytes` is valid UTF-8; the empty text is.
bool is_valid_utf8(std::string_view bytes);

/// Number of code points of valid UTF-8; in other bytes, every byte that does not continue another counts.
std::size_t length_in_characters(std::string_view utf8);

/// `bytes` fit for a terminal: control characters (C0 except tab, DEL, C1) and invalid bytes become "?".
std::string printable(std::string_view bytes);

/// The same between double quotes.
std::string quoted(std::string_view bytes);

/// Without the spaces, tabs and no-break spaces (U+00A0, U+202F) at both ends.
std::string_view trimmed(std::string_view utf8);

/// ASCII letters in lower case, every other byte as it is.
std::string lower_case(std::string_view utf8);

}  // namespace text
