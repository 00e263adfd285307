#include <algorithm>
#include <nlohmann/json.hpp>

#include "electrical/line_facts.h"
#include "report/content/words.h"
#include "report/html/page.h"
#include "report/tradeoff/tradeoff.h"
#include "report/wrapped_text.h"
#include "text/columns.h"
#include "text/number.h"

namespace report {
namespace {

constexpr std::size_t kTextColumns = 100;

/// Three digits of a value that is known when it is above 0.
std::string known(double value) { return value > 0 ? text::significant(value, 3) : "not read"; }

std::vector<std::string> row_of_cable(const ShelfCable& cable) {
  if (!cable.line) return {cable.name, "no readings", "", "", "", "", "", ""};
  const electrical::Cable& line = *cable.line;
  std::vector<std::string> row = {
      cable.name, text::significant(line.length_m, 3), text::significant(1e3 * line.resistance_ohm_per_m, 3),
      known(1e6 * line.inductance_henry_per_m), known(1e12 * line.capacitance_farad_per_m)};
  if (has_place(cable)) {
    row.push_back(text::significant(electrical::characteristic_impedance_ohm(line), 3));
    row.push_back(text::fixed(electrical::speed_relative_to_light(line), 3));
    row.push_back(electrical::faster_than_light(line) ? "faster than light" : "");
  }
  return row;
}

std::vector<std::string> names_where(const std::vector<ShelfCable>& cables,
                                     bool (*holds)(const ShelfCable& cable)) {
  std::vector<std::string> names;
  for (const ShelfCable& cable : cables)
    if (holds(cable)) names.push_back(cable.name);
  return names;
}

nlohmann::json above_zero_or_null(double value) {
  return value > 0 ? nlohmann::json(value) : nlohmann::json();
}

nlohmann::json shelf_cable_json(const ShelfCable& cable) {
  nlohmann::json value = {{"cable", cable.name}};
  const electrical::Cable line = cable.line.value_or(electrical::Cable{});
  const bool placed = has_place(cable);
  value["length_m"] = above_zero_or_null(line.length_m);
  value["loop_resistance_ohm_per_m"] =
      cable.line ? nlohmann::json(line.resistance_ohm_per_m) : nlohmann::json();
  value["inductance_henry_per_m"] = above_zero_or_null(line.inductance_henry_per_m);
  value["capacitance_farad_per_m"] = above_zero_or_null(line.capacitance_farad_per_m);
  value["characteristic_impedance_ohm"] =
      placed ? nlohmann::json(electrical::characteristic_impedance_ohm(line)) : nlohmann::json();
  value["speed_relative_to_light"] =
      placed ? nlohmann::json(electrical::speed_relative_to_light(line)) : nlohmann::json();
  value["faster_than_light"] =
      placed ? nlohmann::json(electrical::faster_than_light(line)) : nlohmann::json();
  return value;
}

}  // namespace

bool has_place(const ShelfCable& cable) {
  return cable.line && cable.line->inductance_henry_per_m > 0 && cable.line->capacitance_farad_per_m > 0;
}

Table tradeoff_table(const std::vector<ShelfCable>& cables) {
  Table table{
      "Loop resistance, inductance L and capacitance C per metre, both conductors together, means of the "
      "repeats; characteristic impedance Z0; speed as a share of that of light.",
      {{"cable"},
       {"length, m", true},
       {"loop, mohm/m", true},
       {"L, uH/m", true},
       {"C, pF/m", true},
       {"Z0, ohm", true},
       {"speed, of light", true},
       {""}},
      {},
      {}};
  for (const ShelfCable& cable : cables) table.rows.push_back(row_of_cable(cable));
  return table;
}

std::vector<std::string> tradeoff_notes(const std::vector<ShelfCable>& cables) {
  std::vector<std::string> notes;
  const auto impossible = names_where(cables, [](const ShelfCable& cable) {
    return has_place(cable) && electrical::faster_than_light(*cable.line);
  });
  if (!impossible.empty())
    notes.push_back("Faster than light, which cannot be: check the inductance, capacitance and length of " +
                    listed(impossible) + ".");
  const auto unknown = names_where(cables, [](const ShelfCable& cable) { return !has_place(cable); });
  if (!unknown.empty())
    notes.push_back("Without a place in the picture, as inductance or capacitance is not known: " +
                    listed(unknown) + ". Import cable,length_m,resistance_ohm,inductance_uH,capacitance_pF.");
  notes.push_back(
      "Z0 = sqrt(L/C) and speed = 1/(c sqrt(LC)) are those of the line without loss: far above the audio "
      "band. Speed is no measure of quality; L and C cannot both be made small, as their product has a "
      "floor.");
  return notes;
}

std::string tradeoff_text(const std::string& campaign_title, const std::vector<ShelfCable>& cables) {
  const Table table = tradeoff_table(cables);
  std::vector<std::string> titles;
  std::vector<text::Align> align;
  for (const Table::Column& column : table.columns) {
    titles.push_back(column.title);
    align.push_back(column.number ? text::Align::right : text::Align::left);
  }
  text::Columns rows(titles, align);
  for (const auto& row : table.rows) rows.add(row);
  std::string words = wrapped(one_line(campaign_title), kTextColumns) + wrapped(table.caption, kTextColumns) +
                      "\n" + rows.text() + "\n";
  for (const std::string& note : tradeoff_notes(cables)) words += wrapped(one_line(note), kTextColumns);
  return words;
}

std::string tradeoff_page(const std::string& campaign_title, const std::vector<ShelfCable>& cables,
                          std::string_view version) {
  Figure figure = tradeoff_figure(cables);
  figure.svg.insert(figure.svg.find(" role="), " style=\"max-width:46rem\"");  // as wide as the page
  return html_page({"Resistance, inductance and capacitance",
                    campaign_title,
                    {{2, "picture", "All cables in one picture", {figure}},
                     {2, "cables", "The cables", {tradeoff_table(cables), Points{tradeoff_notes(cables)}}}},
                    "The cables of a campaign"},
                   version);
}

std::string tradeoff_json(const std::vector<ShelfCable>& cables) {
  nlohmann::json all = nlohmann::json::array();
  for (const ShelfCable& cable : cables) all.push_back(shelf_cable_json(cable));
  return nlohmann::json{{"schema", 1}, {"cables", all}}.dump(2) + "\n";
}

}  // namespace report
