// A sitting from its links to its report, in real browsers: the helper, three listeners and the organiser each have one
// of their own, and the program is killed on the way.
#include <gtest/gtest.h>

#include "browser/hosted_program.h"
#include "sitting/chain/chain_reader.h"
#include "store/campaign.h"
#include "tier.h"
#include "whole/sample_campaign.h"

namespace {

using browser::Browser;
using browser::HostedProgram;

std::string in_words(const sitting::Event& event) {
  std::string words = event.type;
  if (event.trial != 0) words += " " + std::to_string(event.trial);
  if (event.presentation != 0) words += "." + std::to_string(event.presentation);
  for (const std::string& word : {event.who, event.word, event.sureness})
    if (!word.empty()) words += " " + word;
  return words;
}

/// What is in the record of sitting 1, one line an event.
std::vector<std::string> record_of(const std::filesystem::path& file) {
  const store::Campaign campaign = store::Campaign::open(file);
  const plan::SealedPlan plan = campaign.plan("first");
  std::vector<std::string> all;
  for (const sitting::Event& event : sitting::read_chain(*campaign.log("first"), plan.commitment, 1).events)
    all.push_back(in_words(event));
  return all;
}

class WholeSitting : public testing::Test {
 protected:
  WholeSitting() {
    make_campaign(folder);
    std::vector<std::string> words = {
        "plan",     "first", "--rig",      "hall", "--compare", "thick-pair/bell-wire",
        "--trials", "12",    "--block",    "6",    "--swap",    "1",
        "--listen", "1",     "--practice", "1"};
    for (const std::string& name : names) words.insert(words.end(), {"--listener", name});
    expect_done(folder, words);
    program.emplace(folder);
    helper.open(program->link("helper"));
    organiser.open(program->link("organiser"));
    for (const std::string& name : names) of(name).open(program->link(name));
  }

  Browser& of(const std::string& name) { return listeners[static_cast<std::size_t>(name[0] - 'A')]; }

  static std::string titled(int trial) {
    return trial < 0 ? "ractice " + std::to_string(-trial) : "rial " + std::to_string(trial);
  }

  /// The helper connects and says so; the clock does the rest.
  void present(int trial, int presentation) {
    helper.expect("#what", "of " + ((trial < 0 ? "p" : "t") + titled(trial)));
    helper.expect("#ready", "Connected and checked");
    helper.click("#ready");
    helper.expect("#heading", "Playing: start the excerpt now");
    done.push_back("presented " + std::to_string(trial) + "." + std::to_string(presentation));
  }
  /// By the keyboard alone: the button is where the focus was when it comes back.
  void press_ready(int trial, int presentation) {
    helper.expect("#heading", "Swap");
    helper.run("document.getElementById('ready').focus()");
    helper.press(" ");
    helper.expect("#heading", "Playing");
    done.push_back("presented " + std::to_string(trial) + "." + std::to_string(presentation));
    helper.expect("#heading", "Swap");
    EXPECT_TRUE(
        browser::eventually([&] { return helper.run("return document.activeElement.id") == "ready"; }));
  }
  void play(int trial, int first = 1) {
    for (int presentation = first; presentation <= 3; ++presentation) present(trial, presentation);
  }

  static std::string button(const std::string& word) {
    return "#answers button:nth-child(" + std::string(word == "A" ? "1" : "2") + ")";
  }
  void answer(const std::string& name, int trial, const std::string& word) {
    of(name).expect("#heading", titled(trial));
    of(name).expect("#heading", ": your answer");
    of(name).click(button(word));
    of(name).expect("#kept", "Kept: " + word);
    done.push_back("answered " + std::to_string(trial) + " " + name + " " + word);
  }
  void everybody_answers(int trial, const std::string& words) {
    for (std::size_t i = 0; i < 3; ++i) answer(names[i], trial, std::string(1, words[i]));
  }

  void prepare() {
    for (const std::string& name : names) {
      of(name).expect("#name", name);
      of(name).type("#characters", name + "'s");
      of(name).click("#contribute button");
      done.push_back("contributed " + name);
      of(name).expect("#declare-legend", "At the start");
      of(name).type("#declare-words", "a word");
      of(name).press("\uE007");  // Enter makes a new line, and declares nothing
      of(name).click("#declare button.main");
      done.push_back("declared " + name + " start");
      of(name).expect("#heading", "Waiting for the sitting to begin");
    }
    helper.click("#declare button");
    done.push_back("declared helper start");
    helper.click("#stopwatch");
    helper.expect("#stopwatch", "Stop");
    helper.click("#stopwatch");
    helper.expect("#rehearsed", "Longest so far");
    done.push_back("fact longest-rehearsed-swap");
    helper.expect("#begin", "Close the characters");
    helper.click("#begin");
    done.push_back("began");
    helper.click("#show-list");
    helper.expect("#list", "bell-wire");
    helper.type("#tagger", "Dora");
    helper.click("#tagged button");
    done.push_back("tagged Dora");
    helper.expect("#tagged-by", "Dora");
    helper.choose("#fact-name", "temperature");
    helper.type("#fact-value", "21 C");
    helper.click("#fact button");
    done.push_back("fact temperature");
    helper.expect("#facts", "21 C");
    level("start");
  }

