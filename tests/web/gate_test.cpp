#include "web/gate.h"

#include <gtest/gtest.h>

namespace web {
namespace {

struct Guarded {
  Gate gate{{.helper = std::string(32, 'a'),
             .organiser = std::string(32, 'b'),
             .listeners = {{"Ada", std::string(32, 'c')}}},
            {"127.0.0.1:8010"}};
};

TEST(Gate, KnowsEachCodeInItsOwnRoleOnly) {
  Guarded guarded;
  const std::string helper(32, 'a'), organiser(32, 'b'), ada(32, 'c');
  EXPECT_EQ(guarded.gate.person_with("helper", helper), "helper");
  EXPECT_EQ(guarded.gate.person_with("organiser", organiser), "organiser");
  EXPECT_EQ(guarded.gate.person_with("listener", ada), "Ada");
  EXPECT_EQ(guarded.gate.person_with("helper", ada), std::nullopt);
  EXPECT_EQ(guarded.gate.person_with("listener", helper), std::nullopt);
  EXPECT_EQ(guarded.gate.person_with("organiser", helper), std::nullopt);
  EXPECT_EQ(guarded.gate.person_with("reader", ada), std::nullopt);
}

TEST(Gate, ReadsItsOwnCookieOutOfMany) {
  Guarded guarded;
  const std::string set = Gate::cookie_for("listener", std::string(32, 'c'));
  EXPECT_EQ(set,
            "blindswap_listener=" + std::string(32, 'c') + "; Path=/listener; HttpOnly; SameSite=Strict");
  const std::string sent = set.substr(0, set.find(';'));
  EXPECT_EQ(guarded.gate.person_of("listener", sent), "Ada");
  EXPECT_EQ(guarded.gate.person_of("listener", "a=b; " + sent + "; c=d"), "Ada");
  EXPECT_EQ(guarded.gate.person_of("helper", sent), std::nullopt);
  EXPECT_EQ(guarded.gate.person_of("listener", "x" + sent), std::nullopt);
  EXPECT_EQ(guarded.gate.person_of("listener", sent + "c"), std::nullopt);
  EXPECT_EQ(guarded.gate.person_of("listener", ""), std::nullopt);
}

TEST(Gate, RefusesOtherHostsAndOrigins) {
  Guarded guarded;
  EXPECT_TRUE(guarded.gate.is_host("127.0.0.1:8010"));
  EXPECT_FALSE(guarded.gate.is_host("rebound.example:8010"));
  EXPECT_FALSE(guarded.gate.is_host(""));
  EXPECT_TRUE(guarded.gate.is_own_origin("http://127.0.0.1:8010", "127.0.0.1:8010"));
  EXPECT_FALSE(guarded.gate.is_own_origin("http://elsewhere:8010", "127.0.0.1:8010"));
  EXPECT_FALSE(guarded.gate.is_own_origin("http://elsewhere", "elsewhere"));
  EXPECT_FALSE(guarded.gate.is_own_origin("", "127.0.0.1:8010"));
}

}  // namespace
}  // namespace web
