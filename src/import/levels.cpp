#include "import/levels.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "import/form.h"
#include "text/nearest.h"
#include "text/number.h"
#include "text/table.h"
#include "text/utf8.h"

namespace imported {
namespace {

constexpr std::string_view level_prefix = "level_";

/// The header cell of the level, found by its beginning; nothing when there is none.
std::optional<text::Cell> level_column(const text::Table& table) {
  for (const text::Cell& cell : table.header)
    if (text::lower_case(cell.text).starts_with("level")) return cell;
  return std::nullopt;
}

std::optional<text::Scale> level_scale(const text::Cell& header) {
  if (!text::lower_case(header.text).starts_with(level_prefix)) return std::nullopt;
  const auto scale = text::unit_named(std::string_view(header.text).substr(level_prefix.size()));
  const bool fits = scale && (scale->unit == text::Unit::decibel || scale->unit == text::Unit::decibel_volt ||
                              scale->unit == text::Unit::volt);
  return fits ? scale : std::nullopt;
}

std::optional<double> level_in(const text::Cell& cell, const text::Scale& scale, text::Problems& problems) {
  const auto value = text::scaled_number(cell.text, scale);
  if (!value) {
    problems.add(cell.place, "level must be a number, got \"" + cell.text + "\"",
                 "the header gives the unit");
    return std::nullopt;
  }
  if (scale.unit != text::Unit::volt) return value;
  if (*value > 0) return 20 * std::log10(*value);
  problems.add(cell.place, "a level in volts must be above 0, got " + cell.text);
  return std::nullopt;
}

bool is_tag(std::string_view text) {
  return text.size() == 3 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

void take_names(TerminalLevel& level, Form& form, const text::Row& row) {
  level.tag = form.text(row, "tag");
  level.tag_place = form.place(row, "tag");
  if (!is_tag(level.tag))
    form.problems().add(level.tag_place, "tag must be three digits, got \"" + level.tag + "\"");
  level.channel = form.choice(row, "channel", {"left", "right", "mono"}).value_or("");
  level.moment = form.choice(row, "when", {"start", "end"}).value_or("");
}

}  // namespace

TerminalLevels parse_levels(std::string_view content, const std::string& name) {
  text::Table table = text::parse_table(content, name);
  const auto header = level_column(table);
  const auto scale = header ? level_scale(*header) : std::nullopt;
  if (header && !scale)
    table.problems.add(header->place, "column \"" + header->text + "\" names no unit of a level",
                       "write level_dBV, level_dBu, level_V or level_dB");
  Form form(std::move(table), {"tag", "channel", "when", header ? header->text : "level_dBV"}, {});
  std::vector<TerminalLevel> levels;
  std::map<std::tuple<std::string, std::string, std::string>, int> first_lines;
  for (const text::Row& row : form.rows()) {
    if (form.text(row, header->text).empty()) continue;
    TerminalLevel level;
    take_names(level, form, row);
    level.level_db = level_in(*form.cell(row, header->text), *scale, form.problems()).value_or(0);
    const auto [first, added] =
        first_lines.emplace(std::tuple(level.tag, level.channel, level.moment), row.line);
    const bool named = is_tag(level.tag) && !level.channel.empty() && !level.moment.empty();
    if (!added && named)
      form.problems().add(level.tag_place,
                          "a level of tag " + level.tag + " stands twice for this channel and time",
                          "first in line " + std::to_string(first->second));
    levels.push_back(std::move(level));
  }
  form.problems().refuse_if_any();
  const bool relative = scale->unit == text::Unit::decibel;
  return {std::move(levels), relative ? text::Unit::decibel : text::Unit::decibel_volt, form.problems()};
}

}  // namespace imported