  void level(const std::string& moment) {
    helper.choose("#level-channel", "left");
    helper.choose("#level-moment", moment);
    helper.type("#level-value", "1,25");
    helper.click("#level button");
    done.push_back("terminal level left " + moment);
    helper.expect("#levels", "left " + moment + ": 1,25 dBV");
  }

  void finish() {
    helper.expect("#heading", "Every trial has been played");
    helper.click("#declare button");
    done.push_back("declared helper end");
    level("end");
    for (const std::string& name : names) {
      of(name).expect("#heading", "That was the last trial");
      of(name).expect("#declare-legend", "At the end");
      of(name).click("#declare button.main");
      done.push_back("declared " + name + " end");
      of(name).type("#cue-words", "nothing");
      of(name).click("#cue button");
      done.push_back("cue " + name);
    }
    organiser.expect("#progress", "12 of 12");
    organiser.click("#end");
    done.push_back("ended");
    for (const std::string& name : names) of(name).expect("#heading", "The sitting has ended");
    browser::unseal_and_open_report(organiser);
    organiser.expect("body", "thick-pair");
  }

  const std::vector<std::string> names = {"Ada", "Bela", "Cleo"};
  Folder folder;
  std::optional<HostedProgram> program;
  browser::Driver driver;
  Browser helper{driver}, organiser{driver};
  std::array<Browser, 3> listeners{Browser(driver), Browser(driver), Browser(driver)};
  std::vector<std::string> done = {"opened live"};
};

TEST_F(WholeSitting, IsRecordedExactlyAsItWasHeld) {
  if (tier() == "quick") GTEST_SKIP() << "two minutes at the pace of the clock";
  prepare();
  present(-1, 1);
  press_ready(-1, 2);
  present(-1, 3);
  everybody_answers(-1, "ABA");

  play(1);
  everybody_answers(1, "AAB");

  present(2, 1);  // a page opened anew in mid-trial shows where the trial is
  of("Ada").expect("#presentations", "played");
  of("Ada").reload();
  of("Ada").expect("#presentations", "played");
  helper.reload();
  play(2, 2);
  everybody_answers(2, "BBA");

  play(3);  // a correction with its sureness
  everybody_answers(3, "AAA");
  of("Bela").click(button("B"));
  of("Bela").expect("#kept", "Kept: B");
  done.push_back("corrected 3 Bela B");
  of("Bela").click("#sureness button:nth-child(2)");
  done.push_back("corrected 3 Bela B fairly sure");
  of("Bela").expect("#sureness [aria-pressed=true]", "fairly sure");

  present(4, 1);  // a spoiled trial
  of("Cleo").click("#spoil button");
  done.push_back("spoiled 4 Cleo interruption");
  organiser.expect("#spoiled", "4 (interruption, by Cleo)");
  helper.expect("#look-again", "Trial 4 was withdrawn by Cleo");

  play(5);  // a break
  everybody_answers(5, "ABB");
  of("Bela").click("#rest");
  done.push_back("rest Bela");
  helper.expect("#resting", "asked for by Bela");
  for (const std::string& name : names) of(name).expect("#resting", "A break was asked for");

  present(6, 1);  // the program is killed, and started again
  present(6, 2);
  program->kill_and_start_again();
  present(6, 3);
  everybody_answers(6, "BAA");

  play(7);  // a device without a network keeps its answer, and sends it
  of("Cleo").expect("#heading", "rial 7: your answer");
  of("Cleo").go_offline(true);
  of("Cleo").click(button("B"));
  of("Cleo").expect("#problem", "Not sent yet");
  answer("Ada", 7, "A");
  answer("Bela", 7, "A");
  of("Cleo").go_offline(false);
  of("Cleo").expect("#kept", "Kept: B");
  done.push_back("answered 7 Cleo B");

  of("Cleo").open("about:blank");  // a listener drops out, and comes back
  organiser.expect("#people", "not connected");
  play(8);
  answer("Ada", 8, "B");
  answer("Bela", 8, "B");
  helper.expect("#waiting-words", "1 of the listeners");
  helper.click("#close");
  done.push_back("missing 8 Cleo");
  of("Cleo").open(program->link("Cleo"));
  play(9);
  everybody_answers(9, "AAB");

  play(10);  // two tabs of one listener agree, and an answer pressed in both counts once
  const std::string first_tab = of("Ada").tab();
  answer("Ada", 10, "A");
  of("Ada").new_tab();
  of("Ada").open(program->link("Ada"));
  of("Ada").expect("#kept", "Kept: A");
  of("Ada").click(button("A"));
  of("Ada").close_tab();
  of("Ada").turn_to(first_tab);
  answer("Bela", 10, "A");
  answer("Cleo", 10, "A");

  for (const int trial : {11, 12, 13}) {
    play(trial);
    everybody_answers(trial, "ABB");
  }
  finish();
  EXPECT_EQ(program->stop(SIGINT), 0);
  EXPECT_EQ(record_of(folder / "campaign.blindswap"), done);
  expect_done(folder, {"check"});
}

}  // namespace
