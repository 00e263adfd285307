#include "web/hub.h"

#include <gtest/gtest.h>

#include <thread>

namespace web {
namespace {

using namespace std::chrono_literals;

TEST(Hub, ReleasesOnlyChanges) {
  Hub hub(4);
  EXPECT_EQ(hub.shown("ada").version, 0u);
  hub.release("ada", "one");
  hub.release("ada", "one");
  hub.release("ben", "other");
  EXPECT_EQ(hub.shown("ada").version, 1u);
  EXPECT_EQ(hub.shown("ada").text, "one");
  EXPECT_EQ(hub.next("ada", 0, 0ms)->text, "one");
  EXPECT_FALSE(hub.next("ada", 1, 1ms));
  hub.release("ada", "two");
  EXPECT_EQ(hub.next("ada", 1, 0ms)->text, "two");
}

TEST(Hub, WakesWhoeverWaitsForAChangeOrTheEnd) {
  Hub hub(4);
  std::thread later([&] {
    std::this_thread::sleep_for(5ms);
    hub.release("ada", "one");
  });
  EXPECT_EQ(hub.next("ada", 0, 10s)->text, "one");
  later.join();
  std::thread end([&] {
    std::this_thread::sleep_for(5ms);
    hub.close();
  });
  EXPECT_FALSE(hub.next("ada", 1, 10s));
  end.join();
  EXPECT_FALSE(hub.join("ada"));
}

TEST(Hub, CountsStreamsAndTurnsAwayTooMany) {
  Hub hub(2);
  EXPECT_TRUE(hub.join("ada"));
  EXPECT_TRUE(hub.join("ben"));
  EXPECT_FALSE(hub.join("cleo"));
  EXPECT_EQ(hub.streams_on("ada"), 1);
  hub.leave("ada");
  EXPECT_EQ(hub.streams_on("ada"), 0);
  EXPECT_TRUE(hub.join("cleo"));
}

}  // namespace
}  // namespace web
