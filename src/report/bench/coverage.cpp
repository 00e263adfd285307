#include <nlohmann/json.hpp>

#include "report/bench/bench_report.h"
#include "report/content/words.h"

namespace report {
namespace {

using findings::Coverage;
using findings::CoverageCell;

/// "2", "2 (1 stale)", "1 (1 superseded)"; "missing" where nothing counts.
std::string cell_words(const CoverageCell& cell) {
  std::string words = cell.readings == 0 ? "missing" : std::to_string(cell.readings);
  std::string more;
  if (!cell.stale.empty()) more = std::to_string(cell.stale.size()) + " stale";
  if (cell.superseded > 0)
    more += (more.empty() ? "" : ", ") + std::to_string(cell.superseded) + " superseded";
  return more.empty() ? words : words + " (" + more + ")";
}

Table cells_table(const Coverage& coverage) {
  Table table{"Readings of each cable that count.", {{"cable"}}, {}, {}};
  for (const auto& column : coverage.columns) table.columns.push_back({column.title});
  for (std::size_t i = 0; i < coverage.cables.size(); ++i) {
    auto& row = table.rows.emplace_back();
    row.push_back(coverage.cables[i]);
    for (const CoverageCell& cell : coverage.cells[i]) row.push_back(cell_words(cell));
  }
  return table;
}

/// "response on hall: bell wire, flat strip".
Points missing_points(const Coverage& coverage) {
  Points points;
  for (std::size_t column = 0; column < coverage.columns.size(); ++column) {
    std::vector<std::string> missing;
    for (std::size_t i = 0; i < coverage.cables.size(); ++i)
      if (coverage.cells[i][column].readings == 0) missing.push_back(coverage.cables[i]);
    if (!missing.empty())
      points.points.push_back(coverage.columns[column].title + ": missing of " + listed(missing));
  }
  for (const std::string& rig : coverage.rigs_without_load)
    points.points.push_back("rig " + rig + ": its load is neither stated nor measured");
  return points;
}

Points stale_points(const Coverage& coverage) {
  Points points{{}, true};
  for (const auto& stale : coverage.stale)
    points.points.push_back("reading " + std::to_string(stale.reading) +
                            (stale.cable.empty() ? "" : " of " + stale.cable) + " is stale: " + stale.why);
  return points;
}

}  // namespace

Document coverage_document(const findings::BenchFindings& bench) {
  Section section{2, "coverage", "Coverage of the readings", {cells_table(bench.coverage)}};
  for (Points points : {missing_points(bench.coverage), stale_points(bench.coverage)})
    if (!points.points.empty()) section.blocks.push_back(std::move(points));
  return {
      bench.title, "What was measured, what is missing and what is stale", {std::move(section)}, "Readings"};
}

std::string coverage_json(const findings::BenchFindings& bench) {
  const Coverage& coverage = bench.coverage;
  nlohmann::json columns = nlohmann::json::array(), cells = columns, stale = columns;
  for (const auto& column : coverage.columns) columns.push_back({{"kind", column.kind}, {"rig", column.rig}});
  for (const auto& row : coverage.cells) {
    nlohmann::json of_cable = nlohmann::json::array();
    for (const CoverageCell& cell : row)
      of_cable.push_back(
          {{"readings", cell.readings}, {"superseded", cell.superseded}, {"stale", cell.stale}});
    cells.push_back(std::move(of_cable));
  }
  for (const auto& one : coverage.stale)
    stale.push_back({{"reading", one.reading}, {"cable", one.cable}, {"why", one.why}});
  const nlohmann::json value = {{"schema", 1},        {"cables", coverage.cables},
                                {"columns", columns}, {"cells", cells},
                                {"stale", stale},     {"rigs_without_load", coverage.rigs_without_load}};
  return value.dump(2) + "\n";
}

}  // namespace report
