#include "report/text_report.h"

#include <gtest/gtest.h>

#include <sstream>

#include "refusal.h"
#include "report/sample.h"
#include "text/utf8.h"

namespace {

std::string report_of(const findings::Evidence& evidence) {
  return report::text_report(evidence, sample::findings_for(evidence));
}

void expect_has(const std::string& text, const std::string& part) {
  EXPECT_NE(text.find(part), std::string::npos) << "lacks: " << part;
}

}  // namespace

TEST(TextReport, IsAtMostAHundredColumnsWide) {
  for (const char* protocol : {"abx", "preference"}) {
    findings::Evidence evidence = sample::evidence(protocol);
    evidence.plan.specimens[1].cable = std::string(80, 'w');
    evidence.sittings[0].notes[0].text = std::string(300, 'n');
    std::istringstream lines(report_of(evidence));
    for (std::string line; std::getline(lines, line);)
      EXPECT_LE(text::length_in_characters(line), 100U) << line;
  }
}

TEST(TextReport, AnswersFirstInWords) {
  expect_has(report_of(sample::evidence()),
             "The answer\n"
             "==========\n\n"
             "Of 3 comparisons, one ended with a supported difference: \u201Cheavy pair / thin pair\u201D. "
             "For one a\n"
             "difference was not shown: \u201Cheavy pair / braided eight\u201D. Not shown does not mean "
             "absent; each section\n"
             "below says what would have been caught. One cannot be judged: \u201Cheavy pair / flat "
             "ribbon\u201D.\n\n"
             "The identical pair \u201Cheavy pair / heavy pair\u201D was not told apart, as it should be. "
             "The known\n"
             "difference \u201Cheavy pair / heavy pair + 0.22 ohm\u201D was heard.\n");
}

TEST(TextReport, SaysWhatWentWrongWithControls) {
  for (const char* protocol : {"abx", "preference"}) {
    const findings::Evidence evidence = sample::evidence(protocol);
    findings::Findings findings = sample::findings_for(evidence);
    findings.comparisons[3].verdict = findings::Verdict::supported;
    findings.comparisons[4].verdict = findings::Verdict::not_shown;
    const std::string text = report::text_report(evidence, findings);
    expect_has(text, "points to a leak");
    expect_has(text, std::string(protocol) == "abx" ? "was not heard, so smaller" : "drew no preference.");
  }
}

TEST(TextReport, PrintsTheNumbersOfAComparison) {
  const std::string text = report_of(sample::evidence());
  expect_has(text,
             "  Right                        38 of 48 (79.2 %)\n"
             "  Exact p, one-sided           0.0012\n"
             "  Adjusted p                   0.0036 (Holm, family of 3)\n"
             "  Lower limit, one-sided 95 %  67.1 % (treats all answers as independent)\n");
  expect_has(text, "  Cannot be judged             separation not kept in sitting 2\n");
  expect_has(text, "  Answers needed, all of a trial alike   39 of 48\n");
  expect_has(text, "none would do after 8 trials; 39 of 48 after 16 trials\n");
  expect_has(text, "  Long-run share caught 80 times in 100  0.897 or more\n");
  expect_has(text, "  ! braided eight: its level drifted by 0.12 dB from start to end\n");
  expect_has(text, "Level matched within 0.10 dB at the load's terminals with the trims as set.\n");
}

TEST(TextReport, PrintsSealHeadsAndEveryPlanOfTheCampaign) {
  const std::string text = report_of(sample::evidence());
  for (const std::string& hex :
       {"9b07" + std::string(60, 'c'), "03ee" + std::string(60, '5'), "4f1d" + std::string(60, 'a')})
    expect_has(text, hex);
  expect_has(text, "rehearsal");
  expect_has(text, "the editor, printed in issue 14");
}

TEST(TextReport, ListsTrialsThatDidNotGoAsPlanned) {
  const std::string text = report_of(sample::evidence());
  expect_has(text, "        1      1  answer corrected by Anna: misheard the number\n");
  expect_has(text, "        1      1  answer of Cleo withdrawn\n");
  expect_has(text, "        1      2  no answer by Anna\n");
  EXPECT_EQ(text.find("no answer by Cleo"), std::string::npos);
  expect_has(text, "        1      2  spoiled: wrong tag, by helper\n");
}

