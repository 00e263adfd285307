#include "plan/sitting_shape.h"

#include <gtest/gtest.h>

#include "plan/sample_plan.h"
#include "refusal.h"
#include "seal/commitment.h"

namespace plan {
namespace {

Plan two_sittings() {
  Plan plan = sample_plan("abx", 4, 6);
  plan.sittings = {{{0, 1}, 6, {0, 1, 2}}, {{3, 2}, 5, {2}}};
  return plan;
}

TEST(SittingShape, TagsOnlyWhatItUses) {
  const SittingShape shape = shape_of(two_sittings(), 2);
  EXPECT_EQ(shape.comparisons, (std::vector<int>{3, 2}));
  EXPECT_EQ(shape.specimens, (std::vector<int>{0, 4, 3}));
  EXPECT_EQ(shape.shape.specimens, 3);
  EXPECT_EQ(shape.shape.trials_each, 5);
  EXPECT_EQ(shape.shape.spares_each, 2);
  ASSERT_EQ(shape.shape.comparisons.size(), 2u);
  EXPECT_EQ(shape.shape.comparisons[0].first, 0);
  EXPECT_EQ(shape.shape.comparisons[0].second, 1);
  EXPECT_EQ(shape.shape.comparisons[1].second, 2);
}

TEST(SittingShape, RefusesSittingsThatAreNotThere) {
  EXPECT_EQ(refusal([] { shape_of(two_sittings(), 0); }), "sitting must be 1 to 2, got 0");
  EXPECT_EQ(refusal([] { part_of(two_sittings(), 3); }), "sitting must be 1 to 2, got 3");
}

TEST(OrderOf, IsTheRuleAppliedToTheSittingsOwnSeed) {
  const Plan plan = two_sittings();
  const seal::Digest seed = seal::sha256("a seed");
  const std::vector<std::string> characters = {"k7"};
  const auto order = order_of(plan, seed, 2, characters);
  const auto drawn = protocol_of(plan).draw(shape_of(plan, 2).shape, seal::order_seed(seed, characters, 2));
  EXPECT_EQ(order.tags, drawn.tags);
  ASSERT_EQ(order.trials.size(), 14u);
  for (std::size_t i = 0; i < order.trials.size(); ++i)
    EXPECT_EQ(order.trials[i].sides, drawn.trials[i].sides);
}

TEST(OrderOf, HangsOnTheListenersCharactersAndTheSitting) {
  const Plan plan = two_sittings();
  const seal::Digest seed = seal::sha256("a seed");
  const std::vector<std::string> one = {"k7", "", ""}, other = {"", "k7", ""};
  EXPECT_NE(order_of(plan, seed, 1, one).tags, order_of(plan, seed, 1, other).tags);
  EXPECT_NE(order_of(plan, seed, 1, one).tags, order_of(plan, seal::sha256("another"), 1, one).tags);
}

}  // namespace
}  // namespace plan
