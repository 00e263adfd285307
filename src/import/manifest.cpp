#include "import/manifest.h"

#include <map>

#include "import/form.h"
#include "text/error.h"
#include "text/quantity.h"

namespace imported {
namespace {

double bandwidth_in(const std::string& typed, const text::Place& place, text::Problems& problems) {
  try {
    if (const double hz = text::quantity(typed, text::Unit::hertz); hz > 0) return hz;
    problems.add(place, "bandwidth must be above 0, got \"" + typed + "\"");
  } catch (const text::BadInput& error) {
    problems.add(place, "bandwidth: " + std::string(error.what()));
  }
  return 0;
}

}  // namespace

Manifest parse_manifest(std::string_view content, const std::string& name) {
  Form form(text::parse_table(content, name), {"file"},
            {"cable", "rig", "piece", "condition", "instrument", "feature", "state", "bandwidth", "repeat"});
  std::vector<ManifestEntry> entries;
  std::map<std::string, int> first_lines;
  for (const text::Row& row : form.rows()) {
    ManifestEntry entry;
    entry.file = form.name(row, "file");
    entry.place = form.place(row, "file");
    entry.assignment.cable = form.text(row, "cable");
    entry.assignment.rig = form.text(row, "rig");
    entry.assignment.piece = form.text(row, "piece");
    entry.assignment.condition = form.text(row, "condition");
    entry.assignment.instrument = form.text(row, "instrument");
    entry.assignment.feature = form.text(row, "feature");
    entry.assignment.state = form.text(row, "state");
    if (entry.assignment.feature.empty() != entry.assignment.state.empty())
      form.problems().add(form.place(row, "feature"), "a feature needs its state, and a state its feature",
                          "write both, as feature shield and state on, or neither");
    if (const std::string typed = form.text(row, "bandwidth"); !typed.empty())
      entry.assignment.bandwidth_hz = bandwidth_in(typed, form.place(row, "bandwidth"), form.problems());
    if (!form.text(row, "repeat").empty()) entry.assignment.repeat = form.count(row, "repeat").value_or(1);
    const auto [first, added] = first_lines.emplace(entry.file, row.line);
    if (!added && !entry.file.empty())
      form.problems().add(entry.place, "file \"" + entry.file + "\" stands twice",
                          "first in line " + std::to_string(first->second));
    entries.push_back(std::move(entry));
  }
  return {std::move(entries), form.problems()};
}

}  // namespace imported
