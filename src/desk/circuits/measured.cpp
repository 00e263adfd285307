#include "desk/circuits/measured.h"

#include <algorithm>

#include "desk/shelf/circuit.h"
#include "desk/shelf/shelf.h"
#include "text/error.h"

namespace desk {

std::vector<store::NumberedReading> measured(const store::Campaign& campaign, const std::string& cable,
                                             const std::string& kind, const std::string& rig,
                                             const std::string& what_to_import) {
  require_cable(campaign, cable);
  if (!rig.empty()) rig_named(campaign, rig);
  auto readings = campaign.readings(
      {.cable = cable, .kind = kind, .rig = rig.empty() ? std::nullopt : std::optional(rig)});
  if (readings.empty())
    throw text::BadInput("cable \"" + cable + "\" has no " + kind + " reading" +
                         (rig.empty() ? "" : " on rig \"" + rig + "\"") + "\n" + what_to_import);
  return readings;
}

std::string named_reading(const store::NumberedReading& each) {
  const imported::Reading& reading = each.reading;
  std::string words =
      "reading " + std::to_string(each.number) + " (" + Path(reading.file).filename().string() + ")";
  if (!reading.rig.empty()) words += ", rig " + reading.rig;
  if (!reading.piece.empty()) words += ", " + reading.piece;
  if (!reading.condition.empty()) words += ", " + reading.condition;
  if (!reading.feature.empty()) words += ", " + reading.feature + " " + reading.state;
  if (reading.repeat != 1) words += ", repeat " + std::to_string(reading.repeat);
  return words;
}

}  // namespace desk
