#include "text/utf8.h"

#include <algorithm>
#include <array>

namespace text {
namespace {

constexpr std::string_view spaces[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\xAF"};

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

std::size_t length_announced_by(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return 2;
  if (first >= 0xE0 && first <= 0xEF) return 3;
  if (first >= 0xF0 && first <= 0xF4) return 4;
  return 0;
}

}  // namespace

std::optional<CodePoint> first_code_point(std::string_view utf8) {
  if (utf8.empty()) return std::nullopt;
  const auto first = static_cast<unsigned char>(utf8[0]);
  const std::size_t bytes = length_announced_by(first);
  if (bytes == 0 || bytes > utf8.size()) return std::nullopt;
  if (bytes == 1) return CodePoint{first, 1};
  char32_t value = first & (0x7FU >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if (!continues(utf8[i])) return std::nullopt;
    value = (value << 6U) | (static_cast<unsigned char>(utf8[i]) & 0x3FU);
  }
  constexpr std::array<char32_t, 5> smallest = {0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
  if (value < smallest[bytes] || surrogate || value > 0x10FFFF) return std::nullopt;
  return CodePoint{value, bytes};
}

bool is_control(char32_t code_point) {
  return code_point < 0x20 || (code_point >= 0x7F && code_point < 0xA0);
}

std::optional<std::size_t> first_invalid_utf8(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size();) {
    const auto point = first_code_point(bytes.substr(at, 4));
    if (!point) return at;
    at += point->bytes;
  }
  return std::nullopt;
}

bool is_valid_utf8(std::string_view bytes) { return !first_invalid_utf8(bytes); }

std::size_t length_in_characters(std::string_view utf8) {
  return static_cast<std::size_t>(
      std::count_if(utf8.begin(), utf8.end(), [](char byte) { return !continues(byte); }));
}

std::string printable(std::string_view bytes) {
  std::string shown;
  shown.reserve(bytes.size());
  for (std::size_t at = 0; at < bytes.size();) {
    const auto point = first_code_point(bytes.substr(at, 4));
    const std::size_t length = point ? point->bytes : 1;
    const bool fit = point && (!is_control(point->value) || point->value == '\t');
    shown += fit ? bytes.substr(at, length) : std::string_view("?");
    at += length;
  }
  return shown;
}

std::string quoted(std::string_view bytes) { return std::string("\"").append(printable(bytes)).append("\""); }

std::string_view trimmed(std::string_view utf8) {
  for (bool again = true; again;) {
    again = false;
    for (const std::string_view space : spaces) {
      if (utf8.starts_with(space)) {
        utf8.remove_prefix(space.size());
        again = true;
      }
      if (utf8.ends_with(space)) {
        utf8.remove_suffix(space.size());
        again = true;
      }
    }
  }
  return utf8;
}

std::string lower_case(std::string_view utf8) {
  std::string lower(utf8);
  for (char& c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

}  // namespace text
