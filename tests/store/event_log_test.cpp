#include <gtest/gtest.h>

#include <stdexcept>
#include <thread>

#include "store/campaign.h"
#include "store/failing_vfs.h"
#include "store/sample.h"

namespace {

using sitting::LoggedEvent;
using store::Campaign;
using store_test::Folder;
using store_test::Links;
using store_test::sealed_plan;
using store_test::Stranger;
using store_test::whole_chain;

constexpr const char* too_late = "another writer was first; nothing was kept, try again";

class Log : public testing::Test {
 protected:
  Log() : campaign(Campaign::create(file, "t")) { campaign.add_plan(plan); }

  Folder folder;
  std::filesystem::path file = folder / "a.campaign";
  Campaign campaign;
  plan::SealedPlan plan = sealed_plan("spring");
};

TEST_F(Log, KeepsPlansInTheOrderOfTheirSealing) {
  campaign.add_plan(sealed_plan("autumn"));
  const Campaign again = Campaign::open(file);
  const auto plans = again.plans();
  ASSERT_EQ(plans.size(), 2u);
  EXPECT_EQ(plans[0].name, "spring");
  EXPECT_EQ(plans[1].name, "autumn");
  const plan::SealedPlan kept = again.plan("spring");
  EXPECT_EQ(kept.text, plan.text);
  EXPECT_EQ(kept.seed, plan.seed);
  EXPECT_EQ(kept.commitment, plan.commitment);
}

TEST_F(Log, RefusesPlansTakenUnknownOrNotAsCommitted) {
  EXPECT_REFUSAL(campaign.add_plan(plan), text::BadInput,
                 "there is a plan \"spring\" already; a sealed plan is never replaced\nchoose another name");
  EXPECT_REFUSAL(campaign.plan("sprint"), text::BadInput,
                 "there is no plan \"sprint\"; did you mean \"spring\"?");
  EXPECT_REFUSAL(campaign.log("winter"), text::BadInput, "there is no plan \"winter\"");
  EXPECT_REFUSAL(campaign.add_plan(sealed_plan("")), text::BadInput, "a plan needs a name");
  plan::SealedPlan wrong = sealed_plan("winter");
  wrong.seed[0] ^= 1;
  EXPECT_THROW(campaign.add_plan(wrong), std::invalid_argument);
}

TEST_F(Log, ShowsAPlanThatWasChangedFromOutside) {
  Stranger stranger(file);
  ASSERT_EQ(stranger.run("DROP TRIGGER plan_never_changes; UPDATE plan SET text = '{}'"), "");
  const std::string words =
      "plan \"spring\" does not fit its commitment: the campaign was changed by something other than "
      "blindswap\n"
      "go back to a copy that was made before";
  EXPECT_REFUSAL(campaign.plan("spring"), text::BadInput, words);
  EXPECT_REFUSAL(campaign.plans(), text::BadInput, words);
}

TEST_F(Log, KeepsEventsOfEverySittingInOrder) {
  const auto log = campaign.log("spring");
  campaign.add_plan(sealed_plan("autumn"));
  const auto other = campaign.log("autumn");
  Links own(plan, 0), first(plan, 1), second(plan, 2), apart(sealed_plan("autumn"), 1);
  log->append(0, 1, own.next("sealed"));
  for (int number = 1; number <= 12; ++number) {
    log->append(2, number, second.next());
    other->append(1, number, apart.next());
    log->append(1, number, first.next());
  }
  const Campaign again = Campaign::open(file);
  EXPECT_EQ(whole_chain(*again.log("spring"), plan, 0), 1);
  EXPECT_EQ(whole_chain(*again.log("spring"), plan, 1), 12);
  EXPECT_EQ(whole_chain(*again.log("spring"), plan, 2), 12);
  EXPECT_EQ(whole_chain(*again.log("spring"), plan, 3), 0);
  EXPECT_EQ(whole_chain(*again.log("autumn"), sealed_plan("autumn"), 1), 12);
}

TEST_F(Log, KeepsTextsByteForByte) {
  const std::string head(64, 'a');
  const std::vector<std::string> texts = {"", R"({"words":"Grüße, \u0000 \"quoted\" 'single' %s"})",
                                          std::string("a\0b\r\n\xff\xfe", 7), std::string(100'000, 'x')};
  {
    const auto log = campaign.log("spring");
    int number = 0;
    for (const std::string& text : texts) log->append(1, ++number, {text, head});
  }
  const auto events = Campaign::open(file).log("spring")->events(1);
  ASSERT_EQ(events.size(), texts.size());
  for (std::size_t at = 0; at < texts.size(); ++at) {
    EXPECT_EQ(events[at].text, texts[at]);
    EXPECT_EQ(events[at].head_hex, head);
  }
}

TEST_F(Log, LetsASecondWriterLoseCleanly) {
  const auto log = campaign.log("spring");
  const Campaign other = Campaign::open(file);
  const auto late = other.log("spring");
  Links links(plan, 1);
  const LoggedEvent first = links.next(), second = links.next(), third = links.next();
  log->append(1, 1, first);
  EXPECT_REFUSAL(late->append(1, 1, first), text::NotNow, too_late);
  EXPECT_REFUSAL(late->append(1, 3, third), text::NotNow, too_late);
  EXPECT_REFUSAL(late->append(1, 0, third), text::NotNow, too_late);
  late->append(1, 2, second);
  EXPECT_REFUSAL(log->append(1, 2, second), text::NotNow, too_late);
  EXPECT_EQ(whole_chain(*log, plan, 1), 2);
}

TEST_F(Log, StaysWholeWithTwoWritersAtOnce) {
  const auto write = [&] {
    const Campaign mine = Campaign::open(file);
    const auto log = mine.log("spring");
    for (int done = 0; done < 40;) {
      Links links(plan, 1);
      const std::size_t there = log->events(1).size();
      for (std::size_t at = 0; at < there; ++at) links.next();
      const LoggedEvent event = links.next();
      try {
        log->append(1, links.number(), event);
        ++done;
      } catch (const text::NotNow& lost) {
        EXPECT_STREQ(lost.what(), too_late);
      }
    }
  };
  std::thread one(write), two(write);
  one.join();
  two.join();
  EXPECT_EQ(whole_chain(*campaign.log("spring"), plan, 1), 80);
}

TEST_F(Log, WaitsForAnotherProgramOnlyAWhile) {
  const auto log = campaign.log("spring");
  Links links(plan, 1);
  const LoggedEvent event = links.next();
  Stranger stranger(file);
  ASSERT_EQ(stranger.run("BEGIN IMMEDIATE"), "");
  EXPECT_REFUSAL(
      log->append(1, 1, event), text::NotNow,
      file.string() + " is in use: another program is writing to it\nnothing was added; try again");
  ASSERT_EQ(stranger.run("ROLLBACK"), "");
  log->append(1, 1, event);
  EXPECT_EQ(whole_chain(*log, plan, 1), 1);
}

TEST_F(Log, OutlivesItsCampaign) {
  auto log = campaign.log("spring");
  campaign = Campaign::create(folder / "b.campaign", "another");
  Links links(plan, 1);
  log->append(1, 1, links.next());
  log.reset();
  EXPECT_EQ(whole_chain(*Campaign::open(file).log("spring"), plan, 1), 1);
}

TEST_F(Log, GoesWithWhatIsDoneAsAWhole) {
  Links links(plan, 0);
  const LoggedEvent event = links.next();
  EXPECT_THROW(campaign.all_or_none([&] {
    campaign.log("spring")->append(0, 1, event);
    throw std::runtime_error("stopped");
  }),
               std::runtime_error);
  EXPECT_EQ(whole_chain(*campaign.log("spring"), plan, 0), 0);
}

TEST(LogOnDisk, SyncsOnceForEveryEventBeforeItReturns) {
  const Folder folder;
  store_test::FailingVfs disk;
  Campaign campaign = Campaign::create(folder / "a.campaign", "t");
  const plan::SealedPlan plan = sealed_plan("spring");
  campaign.add_plan(plan);
  const auto log = campaign.log("spring");
  Links links(plan, 1);
  for (int number = 1; number <= 20; ++number) {
    const LoggedEvent event = links.next();
    const int before = disk.syncs();
    log->append(1, number, event);
    EXPECT_EQ(disk.syncs() - before, 1) << "event " << number;
  }
}

}  // namespace
