#include <gtest/gtest.h>

#include <limits>

#include "store/campaign.h"
#include "store/failing_vfs.h"
#include "store/sample.h"

namespace {

using store::Campaign;
using store_test::FailingVfs;
using store_test::Folder;
using store_test::Links;
using store_test::sealed_plan;
using store_test::whole_chain;

void expect_clear_words(const std::string& words, const std::filesystem::path& file) {
  EXPECT_EQ(words, "the disk is full or cannot be written: " + file.string() +
                       "\neverything acknowledged before is kept; make room and do this step again");
}

/// What had been acknowledged when the disk refused.
struct Acknowledged {
  bool created = false;
  bool planned = false;
  int events = 0;
};

Acknowledged work_until_refused(const std::filesystem::path& file) {
  Acknowledged done;
  try {
    Campaign campaign = Campaign::create(file, "t");
    done.created = true;
    const plan::SealedPlan plan = sealed_plan("spring");
    campaign.add_plan(plan);
    done.planned = true;
    const auto log = campaign.log("spring");
    Links links(plan, 1);
    for (int number = 1; number <= 6; ++number) {
      log->append(1, number, links.next(std::string(2000, 'e')));
      done.events = number;
    }
  } catch (const text::NotNow& refused) {
    expect_clear_words(refused.what(), file);
  }
  return done;
}

void check_after(const Acknowledged& done, const std::filesystem::path& file) {
  if (!done.created) {
    EXPECT_FALSE(std::filesystem::exists(file));
    return;
  }
  const Campaign campaign = Campaign::open(file);
  EXPECT_EQ(campaign.title(), "t");
  const std::size_t plans = campaign.plans().size();
  EXPECT_GE(plans, done.planned ? 1u : 0u);
  if (plans == 0) return;
  const int events = whole_chain(*campaign.log("spring"), sealed_plan("spring"), 1);
  EXPECT_GE(events, done.events);
  EXPECT_LE(events, done.events + 1);
}

class FullDisk : public testing::TestWithParam<FailingVfs::Fault> {};

TEST_P(FullDisk, AtAnyMomentKeepsWhatWasAcknowledged) {
  int refusals = 0;
  for (int steps = 0;; ++steps) {
    SCOPED_TRACE("room for " + std::to_string(steps) + " steps");
    const Folder folder;
    const auto file = folder / "a.campaign";
    Acknowledged done;
    bool failed = false;
    {
      FailingVfs disk;
      disk.fail_after(steps, GetParam());
      done = work_until_refused(file);
      failed = disk.failed();
    }
    check_after(done, file);
    if (!failed) {
      EXPECT_EQ(done.events, 6);
      break;
    }
    refusals += done.events < 6;
  }
  EXPECT_GT(refusals, 20);
}

TEST_P(FullDisk, CanBeGoneOnWithOnceThereIsRoom) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  const plan::SealedPlan plan = sealed_plan("spring");
  FailingVfs disk;
  {
    Campaign campaign = Campaign::create(file, "t");
    campaign.add_plan(plan);
    const auto log = campaign.log("spring");
    Links links(plan, 1);
    int refusals = 0;
    for (int number = 1; number <= 30; ++number) {
      const sitting::LoggedEvent event = links.next(std::string(3000, 'e'));
      disk.fail_after(number % 5, GetParam());
      try {
        log->append(1, number, event);
      } catch (const text::NotNow& refused) {
        ++refusals;
        expect_clear_words(refused.what(), file);
        disk.work();
        EXPECT_EQ(whole_chain(*log, plan, 1), number - 1);
        log->append(1, number, event);
      }
      disk.work();
    }
    EXPECT_GT(refusals, 5);
  }
  EXPECT_EQ(whole_chain(*Campaign::open(file).log("spring"), plan, 1), 30);
  EXPECT_EQ(folder.files(), 1);
}

// SQLite brings its log into the file when the log has grown to 1000 pages (sqlite.org/wal.html, 2.1). The
// event that does it is acknowledged whatever becomes of the bringing.
TEST_P(FullDisk, KeepsEverythingWhenItStrikesWhileTheLogIsBroughtIntoTheFile) {
  const plan::SealedPlan plan = sealed_plan("spring");
  const std::string words(36'000, 'e');
  constexpr int before = 70, most = 200;
  int first_step = 0, last_step = 0, moments = 0;
  for (int steps = std::numeric_limits<int>::max(); moments < 15; ++moments) {
    SCOPED_TRACE("room for " + std::to_string(steps) + " steps");
    const Folder folder;
    const auto file = folder / "a.campaign";
    int acknowledged = before;
    {
      FailingVfs disk;
      Campaign campaign = Campaign::create(file, "t");
      campaign.add_plan(plan);
      const auto log = campaign.log("spring");
      Links links(plan, 1);
      campaign.all_or_none([&] {
        for (int number = 1; number <= before; ++number) log->append(1, number, links.next(words));
      });
      const auto size = std::filesystem::file_size(file);
      const int start = disk.steps();
      disk.fail_after(steps, GetParam());
      try {
        while (acknowledged < most && std::filesystem::file_size(file) == size) {
          if (moments == 0) first_step = disk.steps() - start;
          log->append(1, acknowledged + 1, links.next(words));
          ++acknowledged;
        }
        EXPECT_GT(std::filesystem::file_size(file), size);
      } catch (const text::NotNow& refused) {
        expect_clear_words(refused.what(), file);
      }
      EXPECT_EQ(disk.failed(), moments > 0);
      if (moments == 0) last_step = disk.steps() - start;
    }
    const int found = whole_chain(*Campaign::open(file).log("spring"), plan, 1);
    EXPECT_GE(found, acknowledged);
    EXPECT_LE(found, acknowledged + 1);
    steps = first_step + moments * (last_step - first_step) / 15;
  }
  EXPECT_GT(last_step - first_step, 500);
}

TEST_P(FullDisk, ImportsAllOrNothing) {
  const Folder folder;
  const auto file = folder / "a.campaign";
  const std::string text = "frequency_Hz,level_dB\n20,0\n";
  const std::vector<store::SourceFile> sources = {{"a.csv", seal::to_hex(seal::sha256(text)), text}};
  std::vector<imported::Reading> readings(5);
  for (std::size_t at = 0; at < readings.size(); ++at) {
    readings[at].repeat = static_cast<int>(at);
    readings[at].columns = {"level_db"};
    readings[at].values = {std::vector<double>(2000)};
    readings[at].sha256_hex = sources[0].sha256_hex;
  }
  FailingVfs disk;
  Campaign campaign = Campaign::create(file, "t");
  bool done = false;
  for (int steps = 0; !done; ++steps) {
    disk.fail_after(steps, GetParam());
    try {
      campaign.add_readings(readings, sources);
      done = true;
    } catch (const text::NotNow& refused) {
      expect_clear_words(refused.what(), file);
    }
    disk.work();
    EXPECT_EQ(campaign.readings().size(), done ? 5u : 0u);
  }
  EXPECT_EQ(campaign.source(sources[0].sha256_hex), sources[0]);
}

INSTANTIATE_TEST_SUITE_P(BothFaults, FullDisk,
                         testing::Values(FailingVfs::Fault::full, FailingVfs::Fault::broken),
                         [](const auto& each) {
                           return each.param == FailingVfs::Fault::full ? "Full" : "Broken";
                         });

}  // namespace
