#include "web/host.h"

#include <gtest/gtest.h>
#include <httplib.h>

#include <mutex>
#include <set>
#include <thread>

#include "web/hosted.h"

namespace web {
namespace {

TEST(Host, HoldsAWholeSitting) {
  Hosted hosted;
  EXPECT_EQ(hosted.act("ann", "contribute", {{"characters", "x7"}}), 200);
  EXPECT_EQ(hosted.act("bob", "contribute", {{"characters", "q"}}), 200);
  EXPECT_EQ(hosted.act("helper", "declare", {{"moment", "start"}, {"kept", true}}), 200);
  EXPECT_EQ(hosted.act("helper", "begin"), 200);
  for (int trial = 1; trial <= 4; ++trial) {
    for (int i = 0; i < 3; ++i) hosted.present();
    EXPECT_EQ(hosted.view("ann")["phase"], "answer");
    EXPECT_EQ(hosted.act("ann", "answer", {{"trial", trial}, {"answer", "A"}, {"sureness", "guess"}}), 200);
    EXPECT_EQ(hosted.act("ann", "answer", {{"trial", trial}, {"answer", "A"}}), 200) << "sent twice";
    EXPECT_EQ(hosted.act("bob", "answer", {{"trial", trial}, {"answer", "B"}}), 200);
  }
  EXPECT_EQ(hosted.get("organiser", "/organiser/report"), 409);
  EXPECT_EQ(hosted.act("organiser", "unseal"), 409);
  EXPECT_EQ(hosted.act("organiser", "end"), 200);
  EXPECT_EQ(hosted.act("organiser", "unseal"), 200);
  EXPECT_EQ(hosted.get("organiser", "/organiser/report"), 200);
  hosted.host.tick();
  EXPECT_EQ(hosted.view("ann")["phase"], "over");
  EXPECT_EQ(hosted.held.sitting.state().settled_trials(), 4);
  EXPECT_EQ(hosted.held.sitting.state().at(1).answers.at("ann").sureness, "guess");
}

// Listeners are told nothing between ticks: not even that something happened.
TEST(Host, ReleasesToListenersOnTicksOnly) {
  Hosted hosted;
  hosted.held.sitting.begin();
  const json before = hosted.view("ann");
  hosted.held.sitting.present_next();
  EXPECT_EQ(hosted.act("helper", "note", {{"words", "a lorry"}}), 200);
  EXPECT_EQ(hosted.view("ann"), before);
  hosted.host.tick();
  EXPECT_EQ(hosted.view("ann")["heard"], 1);
}

TEST(Host, LetsEachRoleReachItsOwnAndNothingElse) {
  Hosted hosted;
  hosted.held.sitting.begin();
  hosted.host.tick();
  const std::vector<std::string> reads = {"/listener/view",  "/helper/view",      "/helper/tagging-list",
                                          "/organiser/view", "/organiser/report", "/organiser/links"};
  for (const std::string person : {"ann", "helper", "organiser"})
    for (const std::string& path : reads) {
      const bool own = path.starts_with("/" + Hosted::role_of(person) + "/");
      const int status = hosted.get(person, path);
      EXPECT_EQ(status != 403, own) << person << " " << path << " " << status;
    }
  for (const std::string person : {"ann", "helper", "organiser"})
    for (const std::string role : {"listener", "helper", "organiser"})
      if (role != Hosted::role_of(person)) {
        EXPECT_EQ(hosted.get(person, "/" + role + "/events"), 403) << person << " " << role;
      }
  const std::map<std::string, std::vector<std::string>> actions = {
      {"listener", {"contribute", "declare", "answer", "note", "spoil", "rest", "cue"}},
      {"helper",
       {"declare", "tagged", "fact", "level", "rehearse", "begin", "ready", "close", "spoil", "rest",
        "note"}},
      {"organiser", {"end", "end-early", "handover", "unseal"}}};
  const std::string head = hosted.held.sitting.head();
  for (const std::string person : {"ann", "helper", "organiser"})
    for (const auto& [role, names] : actions)
      for (const std::string& name : names)
        if (role != Hosted::role_of(person)) {
          EXPECT_EQ(hosted.post(person, "/" + role + "/" + name, json::object()), 403)
              << person << " " << role << name;
        }
  EXPECT_EQ(hosted.held.sitting.head(), head);
}

TEST(Host, GivesTheHelperNoAnswerAndNoCablesName) {
  Hosted hosted;
  hosted.held.sitting.begin();
  hosted.held.play_and_answer("B");
  hosted.host.tick();
  const std::string shown = hosted.view("helper").dump();
  for (const plan::Specimen& specimen : hosted.held.plan.specimens)
    EXPECT_EQ(shown.find(specimen.cable), std::string::npos) << shown;
  EXPECT_EQ(shown.find("answer"), std::string::npos) << shown;
}

TEST(Host, EntersByCodeAndRefusesWrongOnes) {
  Hosted hosted;
  const auto enter = [&](const std::string& role, const std::string& code) {
    return hosted.client().Post("/" + role + "/enter", hosted.headers("ann"), json{{"code", code}}.dump(),
                                "application/json");
  };
  const auto entered = enter("listener", hosted.codes.listeners.at("ann"));
  EXPECT_EQ(entered->status, 200);
  EXPECT_EQ(entered->get_header_value("Set-Cookie"),
            "blindswap_listener=" + std::string(32, 'c') + "; Path=/listener; HttpOnly; SameSite=Strict");
  const auto begun = std::chrono::steady_clock::now();
  EXPECT_EQ(enter("helper", hosted.codes.listeners.at("ann"))->status, 403);
  EXPECT_GE(std::chrono::steady_clock::now() - begun, std::chrono::seconds(1)) << "guesses are slowed";
}

// Another link opened in the same browser takes the pass of the first: the page shown is no longer its owner's.
TEST(Host, RefusesAPageThatIsNoLongerItsOwners) {
  Hosted hosted;
  EXPECT_EQ(hosted.act("bob", "note", {{"words", "x"}, {"as", "ann"}}), 409);
  EXPECT_EQ(hosted.act("ann", "note", {{"words", "x"}, {"as", "ann"}}), 200);
}

TEST(Host, TriesAgainWhatCouldNotBeKept) {
  Hosted hosted;
  hosted.held.sitting.begin();
  hosted.held.ready();
  sitting::Sitting elsewhere{hosted.held.plan, hosted.held.sealed, 1, hosted.held.log,
                             hosted.held.clock.reading()};
  elsewhere.note("helper", "another writer was first");
  hosted.held.clock.pass(std::chrono::seconds(60));
  hosted.host.tick();
  EXPECT_NE(hosted.view("helper")["trouble"], "");
  EXPECT_EQ(hosted.view("ann")["heard"], 0);
  hosted.host.tick();
  EXPECT_EQ(hosted.view("helper")["trouble"], "");
  EXPECT_EQ(hosted.view("ann")["heard"], 1);
}

TEST(Host, ServesOnOneAddressOfThisComputer) {
  Hosted hosted;
  for (const char* nowhere : {"0.0.0.0", "::1", "localhost", ""})
    EXPECT_THROW(
        Host(hosted.held.sitting, hosted.held.sitting, hosted.desk, hosted.codes, {.interface = nowhere}),
        text::BadInput)
        << nowhere;
}

TEST(Host, RefusesWhatDoesNotComeFromItsPages) {
  Hosted hosted;
  const std::string head = hosted.held.sitting.head(), body = json{{"characters", "x"}}.dump();
  const auto status_with = [&](const std::string& name, const std::string& value) {
    httplib::Headers headers = hosted.headers("ann");
    headers.erase(name);
    if (!value.empty()) headers.emplace(name, value);
    return hosted.client().Post("/listener/contribute", headers, body, "application/json")->status;
  };
  EXPECT_EQ(status_with("Origin", ""), 403);
  EXPECT_EQ(status_with("Origin", "http://elsewhere"), 403);
  EXPECT_EQ(status_with("X-Blindswap", ""), 403);
  EXPECT_EQ(status_with("Cookie", "blindswap_listener=x"), 403);
  EXPECT_EQ(status_with("Host", "rebound.example"), 421);
  EXPECT_EQ(hosted.held.sitting.head(), head);
  EXPECT_EQ(status_with("None", ""), 200);
}

TEST(Host, RefusesMalformedAndOversizedBodies) {
  Hosted hosted;
  const std::string head = hosted.held.sitting.head();
  for (const std::string& body :
       {std::string(), std::string("{"), std::string("[]"), std::string("{\"characters\":1}"),
        std::string("{\"characters\":{\"a\":1}}"), std::string("{\"characters\":\"\xff\"}"),
        std::string(3, '\0'), "{\"characters\":\"" + std::string(100, 'x') + "\"}"})
    EXPECT_EQ(
        hosted.client().Post("/listener/contribute", hosted.headers("ann"), body, "application/json")->status,
        400)
        << body;
  const std::string large(20000, ' ');
  EXPECT_EQ(
      hosted.client().Post("/listener/contribute", hosted.headers("ann"), large, "application/json")->status,
      413);
  const auto in_pieces = [](std::size_t, httplib::DataSink& sink) { return sink.done(), true; };
  EXPECT_EQ(hosted.client()
                .Post("/listener/contribute", hosted.headers("ann"), in_pieces, "application/json")
                ->status,
            411);
  EXPECT_EQ(hosted.act("ann", "no-such-action"), 404);
  EXPECT_EQ(hosted.get("ann", "/listener/../helper/view"), 404);
  EXPECT_EQ(hosted.held.sitting.head(), head);
}

TEST(Host, SendsItsHeadersWithEveryPage) {
  Hosted hosted;
  for (const char* path :
       {"/", "/listener", "/helper", "/organiser", "/pages/page.css", "/pages/listener.js"}) {
    const auto page = hosted.client().Get(path);
    ASSERT_EQ(page->status, 200) << path;
    EXPECT_EQ(page->get_header_value("Content-Security-Policy"),
              "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
    EXPECT_EQ(page->get_header_value("X-Content-Type-Options"), "nosniff");
    EXPECT_EQ(page->body.find("<script>"), std::string::npos) << path;
    EXPECT_EQ(page->body.find("style=\""), std::string::npos) << path;
    EXPECT_EQ(page->body.find("https://"), std::string::npos) << path;
  }
}

TEST(Host, StreamsEachReleaseAndEndsWithTheHost) {
  auto hosted = std::make_unique<Hosted>();
  std::mutex mutex;
  std::string received;
  const auto has_come = [&](const std::string& words) {
    for (int i = 0; i < 5000; ++i) {
      {
        const std::lock_guard lock(mutex);
        if (received.find(words) != std::string::npos) return true;
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return false;
  };
  std::thread reader([&, port = hosted->host.port(), headers = hosted->headers("ann")] {
    httplib::Client("127.0.0.1", port)
        .Get("/listener/events", headers, [&](const char* data, std::size_t length) {
          const std::lock_guard lock(mutex);
          received.append(data, length);
          return true;
        });
  });
  EXPECT_TRUE(has_come("\"heard\":0"));
  EXPECT_NE(hosted->host.state_line().find("1 of 2 listeners connected"), std::string::npos);
  hosted->held.sitting.begin();
  hosted->held.sitting.present_next();
  hosted->host.tick();
  EXPECT_TRUE(has_come("\"heard\":1"));
  hosted.reset();
  reader.join();
}

// The same acts for other orders: every byte a listener is released is the same, tick by tick.
TEST(Host, ReleasesTheSameBytesForEverySeed) {
  std::set<std::string> seen, orders;
  for (const std::string seed : {"one", "two", "three"}) {
    Hosted hosted(seed);
    std::string bytes;
    const auto tick = [&] {
      hosted.host.tick();
      for (const std::string listener : {"ann", "bob"})
        bytes += hosted.client().Get("/listener/view", hosted.headers(listener))->body + "\n";
    };
    hosted.act("helper", "begin");
    for (int trial = 1; trial <= 4; ++trial) {
      for (int i = 0; i < 3; ++i) hosted.present(), tick();
      bytes += std::to_string(hosted.act("ann", "answer", {{"trial", trial}, {"answer", "A"}}));
      bytes += std::to_string(hosted.act("bob", "answer", {{"trial", trial + 1}, {"answer", "B"}}));
      tick();
      hosted.act("helper", "close");
      tick();
    }
    seen.insert(bytes);
    std::string order;
    for (const auto& trial : hosted.held.sitting.sheet())
      order += std::to_string(trial.steps[2].tag == trial.steps[0].tag);
    orders.insert(order);
  }
  EXPECT_EQ(seen.size(), 1u);
  EXPECT_EQ(orders.size(), 3u);
}

/// What ann's device receives on its stream, cut where the host ticks.
class Recording {
 public:
  explicit Recording(const Hosted& hosted)
      : reader_([this, port = hosted.host.port(), headers = hosted.headers("ann")] {
          httplib::Client("127.0.0.1", port)
              .Get("/listener/events", headers, [this](const char* data, std::size_t length) {
                const std::lock_guard lock(mutex_);
                bytes_.append(data, length);
                return true;
              });
        }) {}
  ~Recording() { reader_.join(); }

  /// Waits for the view that ann is shown now, and marks the tick.
  void cut(const Hosted& hosted) {
    const std::string last = "data: " + hosted.view("ann").dump() + "\n\n";
    for (int i = 0; i < 5000; ++i) {
      {
        const std::lock_guard lock(mutex_);
        if (bytes_.ends_with(last) || (bytes_.ends_with("|tick\n") && shown_ == last)) {
          bytes_ += "|tick\n";
          shown_ = last;
          return;
        }
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    ADD_FAILURE() << "the stream never showed " << last;
  }
  std::string bytes() {
    const std::lock_guard lock(mutex_);
    return bytes_;
  }

 private:
  std::mutex mutex_;
  std::string bytes_, shown_;
  std::thread reader_;
};

// The stream itself, byte by byte and tick by tick, is the same for two orders.
TEST(Host, StreamsTheSameBytesAtTheSameTicksForEverySeed) {
  std::set<std::string> streams, tags;
  for (const std::string seed : {"one", "two"}) {
    auto hosted = std::make_unique<Hosted>(seed);
    Recording recording(*hosted);
    const auto tick = [&] {
      hosted->host.tick();
      recording.cut(*hosted);
    };
    tick();
    hosted->act("ann", "contribute", {{"characters", "x7"}});
    hosted->act("helper", "begin");
    tick();
    for (int trial = 1; trial <= 4; ++trial) {
      for (int i = 0; i < 3; ++i) hosted->present(), tick();
      hosted->act("bob", "answer", {{"trial", trial}, {"answer", "B"}});
      tick();
      hosted->act("ann", "answer", {{"trial", trial}, {"answer", "A"}, {"sureness", "certain"}});
      if (trial == 2) hosted->act("ann", "rest");
      tick();
    }
    streams.insert(recording.bytes());
    tags.insert(hosted->view("helper")["tags"].dump());
    hosted.reset();
  }
  EXPECT_EQ(streams.size(), 1u);
  EXPECT_GT(streams.begin()->size(), 5000u);
  EXPECT_EQ(tags.size(), 2u);
}

}  // namespace
}  // namespace web
