#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "protocols/catalogue.h"
#include "refusal.h"

namespace protocols {
namespace {

Seed seed_of(int number) {
  Seed seed{};
  seed[0] = static_cast<unsigned char>(number);
  seed[1] = static_cast<unsigned char>(number >> 8);
  return seed;
}

const Shape shape{4, {{0, 1}, {0, 2}, {0, 3}}, 5, 2};

TEST(Catalogue, NamesAndRulesAreDistinctAndFound) {
  std::set<std::string_view> names, rules;
  for (const Protocol* protocol : catalogue()) {
    names.insert(protocol->name());
    rules.insert(protocol->order_rule());
    EXPECT_EQ(find(protocol->name()), protocol);
    EXPECT_EQ(find_rule(protocol->order_rule()), protocol);
  }
  EXPECT_EQ(names.size(), catalogue().size());
  EXPECT_EQ(rules.size(), catalogue().size());
  EXPECT_EQ(find("guess"), nullptr);
  EXPECT_EQ(find_rule("abx-0"), nullptr);
}

class EveryProtocol : public testing::TestWithParam<const Protocol*> {};

TEST_P(EveryProtocol, DrawsWhatTheShapeAsksFor) {
  for (int number = 0; number < 200; ++number) {
    const Order order = GetParam()->draw(shape, seed_of(number));
    ASSERT_EQ(order.tags.size(), 4u);
    EXPECT_EQ(std::set<int>(order.tags.begin(), order.tags.end()).size(), 4u);
    for (const int tag : order.tags) EXPECT_TRUE(tag >= 100 && tag <= 999) << tag;
    ASSERT_EQ(order.trials.size(), 21u);
    for (std::size_t i = 0; i < order.trials.size(); ++i) {
      const Trial& trial = order.trials[i];
      EXPECT_EQ(trial.number, static_cast<int>(i) + 1);
      EXPECT_EQ(trial.spare, i % 7 >= 5);
      EXPECT_EQ(trial.comparison, order.trials[i - i % 7].comparison);
      EXPECT_EQ(trial.sides.size(), GetParam()->labels(trial.number).size());
    }
  }
}

TEST_P(EveryProtocol, IsAPureFunctionOfSeedAndShape) {
  const Order one = GetParam()->draw(shape, seed_of(5));
  const Order again = GetParam()->draw(shape, seed_of(5));
  const Order other = GetParam()->draw(shape, seed_of(6));
  EXPECT_EQ(one.tags, again.tags);
  EXPECT_NE(one.tags, other.tags);
  for (std::size_t i = 0; i < one.trials.size(); ++i) EXPECT_EQ(one.trials[i].sides, again.trials[i].sides);
}

TEST_P(EveryProtocol, CoinsAreFairAndIndependentOfTheTrialBefore) {
  int heads = 0, repeats = 0, pairs = 0, trials = 0;
  for (int number = 0; number < 500; ++number) {
    const Order order = GetParam()->draw(shape, seed_of(number));
    for (std::size_t i = 0; i < order.trials.size(); ++i) {
      heads += order.trials[i].coin;
      ++trials;
      if (i > 0) {
        repeats += order.trials[i].coin == order.trials[i - 1].coin;
        ++pairs;
      }
    }
  }
  EXPECT_NEAR(heads, trials / 2.0, 5 * 0.5 * std::sqrt(trials));
  EXPECT_NEAR(repeats, pairs / 2.0, 5 * 0.5 * std::sqrt(pairs));
}

TEST_P(EveryProtocol, RefusesAnImpossibleShape) {
  const auto refused = [&](const Shape& impossible) {
    return refusal([&] { GetParam()->draw(impossible, seed_of(0)); });
  };
  EXPECT_EQ(refused({2, {}, 5, 2}), "shape of a sitting: there must be at least one comparison");
  EXPECT_EQ(refused({2, {{0, 1}}, 0, 2}), "shape of a sitting: trials_each must be 1 or more, got 0");
  EXPECT_EQ(refused({2, {{0, 1}}, 5, -1}), "shape of a sitting: spares_each must be 0 or more, got -1");
  EXPECT_EQ(refused({901, {{0, 1}}, 5, 2}), "shape of a sitting: specimens must be 1 to 900, got 901");
  EXPECT_EQ(refused({2, {{0, 2}}, 5, 2}),
            "shape of a sitting: a comparison needs two different specimens below 2, got 0 and 2");
  EXPECT_EQ(refused({2, {{1, 1}}, 5, 2}),
            "shape of a sitting: a comparison needs two different specimens below 2, got 1 and 1");
}

INSTANTIATE_TEST_SUITE_P(Protocols, EveryProtocol, testing::ValuesIn(catalogue().begin(), catalogue().end()),
                         [](const auto& instance) { return std::string(instance.param->name()); });

TEST(Abx, EachTrialPlaysBothReferencesAndOneOfThemAgain) {
  const Protocol& abx = *find("abx");
  for (int number = 0; number < 100; ++number)
    for (const Trial& trial : abx.draw(shape, seed_of(number)).trials) {
      EXPECT_NE(trial.sides[0], trial.sides[1]);
      const auto labels = abx.labels(trial.number);
      const std::size_t place_of_right =
          labels[0] == abx.answers()[static_cast<std::size_t>(trial.coin)] ? 0 : 1;
      EXPECT_EQ(trial.sides[2], trial.sides[place_of_right]);
    }
}

TEST(Abx, WhichCableIsAIsFixedWithinAComparison) {
  const Protocol& abx = *find("abx");
  std::set<int> sides_of_a;
  for (int number = 0; number < 50; ++number) {
    const Order order = abx.draw(shape, seed_of(number));
    for (const Trial& trial : order.trials) {
      const auto side_of_a = [&](const Trial& t) { return t.sides[abx.labels(t.number)[0] == "A" ? 0 : 1]; };
      const Trial& block_start = order.trials[static_cast<std::size_t>((trial.number - 1) / 7 * 7)];
      EXPECT_EQ(side_of_a(trial), side_of_a(block_start));
      sides_of_a.insert(side_of_a(trial));
    }
  }
  EXPECT_EQ(sides_of_a.size(), 2u);
}

TEST(Preference, AnAnswerThatScoresIsForTheFirstNamedCable) {
  for (const Trial& trial : find("preference")->draw(shape, seed_of(1)).trials)
    EXPECT_EQ(trial.sides[static_cast<std::size_t>(trial.coin)], 0);
}

}  // namespace
}  // namespace protocols
