#include "report/forms.h"

#include <gtest/gtest.h>

#include "import/answers.h"
#include "import/levels.h"
#include "import/times.h"
#include "refusal.h"
#include "report/sample.h"

namespace {

plan::Plan small_plan(const std::string& protocol = "abx") {
  plan::Plan plan = sample::plan(protocol);
  plan.sittings[0].comparisons = {0};
  plan.sittings[0].trials_each = 2;
  plan.spares_each = 1;
  return plan;
}

std::string filled(std::string form, const std::string& from, const std::string& to) {
  const std::size_t at = form.find(from);
  if (at == std::string::npos) throw std::runtime_error("the form lacks " + from);
  return form.replace(at, from.size(), to);
}

}  // namespace

TEST(AnswersForm, HasARowATrialAndSparesAsComments) {
  EXPECT_EQ(report::answers_form(small_plan(), 1),
            "# plan spring pairs, sitting 1\n"
            "# answers: A or B; - where none was given; empty: not keyed yet\n"
            "# a spare that was played: take away the # before it\n"
            "trial,Anna,Ben,Cleo\n"
            "1,,,\n"
            "2,,,\n"
            "#3,,,\n");
}

TEST(AnswersForm, IsReadBackWhenFilledIn) {
  plan::Plan plan = small_plan();
  plan.listeners[0] = "Anna, \"the ear\"";
  std::string form = filled(report::answers_form(plan, 1), "\n1,,,", "\n1,A,B,-");
  form = filled(form, "#3,,,", "3,B,B,A");
  const auto keyed = imported::parse_answers(form, "a.csv", {plan.listeners, {"A", "B"}, {}});
  ASSERT_EQ(keyed.answers.size(), 6U);
  EXPECT_EQ(keyed.answers[0].listener, plan.listeners[0]);
  EXPECT_EQ(keyed.answers[0].answer, "A");
  EXPECT_FALSE(keyed.answers[2].answer.has_value());
  EXPECT_EQ(keyed.answers[5].trial, 3);
}

TEST(TimesForm, HasARowAPresentation) {
  const std::string form = report::times_form(small_plan("preference"), 1);
  EXPECT_NE(form.find("trial,presentation,started\n1,1,\n1,2,\n2,1,\n2,2,\n#3,1,\n#3,2,\n"),
            std::string::npos);
  const auto keyed = imported::parse_times(filled(form, "1,2,\n", "1,2,20:14:30\n"), "t.csv");
  ASSERT_EQ(keyed.times.size(), 1U);
  EXPECT_EQ(keyed.times[0].presentation, 2);
  EXPECT_EQ(keyed.times[0].as_typed, "20:14:30");
}

TEST(SpoilingsForm, NamesTheReasonsAndIsReadBack) {
  const std::string form = report::spoilings_form(small_plan(), 1);
  EXPECT_NE(form.find("# reason: wrong tag, audible fault, interruption, pace overrun and other;"),
            std::string::npos);
  const auto keyed =
      imported::parse_spoilings(form + "2,helper,wrong tag,\n", "s.csv", {"helper"}, {"wrong tag", "other"});
  ASSERT_EQ(keyed.spoilings.size(), 1U);
  EXPECT_EQ(keyed.spoilings[0].reason, "wrong tag");
}

TEST(LevelsForm, HasBothChannelsAtStartAndEnd) {
  EXPECT_EQ(report::levels_form({407, 512}),
            "# levels at the loudspeaker terminals, trims set; channel: left, right or mono\n"
            "# when: start or end of the sitting\n"
            "tag,channel,when,level_dB\n"
            "407,left,start,\n407,right,start,\n512,left,start,\n512,right,start,\n"
            "407,left,end,\n407,right,end,\n512,left,end,\n512,right,end,\n");
  std::string form = report::levels_form({407});
  for (const char* row : {"407,left,start,", "407,right,start,", "407,left,end,", "407,right,end,"})
    form = filled(form, row, std::string(row) + "-0.02");
  EXPECT_EQ(imported::parse_levels(form, "l.csv").levels.size(), 4U);
}

TEST(Forms, RefuseASittingThatThePlanHasNot) {
  for (const int sitting : {0, 3}) {
    EXPECT_NE(refusal([&] { report::answers_form(small_plan(), sitting); }), "(not refused)");
    EXPECT_NE(refusal([&] { report::times_form(small_plan(), sitting); }), "(not refused)");
    EXPECT_NE(refusal([&] { report::spoilings_form(small_plan(), sitting); }), "(not refused)");
  }
}
