#include "text/lines.h"

#include <algorithm>
#include <string>

#include "text/error.h"
#include "text/utf8.h"

namespace text {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

std::string hexadecimal(char byte) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  const auto value = static_cast<unsigned char>(byte);
  return {'0', 'x', digits[value / 16U], digits[value % 16U]};
}

[[noreturn]] void refuse_character(const Problems& file, const Place& place, std::string_view from) {
  const auto point = first_code_point(from);
  if (!point)
    refuse_file(file, {place, "byte " + hexadecimal(from[0]) + " is not UTF-8 text",
                       "saved as Latin-1 or by an old program? save it as UTF-8"});
  if (point->value == 0)
    refuse_file(file,
                {place, "a NUL byte, expected UTF-8 text", "a binary file or UTF-16? save it as UTF-8 text"});
  refuse_file(file,
              {place, "control character " + hexadecimal(static_cast<char>(point->value)) + ", expected text",
               "remove it"});
}

void refuse_unless_plain_line(const Problems& file, std::string_view line, int number) {
  if (line.size() > longest_line_bytes)
    refuse_file(file, {{number, 1, 1},
                       "the line is longer than " + std::to_string(longest_line_bytes) + " bytes",
                       "is this a text table, one row a line?"});
  for (std::size_t at = 0; at < line.size();) {
    const auto point = first_code_point(line.substr(at, 4));
    const bool fit = point && (!is_control(point->value) || point->value == '\t');
    if (!fit)
      refuse_character(file, {number, static_cast<int>(length_in_characters(line.substr(0, at))) + 1, 1},
                       line.substr(at));
    at += point->bytes;
  }
}

}  // namespace

std::string_view without_byte_order_mark(std::string_view content) {
  if (content.starts_with(byte_order_mark)) content.remove_prefix(byte_order_mark.size());
  return content;
}

std::optional<std::string_view> next_line(std::string_view& rest) {
  if (rest.empty()) return std::nullopt;
  const std::size_t end = std::min(rest.find_first_of("\r\n"), rest.size());
  const std::string_view line = rest.substr(0, end);
  const std::size_t ending = rest.substr(end).starts_with("\r\n") ? 2 : 1;
  rest.remove_prefix(std::min(end + ending, rest.size()));
  return line;
}

void refuse_unless_plain_text(const Problems& file) {
  const std::string_view content = file.content();
  if (content.size() > largest_file_bytes)
    refuse_file(file,
                {{}, "is larger than " + std::to_string(largest_file_bytes >> 20U) + " MiB", "split it"});
  if (content.starts_with("\xFF\xFE") || content.starts_with("\xFE\xFF"))
    refuse_file(file, {{}, "is UTF-16, expected UTF-8 text", "save it as UTF-8"});
  int number = 0;
  std::string_view rest = without_byte_order_mark(content);
  while (const auto line = next_line(rest)) refuse_unless_plain_line(file, *line, ++number);
}

void refuse_file(const Problems& file, const Problem& problem) {
  std::string report = file.formatted(problem);
  report.pop_back();
  throw BadInput(report);
}

}  // namespace text