TEST(TextReport, SpeaksOfPreferencesWhereNoAnswerIsRight) {
  const std::string text = report_of(sample::evidence("preference"));
  expect_has(text, "one ended with a supported preference");
  expect_has(text, "preference supported");
  expect_has(text, "Exact p, two-sided");
  // 38 of 48 less .12 and more .11, invented; rounded outwards.
  expect_has(text, "Lower limit, two-sided 95 %  67.1 %");
  expect_has(text, "Upper limit, two-sided 95 %  90.2 %");
  expect_has(text, "two-sided interval at 95 %");
  expect_has(text, "Listeners steadily prefer opposite cables; pooled, they cancel.");
  EXPECT_EQ(text.find("difference supported"), std::string::npos);
}

TEST(TextReport, SaysThatListenersCancelOnlyWhereTheyArePooled) {
  findings::Evidence evidence = sample::evidence("preference");
  evidence.plan.primary_test = "Anna";
  expect_has(report_of(evidence), "Listeners steadily prefer opposite cables.\n");
}

TEST(TextReport, TellsWhyNoRhoIsGiven) {
  const findings::Evidence evidence = sample::evidence();
  findings::Findings findings = sample::findings_for(evidence);
  findings.correlations[0].permuted_by_cable = true;
  expect_has(report::text_report(evidence, findings), "cannot reach it");
  findings.correlations[0].smallest_attainable_p.reset();
  expect_has(report::text_report(evidence, findings), "not computed");
  findings.correlations[0].rho_needed = 0.355;
  findings.correlations[0].rho_needed_is_exact = false;
  expect_has(report::text_report(evidence, findings), "about 0.355");
}

TEST(TextReport, SaysWhoEndedAPlanEarly) {
  findings::Evidence evidence = sample::evidence();
  evidence.plan_ended_early = true;
  evidence.plan_ended_by = "Dora";
  evidence.plan_end_reason = "the hall was needed";
  evidence.ender_had_seen = true;
  expect_has(report_of(evidence), "by Dora, who had seen both answers and order: the hall was needed");
}

TEST(TextReport, ShowsNoControlCharacters) {
  findings::Evidence evidence = sample::evidence();
  evidence.sittings[0].notes[0].text = "red \x1b[31m\nnext";
  const std::string text = report_of(evidence);
  expect_has(text, "red ?[31m next");
  EXPECT_EQ(text.find('\x1b'), std::string::npos);
}

TEST(TextReport, IsPrintedForAnEmptyPlanToo) {
  findings::Evidence evidence = sample::evidence();
  expect_has(report::text_report(evidence, {}), "Of 0 comparisons, none ended with a supported difference.");
}

TEST(TextReport, RefusesFindingsOfAnotherPlan) {
  const findings::Evidence evidence = sample::evidence();
  findings::Findings findings = sample::findings_for(evidence);
  findings.comparisons[0].comparison = 5;
  EXPECT_EQ(refusal([&] { report::text_report(evidence, findings); }),
            "comparison must be an index of the plan's 5 comparisons, got 5");
  findings = sample::findings_for(evidence);
  findings.comparisons[0].listeners[0].listener = 3;
  EXPECT_EQ(refusal([&] { report::text_report(evidence, findings); }),
            "listener must be an index of the plan's 3 listeners, got 3");
}

TEST(TextReport, KeepsWhatWasExploredApartFromTheFinding) {
  const std::string report = report_of(sample::evidence());
  expect_has(report, "What else the answers show (exploratory, unadjusted)");
  expect_has(report, "no part of the finding");
  expect_has(report, "2.02 (0.35 to");
  expect_has(report, "The listeners differ. Tarone's Z 1.57, exact");
  expect_has(report, "Fatigue or learning not shown. Exact two-sided");
  expect_has(report, "13 of 16");
  expect_has(report, "Sureness: 3 answers without a level left out.");
  expect_has(report, "Does anybody prefer an answer?");
  expect_has(report, "49 of 80");
}

TEST(TextReport, LeavesOutColumnsThatNobodyHasAnythingFor) {
  const findings::Evidence evidence = sample::evidence();
  findings::Findings findings = sample::findings_for(evidence);
  for (auto& comparison : findings.comparisons)
    for (auto& one : comparison.exploration.listeners) {
      one.rated = one.timed = 0;
      one.d_prime = std::numeric_limits<double>::infinity();
      one.d_prime_remark = "infinite: every answer was right";
    }
  const std::string report = report::text_report(evidence, findings);
  EXPECT_EQ(report.find("Surer when right"), std::string::npos);
  EXPECT_EQ(report.find("before X"), std::string::npos);
  EXPECT_NE(report.find("every answer was right"), std::string::npos);
}
