#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "independent/python.h"
#include "plan/sample_plan.h"
#include "plan/sitting_shape.h"
#include "stats/random.h"

namespace {

using nlohmann::json;

struct Case {
  plan::Plan plan;
  seal::Digest seed;
  std::vector<std::string> characters;
  int sitting;
};

int number(stats::Random& random, int least, int most) {
  return least + static_cast<int>(random.below(static_cast<std::uint32_t>(most - least + 1)));
}

/// A plan with shared cables and several sittings of some of its comparisons, in any order.
plan::Plan random_plan(stats::Random& random) {
  const auto protocols = protocols::catalogue();
  const auto* protocol = protocols[random.below(static_cast<std::uint32_t>(protocols.size()))];
  plan::Plan plan =
      sample_plan(protocol->name(), number(random, 1, 9), number(random, 1, 20), number(random, 1, 8));
  plan.spares_each = number(random, 0, 4);
  for (plan::Comparison& comparison : plan.comparisons)
    if (number(random, 0, 2) == 0) std::swap(comparison.first, comparison.second);
  for (int extra = number(random, 0, 3); extra > 0; --extra) {
    plan::Part part = plan.sittings.front();
    random.shuffle(std::span(part.comparisons));
    part.comparisons.resize(
        static_cast<std::size_t>(number(random, 1, static_cast<int>(part.comparisons.size()))));
    part.listeners.resize(
        static_cast<std::size_t>(number(random, 1, static_cast<int>(part.listeners.size()))));
    part.trials_each = number(random, 1, 20);
    plan.sittings.push_back(part);
  }
  plan::check(plan);
  return plan;
}

Case random_case(stats::Random& random) {
  static const std::vector<std::string> pieces = {"", "k7", "ü€", "\"\\", "\n\t\x01", "/", "\U0001F3A7", " "};
  Case one{random_plan(random), {}, {}, 0};
  for (unsigned char& byte : one.seed) byte = static_cast<unsigned char>(random.below(256));
  one.sitting = number(random, 1, static_cast<int>(one.plan.sittings.size()));
  for (std::size_t i = 0; i < plan::part_of(one.plan, one.sitting).listeners.size(); ++i)
    one.characters.push_back(pieces[random.below(8)] + pieces[random.below(8)]);
  return one;
}

/// The program's order, in the form in which order.py prints its own.
json order_of(const Case& one) {
  const plan::SittingShape shape = plan::shape_of(one.plan, one.sitting);
  const protocols::Order order = plan::order_of(one.plan, one.seed, one.sitting, one.characters);
  json tags = json::array(), trials = json::array();
  for (std::size_t i = 0; i < order.tags.size(); ++i) tags.push_back({shape.specimens[i], order.tags[i]});
  for (const protocols::Trial& trial : order.trials) {
    const auto& pair = shape.shape.comparisons[static_cast<std::size_t>(trial.comparison)];
    json presented = json::array();
    for (const int side : trial.sides)
      presented.push_back(order.tags[static_cast<std::size_t>(side == 0 ? pair.first : pair.second)]);
    trials.push_back({{"number", trial.number},
                      {"comparison", shape.comparisons[static_cast<std::size_t>(trial.comparison)]},
                      {"coin", trial.coin},
                      {"spare", trial.spare},
                      {"sides", trial.sides},
                      {"tags", presented}});
  }
  return {{"tags", tags}, {"trials", trials}};
}

// Another program, in another language, written from the rules and the C++ standard, draws the same orders: tags, sides,
// coins and spares.
TEST(IndependentOrder, IsTheSameForRandomPlansAndSeeds) {
  stats::Random random(20310501);
  std::vector<Case> cases;
  for (int i = 0; i < 300; ++i) cases.push_back(random_case(random));
  std::string tasks;
  for (const Case& one : cases)
    tasks += json{{"plan", plan::to_json(one.plan)},
                  {"seed", seal::to_hex(one.seed)},
                  {"characters", one.characters},
                  {"sitting", one.sitting}}
                 .dump() +
             "\n";
  const auto lines = lines_from_python("order.py", tasks);
  ASSERT_EQ(lines.size(), cases.size());
  for (std::size_t i = 0; i < cases.size(); ++i)
    ASSERT_EQ(json::parse(lines[i]), order_of(cases[i])) << "case " << i << ", " << cases[i].plan.protocol;
}

}  // namespace
