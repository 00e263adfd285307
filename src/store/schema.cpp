#include "store/schema.h"

#include <sqlite3.h>

#include <algorithm>
#include <vector>

#include "store/definitions.h"
#include "text/error.h"

namespace store {
namespace {

std::int64_t pragma(const Database& database, const std::string& name) {
  Statement statement(database, "PRAGMA " + name);
  return statement.next() ? statement.integer(0) : 0;
}

void set_version(Database& database, int version) {
  database.run("PRAGMA user_version = " + std::to_string(version));
}

}  // namespace

std::span<const Migration> migrations() {
  static const std::vector<Migration> all = {{2, R"(
CREATE TABLE link_key (
  number INTEGER PRIMARY KEY CHECK (number = 1),
  key BLOB NOT NULL CHECK (length(key) = 32)
) STRICT;
CREATE TRIGGER link_key_never_changes BEFORE UPDATE ON link_key BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER link_key_never_shrinks BEFORE DELETE ON link_key BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER link_key_never_replaces BEFORE INSERT ON link_key WHEN EXISTS (SELECT 1 FROM link_key) BEGIN SELECT RAISE(ABORT, 'the links are drawn already'); END;
)"},
                                             {3, R"(
ALTER TABLE reading ADD COLUMN instrument TEXT NOT NULL DEFAULT '';
ALTER TABLE reading ADD COLUMN feature TEXT NOT NULL DEFAULT '';
ALTER TABLE reading ADD COLUMN state TEXT NOT NULL DEFAULT '';
DROP TRIGGER reading_never_replaces;
CREATE TRIGGER reading_never_replaces BEFORE INSERT ON reading WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM reading) OR EXISTS (SELECT 1 FROM reading WHERE sha256 = NEW.sha256 AND cable IS NEW.cable AND rig IS NEW.rig AND piece = NEW.piece AND condition = NEW.condition AND feature = NEW.feature AND state = NEW.state AND kind = NEW.kind AND repeat = NEW.repeat AND as_typed = NEW.as_typed) BEGIN SELECT RAISE(ABORT, 'the reading is there already'); END;
CREATE TABLE correction (
  number INTEGER PRIMARY KEY,
  reading INTEGER NOT NULL UNIQUE REFERENCES reading (number),
  replaced_by INTEGER REFERENCES reading (number) CHECK (replaced_by <> reading),
  why TEXT NOT NULL CHECK (why <> '')
) STRICT;
CREATE TRIGGER correction_never_changes BEFORE UPDATE ON correction BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER correction_never_shrinks BEFORE DELETE ON correction BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER correction_never_replaces BEFORE INSERT ON correction WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM correction) OR EXISTS (SELECT 1 FROM correction WHERE reading = NEW.reading) BEGIN SELECT RAISE(ABORT, 'the reading is corrected already'); END;
)"}};
  return all;
}

void write_schema(Database& database, const std::string& title) {
  Transaction transaction(database);
  for (const Definition& definition : definitions()) database.run(definition.sql);
  Statement(database, "INSERT INTO campaign VALUES (1, ?1)").with(title).run();
  database.run("PRAGMA application_id = " + std::to_string(campaign_id));
  set_version(database, schema_version);
  transaction.keep();
}

int require_campaign(Database& database, int newest) {
  if (pragma(database, "application_id") != campaign_id)
    throw text::BadInput(database.shown() + " is not a campaign: another program made it, or it is empty");
  const auto version = pragma(database, "user_version");
  if (version > newest)
    throw text::BadInput(database.shown() + " was written by a newer blindswap: it has schema " +
                         std::to_string(version) + ", this program knows schema " + std::to_string(newest) +
                         "\nopen it with the newer program");
  if (version < 1) throw text::BadInput(database.shown() + " is damaged: it has no schema version");
  return static_cast<int>(version);
}

void migrate(Database& database, const std::filesystem::path& file, int version,
             std::span<const Migration> steps) {
  std::filesystem::path copy = std::filesystem::absolute(file);
  copy += ".schema-" + std::to_string(version);
  if (std::filesystem::exists(copy))
    throw text::NotNow(
        database.shown() + " has schema " + std::to_string(version) +
        " and must be brought up to date, but the copy to be made before is there already\nmove " +
        database.shown() + ".schema-" + std::to_string(version) + " elsewhere");
  try {
    Statement(database, "VACUUM INTO ?1").with(copy.string()).run();
    Transaction transaction(database);
    // Another program may have done it in the meantime.
    const auto found = pragma(database, "user_version");
    for (const Migration& step : steps) {
      if (step.to <= found) continue;
      database.run(step.sql);
      set_version(database, step.to);
    }
    transaction.keep();
  } catch (...) {
    std::error_code ignored;
    std::filesystem::remove(copy, ignored);
    throw;
  }
}

void require_whole(Database& database) {
  std::vector<std::string> found;
  Statement names(database, "SELECT name FROM sqlite_schema");
  while (names.next()) found.push_back(names.bytes(0));
  for (const Definition& definition : definitions())
    if (std::find(found.begin(), found.end(), definition.name) == found.end())
      throw text::BadInput(database.shown() + " is damaged: it lacks " + definition.name +
                           "\ngo back to a copy that was made before");
}

void prepare_connection(Database& database) {
  Statement journal(database, "PRAGMA journal_mode = WAL");
  if (!journal.next() || journal.bytes(0) != "wal")
    throw text::NotNow(
        database.shown() +
        " is in a folder that cannot hold a write-ahead log, such as a network share\nkeep the "
        "campaign on a disk of this computer");
  journal.run();
  database.run("PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
  sqlite3_db_config(database.handle(), SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  sqlite3_db_config(database.handle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  database.only_grow();
}

}  // namespace store
