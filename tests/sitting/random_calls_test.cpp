#include <gtest/gtest.h>

#include <functional>

#include "sitting/held_sitting.h"
#include "stats/random.h"
#include "text/error.h"

namespace sitting {
namespace {

/// Calls anything with anything: right and wrong names, trials, words and moments.
class Monkey {
 public:
  explicit Monkey(std::uint64_t seed) : random_(seed) {}

  void call(Sitting& sitting) {
    const std::function<void()> calls[] = {
        [&] {
          sitting.open(pick({"live", "paper", "radio"}));
        },
        [&] { sitting.contribute(who(), words()); },
        [&] { sitting.begin(); },
        [&] { sitting.name_tagger(words()); },
        [&] { sitting.practise_next(); },
        [&] { sitting.rehearse_swap(number(90) - 5); },
        [&] {
          sitting.declare(who(), pick({"start", "end", "noon"}), coin(), words());
        },
        [&] {
          sitting.record_fact(pick({"seat", "other", "moon"}), words());
        },
        [&] {
          sitting.record_level(
              {417, pick({"left", "top"}), "start", pick({"70.1", "70.2", "loud"}), pick({"dB", "dBV"})},
              pick({"", "misread"}));
        },
        [&] { sitting.note(who(), words()); },
        [&] { sitting.rest(who()); },
        [&] { sitting.tell_cue(who(), words()); },
        [&] { sitting.key_time(trial(), number(4), words()); },
        [&] { sitting.correct(who(), trial(), word(), words()); },
        [&] { sitting.miss(who(), trial()); },
        [&] { sitting.name_keyer(who(), coin()); },
        [&] { sitting.differ(who(), who(), trial(), word()); },
        [&] { sitting.finish_second_entry(who(), number(8)); },
        [&] { sitting.close_trial(); },
        [&] {
          sitting.spoil(who(), trial(), pick({"wrong tag", "other", "boredom"}), words());
        },
        [&] {
          if (number(20) == 0) sitting.end();
        },
        [&] {
          if (number(40) == 0) sitting.end_early(who(), words(), false);
        },
    };
    const int count = static_cast<int>(std::size(calls)), which = number(2 * count);
    if (which < count) return calls[which]();
    if (which < count + 10) return sitting.present_next();
    sitting.answer(who(), coin() ? sitting.state().current_trial() : trial(), word(),
                   pick({"", "", "certain", "perhaps"}), words());
  }

 private:
  int number(int bound) { return static_cast<int>(random_.below(static_cast<std::uint32_t>(bound))); }
  bool coin() { return number(2) == 0; }
  int trial() { return number(11) - 1; }
  std::string pick(const std::vector<std::string>& list) {
    return list[random_.below(static_cast<std::uint32_t>(list.size()))];
  }
  std::string who() { return pick({"ann", "bob", "ann", "bob", "helper", "zoe", ""}); }
  std::string word() { return pick({"A", "B", "A", "B", "first", "second", ""}); }
  std::string words() { return pick({"", "x", "a \"b\"\n", "ü", "\xff"}); }

  stats::Random random_;
};

bool is_refused(const std::function<void()>& call) {
  try {
    call();
    return false;
  } catch (const text::BadInput&) {
    return true;
  } catch (const text::NotNow&) {
    return true;
  }
}

class RandomCalls : public testing::TestWithParam<const protocols::Protocol*> {};

// Whatever is called: a refused call is refused as bad input or the wrong moment, and changes nothing; every other
// call keeps at most a few events; and a sitting read anew from its log is the same sitting.
TEST_P(RandomCalls, KeepOrRefuseAndReadBackTheSame) {
  int kept = 0, refused = 0, ended = 0;
  for (std::uint64_t seed = 0; seed < 20; ++seed) {
    HeldSitting held(sample_plan(GetParam()->name(), 2, 2, 2), "seed " + std::to_string(seed));
    Monkey monkey(seed);
    std::string story = held.story();
    for (int i = 0; i < 300; ++i) {
      const auto before = held.events();
      if (is_refused([&] { monkey.call(held.sitting); })) {
        ++refused;
        ASSERT_EQ(held.events(), before) << "seed " << seed << ", call " << i;
        ASSERT_EQ(held.story(), story) << "seed " << seed << ", call " << i;
      } else if (held.events() != before) {
        ++kept;
        story = held.story();
        if (i % 20 != 0) continue;
        const Sitting again(held.plan, held.sealed, 1, held.log, held.clock.reading());
        ASSERT_EQ(HeldSitting::story_of(again), story) << "seed " << seed << ", call " << i;
      } else {
        ASSERT_EQ(held.story(), story) << "seed " << seed << ", call " << i;
      }
    }
    const Sitting again(held.plan, held.sealed, 1, held.log, held.clock.reading());
    ASSERT_EQ(HeldSitting::story_of(again), held.story()) << "seed " << seed;
    ended += held.sitting.state().ended;
  }
  EXPECT_GT(kept, 500);
  EXPECT_GT(refused, 1000);
  EXPECT_GT(ended, 1);
  EXPECT_LT(ended, 20);
}

INSTANTIATE_TEST_SUITE_P(Protocols, RandomCalls,
                         testing::ValuesIn(protocols::catalogue().begin(), protocols::catalogue().end()),
                         [](const auto& instance) { return std::string(instance.param->name()); });

}  // namespace
}  // namespace sitting
