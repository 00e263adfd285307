#include "import/form.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "text/nearest.h"
#include "text/number.h"
#include "text/utf8.h"

namespace imported {

Form::Form(text::Table table, const std::vector<std::string>& required,
           const std::vector<std::string>& optional)
    : table_(std::move(table)) {
  std::vector<std::string> known = required;
  known.insert(known.end(), optional.begin(), optional.end());
  for (const text::Cell& cell : table_.header)
    if (!member(cell.text, known))
      problems().add(cell.place,
                     "unknown column \"" + cell.text + "\"" + text::did_you_mean(cell.text, known),
                     "columns: " + listed(known));
  for (const std::string& name : required)
    if (!table_.column(name))
      problems().add(table_.header.back().place, "column " + name + " is missing",
                     "columns: " + listed(known));
  if (table_.header_is_wrong()) problems().refuse();
}

const text::Cell* Form::cell(const text::Row& row, std::string_view name) const {
  const auto column = table_.column(name);
  return column ? &row.cells[*column] : nullptr;
}

std::string Form::text(const text::Row& row, std::string_view name) const {
  const text::Cell* found = cell(row, name);
  return found == nullptr ? "" : found->text;
}

text::Place Form::place(const text::Row& row, std::string_view name) const {
  const text::Cell* found = cell(row, name);
  return found == nullptr ? row.cells.front().place : found->place;
}

std::optional<int> Form::count(const text::Row& row, std::string_view name) {
  const auto value = text::whole_number(text(row, name));
  if (value && *value >= 1 && *value <= std::numeric_limits<int>::max()) return static_cast<int>(*value);
  problems().add(place(row, name),
                 std::string(name) + " must be a whole number from 1, got \"" + text(row, name) + "\"");
  return std::nullopt;
}

std::string Form::name(const text::Row& row, std::string_view name) {
  std::string found = text(row, name);
  if (found.empty()) problems().add(place(row, name), std::string(name) + " is empty");
  return found;
}

std::optional<std::string> Form::choice(const text::Row& row, std::string_view name,
                                        const std::vector<std::string>& allowed) {
  const std::string found = text(row, name);
  if (auto same = member(found, allowed)) return same;
  problems().add(place(row, name), std::string(name) + " must be " + listed(allowed) + ", got \"" + found +
                                       "\"" + text::did_you_mean(found, allowed));
  return std::nullopt;
}

std::optional<std::string> member(std::string_view word, const std::vector<std::string>& allowed) {
  const auto found = std::find_if(allowed.begin(), allowed.end(), [&](const std::string& one) {
    return text::lower_case(one) == text::lower_case(word);
  });
  if (found == allowed.end()) return std::nullopt;
  return *found;
}

std::string listed(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i)
    list.append(i == 0 ? "" : i + 1 == words.size() ? " or " : ", ").append(words[i]);
  return list;
}

}  // namespace imported
