#include <gtest/gtest.h>
#include <sys/stat.h>

#include "store/campaign.h"
#include "store/failing_vfs.h"
#include "store/sample.h"
#include "store/schema.h"

namespace {

using store::Campaign;
using store_test::Folder;
using store_test::OrdinaryUser;
using store_test::Stranger;
using store_test::write_file;

TEST(Opening, LeavesOneFileAfterCreationWritingAndReading) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  { Campaign::create(file, "t").add_cable({.name = "bell wire"}); }
  EXPECT_EQ(folder.files(), 1);
  {
    Campaign campaign = Campaign::open(file);
    campaign.add_cable({.name = "heavy-pair"});
    EXPECT_EQ(folder.files(), 3);
  }
  EXPECT_EQ(folder.files(), 1);
  { EXPECT_EQ(Campaign::open(file).cables().size(), 2u); }
  EXPECT_EQ(folder.files(), 1);
}

TEST(Opening, BringsEverythingIntoTheFileWhileAnotherProgramReads) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  Campaign campaign = Campaign::create(file, "t");
  const Campaign other = Campaign::open(file);
  EXPECT_EQ(other.title(), "t");
  campaign.add_cable({.name = "bell wire"});
  campaign = Campaign::create(folder / "b.campaign", "another");
  EXPECT_EQ(std::filesystem::file_size(folder / "a.campaign-wal"), 0u);
  write_file(folder / "copy.campaign", store_test::read_file(file));
  EXPECT_EQ(Campaign::open(folder / "copy.campaign").cables().size(), 1u);
}

TEST(Opening, MarksTheFileAsACampaignWithAWriteAheadLog) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  { const Campaign made = Campaign::create(file, "t"); }
  Stranger stranger(file);
  EXPECT_EQ(stranger.ask("PRAGMA application_id"), std::to_string(store::campaign_id) + "\n");
  EXPECT_EQ(stranger.ask("PRAGMA user_version"), std::to_string(store::schema_version) + "\n");
  EXPECT_EQ(stranger.ask("PRAGMA journal_mode"), "wal\n");
  EXPECT_EQ(stranger.ask("PRAGMA integrity_check"), "ok\n");
}

TEST(Opening, TakesNamesLiterally) {
  const Folder folder;
  const auto before = std::filesystem::current_path();
  std::filesystem::current_path(folder.path());
  for (const std::string name :
       {"file:x?mode=memory", ":memory:", "a b#%20?.campaign", "it's \"so\"", "Größe", "-", "a\nb"}) {
    { Campaign::create(name, name); }
    EXPECT_TRUE(std::filesystem::exists(folder / name)) << name;
    EXPECT_EQ(Campaign::open(name).title(), name);
    EXPECT_REFUSAL(Campaign::create(name, "again"), text::BadInput,
                   (name == "a\nb" ? "a?b" : name) +
                       " exists already\nchoose another name, or go on with the campaign in it");
  }
  std::filesystem::current_path(before);
}

TEST(Opening, CreatesNothingWhereItCannot) {
  const Folder folder;
  write_file(folder / "file", "words");
  EXPECT_REFUSAL(
      Campaign::create(folder / "file", "t"), text::BadInput,
      (folder / "file").string() + " exists already\nchoose another name, or go on with the campaign in it");
  EXPECT_EQ(store_test::read_file(folder / "file"), "words");
  EXPECT_REFUSAL(Campaign::create(folder / "none" / "a", "t"), text::BadInput,
                 "cannot create " + (folder / "none" / "a").string() +
                     ": there is no such folder\ncreate the folder first");
  EXPECT_REFUSAL(Campaign::create(folder / "a", ""), text::BadInput, "a campaign needs a title");
  EXPECT_EQ(folder.files(), 1);
}

TEST(Opening, IgnoresWhatALostCampaignLeftBeside) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  Campaign old = Campaign::create(file, "old");
  old.add_cable({.name = "bell wire"});
  for (const std::string ending : {"-wal", "-shm"})
    write_file(folder / ("b.campaign" + ending), store_test::read_file(folder / ("a.campaign" + ending)));
  EXPECT_TRUE(Campaign::create(folder / "b.campaign", "new").cables().empty());
}

TEST(Opening, RefusesWhatIsNoCampaign) {
  const Folder folder;
  const auto refused = [&](const std::string& name, const std::string& words) {
    const std::string before =
        std::filesystem::is_regular_file(folder / name) ? store_test::read_file(folder / name) : "";
    const long files = folder.files();
    EXPECT_REFUSAL(Campaign::open(folder / name), text::BadInput, words);
    if (!before.empty()) {
      EXPECT_EQ(store_test::read_file(folder / name), before);
    }
    EXPECT_EQ(folder.files(), files);
  };
  refused("none", "there is no campaign " + (folder / "none").string() + "\nlook at the name, or create it");
  refused("none/deeper",
          "there is no campaign " + (folder / "none/deeper").string() + "\nlook at the name, or create it");

  std::filesystem::create_directory(folder / "folder");
  refused("folder", (folder / "folder").string() + " is a folder\nname the campaign's file in it");

  write_file(folder / "empty", "");
  refused("empty",
          (folder / "empty").string() + " is not a campaign: another program made it, or it is empty");

  write_file(folder / "words", std::string(5000, 'w'));
  refused("words", (folder / "words").string() + " is not a campaign: it is another kind of file");

  write_file(folder / "short", "a,b\n1,2\n");
  refused("short", (folder / "short").string() + " is not a campaign: it is another kind of file");

  ASSERT_EQ(Stranger(folder / "foreign").run("CREATE TABLE t (x)"), "");
  refused("foreign",
          (folder / "foreign").string() + " is not a campaign: another program made it, or it is empty");
}

