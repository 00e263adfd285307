#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "independent/python.h"
#include "sitting/held_sitting.h"
#include "sitting/simulated/rehearsal.h"

namespace {

using nlohmann::json;
using namespace sitting;

json account_of(const plan::Plan& plan, const plan::SealedPlan& sealed, const EventLog& log) {
  json chains = json::array();
  for (int number = 0; number <= static_cast<int>(plan.sittings.size()); ++number) {
    json chain = json::array();
    for (const LoggedEvent& event : log.events(number)) chain.push_back({event.text, event.head_hex});
    chains.push_back(chain);
  }
  return {{"plan", sealed.text},
          {"seed", seal::to_hex(sealed.seed)},
          {"commitment", seal::to_hex(sealed.commitment)},
          {"chains", chains}};
}

/// A live sitting with everything in it, and a paper one that ends early.
json full_account() {
  plan::Plan plan = sample_plan("abx", 2, 3, 2);
  plan.name = "Étude № 1 \"\\\"";
  plan.sittings.push_back(plan.sittings.front());
  HeldSitting held(plan);
  record_shown(held.log, held.sealed, held.clock.reading(), "zoë", "letter\nby post");
  held.sitting.open("live");
  held.sitting.contribute("bob", "ü\"\\\n\x01/\U0001F3A7\x7f");
  held.sitting.begin();
  held.play();
  held.sitting.spoil("helper", 1, "other", "a wasp");
  held.play();
  held.sitting.answer("ann", 2, "A", "guess", "");
  held.sitting.answer("ann", 2, "B", "certain", "");
  held.sitting.close_trial();
  while (held.sitting.look().next.trial != 0) held.play_and_answer("B");
  held.sitting.end();
  Sitting second(plan, held.sealed, 2, held.log, held.clock.reading());
  second.open("paper");
  second.begin();
  second.key_time(3, 2, "½ past 7");
  second.answer("ann", 3, "A", "", "");
  second.end_early("bob", "fire", false);
  unseal(held.log, plan, held.sealed, held.clock.reading());
  return account_of(plan, held.sealed, held.log);
}

std::string python_says(const json& account) {
  const auto lines = lines_from_python("chain.py", account.dump() + "\n");
  return lines.size() == 1 ? lines[0] : "(" + std::to_string(lines.size()) + " lines)";
}

std::string expected(const json& account) {
  std::size_t events = 0;
  std::string heads;
  for (const json& chain : account["chains"]) {
    events += chain.size();
    heads += " " + chain.back()[1].get<std::string>();
  }
  return "ok " + std::to_string(events) + heads;
}

// Commitment, canonical bytes, hash chains, presented tags and disclosure, checked by another program in another language.
TEST(IndependentChain, FindsAWholePlanInOrder) {
  const json account = full_account();
  EXPECT_EQ(python_says(account), expected(account));
}

TEST(IndependentChain, FindsRehearsedPlansOfEveryProtocolInOrder) {
  std::string input;
  std::vector<std::string> expectations;
  for (const auto* protocol : protocols::catalogue())
    for (std::uint64_t seed = 0; seed < 10; ++seed) {
      const plan::Plan plan = sample_plan(protocol->name(), 3, 6, 2);
      const plan::SealedPlan sealed = sealed_with(plan, seal::sha256("seed " + std::to_string(seed)));
      Guesser ann(seed);
      Hearer bob(seed, 0.7);
      MemoryLog log;
      rehearse_plan(log, plan, sealed, {&ann, &bob});
      const json account = account_of(plan, sealed, log);
      input += account.dump() + "\n";
      expectations.push_back(expected(account));
    }
  EXPECT_EQ(lines_from_python("chain.py", input), expectations);
}

// The golden head of tests/sitting/chain_test.cpp.
TEST(IndependentChain, GivesTheGoldenHead) {
  HeldSitting held;
  held.sitting.open("live");
  held.sitting.contribute("ann", "k7");
  held.sitting.contribute("bob", "ü\"");
  held.sitting.begin();
  for (int trial = 0; trial < 4; ++trial) held.play_and_answer(trial % 2 == 0 ? "A" : "B");
  held.sitting.end();
  unseal(held.log, held.plan, held.sealed, held.clock.reading());
  const std::string said = python_says(account_of(held.plan, held.sealed, held.log));
  EXPECT_TRUE(said.starts_with("ok 27 ")) << said;
  EXPECT_TRUE(said.ends_with(" 52f839d4e189680fa8a12ad975a689a62464c262bb543016127afcac415a3938")) << said;
}

TEST(IndependentChain, FindsWhatWasChanged) {
  const json good = full_account();
  std::string input;
  std::vector<std::string> expectations;
  const auto expect = [&](auto change, const std::string& said) {
    json account = good;
    change(account);
    input += account.dump() + "\n";
    expectations.push_back(said);
  };
  const auto replace = [](json& text, const std::string& from, const std::string& to) {
    std::string words = text;
    words.replace(words.find(from), from.size(), to);
    text = words;
  };
  expect([&](json& a) { replace(a["plan"], "\"level\":\"0.05\"", "\"level\":\"0.10\""); },
         "plan and seed do not give the commitment");
  expect([&](json& a) { replace(a["plan"], ":", ": "); }, "the plan is not in canonical form");
  expect([&](json& a) { a["seed"] = std::string(64, '0'); }, "plan and seed do not give the commitment");
  expect([&](json& a) { replace(a["chains"][1][9][0], "2000-", "2001-"); },
         "sitting 1, event 10: does not fit the chain");
  expect([&](json& a) { a["chains"][1].erase(3); }, "sitting 1, event 4: does not fit the chain");
  expect([&](json& a) { a["chains"][2].erase(a["chains"][2].size() - 1); },
         "something else was disclosed at unsealing");
  EXPECT_EQ(lines_from_python("chain.py", input), expectations);
}

}  // namespace
