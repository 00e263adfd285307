#include "desk/shelf/shelf_text.h"

#include <map>

#include "desk/reports/evidence.h"
#include "desk/shelf/circuit.h"
#include "text/columns.h"

namespace desk {
namespace {

using text::Align;

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string construction_of(const store::Cable& cable) {
  std::string words;
  for (const auto& [attribute, value] : cable.construction)
    words += (words.empty() ? "" : ", ") + attribute + " " + value;
  return words;
}

}  // namespace

std::string import_text(const Imported& imported) {
  std::map<std::string, int> by_kind;
  for (const imported::Reading& reading : imported.readings) ++by_kind[reading.kind];
  std::string words = "imported " + counted(imported.readings.size(), "reading", "readings");
  for (const auto& [kind, count] : by_kind) words += ", " + std::to_string(count) + " " + kind;
  words += "\n";
  if (imported.there_already > 0)
    words += counted(static_cast<std::size_t>(imported.there_already), "reading is", "readings are") +
             " there already from the same files, left as they were\n";
  for (const std::string& cable : imported.new_cables)
    words += "cable \"" + cable + "\" is new and was added\n";
  return words;
}

std::string readings_text(const Path& file) {
  text::Columns table({"number", "kind", "cable", "rig", "of", "file", "counts"}, {Align::right});
  for (const auto& [number, reading, correction] :
       store::Campaign::open(file).readings({.superseded_too = true})) {
    std::string of;
    const auto add = [&](const std::string& words) {
      if (!words.empty()) of += (of.empty() ? "" : ", ") + words;
    };
    add(reading.piece);
    add(reading.condition);
    add(reading.instrument);
    if (!reading.feature.empty()) add(reading.feature + " " + reading.state);
    if (reading.repeat != 1) add("repeat " + std::to_string(reading.repeat));
    const std::string counts =
        !correction ? "yes"
                    : "superseded" + (correction->by > 0 ? " by " + std::to_string(correction->by) : "") +
                          ": " + correction->why;
    table.add({std::to_string(number), reading.kind, reading.cable, reading.rig, of,
               Path(reading.file).filename().string(), counts});
  }
  return table.text();
}

std::string inventory_text(const Path& file) {
  const Inventory shelf = inventory(file);
  std::map<std::string, int> readings;
  for (const store::NumberedReading& each : shelf.readings) ++readings[each.reading.cable];
  std::string words = shelf.title + "\n\n";
  text::Columns cables({"cable", "readings", "construction", "note"}, {Align::left, Align::right});
  for (const store::Cable& cable : shelf.cables)
    cables.add({cable.name + (cable.name == shelf.baseline ? " (baseline)" : ""),
                std::to_string(readings[cable.name]), construction_of(cable), cable.note});
  words += cables.text() + "\n";
  const store::Campaign campaign = store::Campaign::open(file);
  text::Columns rigs({"rig", "what it is"});
  for (const store::Rig& rig : shelf.rigs) rigs.add({rig.name, rig_evidence(campaign, rig.name).description});
  words += rigs.text() + "\n";
  text::Columns plans({"plan", "protocol", "sealed at", "state"});
  for (const findings::PlanLine& plan : plan_lines(campaign))
    plans.add({plan.name, plan.protocol, plan.sealed_at, plan.state});
  return words + plans.text();
}

}  // namespace desk
