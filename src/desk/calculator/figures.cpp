#include "desk/calculator/figures.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "text/columns.h"
#include "text/number.h"

namespace desk {
namespace {

using nlohmann::ordered_json;

constexpr int schema = 1;

std::string infinite(double number) { return number < 0 ? "-infinite" : "infinite"; }

struct Shown {
  std::string operator()(std::monostate) const { return "none"; }
  std::string operator()(bool yes) const { return yes ? "yes" : "no"; }
  std::string operator()(long long count) const { return std::to_string(count); }
  std::string operator()(double number) const {
    if (std::isnan(number)) return "none";
    if (std::isinf(number)) return infinite(number);
    const auto rounded = text::number(text::significant(number, 6));
    return text::shortest(rounded.value_or(number));
  }
  std::string operator()(const std::string& words) const { return words; }
};

struct Written {
  ordered_json operator()(std::monostate) const { return nullptr; }
  ordered_json operator()(double number) const {
    if (std::isnan(number)) return nullptr;
    return std::isinf(number) ? ordered_json(infinite(number)) : ordered_json(number);
  }
  template <typename T>
  ordered_json operator()(const T& value) const {
    return value;
  }
};

std::string series_text(const std::vector<Series>& series) {
  std::vector<std::string> header{""};
  for (const Series& column : series) header.push_back(column.label);
  text::Columns table(header, std::vector<text::Align>(header.size(), text::Align::right));
  for (std::size_t row = 0; row < series.front().values.size(); ++row) {
    std::vector<std::string> cells{std::to_string(row + 1)};
    for (const Series& column : series) cells.push_back(Shown()(column.values.at(row)));
    table.add(std::move(cells));
  }
  return table.text(2);
}

}  // namespace

const Value& Figures::at(std::string_view key) const {
  for (const Figure& figure : figures)
    if (figure.key == key) return figure.value;
  throw std::out_of_range("no figure is called " + std::string(key));
}

std::string figures_text(const Figures& figures) {
  text::Columns list({"", "", ""});
  for (const Figure& figure : figures.figures)
    list.add({figure.label, std::visit(Shown(), figure.value), figure.note});
  std::string text = figures.title + "\n" + list.text(2);
  if (!figures.series.empty()) text += "\n" + series_text(figures.series);
  return text;
}

std::string figures_json(const Figures& figures) {
  ordered_json json = {{"schema", schema}, {"title", figures.title}};
  ordered_json notes = ordered_json::object();
  for (const Figure& figure : figures.figures) {
    json[figure.key] = std::visit(Written(), figure.value);
    if (!figure.note.empty()) notes[figure.key] = figure.note;
  }
  for (const Series& column : figures.series) {
    json[column.key] = ordered_json::array();
    for (const double value : column.values) json[column.key].push_back(Written()(value));
  }
  json["notes"] = notes;
  return json.dump(2) + "\n";
}

}  // namespace desk
