#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "plan/sample_plan.h"
#include "refusal.h"
#include "seal/canonical_json.h"

namespace plan {
namespace {

using nlohmann::json;

Plan full_plan() {
  Plan plan = sample_plan("abx", 2, 16, 2);
  plan.specimens.push_back({"heavy-pair", "0.22", 3});
  plan.specimens.push_back({"heavy-pair", "", 0});
  plan.comparisons.push_back({0, 3, Kind::known_difference, "-0.24"});
  plan.comparisons.push_back({0, 4, Kind::identical_pair, ""});
  plan.sittings.push_back({{2, 3}, 12, {1}});
  plan.levels = "trimmed";
  plan.volume_step_db = "0.5";
  plan.excerpts = {{"Étude", "0:10", "0:25"}};
  return plan;
}

std::string text_of(const Plan& plan) { return seal::canonical_text(to_json(plan)); }

/// What `from_json` says after `change` was made to the full plan.
template <typename Change>
std::string refused(Change change) {
  json value = to_json(full_plan());
  change(value);
  return refusal([&] { from_json(value); });
}

// Golden: the text of a released format never changes, or old commitments could no longer be checked.
TEST(PlanJson, TextIsAsReleased) {
  EXPECT_EQ(
      text_of(full_plan()),
      R"({"attendance":"together","baseline":"heavy-pair","block_trials":12,"break_minutes":10,)"
      R"("comparisons":[{"first":0,"kind":"claim","predicted_difference_dB":"","second":1},)"
      R"({"first":0,"kind":"claim","predicted_difference_dB":"","second":2},)"
      R"({"first":0,"kind":"known difference","predicted_difference_dB":"-0.24","second":3},)"
      R"({"first":0,"kind":"identical pair","predicted_difference_dB":"","second":4}],"effect_share":"0.90",)"
      R"("excerpts":[{"end":"0:25","start":"0:10","title":"Étude"}],"family":"holm","format":"blindswap-plan-1",)"
      R"("judging":{"identical_pair_heard":true,"known_difference_not_heard":true,"separation_not_kept":true,)"
      R"("tags_or_trims_wrong":true},"level":"0.05","level_tolerance_dB":"0.1","levels":"trimmed",)"
      R"("listeners":["ann","bob"],"name":"pilot","order_rule":"abx-1","practice_trials":2,)"
      R"("presentation_seconds":15,"primary_test":"pooled","protocol":"abx","rig":"main",)"
      R"("sealed_at":"2031-05-01T19:30:00Z","seed_origin":"supplied",)"
      R"("sittings":[{"comparisons":[0,1],"listeners":[0,1],"trials_each":16},)"
      R"({"comparisons":[2,3],"listeners":[1],"trials_each":12}],"spares_each":2,)"
      R"("specimens":[{"cable":"heavy-pair","series_resistance_ohm":"","trim_steps":0},)"
      R"({"cable":"cable-1","series_resistance_ohm":"","trim_steps":0},)"
      R"({"cable":"cable-2","series_resistance_ohm":"","trim_steps":0},)"
      R"({"cable":"heavy-pair","series_resistance_ohm":"0.22","trim_steps":3},)"
      R"({"cable":"heavy-pair","series_resistance_ohm":"","trim_steps":0}],)"
      R"("stopping_rule":"fixed number of trials","swap_seconds":30,"trim_weighting":"","volume_step_dB":"0.5"})");
}

TEST(PlanJson, ReadsBackWhatItWrites) {
  const Plan plan = full_plan();
  EXPECT_EQ(text_of(from_json(seal::parse_canonical(text_of(plan)))), text_of(plan));
}

TEST(PlanJson, EveryFieldIsNeeded) {
  const json value = to_json(full_plan());
  for (const auto& [key, member] : value.items())
    EXPECT_EQ(refused([&key = key](json& changed) { changed.erase(key); }),
              "sealed plan: \"" + key + "\" is missing");
  EXPECT_EQ(refused([](json& changed) { changed["specimens"][0].erase("cable"); }),
            "sealed plan: \"cable\" is missing");
  EXPECT_EQ(refused([](json& changed) { changed["judging"].erase("identical_pair_heard"); }),
            "sealed plan: \"identical_pair_heard\" is missing");
}

TEST(PlanJson, EveryFieldIsOfItsType) {
  const json value = to_json(full_plan());
  for (const auto& [key, member] : value.items()) {
    if (key == "judging") continue;
    EXPECT_EQ(refused([&key = key](json& changed) {
                changed[key] = json::object({{"a", 1}});
              }),
              "sealed plan: \"" + key + "\" is of the wrong type");
  }
  EXPECT_EQ(refused([](json& changed) { changed["judging"] = 1; }),
            "sealed plan: \"tags_or_trims_wrong\" is missing");
}

TEST(PlanJson, NothingIsReadThatWouldBeWrittenOtherwise) {
  const std::string unlike = "sealed plan: a field is not known, or holds a value of the wrong type";
  EXPECT_EQ(refused([](json& changed) { changed["bonus"] = 1; }), unlike);
  EXPECT_EQ(refused([](json& changed) { changed["specimens"][1]["colour"] = "red"; }), unlike);
  EXPECT_EQ(refused([](json& changed) { changed["block_trials"] = true; }), unlike);
  EXPECT_EQ(refused([](json& changed) { changed["swap_seconds"] = 4294967326; }), unlike);  // 30 + 2^32
}

TEST(PlanJson, RefusesOtherFormatsAndKinds) {
  EXPECT_EQ(refused([](json& changed) { changed["format"] = "blindswap-plan-9"; }),
            "sealed plan: format \"blindswap-plan-9\" is not known; expected \"blindswap-plan-1\"");
  EXPECT_EQ(refused([](json& changed) { changed["comparisons"][0]["kind"] = "hunch"; }),
            "sealed plan: unknown kind of comparison \"hunch\"");
}

TEST(PlanJson, WhatIsReadHangsTogether) {
  EXPECT_EQ(refused([](json& changed) { changed["comparisons"][0]["second"] = 9; }),
            "sealed plan: a comparison's second specimen is 9; expected an index from 0 to 4");
  EXPECT_EQ(refused([](json& changed) { changed["sittings"][1]["listeners"] = {7}; }),
            "sealed plan: a sitting's listener is 7; expected an index from 0 to 1");
}

}  // namespace
}  // namespace plan
