#include "findings/bench/coverage.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace findings {
namespace {

std::string title_of(const std::string& kind, const std::string& rig) {
  return (kind == "cable-lcr" ? "totals" : kind) + (rig.empty() ? "" : " on " + rig);
}

/// Totals belong to the cable, whatever rig was written beside them.
std::string rig_of(const Measurement& one) { return one.kind == "cable-lcr" ? "" : one.rig; }

std::vector<CoverageColumn> columns_of(const std::vector<Measurement>& measurements) {
  std::vector<CoverageColumn> columns{{"cable-lcr", "", "totals"}};
  std::set<std::pair<std::string, std::string>> known{{"cable-lcr", ""}};
  for (const Measurement& one : measurements)
    if (!one.cable.empty() && known.emplace(one.kind, rig_of(one)).second)
      columns.push_back({one.kind, rig_of(one), title_of(one.kind, rig_of(one))});
  std::stable_sort(columns.begin() + 1, columns.end(),
                   [](const auto& a, const auto& b) { return a.kind < b.kind; });
  return columns;
}

/// Why each reading that counts is stale, by its number.
std::map<int, std::string> stale_readings(const std::vector<Measurement>& measurements) {
  std::map<int, std::string> stale;
  for (const auto& [older, newer] : same_names(measurements))
    stale[older->number] = "reading " + std::to_string(newer->number) + " (" + newer->file +
                           ") has the same names: give it its own repeat, or let it supersede this one";
  std::map<std::string, std::vector<int>> loads;
  for (const Measurement& one : measurements)
    if (!one.superseded && one.kind == "impedance") loads[one.rig].push_back(one.number);
  for (const Measurement& one : measurements) {
    if (one.superseded || one.kind != "response") continue;
    const auto load = loads.find(one.rig);
    if (load == loads.end() || load->second.size() < 2 || load->second.back() < one.number) continue;
    stale.emplace(one.number, "the load of rig " + one.rig + " was measured anew since, as reading " +
                                  std::to_string(load->second.back()));
  }
  return stale;
}

}  // namespace

std::vector<SameNames> same_names(const std::vector<Measurement>& measurements) {
  using Names = std::tuple<std::string, std::string, std::string, std::string, std::string, std::string,
                           std::string, int, std::optional<double>, std::optional<double>>;
  std::map<Names, const Measurement*> newest;
  std::vector<SameNames> same;
  for (const Measurement& one : measurements) {
    if (one.superseded) continue;
    const bool has_one_row = one.kind == "cable-lcr" || one.kind == "phase";
    const Names names{one.kind,
                      one.cable,
                      one.rig,
                      one.piece,
                      one.condition,
                      one.feature,
                      one.state,
                      one.repeat,
                      has_one_row ? one.single("frequency_hz") : std::nullopt,
                      has_one_row ? one.single("temperature_celsius") : std::nullopt};
    const auto [before, is_new] = newest.emplace(names, &one);
    if (is_new) continue;
    same.push_back({before->second, &one});
    before->second = &one;
  }
  return same;
}

Coverage coverage_of(const std::vector<std::string>& cables, const std::vector<CoveredRig>& rigs,
                     const std::vector<Measurement>& measurements) {
  Coverage coverage{cables, columns_of(measurements), {}, {}, {}};
  const auto stale = stale_readings(measurements);
  for (const std::string& cable : cables) {
    auto& row = coverage.cells.emplace_back(coverage.columns.size());
    for (const Measurement& one : measurements) {
      if (one.cable != cable) continue;
      const auto column =
          std::find_if(coverage.columns.begin(), coverage.columns.end(),
                       [&](const auto& each) { return each.kind == one.kind && each.rig == rig_of(one); });
      CoverageCell& cell = row[static_cast<std::size_t>(column - coverage.columns.begin())];
      ++(one.superseded ? cell.superseded : cell.readings);
      if (stale.contains(one.number)) cell.stale.push_back(one.number);
    }
  }
  for (const Measurement& one : measurements)
    if (const auto why = stale.find(one.number); why != stale.end())
      coverage.stale.push_back({one.number, one.cable, why->second});
  for (const CoveredRig& rig : rigs) {
    const bool is_measured =
        std::any_of(measurements.begin(), measurements.end(), [&](const Measurement& one) {
          return one.kind == "impedance" && one.rig == rig.name && !one.superseded;
        });
    if (!rig.has_stated_load && !is_measured) coverage.rigs_without_load.push_back(rig.name);
  }
  return coverage;
}

}  // namespace findings