TEST(Opening, RefusesNewerAndNamelessSchemas) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  { const Campaign made = Campaign::create(file, "t"); }
  ASSERT_EQ(Stranger(file).run("PRAGMA user_version = 99"), "");
  EXPECT_REFUSAL(Campaign::open(file), text::BadInput,
                 file.string() +
                     " was written by a newer blindswap: it has schema 99, this program knows schema " +
                     std::to_string(store::schema_version) +
                     "\n"
                     "open it with the newer program");
  ASSERT_EQ(Stranger(file).run("PRAGMA user_version = 0"), "");
  EXPECT_REFUSAL(Campaign::open(file), text::BadInput,
                 file.string() + " is damaged: it has no schema version");
}

TEST(Opening, RefusesACampaignThatLacksAGuard) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  { const Campaign made = Campaign::create(file, "t"); }
  ASSERT_EQ(Stranger(file).run("DROP TRIGGER event_never_changes"), "");
  EXPECT_REFUSAL(
      Campaign::open(file), text::BadInput,
      file.string() + " is damaged: it lacks event_never_changes\ngo back to a copy that was made before");
}

TEST(Opening, RefusesDamageWhereverItIs) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  const plan::SealedPlan plan = store_test::sealed_plan("spring");
  constexpr int count = 60;
  {
    Campaign campaign = Campaign::create(file, "t");
    campaign.add_plan(plan);
    const auto log = campaign.log("spring");
    store_test::Links links(plan, 1);
    campaign.all_or_none([&] {
      for (int number = 1; number <= count; ++number)
        log->append(1, number, links.next(std::string(300, 'e')));
    });
  }
  const std::string good = store_test::read_file(file);
  int refused = 0;
  for (std::size_t page = 0; page * 4096 < good.size(); ++page) {
    std::string bad = good;
    bad.replace(page * 4096, 4096, std::string(4096, '\xa5'));
    write_file(file, bad);
    try {
      const Campaign campaign = Campaign::open(file);
      campaign.cables();
      campaign.rigs();
      campaign.readings();
      campaign.plans();
      (void)campaign.log("spring")->events(1);
    } catch (const text::BadInput&) {
      ++refused;
    }
  }
  // The pages of indexes and of tables that hold nothing are not read here.
  EXPECT_GE(refused, 8);

  write_file(file, good.substr(0, 3 * 4096 + 100));
  EXPECT_REFUSAL(Campaign::open(file).plans(), text::BadInput,
                 file.string() + " is damaged\ngo back to a copy that was made before");
}

constexpr const char* cannot_be_written =
    " cannot be written\nallow writing, or copy the campaign to a folder of your own and use the copy";
constexpr const char* cannot_be_opened =
    "\na campaign must be readable and writable, and on a disk of this computer, not on a network share";

/// A campaign of somebody else, with the permissions of its folder and file.
class Permissions : public testing::Test {
 protected:
  Permissions() { const Campaign made = Campaign::create(file, "t"); }
  ~Permissions() override { set(0755, 0644); }

  void set(mode_t of_folder, mode_t of_file) {
    EXPECT_EQ(chmod(folder.path().c_str(), of_folder), 0);
    EXPECT_EQ(chmod(file.c_str(), of_file), 0);
  }

  Folder folder;
  std::filesystem::path file = folder / "a.campaign";
};

TEST_F(Permissions, AFileThatCannotBeWrittenIsRefused) {
  set(0777, 0444);
  const OrdinaryUser user;
  EXPECT_REFUSAL(Campaign::open(file), text::NotNow, file.string() + cannot_be_written);
  EXPECT_EQ(folder.files(), 1);
}

TEST_F(Permissions, AFileThatCannotBeReadIsRefused) {
  set(0777, 0);
  const OrdinaryUser user;
  EXPECT_REFUSAL(Campaign::open(file), text::NotNow, "cannot open " + file.string() + cannot_be_opened);
}

TEST_F(Permissions, AFolderThatCannotBeWrittenIsRefused) {
  set(0555, 0666);
  const OrdinaryUser user;
  EXPECT_REFUSAL(Campaign::open(file), text::NotNow, "the folder of " + file.string() + cannot_be_written);
  EXPECT_REFUSAL(Campaign::create(folder / "b", "t"), text::NotNow,
                 "cannot create " + (folder / "b").string() + ": Permission denied");
}

TEST(Opening, RefusesAFolderWithoutSharedMemory) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  { const Campaign made = Campaign::create(file, "t"); }
  store_test::FailingVfs share;
  share.refuse_shared_memory();
  EXPECT_REFUSAL(
      Campaign::create(folder / "b.campaign", "t"), text::NotNow,
      (folder / "b.campaign").string() +
          " is in a folder that cannot hold a write-ahead log, such as a network share\nkeep the campaign "
          "on a disk of this computer");
  EXPECT_REFUSAL(Campaign::open(file), text::NotNow, "cannot open " + file.string() + cannot_be_opened);
  EXPECT_EQ(folder.files(), 1);
}

}  // namespace
