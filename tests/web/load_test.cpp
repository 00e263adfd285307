// Sixty listeners answer at once, twenty times, into a campaign file: every answer is kept, once.
#include <gtest/gtest.h>

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <iostream>
#include <thread>

#include "sitting/chain/chain_reader.h"
#include "store/campaign.h"
#include "web/hosted.h"
#include "whole/program.h"

namespace web {
namespace {

constexpr int crowd = 60, trials = 20;

plan::Plan plan_of_a_crowd() {
  plan::Plan plan = sample_plan("abx", 1, trials, 1);
  plan.listeners.clear();
  plan.sittings[0].listeners.clear();
  for (int i = 0; i < crowd; ++i) {
    plan.listeners.push_back("listener-" + std::to_string(i));
    plan.sittings[0].listeners.push_back(i);
  }
  return plan;
}

double milliseconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

/// What keeping an answer costs at the least: an append of as many bytes, made durable.
std::vector<double> plain_appends(const std::filesystem::path& file, int count) {
  const int open_file = open(file.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600);
  const std::string bytes(400, 'x');
  std::vector<double> times;
  for (int i = 0; i < count; ++i) {
    const auto start = std::chrono::steady_clock::now();
    EXPECT_EQ(write(open_file, bytes.data(), bytes.size()), static_cast<ssize_t>(bytes.size()));
    EXPECT_EQ(fdatasync(open_file), 0);
    times.push_back(milliseconds_since(start));
  }
  close(open_file);
  return times;
}

double quantile(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

TEST(Load, SixtyListenersAtOnceLoseNothingAndDoubleNothing) {
  const Folder folder;
  const plan::Plan plan = plan_of_a_crowd();
  const plan::SealedPlan sealed = sitting::sealed_with(plan, seal::sha256("a seed"));
  store::Campaign campaign = store::Campaign::create(folder / "crowd.campaign", "a crowd");
  campaign.add_plan(sealed);
  const auto log = campaign.log(plan.name);
  sitting::HandClock clock;
  sitting::record_sealing(*log, sealed, clock.reading());
  sitting::Sitting held(plan, sealed, 1, *log, clock.reading());
  held.open("live");
  held.begin();
  DeskWithoutFile desk(held);
  Codes codes{.helper = std::string(32, 'a'), .organiser = std::string(32, 'b'), .listeners = {}};
  for (int i = 0; i < crowd; ++i)
    codes.listeners[plan.listeners[static_cast<std::size_t>(i)]] =
        std::string(30, 'c') + std::to_string(10 + i);
  Host host(held, held, desk, codes, {});

  std::vector<double> times;
  std::mutex mutex;
  for (int trial = 1; trial <= trials; ++trial) {
    for (int i = 0; i < 3; ++i) {
      held.present_next();
      clock.pass(std::chrono::seconds(60));
    }
    host.tick();
    std::vector<std::thread> taps;
    for (int i = 0; i < crowd; ++i)
      taps.emplace_back([&, i] {
        const std::string origin = "http://127.0.0.1:" + std::to_string(host.port());
        const httplib::Headers headers = {
            {"Origin", origin},
            {"X-Blindswap", "1"},
            {"Cookie",
             "blindswap_listener=" + codes.listeners.at(plan.listeners[static_cast<std::size_t>(i)])}};
        const std::string body = json{{"trial", trial}, {"answer", (trial + i) % 2 == 0 ? "A" : "B"}}.dump();
        const auto start = std::chrono::steady_clock::now();
        const auto reply = httplib::Client("127.0.0.1", host.port())
                               .Post("/listener/answer", headers, body, "application/json");
        const double taken = milliseconds_since(start);
        const std::lock_guard lock(mutex);
        EXPECT_TRUE(reply && reply->status == 200)
            << (reply ? reply->body : httplib::to_string(reply.error()));
        times.push_back(taken);
      });
    for (std::thread& tap : taps) tap.join();
  }

  std::map<std::pair<int, std::string>, int> kept;
  for (const sitting::Event& event : sitting::read_chain(*log, sealed.commitment, 1).events) {
    if (event.type == sitting::kind::answered) ++kept[{event.trial, event.who}];
    EXPECT_NE(event.type, sitting::kind::corrected);
  }
  EXPECT_EQ(kept.size(), static_cast<std::size_t>(crowd * trials));
  for (int trial = 1; trial <= trials; ++trial)
    for (int i = 0; i < crowd; ++i) {
      const std::string& name = plan.listeners[static_cast<std::size_t>(i)];
      EXPECT_EQ(kept[std::pair(trial, name)], 1);
      EXPECT_EQ(held.state().at(trial).word_of(name), (trial + i) % 2 == 0 ? "A" : "B");
    }
  const std::vector<double> plain = plain_appends(folder / "plain", 500);
  for (const double share : {0.5, 0.95})
    std::cout << "from tap to durable, " << crowd << " at once, quantile " << share << ": "
              << quantile(times, share) << " ms, " << quantile(times, share) / quantile(plain, share)
              << " times append and fdatasync (" << quantile(plain, share) << " ms)\n";
}

}  // namespace
}  // namespace web
