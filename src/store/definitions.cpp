#include "store/definitions.h"

namespace store {
namespace {

struct Table {
  std::string name;
  std::string columns;
  std::string refused_row;  ///< when a new row would stand in another's place or leave a gap
  std::string words;
};

const std::vector<Table>& tables() {
  static const std::vector<Table> all = {
      {"campaign", R"(
  number INTEGER PRIMARY KEY CHECK (number = 1),
  title TEXT NOT NULL
) STRICT)",
       "EXISTS (SELECT 1 FROM campaign)", "a campaign has one title"},

      {"cable", R"(
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  construction TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM cable)"
       " OR EXISTS (SELECT 1 FROM cable WHERE name = NEW.name)",
       "the cable is there already"},

      {"baseline", R"(
  number INTEGER PRIMARY KEY,
  cable TEXT NOT NULL REFERENCES cable (name)
) STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM baseline)",
       "another baseline was named at the same time"},

      {"rig", R"(
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('loudspeaker', 'line level')),
  source_resistance_ohm TEXT NOT NULL,
  source_inductance_henry TEXT NOT NULL,
  load TEXT NOT NULL,
  rated_impedance_ohm TEXT NOT NULL,
  volume_step_db TEXT NOT NULL,
  level_note TEXT NOT NULL,
  programme_note TEXT NOT NULL
) STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM rig)"
       " OR EXISTS (SELECT 1 FROM rig WHERE name = NEW.name)",
       "the rig is there already"},

      {"source", R"(
  number INTEGER PRIMARY KEY,
  sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
  name TEXT NOT NULL,
  text BLOB NOT NULL
) STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM source)"
       " OR EXISTS (SELECT 1 FROM source WHERE sha256 = NEW.sha256)",
       "the file is there already"},

      {"reading", R"(
  number INTEGER PRIMARY KEY,
  kind TEXT NOT NULL,
  cable TEXT REFERENCES cable (name),
  rig TEXT REFERENCES rig (name),
  piece TEXT NOT NULL,
  condition TEXT NOT NULL,
  repeat INTEGER NOT NULL,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL REFERENCES source (sha256),
  note TEXT NOT NULL,
  columns TEXT NOT NULL,
  as_typed TEXT NOT NULL,
  numbers BLOB NOT NULL
, instrument TEXT NOT NULL DEFAULT '', feature TEXT NOT NULL DEFAULT '', state TEXT NOT NULL DEFAULT '') STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM reading)"
       " OR EXISTS (SELECT 1 FROM reading WHERE sha256 = NEW.sha256 AND cable IS NEW.cable AND rig IS NEW.rig"
       " AND piece = NEW.piece AND condition = NEW.condition AND feature = NEW.feature AND state = NEW.state"
       " AND kind = NEW.kind AND repeat = NEW.repeat AND as_typed = NEW.as_typed)",
       "the reading is there already"},

      {"correction", R"(
  number INTEGER PRIMARY KEY,
  reading INTEGER NOT NULL UNIQUE REFERENCES reading (number),
  replaced_by INTEGER REFERENCES reading (number) CHECK (replaced_by <> reading),
  why TEXT NOT NULL CHECK (why <> '')
) STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM correction)"
       " OR EXISTS (SELECT 1 FROM correction WHERE reading = NEW.reading)",
       "the reading is corrected already"},

      {"plan", R"(
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  text TEXT NOT NULL,
  seed BLOB NOT NULL CHECK (length(seed) = 32),
  commitment BLOB NOT NULL CHECK (length(commitment) = 32)
) STRICT)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM plan)"
       " OR EXISTS (SELECT 1 FROM plan WHERE name = NEW.name)",
       "the plan is there already"},

      {"event", R"(
  plan INTEGER NOT NULL REFERENCES plan (number),
  sitting INTEGER NOT NULL CHECK (sitting >= 0),
  number INTEGER NOT NULL,
  text TEXT NOT NULL,
  head TEXT NOT NULL CHECK (length(head) = 64),
  PRIMARY KEY (plan, sitting, number)
) STRICT, WITHOUT ROWID)",
       "NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM event"
       " WHERE plan = NEW.plan AND sitting = NEW.sitting)",
       "another writer was first; nothing was kept, try again"},

      {"link_key", R"(
  number INTEGER PRIMARY KEY CHECK (number = 1),
  key BLOB NOT NULL CHECK (length(key) = 32)
) STRICT)",
       "EXISTS (SELECT 1 FROM link_key)", "the links are drawn already"},
  };
  return all;
}

Definition guard(const Table& table, const std::string& what, const std::string& moment,
                 const std::string& words) {
  const std::string name = table.name + "_" + what;
  return {name, "CREATE TRIGGER " + name + " BEFORE " + moment + " BEGIN SELECT RAISE(ABORT, '" + words +
                    "'); END"};
}

std::vector<Definition> all_definitions() {
  std::vector<Definition> all;
  const std::string grows = "a campaign only grows: ";
  for (const Table& table : tables()) {
    const std::string on = " ON " + table.name;
    all.push_back({table.name, "CREATE TABLE " + table.name + " (" + table.columns});
    all.push_back(guard(table, "never_changes", "UPDATE" + on, grows + "nothing in it is changed"));
    all.push_back(guard(table, "never_shrinks", "DELETE" + on, grows + "nothing is removed from it"));
    all.push_back(guard(table, "never_replaces", "INSERT" + on + " WHEN " + table.refused_row, table.words));
  }
  all.push_back({"reading_of_source", "CREATE INDEX reading_of_source ON reading (sha256)"});
  return all;
}

}  // namespace

const std::vector<Definition>& definitions() {
  static const std::vector<Definition> all = all_definitions();
  return all;
}

}  // namespace store
