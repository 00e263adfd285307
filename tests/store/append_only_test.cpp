#include <gtest/gtest.h>

#include <stdexcept>

#include "store/campaign.h"
#include "store/database.h"
#include "store/definitions.h"
#include "store/sample.h"
#include "store/schema.h"

namespace {

using store::Campaign;
using store_test::Folder;
using store_test::sealed_plan;
using store_test::Stranger;

const char* const tables[] = {"campaign", "cable", "baseline", "rig",      "source",
                              "reading",  "plan",  "event",    "link_key", "correction"};

/// A campaign with a row in every table.
void fill(const std::filesystem::path& file) {
  Campaign campaign = Campaign::create(file, "t");
  campaign.add_cable({.name = "bell wire"});
  campaign.set_baseline("bell wire");
  campaign.add_rig({.name = "desk", .kind = "line level"});
  const store::SourceFile source{"a.csv", seal::to_hex(seal::sha256("text")), "text"};
  imported::Reading reading;
  reading.kind = "noise";
  reading.cable = "bell wire";
  reading.sha256_hex = source.sha256_hex;
  campaign.add_readings(std::vector{reading}, std::vector{source});
  campaign.supersede(1, std::nullopt, "the cable was not connected");
  const plan::SealedPlan plan = sealed_plan("spring");
  campaign.add_plan(plan);
  store_test::Links links(plan, 1);
  campaign.log("spring")->append(1, 1, links.next());
  campaign.link_key();
}

std::string everything_in(const std::filesystem::path& file) {
  Stranger stranger(file);
  std::string all;
  for (const std::string table : tables) {
    std::string columns = stranger.ask(
        "SELECT group_concat('quote(' || name || ')', ' || ') FROM pragma_table_info('" + table + "')");
    columns.pop_back();
    const std::string rows = stranger.ask("SELECT " + columns + " FROM " + table);
    EXPECT_NE(rows, "") << table;
    all += rows;
  }
  return all;
}

TEST(AppendOnly, TheFileRefusesOtherProgramsToo) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  fill(file);
  const std::string before = everything_in(file);
  Stranger stranger(file);
  for (const std::string table : tables) {
    const std::string key = table == "event" ? "sitting" : "number";
    const std::string same = "INTO " + table + " SELECT * FROM " + table;
    EXPECT_EQ(stranger.run("UPDATE " + table + " SET " + key + " = 7"),
              "a campaign only grows: nothing in it is changed");
    EXPECT_EQ(stranger.run("UPDATE OR REPLACE " + table + " SET " + key + " = 7"),
              "a campaign only grows: nothing in it is changed");
    EXPECT_EQ(stranger.run("DELETE FROM " + table), "a campaign only grows: nothing is removed from it");
    EXPECT_NE(stranger.run("INSERT OR REPLACE " + same), "") << table;
    EXPECT_NE(stranger.run("REPLACE " + same), "") << table;
    EXPECT_NE(stranger.run("INSERT " + same + " WHERE true ON CONFLICT DO UPDATE SET " + key + " = 7"), "")
        << table;
  }
  EXPECT_EQ(everything_in(file), before);
}

TEST(AppendOnly, NoRowTakesAnothersPlaceByAnyOfItsKeys) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  fill(file);
  const std::string before = everything_in(file);
  Stranger stranger(file);
  const std::string sha = seal::to_hex(seal::sha256("text"));
  EXPECT_EQ(stranger.run("REPLACE INTO cable VALUES (2, 'bell wire', '[]', 'new')"),
            "the cable is there already");
  EXPECT_EQ(stranger.run("REPLACE INTO cable VALUES (1, 'other', '[]', 'new')"),
            "the cable is there already");
  EXPECT_EQ(stranger.run("REPLACE INTO cable (name, construction, note) VALUES ('bell wire', '[]', 'new')"),
            "the cable is there already");
  EXPECT_EQ(stranger.run("REPLACE INTO source VALUES (2, '" + sha + "', 'b.csv', x'00')"),
            "the file is there already");
  EXPECT_EQ(stranger.run("REPLACE INTO source (rowid, sha256, name, text) VALUES (1, '" +
                         std::string(64, '0') + "', 'b.csv', x'00')"),
            "the file is there already");
  EXPECT_EQ(stranger.run("REPLACE INTO plan SELECT 2, name, '{}', seed, commitment FROM plan"),
            "the plan is there already");
  EXPECT_EQ(stranger.run("REPLACE INTO event SELECT plan, sitting, '1', '{}', head FROM event"),
            "another writer was first; nothing was kept, try again");
  EXPECT_EQ(stranger.run("INSERT OR IGNORE INTO event SELECT plan, sitting, 3, '{}', head FROM event"),
            "another writer was first; nothing was kept, try again");
  EXPECT_EQ(everything_in(file), before);
}

