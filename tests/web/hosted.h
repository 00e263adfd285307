#pragma once

#include <gtest/gtest.h>
#include <httplib.h>

#include <nlohmann/json.hpp>

#include "sitting/held_sitting.h"
#include "text/error.h"
#include "web/host.h"

namespace web {

using nlohmann::json;
using sitting::HeldSitting;

/// The organiser's part of a sitting that stands in no file.
class DeskWithoutFile : public OrganiserDesk {
 public:
  explicit DeskWithoutFile(sitting::Sitting& sitting) : sitting_(sitting) {}
  std::string title() const override { return "pilot <b>, sitting 1"; }
  std::string commitment_hex() const override { return std::string(64, '0'); }
  std::string head_hex() const override { return sitting_.state().ended ? sitting_.head() : ""; }
  bool is_unsealed() const override { return unsealed_; }
  void end() override { sitting_.end(); }
  void end_early(const std::string& who, const std::string& reason, bool had_seen) override {
    sitting_.end_early(who, reason, had_seen);
  }
  void hand_over_head(const std::string&, const std::string&) override {}
  void unseal() override {
    if (!sitting_.state().ended) throw text::NotNow("not yet");
    unsealed_ = true;
  }
  std::string report_html() const override {
    if (!unsealed_) throw text::NotNow("the plan is sealed");
    return "<p>report";
  }

 private:
  sitting::Sitting& sitting_;
  bool unsealed_ = false;
};

/// A hosted sitting of four trials and two listeners, under a clock moved by hand.
struct Hosted {
  explicit Hosted(const std::string& seed = "a seed", const plan::Plan& plan = sample_plan("abx", 1, 4, 2))
      : held(plan, seed) {
    held.sitting.open("live");
  }

  HeldSitting held;
  DeskWithoutFile desk{held.sitting};
  Codes codes{.helper = std::string(32, 'a'),
              .organiser = std::string(32, 'b'),
              .listeners = {{"ann", std::string(32, 'c')}, {"bob", std::string(32, 'd')}}};
  Host host{held.sitting, held.sitting, desk, codes, {}};

  httplib::Client client() const { return httplib::Client("127.0.0.1", host.port()); }

  std::string code_of(const std::string& person) const {
    return person == "helper"      ? codes.helper
           : person == "organiser" ? codes.organiser
                                   : codes.listeners.at(person);
  }
  static std::string role_of(const std::string& person) {
    return person == "helper" || person == "organiser" ? person : "listener";
  }

  httplib::Headers headers(const std::string& person) const {
    return {{"Origin", "http://127.0.0.1:" + std::to_string(host.port())},
            {"X-Blindswap", "1"},
            {"Cookie", "blindswap_" + role_of(person) + "=" + code_of(person)}};
  }

  int post(const std::string& person, const std::string& path, const json& fields) const {
    const auto reply = client().Post(path, headers(person), fields.dump(), "application/json");
    return reply ? reply->status : -1;
  }
  int act(const std::string& person, const std::string& action, const json& fields = json::object()) const {
    return post(person, "/" + role_of(person) + "/" + action, fields);
  }
  int get(const std::string& person, const std::string& path) const {
    const auto reply = client().Get(path, headers(person));
    return reply ? reply->status : -1;
  }
  json view(const std::string& person) const {
    return json::parse(client().Get("/" + role_of(person) + "/view", headers(person))->body);
  }

  /// The helper connects, the swap's time passes, the host ticks.
  void present() {
    const json next = view("helper")["next"];
    EXPECT_EQ(act("helper", "ready", {{"trial", next["trial"]}, {"presentation", next["presentation"]}}),
              200);
    held.clock.pass(std::chrono::seconds(60));
    host.tick();
  }
};

}  // namespace web
