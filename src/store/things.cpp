#include <algorithm>

#include "store/campaign.h"
#include "store/database.h"
#include "store/encoding.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/utf8.h"

namespace store {
namespace {

/// Refuses a name that is empty, cannot be shown, or is taken.
void require_new_name(const Database& database, const std::string& table, const std::string& name) {
  if (name.empty()) throw text::BadInput("a " + table + " needs a name");
  if (text::printable(name) != name)
    throw text::BadInput("the name of a " + table +
                         " has characters that cannot be shown: " + text::quoted(name));
  Statement taken(database, "SELECT 1 FROM " + table + " WHERE name = ?1");
  if (taken.with(name).next())
    throw text::BadInput("there is a " + table + " \"" + name + "\" already\nchoose another name");
}

}  // namespace

void Campaign::add_cable(const Cable& cable) {
  Transaction transaction(*database_);
  require_new_name(*database_, "cable", cable.name);
  Statement(*database_, "INSERT INTO cable SELECT 1 + coalesce(max(number), 0), ?1, ?2, ?3 FROM cable")
      .with(cable.name, text_of_pairs(cable.construction), cable.note)
      .run();
  transaction.keep();
}

std::vector<Cable> Campaign::cables() const {
  std::vector<Cable> cables;
  Statement rows(*database_, "SELECT name, construction, note FROM cable ORDER BY number");
  while (rows.next()) cables.push_back({rows.bytes(0), pairs_of_text(rows.bytes(1)), rows.bytes(2)});
  return cables;
}

void Campaign::set_baseline(const std::string& cable) {
  Transaction transaction(*database_);
  std::vector<std::string> names;
  for (const Cable& known : cables()) names.push_back(known.name);
  if (std::find(names.begin(), names.end(), cable) == names.end())
    throw text::BadInput("there is no cable " + text::quoted(cable) + text::did_you_mean(cable, names));
  Statement(*database_, "INSERT INTO baseline SELECT 1 + coalesce(max(number), 0), ?1 FROM baseline")
      .with(cable)
      .run();
  transaction.keep();
}

std::string Campaign::baseline() const {
  Statement last(*database_, "SELECT cable FROM baseline ORDER BY number DESC LIMIT 1");
  return last.next() ? last.bytes(0) : "";
}

void Campaign::add_rig(const Rig& rig) {
  if (rig.kind != "loudspeaker" && rig.kind != "line level")
    throw text::BadInput("the kind of rig " + text::quoted(rig.name) + " is " + text::quoted(rig.kind) +
                         "\nwrite loudspeaker or line level");
  Transaction transaction(*database_);
  require_new_name(*database_, "rig", rig.name);
  Statement(
      *database_,
      "INSERT INTO rig SELECT 1 + coalesce(max(number), 0), ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9 FROM rig")
      .with(rig.name, rig.kind, rig.source_resistance_ohm, rig.source_inductance_henry, rig.load,
            rig.rated_impedance_ohm, rig.volume_step_db, rig.level_note, rig.programme_note)
      .run();
  transaction.keep();
}

std::vector<Rig> Campaign::rigs() const {
  std::vector<Rig> rigs;
  Statement rows(
      *database_,
      "SELECT name, kind, source_resistance_ohm, source_inductance_henry, load, rated_impedance_ohm,"
      " volume_step_db, level_note, programme_note FROM rig ORDER BY number");
  while (rows.next())
    rigs.push_back({rows.bytes(0), rows.bytes(1), rows.bytes(2), rows.bytes(3), rows.bytes(4), rows.bytes(5),
                    rows.bytes(6), rows.bytes(7), rows.bytes(8)});
  return rigs;
}

}  // namespace store
