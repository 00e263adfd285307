#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <future>
#include <map>
#include <memory>

#include "findings/listening/tally.h"
#include "plan/looks.h"
#include "plan/requirement.h"
#include "plan/sample_plan.h"
#include "sitting/simulated/rehearsal.h"
#include "sitting/unsealed_sitting.h"
#include "stats/share/binomial.h"
#include "tier.h"

namespace {

using namespace sitting;

constexpr int trials = 16;
constexpr double level = 0.05;

/// How many sittings of each kind of listeners: BLINDSWAP_TIER is "quick", "plain" or "long".
int sittings() {
#ifdef __SANITIZE_ADDRESS__
  return 500;  // sanitizers look for faults of the program, which few sittings show as well
#else
  return tier() == "quick" ? 500 : tier() == "long" ? 200000 : 20000;
#endif
}

using Listeners = std::vector<std::unique_ptr<SimulatedListener>>;

/// A company of listeners none of whom hears anything, the same for the same seed.
struct Kind {
  const char* name;
  int listeners;
  std::function<Listeners(std::uint64_t)> seat;
};

template <typename Make>
Listeners seats(int count, Make make) {
  Listeners listeners;
  for (int i = 0; i < count; ++i) listeners.push_back(make(static_cast<std::uint64_t>(i)));
  return listeners;
}

const Kind guessers = {"three guessers", 3, [](std::uint64_t seed) {
                         return seats(3, [&](auto i) { return std::make_unique<Guesser>(seed + i); });
                       }};
const Kind alike = {"three who answer alike", 3, [](std::uint64_t seed) {
                      return seats(3, [&](auto) { return std::make_unique<Guesser>(seed); });
                    }};
const Kind impressed = {
    "three with one impression of each trial", 3, [](std::uint64_t seed) {
      return seats(3, [&](auto i) { return std::make_unique<ImpressionFollower>(seed, seed + 1 + i, 0.8); });
    }};
const Kind exploiters = {"three who believe in balance and short runs", 3, [](std::uint64_t seed) {
                           return seats(3, [&](auto i) -> std::unique_ptr<SimulatedListener> {
                             if (i == 2) return std::make_unique<RunBreaker>(seed + i, 2);
                             return std::make_unique<BalanceExploiter>(seed + i);
                           });
                         }};

/// The unsealed sitting of a plan with one comparison, as evidence for its findings.
findings::Evidence evidence_of(const plan::Plan& plan, const UnsealedSitting& sitting) {
  findings::Evidence evidence;
  evidence.plan = plan;
  evidence.sittings.emplace_back();
  evidence.sittings.back().number = 1;
  evidence.sittings.back().held = sitting.state().began;
  auto& list = evidence.trials.emplace_back();
  for (const ScoredTrial& scored : sitting.trials()) {
    findings::TrialEvidence trial;
    trial.sitting = 1;
    trial.number = scored.number;
    trial.fate = scored.fate == Fate::counted ? findings::Fate::counted : findings::Fate::not_played;
    trial.coin = scored.coin;
    for (std::size_t i = 0; i < plan.listeners.size(); ++i)
      if (const auto answer = scored.last.find(plan.listeners[i]); answer != scored.last.end())
        trial.answers[static_cast<int>(i)] = answer->second;
    list.push_back(std::move(trial));
  }
  return evidence;
}

/// The whole way of one sitting: sealed, played, unsealed, scored, and tested by the plan's own primary test.
findings::Tested outcome(const plan::Plan& plan, const seal::Digest& seed, const Listeners& listeners) {
  Company company;
  for (const auto& listener : listeners) company.push_back(listener.get());
  MemoryLog log;
  const plan::SealedPlan sealed = sealed_with(plan, seed);
  rehearse_plan(log, plan, sealed, company);
  return findings::tested(evidence_of(plan, UnsealedSitting(plan, sealed, 1, log)), 0,
                          {.listener = findings::primary_listener(plan)});
}

struct Alarms {
  int exact = 0;     ///< of the plan's own test
  int binomial = 0;  ///< of a binomial on the pooled count, which is no valid test here
};

Alarms operator+(const Alarms& one, const Alarms& other) {
  return {one.exact + other.exact, one.binomial + other.binomial};
}

Alarms alarms_of_half(const plan::Plan& plan, const Kind& kind, int first, int count) {
  const bool one_sided = plan::protocol_of(plan).has_right_answer();
  Alarms alarms;
  for (int i = first; i < count; i += 2) {
    const std::string name = plan.protocol + ", " + kind.name + ", sitting " + std::to_string(i);
    const auto tested =
        outcome(plan, seal::sha256(name), kind.seat(1000003u * static_cast<std::uint64_t>(i)));
    const auto [score, answers, answered_trials] = tested.tally;
    if (answered_trials != trials && !plan::looks_of(plan))
      throw std::logic_error(name + ": not every trial was answered");
    alarms.exact += tested.p <= level;
    alarms.binomial += (one_sided ? stats::chance_of_at_least(score, answers, 0.5)
                                  : stats::two_sided(score, answers, 0.5)) <= level;
  }
  return alarms;
}

/// Alarms over `count` sittings, on two threads.
Alarms alarms_of(const plan::Plan& plan, const Kind& kind, int count) {
  auto half = std::async(std::launch::async, [&] { return alarms_of_half(plan, kind, 1, count); });
  const Alarms other = alarms_of_half(plan, kind, 0, count);
  return half.get() + other;
}

/// The same, counted once for each protocol and kind.
Alarms alarms_of(std::string_view protocol, const Kind& kind, int count = sittings()) {
  static std::map<std::string, Alarms> counted;
  const std::string name = std::string(protocol) + ", " + kind.name;
  if (const auto found = counted.find(name); found != counted.end()) return found->second;
  return counted[name] = alarms_of(sample_plan(protocol, 1, trials, kind.listeners), kind, count);
}

/// The smallest count that a true rate exceeds with probability 1e-4 at most: the 99.99 % binomial bound.
int bound(double rate, int n = sittings()) {
  int most = static_cast<int>(rate * n);
  while (stats::chance_of_at_least(most + 1, n, rate) > 1e-4) ++most;
  return most;
}

/// A count has that rate within 4.5 standard deviations: wrong once in 150,000 runs.
void expect_rate(int alarms, int count, double rate) {
  EXPECT_NEAR(alarms, count * rate, 4.5 * std::sqrt(count * rate * (1 - rate)));
}

class FalseAlarms : public testing::TestWithParam<const protocols::Protocol*> {};

// The plan's own test keeps its level however the listeners follow one another or game the order: the exact re-draw of
// the coins given the answers.
TEST_P(FalseAlarms, AreAtOrUnderTheLevelForAllWhoHearNothing) {
  for (const Kind& kind : {guessers, alike, impressed, exploiters}) {
    const Alarms alarms = alarms_of(GetParam()->name(), kind);
    std::printf("%s, %s: %d of %d (%.4f), bound %d\n", std::string(GetParam()->name()).c_str(), kind.name,
                alarms.exact, sittings(), 1.0 * alarms.exact / sittings(), bound(level));
    EXPECT_LE(alarms.exact, bound(level)) << kind.name;
    EXPECT_GT(alarms.exact, 0) << kind.name;
  }
}

INSTANTIATE_TEST_SUITE_P(Protocols, FalseAlarms,
                         testing::ValuesIn(protocols::catalogue().begin(), protocols::catalogue().end()),
                         [](const auto& instance) { return std::string(instance.param->name()); });

// Three who answer alike are one listener: their exact test has the size of the binomial of 16 trials, .0384 (ABX) and
// .0213 (preference, two-sided). A binomial on their pooled 48 answers would be a test of size P(X >= 11 of 16) = .1051
// (ABX): 31 of 48 are needed, and 33 come with the 11th trial. Recomputed: Python,
// sum(comb(16, i) for i in range(k, 17)) / 2**16 for k = 12, 11; twice that for k = 13.
TEST(FalseAlarmsOfThreeAlike, ShowThatPooledBinomialsAreNoTest) {
  const Alarms abx = alarms_of("abx", alike);
  expect_rate(abx.exact, sittings(), 0.0384063721);
  expect_rate(abx.binomial, sittings(), 0.1050567627);
  EXPECT_GT(abx.binomial, bound(level));
  expect_rate(alarms_of("preference", alike).exact, sittings(), 0.0212707520);
}

/// A plan that looks after 6, 11 and 16 trials.
plan::Plan looking(int listeners) {
  plan::Plan plan = sample_plan("abx", 1, trials, listeners);
  plan.stopping_rule = plan::rule_text({{6, 11, 16}, stats::Spending::pocock});
  return plan;
}

// Looks keep the level too, however the listeners follow one another, and though a look tells them to go on.
TEST(FalseAlarmsOfLooks, AreAtOrUnderTheLevelForAllWhoHearNothing) {
  const int count = sittings() / 4;
  for (const Kind& kind : {guessers, impressed, exploiters}) {
    const Alarms alarms = alarms_of(looking(kind.listeners), kind, count);
    std::printf("looks, %s: %d of %d (%.4f)\n", kind.name, alarms.exact, count, 1.0 * alarms.exact / count);
    EXPECT_LE(alarms.exact, bound(level, count)) << kind.name;
    EXPECT_GT(alarms.exact, 0) << kind.name;
  }
}

// Three alike are one listener: 6 of 6, 10 of 11 or 12 of 16 are needed. Recomputed: a recursion in plain Python.
TEST(FalseAlarmsOfLooks, HaveTheRateAndThePowerOfTheExactRecursion) {
  const int count = sittings() / 4;
  expect_rate(alarms_of(looking(3), alike, count).exact, count, 0.0486907959);
  const Kind hearer{"one who hears", 1, [](std::uint64_t seed) {
                      return seats(1, [&](auto) { return std::make_unique<Hearer>(seed, 0.4); });
                    }};
  expect_rate(alarms_of(looking(1), hearer, count).exact, count, 0.4691480648);
}

// Who hears in .4 of the trials is right in .7 of them: found with the power of the exact binomial, 16 trials, 12 needed.
// Recomputed: R pbinom, .4499041198. Who prefers the first cable in .7 of the trials is found with 13 or more, or 3 or
// fewer. Recomputed: Python, sum(comb(16, i) * .7**i * .3**(16 - i)) over these i, .2458894651.
TEST(Power, OfWhoHearsIsThatOfTheExactTest) {
  const Kind hearer{"one who hears", 1, [](std::uint64_t seed) {
                      return seats(1, [&](auto) { return std::make_unique<Hearer>(seed, 0.4); });
                    }};
  const int count = sittings() / 4;
  expect_rate(alarms_of("abx", hearer, count).exact, count, 0.4499041198);
  expect_rate(alarms_of("preference", hearer, count).exact, count, 0.2458894651);
}

}  // namespace