TEST(AppendOnly, OurOwnConnectionCanDoNothingElse) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  fill(file);
  store::Database own(file);
  store::prepare_connection(own);
  for (const std::string table : tables) {
    for (const std::string& sql :
         {"UPDATE " + table + " SET rowid = 7", "DELETE FROM " + table, "DROP TABLE " + table,
          "ALTER TABLE " + table + " RENAME TO other", "ALTER TABLE " + table + " ADD COLUMN other TEXT",
          "DROP TRIGGER " + table + "_never_changes", "CREATE INDEX other ON " + table + " (number)",
          "CREATE TRIGGER other AFTER INSERT ON " + table + " BEGIN SELECT 1; END"}) {
      try {
        own.run(sql);
        ADD_FAILURE() << "not refused: " << sql;
      } catch (const std::runtime_error& error) {
        const std::string words = error.what();
        EXPECT_TRUE(words.find("not authorized") != std::string::npos ||
                    sql.find("rowid") != std::string::npos)
            << sql << ": " << words;
      }
    }
  }
  EXPECT_THROW(own.run("PRAGMA writable_schema = ON"), std::runtime_error);
  EXPECT_THROW(own.run("PRAGMA foreign_keys = OFF"), std::runtime_error);
  EXPECT_THROW(own.run("ATTACH ':memory:' AS other"), std::runtime_error);
  EXPECT_REFUSAL(own.run("REPLACE INTO event SELECT * FROM event"), text::NotNow,
                 "another writer was first; nothing was kept, try again");
  EXPECT_REFUSAL(own.run("INSERT INTO event VALUES (9, 1, 1, '{}', '" + std::string(64, 'a') + "')"),
                 text::BadInput, file.string() + " refuses this: FOREIGN KEY constraint failed");
}

TEST(AppendOnly, DefensiveModeKeepsTheSchemaFromBeingRewritten) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  fill(file);
  store::Database own(file);
  store::prepare_connection(own);
  sqlite3_set_authorizer(own.handle(), nullptr, nullptr);
  own.run("PRAGMA writable_schema = ON");
  EXPECT_THROW(own.run("DELETE FROM sqlite_schema WHERE type = 'trigger'"), std::runtime_error);
  EXPECT_THROW(own.run("PRAGMA journal_mode = OFF; DELETE FROM event"), std::runtime_error);
}

TEST(AppendOnly, TablesAreStrictAndTied) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  fill(file);
  Stranger stranger(file);
  EXPECT_EQ(stranger.ask(
                "SELECT count(*) FROM pragma_table_list WHERE strict AND schema = 'main' AND type = 'table'"),
            std::to_string(std::size(tables)) + "\n");
  ASSERT_EQ(stranger.run("PRAGMA foreign_keys = ON"), "");
  EXPECT_EQ(stranger.run("INSERT INTO event VALUES (9, 1, 1, '{}', '" + std::string(64, 'a') + "')"),
            "FOREIGN KEY constraint failed");
  EXPECT_EQ(stranger.run("INSERT INTO baseline VALUES (2, 'unknown')"), "FOREIGN KEY constraint failed");
  EXPECT_EQ(
      stranger.run(
          "INSERT INTO reading SELECT 2, kind, 'unknown', rig, piece, condition, repeat, file, sha256,"
          " note, columns, as_typed, numbers, instrument, feature, state FROM reading WHERE number = 1"),
      "FOREIGN KEY constraint failed");
}

TEST(AppendOnly, EveryTableIsGuarded) {
  std::size_t guards = 0, guarded = 0;
  for (const store::Definition& each : store::definitions()) {
    guards += each.name.find("_never_") != std::string::npos;
    guarded += each.sql.starts_with("CREATE TABLE");
  }
  EXPECT_EQ(guarded, std::size(tables));
  EXPECT_EQ(guards, 3 * guarded);
}

}  // namespace
