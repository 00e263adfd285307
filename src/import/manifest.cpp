#include "import/manifest.h"

#include <map>

#include "import/form.h"

namespace imported {

Manifest parse_manifest(std::string_view content, const std::string& name) {
  Form form(text::parse_table(content, name), {"file"},
            {"cable", "rig", "piece", "condition", "repeat"});
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
    if (!form.text(row, "repeat").empty()) entry.assignment.repeat = form.count(row, "repeat").value_or(1);
    const auto [first, added] = first_lines.emplace(entry.file, row.line);
    if (!added && !entry.file.empty())
      form.problems().add(entry.place, "file \"" + entry.file + "\" stands twice",
                          "first in line " + std::to_string(first->second));
    entries.push_back(std::move(entry));
  }
  form.problems().refuse_if_any();
  return {std::move(entries), form.problems()};
}

}  // namespace imported
