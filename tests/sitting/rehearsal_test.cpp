#include "sitting/simulated/rehearsal.h"

#include <gtest/gtest.h>

#include "plan/requirement.h"
#include "refusal.h"
#include "sitting/held_sitting.h"
#include "sitting/unsealed_sitting.h"
#include "text/time.h"

namespace sitting {
namespace {

TEST(Rehearsal, PlaysAWholePlanFromSealingToUnsealing) {
  plan::Plan plan = sample_plan("abx", 2, 5, 2);
  plan.sittings.push_back({{1}, 4, {1}});
  const plan::SealedPlan sealed = sealed_with(plan, seal::sha256("a seed"));
  Hearer ann(1, 1.0);
  Guesser bob(2);
  MemoryLog log;
  rehearse_plan(log, plan, sealed, {&ann, &bob});
  EXPECT_TRUE(story_of(log, sealed).unsealed);
  int bob_right = 0, answered = 0;
  for (int number : {1, 2}) {
    const UnsealedSitting sitting(plan, sealed, number, log);
    EXPECT_TRUE(sitting.state().ended);
    for (const ScoredTrial& trial : sitting.trials()) {
      const bool counted = trial.fate == Fate::counted;
      EXPECT_EQ(trial.last.size(), !counted ? 0u : number == 1 ? 2u : 1u);
      if (!counted) continue;
      if (number == 1) {
        EXPECT_EQ(trial.last.at("ann"), trial.coin) << "who hears everything is always right";
      }
      bob_right += trial.last.at("bob") == trial.coin;
      ++answered;
    }
  }
  EXPECT_EQ(answered, 14);
  EXPECT_LT(bob_right, 14);
}

TEST(Rehearsal, TakesThePlansTime) {
  const plan::Plan plan = sample_plan("abx", 1, 12, 1);
  const plan::SealedPlan sealed = sealed_with(plan, seal::sha256("a seed"));
  Guesser ann(1);
  HandClock clock;
  MemoryLog log;
  Sitting sitting(plan, sealed, 1, log, clock.reading());
  rehearse(sitting, sealed, {&ann}, clock);
  const auto taken =
      *text::parse_rfc3339(sitting.state().ended_at) - *text::parse_rfc3339(sitting.state().opened_at);
  EXPECT_DOUBLE_EQ(std::chrono::duration<double>(taken).count() / 60, plan::minutes_of(plan, 1));
}

TEST(Rehearsal, NeedsEveryListener) {
  HeldSitting held;
  Guesser ann(1);
  EXPECT_EQ(refusal([&] { rehearse(held.sitting, held.sealed, {&ann}, held.clock); }),
            "a rehearsal needs 2 simulated listeners, got 1");
  EXPECT_EQ(held.events(), 0u);
}

}  // namespace
}  // namespace sitting
