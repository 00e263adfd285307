#include "report/sheets.h"

#include <gtest/gtest.h>

#include <chrono>
#include <regex>
#include <set>
#include <sstream>

#include "plan/sealed_plan.h"
#include "refusal.h"
#include "report/sample.h"
#include "seal/canonical_json.h"
#include "seal/commitment.h"
#include "sitting/event_log.h"
#include "sitting/sitting.h"
#include "text/utf8.h"

#include <nlohmann/json.hpp>

namespace {

plan::Plan plan_for(const std::string& protocol) {
  plan::Plan plan = sample::plan(protocol);
  plan.specimens[1].cable = "xylophone wire";
  return plan;
}

struct Paper {
  std::vector<sitting::TagLine> tags;
  std::vector<sitting::SheetTrial> trials;
  std::string list, helper;
  std::vector<std::string> listeners;
};

/// The paper of the plan's first sitting as the sitting itself deals it.
Paper paper_of(const plan::Plan& plan, unsigned char seed) {
  plan::SealedPlan sealed{plan.name, seal::canonical_text(plan::to_json(plan)), {}, {}};
  sealed.seed.fill(seed);
  sealed.commitment = seal::commitment(sealed.text, sealed.seed);
  sitting::MemoryLog log;
  sitting::Sitting sitting(plan, sealed, 1, log, [] { return std::chrono::system_clock::time_point{}; });
  sitting.open("paper");
  sitting.begin();
  Paper paper{sitting.tagging_list(), sitting.sheet(), {}, {}, {}};
  paper.list = report::tagging_list(plan, 1, paper.tags);
  paper.helper = report::helper_sheet(plan, 1, paper.trials);
  for (const std::string& listener : plan.listeners)
    paper.listeners.push_back(report::listener_sheet(plan, 1, listener));
  return paper;
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// On one line, so that words are found wherever they were wrapped.
std::string unwrapped(const std::string& text) { return std::regex_replace(text, std::regex("\\s+"), " "); }

/// The tags in the rows of the helper's sheet, found by the line for the time.
std::set<std::string> tags_in_rows(const std::string& helper_sheet) {
  static const std::regex row(R"(\s(\d{3})\s+[0-9.]+\s+\d+\s+____ : ____ : ____)");
  std::set<std::string> tags;
  for (std::sregex_iterator match(helper_sheet.begin(), helper_sheet.end(), row), end; match != end; ++match)
    tags.insert((*match)[1]);
  return tags;
}

}  // namespace

TEST(Sheets, FitAPageOfEightyColumns) {
  for (const char* protocol : {"abx", "preference"}) {
    plan::Plan plan = plan_for(protocol);
    plan.name = std::string(80, 'p');
    plan.listeners[0] = std::string(80, 'l');
    plan.excerpts[0].title = std::string(80, 'e');
    const Paper paper = paper_of(plan, 1);
    std::istringstream lines(paper.list + paper.helper + paper.listeners[0]);
    for (std::string line; std::getline(lines, line);)
      EXPECT_LE(text::length_in_characters(line), 80U) << line;
  }
}

TEST(ListenerSheet, IsTheSameForEverySeed) {
  for (const char* protocol : {"abx", "preference"}) {
    const plan::Plan plan = plan_for(protocol);
    const Paper one = paper_of(plan, 1), other = paper_of(plan, 2);
    EXPECT_EQ(one.listeners, other.listeners);
    EXPECT_NE(one.helper, other.helper);  // the order did differ
  }
}

TEST(ListenerSheet, NamesNoTagAndNoCable) {
  const plan::Plan plan = plan_for("abx");
  const Paper paper = paper_of(plan, 3);
  for (const std::string& sheet : paper.listeners) {
    for (const sitting::TagLine& line : paper.tags)
      EXPECT_FALSE(has(sheet, std::to_string(line.tag))) << line.tag;
    for (const plan::Specimen& specimen : plan.specimens)
      EXPECT_FALSE(has(sheet, specimen.cable)) << specimen.cable;
  }
}

TEST(ListenerSheet, HasARowForEveryTrialSparesMarked) {
  const std::string sheet = report::listener_sheet(plan_for("abx"), 1, "Anna");
  for (int trial = 1; trial <= 54; ++trial)
    EXPECT_TRUE(std::regex_search(sheet, std::regex("\n +" + std::to_string(trial) + "  heard "))) << trial;
  EXPECT_FALSE(has(sheet, "\n  55  heard"));
  EXPECT_TRUE(has(sheet,
                  "   1  heard A B X   answer [ ] A  [ ] B\n"
                  "      sure?  [ ] guess  [ ] fairly sure  [ ] certain\n"));
  EXPECT_TRUE(has(sheet, "   2  heard B A X   answer [ ] A  [ ] B\n"));
  EXPECT_TRUE(has(sheet, "spare: only if the helper says so\n  17  heard "));
  EXPECT_FALSE(has(sheet, "spare: only if the helper says so\n  19  heard "));
  EXPECT_TRUE(has(report::listener_sheet(plan_for("preference"), 1, "Anna"),
                  "   1  heard first second   answer [ ] first  [ ] second\n"));
}

TEST(ListenerSheet, RestsAfterEveryBlockOfPlannedTrials) {
  const std::string sheet = report::listener_sheet(plan_for("abx"), 1, "Anna");
  // 3 comparisons of 16 trials and 2 spares, a rest every 12 planned: before trials 13, 27 (planned 25), 41 (37).
  for (const char* trial : {"13", "27", "41"})
    EXPECT_TRUE(has(sheet, "do not talk about the trials ----\n\n  " + std::string(trial) + "  heard "))
        << trial;
  static const std::regex rest("---- rest, 10 minutes");
  EXPECT_EQ(std::distance(std::sregex_iterator(sheet.begin(), sheet.end(), rest), std::sregex_iterator()), 3);
}

TEST(ListenerSheet, AsksAfterwardsAndTakesDeclarations) {
  const std::string sheet = unwrapped(report::listener_sheet(plan_for("abx"), 1, "Ben"));
  for (const char* words :
       {"Listener: Ben", "Which one is X?", "what gave it away?", "any other cue", "at the start",
        "at the end", "until the first presentation of the next trial begins", "85 dBA"})
    EXPECT_TRUE(has(sheet, words)) << words;
}

TEST(ListenerSheet, IsForWhoAttends) {
  plan::Plan plan = plan_for("abx");
  plan.sittings[0].listeners = {0, 2};
  EXPECT_EQ(refusal([&] { report::listener_sheet(plan, 1, "Ben"); }),
            "listener must attend sitting 1, got \"Ben\"");
  EXPECT_NE(refusal([&] { report::listener_sheet(plan, 3, "Anna"); }), "(not refused)");
}

TEST(HelperSheet, EveryTagIsOnTheTaggingList) {
  for (const char* protocol : {"abx", "preference"}) {
    const Paper paper = paper_of(plan_for(protocol), 4);
    std::set<std::string> listed;
    for (const sitting::TagLine& line : paper.tags) {
      listed.insert(std::to_string(line.tag));
      EXPECT_TRUE(has(paper.list, "tag " + std::to_string(line.tag) + " goes on: " + line.specimen + "\n"));
    }
    EXPECT_EQ(tags_in_rows(paper.helper), listed);
  }
}

TEST(HelperSheet, HasEveryPresentationAsDealt) {
  const Paper paper = paper_of(plan_for("abx"), 5);
  static const std::regex row("____ : ____ : ____");
  EXPECT_EQ(std::distance(std::sregex_iterator(paper.helper.begin(), paper.helper.end(), row),
                          std::sregex_iterator()),
            54 * 3);
  const sitting::HelperStep& step = paper.trials[0].steps[0];
  const std::regex first("\n    1  A +" + std::to_string(step.tag) + " +" + step.attenuation_db +
                         " +1  +____");
  EXPECT_TRUE(std::regex_search(paper.helper, first));
  EXPECT_TRUE(has(paper.helper, "spare: only if needed\n   17  "));
}

TEST(HelperSheet, NamesNoCableAndNoListener) {
  const plan::Plan plan = plan_for("abx");
  const Paper paper = paper_of(plan, 6);
  for (const plan::Specimen& specimen : plan.specimens)
    EXPECT_FALSE(has(paper.helper, specimen.cable)) << specimen.cable;
  for (const std::string& listener : plan.listeners) EXPECT_FALSE(has(paper.helper, listener)) << listener;
}

TEST(HelperSheet, GivesTheSameActionsPaceReasonsAndCautions) {
  const std::string sheet = unwrapped(paper_of(plan_for("abx"), 7).helper);
  for (const char* words :
       {"same cable or not", "Volume to minimum, or mute.", "Swap: 30 s", "Presentation: 15 s",
        "after every 12 trials", "wrong tag", "audible fault", "interruption", "pace overrun",
        "other, in words", "a shorted output can destroy it", "Bridged outputs", "Valve amplifier",
        "about 1 nF", "licensed person", "local code", "85 dBA", "80 dBA for 40 hours"})
    EXPECT_TRUE(has(sheet, words)) << words;
}

TEST(TaggingList, PrintsEachTagLarge) {
  const std::string list = report::tagging_list(plan_for("abx"), 2, {{407, "heavy pair"}});
  EXPECT_TRUE(has(list,
                  "    #   #  ###  #####\n"
                  "    #   # #   #     #\n"
                  "    ##### #   #    #\n"
                  "        # #   #   #\n"
                  "        #  ###    #\n"));
  EXPECT_TRUE(has(list, "tag 407 goes on: heavy pair\n"));
  EXPECT_TRUE(has(list, "sitting 2 of 2"));
  EXPECT_NE(refusal([&] { report::tagging_list(plan_for("abx"), 3, {}); }), "(not refused)");
}
