#include <gtest/gtest.h>

#include <functional>

#include "plan/sample_plan.h"
#include "refusal.h"

namespace plan {
namespace {

struct Refusal {
  const char* what;
  std::function<void(Plan&)> change;
  std::string message;
};

const Refusal refusals[] = {
    {"no name", [](Plan& p) { p.name = ""; },
     "plan: the plan's name is \"\"; expected 1 to 80 characters on one line, with no space at either end"},
    {"a line break", [](Plan& p) { p.name = "a\nb"; },
     "plan: the plan's name is \"a?b\"; expected 1 to 80 characters on one line, with no space at either "
     "end"},
    {"81 characters", [](Plan& p) { p.name = std::string(81, 'x'); },
     "plan: the plan's name is \"" + std::string(81, 'x') +
         "\"; expected 1 to 80 characters on one line, with no space at either end"},
    {"broken UTF-8", [](Plan& p) { p.specimens[1].cable = "caf\xe9"; },
     "plan: a cable's name is \"caf?\"; expected 1 to 80 characters on one line, with no space at either "
     "end"},
    {"unknown protocol", [](Plan& p) { p.protocol = "abc"; },
     "plan: the protocol is \"abc\"; expected one of the protocols that the program lists"},
    {"unknown rule", [](Plan& p) { p.order_rule = "abx-0"; },
     "plan: the order rule is \"abx-0\"; expected a rule that this program knows"},
    {"rule of another protocol", [](Plan& p) { p.order_rule = "preference-1"; },
     "plan: the order rule is \"preference-1\"; expected a rule of the protocol \"abx\""},
    {"nobody listens", [](Plan& p) { p.listeners.clear(); },
     "plan: the list of listeners is empty; expected at least one name"},
    {"two of a name", [](Plan& p) { p.listeners[1] = "ann"; },
     "plan: listener \"ann\" is named twice; expected each name once"},
    {"a listener called helper", [](Plan& p) { p.listeners[1] = "helper"; },
     "plan: a listener's name is \"helper\"; expected a name that does not mean something else here"},
    {"a listener called pooled", [](Plan& p) { p.listeners[1] = "pooled"; },
     "plan: a listener's name is \"pooled\"; expected a name that does not mean something else here"},
    {"a stranger's test", [](Plan& p) { p.primary_test = "zoe"; },
     "plan: the primary test is \"zoe\"; expected \"ann\" or \"bob\" or \"cid\" or \"pooled\""},
    {"attendance", [](Plan& p) { p.attendance = "alone"; },
     "plan: the attendance is \"alone\"; expected \"together\" or \"one at a time\""},
    {"no comparison", [](Plan& p) { p.comparisons.clear(); },
     "plan: the list of comparisons is empty; expected at least one"},
    {"a cable against its own tag", [](Plan& p) { p.comparisons[0].second = 0; },
     "plan: comparison heavy-pair / heavy-pair is one specimen twice; expected two specimens, each with its "
     "tag"},
    {"an identical pair of two cables", [](Plan& p) { p.comparisons[1].kind = Kind::identical_pair; },
     "plan: identical pair heavy-pair / cable-2 is of two different cables; expected one cable under two "
     "tags"},
    {"a specimen that is not there", [](Plan& p) { p.comparisons[0].first = -1; },
     "plan: a comparison's first specimen is -1; expected an index from 0 to 2"},
    {"negative trim", [](Plan& p) { p.specimens[0].trim_steps = -1; },
     "plan: a trim, in steps, is -1; expected 0 to 1000"},
    {"series resistor with unit", [](Plan& p) { p.specimens[0].series_resistance_ohm = "0.2ohm"; },
     "plan: a resistor in series is \"0.2ohm\"; expected a number above 0, in ohm"},
    {"prediction in words", [](Plan& p) { p.comparisons[0].predicted_difference_db = "small"; },
     "plan: a predicted difference is \"small\"; expected a number in dB, or nothing"},
    {"no sitting", [](Plan& p) { p.sittings.clear(); },
     "plan: the list of sittings is empty; expected at least one"},
    {"a sitting of nothing", [](Plan& p) { p.sittings[0].comparisons.clear(); },
     "plan: a sitting's list of comparisons is empty; expected at least one"},
    {"a sitting of nobody", [](Plan& p) { p.sittings[0].listeners.clear(); },
     "plan: a sitting's list of listeners is empty; expected at least one"},
    {"a comparison twice in a sitting",
     [](Plan& p) {
       p.sittings[0].comparisons = {0, 1, 0};
     },
     "plan: a sitting's list of comparisons is not without repeats; expected each comparison once"},
    {"a listener on two seats",
     [](Plan& p) {
       p.sittings[0].listeners = {1, 1};
     },
     "plan: a sitting's list of listeners is not without repeats; expected each listener once"},
    {"a comparison left out", [](Plan& p) { p.sittings[0].comparisons = {1}; },
     "plan: the list of sittings is without some comparison; expected every comparison in at least one "
     "sitting"},
    {"no trials", [](Plan& p) { p.sittings[0].trials_each = 0; },
     "plan: trials of each comparison in a sitting is 0; expected 1 to 1000"},
    {"level in per cent", [](Plan& p) { p.level = "5"; },
     "plan: the level is \"5\"; expected a number above 0 and below 0.5, such as 0.05"},
    {"level of nothing", [](Plan& p) { p.level = "0"; },
     "plan: the level is \"0\"; expected a number above 0 and below 0.5, such as 0.05"},
    {"effect no better than chance", [](Plan& p) { p.effect_share = "0.5"; },
     "plan: the share worth finding is \"0.5\"; expected a number above 0.5 and below 1, such as 0.90"},
    {"family", [](Plan& p) { p.family = "none"; }, "plan: the family is \"none\"; expected \"holm\""},
    {"levels", [](Plan& p) { p.levels = "loud"; },
     "plan: how levels are set is \"loud\"; expected \"trimmed\" or \"as connected\""},
    {"tolerance", [](Plan& p) { p.level_tolerance_db = "-0.1"; },
     "plan: the tolerance of levels is \"-0.1\"; expected a number above 0, in dB"},
    {"trims without the size of a step", [](Plan& p) { p.levels = "trimmed", p.specimens[0].trim_steps = 2; },
     "plan: the volume step is \"\"; expected a number above 0, in dB"},
    {"spares", [](Plan& p) { p.spares_each = 51; },
     "plan: the number of spare trials is 51; expected 0 to 50"},
    {"no block", [](Plan& p) { p.block_trials = 0; },
     "plan: the number of trials between breaks is 0; expected 1 to 1000"},
    {"no swap time", [](Plan& p) { p.swap_seconds = 0; },
     "plan: the time for a swap, in seconds, is 0; expected 1 to 3600"},
    {"an excerpt without a title",
     [](Plan& p) {
       p.excerpts = {{"", "0:10", "0:20"}};
     },
     "plan: an excerpt's title is \"\"; expected 1 to 80 characters on one line, with no space at either "
     "end"},
};

TEST(PlanCheck, SaysWhatIsWrong) {
  for (const Refusal& one : refusals) {
    Plan plan = sample_plan("abx", 2);
    one.change(plan);
    EXPECT_EQ(refusal([&] { check(plan); }), one.message) << one.what;
  }
}

TEST(PlanCheck, LetsPassWhatHangsTogether) {
  for (const auto* protocol : protocols::catalogue())
    EXPECT_NO_THROW(check(sample_plan(protocol->name(), 3, 16, 8))) << protocol->name();
  Plan plan = sample_plan();
  plan.name.clear();
  for (int i = 0; i < 80; ++i) plan.name += "ü";
  EXPECT_NO_THROW(check(plan)) << "80 characters in 160 bytes";
}

TEST(PlanTitles, NameTheCablesAndTheStatedResistor) {
  Plan plan = sample_plan();
  plan.specimens[1].series_resistance_ohm = "0.22";
  EXPECT_EQ(title_of(plan, plan.comparisons[0]), "heavy-pair / cable-1 + 0.22 ohm");
}

TEST(PlanProtocol, ARuleOfALaterProgramIsSaidSo) {
  Plan plan = sample_plan();
  plan.order_rule = "abx-2";
  EXPECT_EQ(refusal([&] { protocol_of(plan); }),
            "order rule \"abx-2\" is not known to this program; a newer blindswap sealed this plan");
}

}  // namespace
}  // namespace plan
