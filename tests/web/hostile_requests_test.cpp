// Requests that are malformed, cut off or slow: never a crash, never a changed record.
#include <gtest/gtest.h>

#include <atomic>
#include <memory>
#include <thread>
#include <vector>

#include "stats/random.h"
#include "tier.h"
#include "web/hosted.h"
#include "web/raw_connection.h"

namespace web {
namespace {

constexpr int attackers = 8;

int how_many() { return tier() == "long" ? 1000000 : tier() == "quick" ? 500 : 5000; }

std::string whole_request(const Hosted& hosted, stats::Random& random) {
  static const std::vector<std::string> paths = {
      "/listener/answer", "/listener/contribute", "/listener/spoil", "/listener/note",
      "/listener/enter",  "/listener/view",       "/helper/ready",   "/helper/level",
      "/helper/fact",     "/organiser/end-early", "/listener/cue",   "/helper/rehearse",
      "/pages/page.css",  "/organiser/links"};
  static const std::vector<std::string> bodies = {
      R"({"trial":1,"answer":"A","sureness":"guess"})",
      R"({"characters":"x7"})",
      R"({"trial":1,"reason":"interruption","words":""})",
      R"({"words":"\u00e9"})",
      R"({"code":"cccccccccccccccccccccccccccccccc"})",
      R"({"tag":101,"channel":"left","moment":"start","level":"1.2","unit":"dBV"})",
      R"({"name":"temperature","value":"21 C"})",
      R"({"trial":1,"presentation":2})",
      R"({"seconds":1e308})",
      R"({"who":"x","why":"y","had_seen":false})"};
  const auto one_of = [&](const auto& all) {
    return all[random.below(static_cast<std::uint32_t>(all.size()))];
  };
  const std::string path = one_of(paths), body = one_of(bodies),
                    host = "127.0.0.1:" + std::to_string(hosted.host.port());
  const std::string person = path.starts_with("/helper")      ? "helper"
                             : path.starts_with("/organiser") ? "organiser"
                                                              : "ann";
  return (random.below(4) == 0 ? "GET " : "POST ") + path + " HTTP/1.1\r\nHost: " + host +
         "\r\nOrigin: http://" + host + "\r\nX-Blindswap: 1\r\nCookie: blindswap_" + Hosted::role_of(person) +
         "=" + hosted.code_of(person) +
         "\r\nContent-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) +
         "\r\nConnection: close\r\n\r\n" + body;
}

void damage(std::string& bytes, stats::Random& random) {
  const auto place = [&] { return random.below(static_cast<std::uint32_t>(bytes.size())); };
  const std::uint32_t changes = random.below(4);
  for (std::uint32_t i = 0; i < changes && bytes.size() > 2; ++i) {
    switch (random.below(6)) {
      case 0:
        bytes[place()] = static_cast<char>(random.below(256));
        break;
      case 1:
        bytes.erase(place(), 1 + random.below(8));
        break;
      case 2:
        bytes.insert(place(), bytes.substr(place(), random.below(40)));
        break;
      case 3:
        bytes.insert(place(), random.below(300), static_cast<char>(random.below(256)));
        break;
      case 4:
        bytes.resize(1 + place());
        break;
      default:
        bytes.insert(bytes.size() - 1, random.below(2) == 0 ? "{\"a\":[" : "99999999999999999999");
        break;
    }
  }
}

// The sitting is over, so that no request, whole or not, has anything left to change.
TEST(HostileRequests, LeaveTheRecordAsItIsAndTheHostServing) {
  Hosted hosted;
  hosted.held.sitting.begin();
  hosted.held.play_and_answer("A");
  hosted.held.sitting.end_early("the organiser", "for a test", false);
  const std::string head = hosted.held.sitting.head();
  std::atomic<int> answered = 0, refused = 0;
  const auto attack = [&](std::uint64_t seed) {
    stats::Random random(seed);
    for (int i = 0; i < how_many() / attackers; ++i) {
      std::string bytes = whole_request(hosted, random);
      damage(bytes, random);
      const RawConnection connection(hosted.host.port());
      ASSERT_TRUE(connection.connected()) << i;
      connection.send_bytes(bytes);
      if (random.below(8) == 0) continue;  // gone before the reply
      const std::string reply = connection.reply();
      answered += reply.starts_with("HTTP/1.1 ");
      refused += reply.starts_with("HTTP/1.1 4");
      EXPECT_FALSE(reply.starts_with("HTTP/1.1 5")) << bytes << "\n" << reply;
    }
  };
  std::vector<std::thread> threads;
  for (std::uint64_t seed = 1; seed <= attackers; ++seed) threads.emplace_back(attack, seed);
  for (std::thread& thread : threads) thread.join();
  EXPECT_GT(answered, how_many() / 3);
  EXPECT_GT(refused, how_many() / 5);
  EXPECT_EQ(hosted.held.sitting.head(), head);
  EXPECT_EQ(hosted.get("ann", "/listener/view"), 200);
}

// A request in the body of a refused one, where the library has thrown away what it had read, is not answered.
TEST(HostileRequests, HideNoneInARefusedOne) {
  Hosted hosted;
  const std::string host = "127.0.0.1:" + std::to_string(hosted.host.port()),
                    inner = "POST /listener/note HTTP/1.1\r\nHost: " + host + "\r\nOrigin: http://" + host +
                            "\r\nX-Blindswap: 1\r\nCookie: blindswap_listener=" + hosted.code_of("ann") +
                            "\r\nContent-Length: 13\r\n\r\n{\"words\":\"x\"}",
                    head = hosted.held.sitting.head();
  std::string outer = "POST /listener/note HTTP/1.1\r\nHost: " + host +
                      "\r\nOrigin: http://elsewhere\r\nContent-Length: 9000\r\n\r\n";
  outer.resize(4096, ' ');
  const RawConnection connection(hosted.host.port());
  connection.send_bytes(outer + inner + std::string(100, ' '));
  std::string replies;
  for (int i = 0; i < 50; ++i) replies += connection.reply();
  EXPECT_TRUE(replies.starts_with("HTTP/1.1 403")) << replies;
  EXPECT_EQ(replies.find("HTTP/1.1 200"), std::string::npos) << replies;
  EXPECT_EQ(hosted.held.sitting.head(), head);
}

// Half requests kept open, fewer than there are threads, take none away from the others.
TEST(HostileRequests, SlowOnesDoNotKeepOthersWaiting) {
  Hosted hosted;
  hosted.held.sitting.begin();
  hosted.held.play();
  hosted.host.tick();
  std::vector<std::unique_ptr<RawConnection>> slow;
  for (int i = 0; i < 60; ++i) {
    slow.push_back(std::make_unique<RawConnection>(hosted.host.port()));
    slow.back()->send_bytes("POST /listener/answer HTTP/1.1\r\nHost: 127");
  }
  EXPECT_EQ(hosted.act("ann", "answer", {{"trial", 1}, {"answer", "A"}}), 200);
  slow.clear();
  EXPECT_EQ(hosted.act("bob", "answer", {{"trial", 1}, {"answer", "B"}}), 200);
}

}  // namespace
}  // namespace web
