#include <gtest/gtest.h>

#include "store/campaign.h"
#include "store/definitions.h"
#include "store/sample.h"
#include "store/schema.h"

namespace {

using store::Campaign;
using store::Migration;
using store_test::Folder;
using store_test::Stranger;

/// A campaign of each schema that was released, the oldest first.
std::string released(int schema) {
  return store_test::read_file(SOURCE_FOLDER "/tests/store/data/schema_" + std::to_string(schema) + ".sql");
}

class AnOlderCampaign : public testing::Test {
 protected:
  AnOlderCampaign() { EXPECT_EQ(Stranger(file).run(released(1)), ""); }

  Folder folder;
  std::filesystem::path file = folder / "a.campaign";
};

class ReleasedCampaign : public testing::TestWithParam<int> {
 protected:
  ReleasedCampaign() { EXPECT_EQ(Stranger(file).run(released(GetParam())), ""); }

  Folder folder;
  std::filesystem::path file = folder / "a.campaign";
};

INSTANTIATE_TEST_SUITE_P(Schema, ReleasedCampaign, testing::Range(1, store::schema_version),
                         [](const auto& one) { return std::to_string(one.param); });

TEST_P(ReleasedCampaign, OpensWithEverythingInIt) {
  const Campaign campaign = Campaign::open(file);
  EXPECT_EQ(campaign.title(), "Cables at home");
  ASSERT_EQ(campaign.cables().size(), 2u);
  EXPECT_EQ(
      campaign.cables()[1],
      (store::Cable{"bell wire", {{"geometry", "parallel"}, {"cross-section", "0.5mm2"}}, "from the attic"}));
  EXPECT_EQ(campaign.baseline(), "heavy-pair");
  ASSERT_EQ(campaign.rigs().size(), 1u);
  EXPECT_EQ(campaign.rigs()[0].source_resistance_ohm, "0.05");
  const auto readings = campaign.readings({.cable = "bell wire"});
  ASSERT_EQ(readings.size(), 1u);
  EXPECT_FALSE(readings[0].correction);
  EXPECT_EQ(readings[0].reading.instrument + readings[0].reading.feature + readings[0].reading.state, "");
  EXPECT_EQ(readings[0].reading.values, (std::vector<std::vector<double>>{{3}, {0.24}}));
  EXPECT_EQ(readings[0].reading.as_typed[1], (std::pair<std::string, std::string>{"resistance_ohm", "0,24"}));
  EXPECT_EQ(campaign.source(readings[0].reading.sha256_hex).text,
            "cable;length_m;resistance_ohm\r\nbell wire;3;0,24\r\n");
  const plan::SealedPlan plan = campaign.plan("spring");
  EXPECT_EQ(store_test::whole_chain(*campaign.log("spring"), plan, 0), 1);
  EXPECT_EQ(store_test::whole_chain(*campaign.log("spring"), plan, 1), 3);
}

TEST_P(ReleasedCampaign, ReachesTheSchemaOfAFreshOne) {
  const auto fresh = folder / "fresh.campaign";
  { const Campaign made = Campaign::create(fresh, "t"); }
  EXPECT_EQ(Stranger(file).ask("PRAGMA user_version"), std::to_string(GetParam()) + "\n");
  { const Campaign opened = Campaign::open(file); }
  const std::string schema = "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name";
  EXPECT_EQ(Stranger(file).ask(schema), Stranger(fresh).ask(schema));
  EXPECT_EQ(Stranger(file).ask("PRAGMA user_version"), Stranger(fresh).ask("PRAGMA user_version"));
}

TEST_F(AnOlderCampaign, IsBroughtForwardWithACopyMadeBefore) {
  const std::vector<Migration> steps = {{2, "ALTER TABLE cable ADD COLUMN colour TEXT"},
                                        {3, "CREATE TABLE extra (number INTEGER PRIMARY KEY) STRICT"}};
  {
    store::Database database(file);
    store::migrate(database, file, store::require_campaign(database, 3), steps);
  }
  EXPECT_EQ(Stranger(file).ask("PRAGMA user_version"), "3\n");
  EXPECT_EQ(Stranger(file).ask("SELECT count(colour) FROM cable"), "0\n");
  EXPECT_EQ(Stranger(file).ask("SELECT count(*) FROM extra"), "0\n");
  EXPECT_EQ(Campaign::open(folder / "a.campaign.schema-1").cables().size(), 2u);
}

TEST_F(AnOlderCampaign, StaysAsItIsWhenAStepFails) {
  const std::vector<Migration> steps = {{2, "ALTER TABLE cable ADD COLUMN colour TEXT"},
                                        {3, "NO SUCH STATEMENT"}};
  {
    store::Database database(file);
    EXPECT_THROW(store::migrate(database, file, 1, steps), std::runtime_error);
  }
  EXPECT_FALSE(std::filesystem::exists(folder / "a.campaign.schema-1"));
  EXPECT_EQ(Campaign::open(file).cables().size(), 2u);
}

TEST_F(AnOlderCampaign, IsNotBroughtForwardOverAnOlderCopy) {
  store_test::write_file(folder / "a.campaign.schema-1", "precious");
  store::Database database(file);
  EXPECT_REFUSAL(
      store::migrate(database, file, 1, std::vector<Migration>{{2, "SELECT 1"}}), text::NotNow,
      file.string() +
          " has schema 1 and must be brought up to date, but the copy to be made before is there already\n"
          "move " +
          file.string() + ".schema-1 elsewhere");
  EXPECT_EQ(store_test::read_file(folder / "a.campaign.schema-1"), "precious");
}

TEST(Migrations, LeadToTheSchemaOfThisProgramStepByStep) {
  int version = 1;
  for (const Migration& step : store::migrations()) EXPECT_EQ(step.to, ++version);
  EXPECT_EQ(version, store::schema_version);
}

}  // namespace
