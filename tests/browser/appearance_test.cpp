// Every state of every page: looked at by a browser's own eyes, narrow and wide, light and dark. Pictures of all are left
// in the build folder, under pages/.
#include <gtest/gtest.h>

#include <filesystem>
#include <map>

#include "browser/browser.h"
#include "tier.h"
#include "web/hosted.h"
#include "whole/program.h"

namespace {

using browser::Browser;
using browser::json;
using web::Hosted;

const std::string pictures = BUILD_FOLDER "/pages/";

plan::Plan plan_with_breaks() {
  plan::Plan plan = sample_plan("abx", 1, 4, 2);
  plan.block_trials = 3;
  plan.practice_trials = 1;
  plan.excerpts = {{"Choir", "0:42", "0:57"}};
  return plan;
}

class Appearance : public testing::Test {
 protected:
  Appearance() {
    std::filesystem::create_directories(pictures);
    for (const std::string person : {"ann", "helper", "organiser"})
      page(person).open(hosted.host.link(Hosted::role_of(person), person));
  }

  Browser& page(const std::string& person) {
    return person == "ann" ? ann : person == "helper" ? helper : organiser;
  }

  json ask(Browser& page, const std::string& expression) {
    static const std::string script = content_of(SOURCE_FOLDER "/tests/browser/appearance.js");
    return page.run(script + "\nreturn " + expression + ";");
  }

  /// Waits until the page is in that state, then looks at it from all sides. The quick tier leaves no pictures.
  void examine(const std::string& state, const std::string& person, const std::string& css,
               const std::string& words) {
    SCOPED_TRACE(state);
    Browser& at = page(person);
    at.expect(css, words);
    const std::map<std::string, browser::Screen> screens = {{"narrow-light", {360, 740, false}},
                                                            {"narrow-dark", {360, 740, true}},
                                                            {"wide-light", {1280, 800, false}},
                                                            {"wide-dark", {1280, 800, true}}};
    for (const auto& [name, screen] : screens) {
      at.show_as(screen);
      if (tier() != "quick") at.picture(pictures + state + "-" + name + ".png");
      EXPECT_EQ(ask(at, "complaints()"), json::array()) << name;
    }
    at.show_as({});
    hears(at);
    is_walked_through_in_order(at);
  }

  /// Each control tells a screen reader what it is and what it is for.
  static void hears(Browser& at) {
    const std::map<std::string, std::string> roles = {{"<button", "button"},
                                                      {"<input", "textbox"},
                                                      {"<select", "combobox"},
                                                      {"<textarea", "textbox"},
                                                      {"<a ", "link"}};
    for (const auto& control : at.told_of("button, input, select, textarea, a")) {
      for (const auto& [tag, role] : roles)
        if (control.html.starts_with(tag)) {
          EXPECT_EQ(control.role, role) << control.html;
        }
      EXPECT_NE(control.name, "") << control.html;
    }
    for (const auto& heading : at.told_of("h1, h2")) EXPECT_EQ(heading.role, "heading") << heading.html;
    for (const auto& group : at.told_of("fieldset")) EXPECT_NE(group.name, "") << group.html;
  }

  /// The tabulator goes from control to control as the page is read, and one sees where it is.
  void is_walked_through_in_order(Browser& at) {
    at.run("document.activeElement.blur(); getSelection().removeAllRanges(); scrollTo(0, 0)");
    at.run(
        "const first = document.body; first.tabIndex = -1; first.focus(); first.removeAttribute('tabindex')");
    for (const json& control : ask(at, "inOrder()")) {
      at.press("\uE004");
      EXPECT_EQ(ask(at, "focused()"), control);
    }
  }

  void tick(int seconds = 0) {
    hosted.held.clock.pass(std::chrono::seconds(seconds));
    hosted.host.tick();
  }

  Hosted hosted{"a seed", plan_with_breaks()};
  sitting::Sitting& sitting = hosted.held.sitting;
  browser::Driver driver;
  Browser ann{driver}, helper{driver}, organiser{driver};
};

TEST(AppearanceRules, KnowBlackOnWhite) {
  const browser::Driver driver;
  Browser page(driver);
  const std::string script = content_of(SOURCE_FOLDER "/tests/browser/appearance.js");
  page.open("about:blank");
  // 21 to 1 by the definition of contrast ratio in WCAG 2.2.
  EXPECT_NEAR(page.run(script + "return contrastOf([0, 0, 0], [255, 255, 255]);").get<double>(), 21, 1e-9);
  page.run(
      "document.documentElement.innerHTML = '<body><p style=\"color:#999;font-size:1rem\">pale</p><button "
      "style=\"height:20px\">x</button></body>'");
  const std::string found = page.run(script + "return complaints();").dump();
  for (const char* fault : {"contrast 2.8", "target of", "not one h1", "no language"})
    EXPECT_NE(found.find(fault), std::string::npos) << found;
}

TEST_F(Appearance, IsReadableAndUsableInEveryState) {
  tick();
  examine("listener-before", "ann", "#contribute label", "A few characters");
  examine("helper-before", "helper", "#missing", "ann has added no characters");
  examine("organiser-before", "organiser", "#people", "no characters yet");
  organiser.click("#show-links");
  examine("organiser-links", "organiser", "#links", "helper");
  organiser.click("#show-links");
  sitting.contribute("ann", "x7");
  tick();
  examine("listener-declares", "ann", "#declare-legend", "At the start");
  sitting.declare("ann", "start", true, "");
  sitting.contribute("bob", "x7");
  for (const std::string who : {"bob", "helper"}) sitting.declare(who, "start", true, "");
  tick();
  examine("listener-waits-for-the-order", "ann", "#heading", "Waiting for the sitting");
  sitting.begin();
  tick();
  helper.click("#show-list");
  examine("helper-tagging", "helper", "#list", "heavy-pair");
  sitting.name_tagger("Dora");
  sitting.record_fact("temperature", "21 C");
  sitting.record_level({sitting.look().tags[0], "left", "start", "1.25", "dBV"});
  tick();
  examine("helper-tagged", "helper", "#tagged-by", "Dora");
  sitting.practise_next();
  tick(15);
  examine("helper-practice", "helper", "#what", "of practice 1");
  examine("listener-practice", "ann", "#heading", "Practice 1 (not counted): ");

  sitting.present_next();
  tick();
  examine("listener-plays", "ann", "#heading", "Trial 1: A is playing");
  examine("helper-plays", "helper", "#heading", "Playing: start the excerpt now, A in trial 1");
  tick(15);
  examine("listener-between", "ann", "#heading", "Trial 1: the helper is at work");
  examine("helper-connects", "helper", "#what", "B of trial 1");
  hosted.held.ready();
  tick();
  examine("helper-ready", "helper", "#ready", "it begins by itself");
  sitting.rest("bob");
  tick();
  examine("listener-break-asked", "ann", "#resting", "A break was asked for");
  examine("helper-break-asked", "helper", "#resting", "asked for by bob");
  hosted.held.play();
  tick();
  examine("listener-answers", "ann", "#heading", "Trial 1: your answer");
  examine("helper-waits", "helper", "#waiting-words", "2 of the listeners");
  examine("organiser-waits", "organiser", "#left", "2 of the listeners still to answer");
  ann.click("#answers button");
  ann.expect("#kept", "Kept: A");
  ann.click("#sureness button");
  tick();
  examine("listener-answered", "ann", "#kept", "Kept: A");
  sitting.answer("bob", 1, "A", "", "");
  sitting.present_next();
  sitting.spoil("helper", 2, "wrong tag", "");
  tick(60);
  examine("listener-spoiled", "ann", "#heading", "Trial 2: waiting for the next");
  examine("organiser-spoiled", "organiser", "#spoiled", "2 (wrong tag, by helper)");
  hosted.held.play_and_answer("B");
  tick();
  examine("listener-break-due", "ann", "#heading", "A break");
  examine("helper-break-due", "helper", "#heading", "A break is due");
  ann.go_offline(true);
  ann.run("send('answer', {trial: 1, answer: 'B'})");
  examine("listener-offline", "ann", "#problem", "Not sent yet");
  ann.go_offline(false);

  for (int trial = 4; trial <= 5; ++trial) hosted.held.play_and_answer("B");
  tick(60);
  examine("listener-end", "ann", "#declare-legend", "At the end");
  examine("helper-done", "helper", "#heading", "Every trial has been played");
  examine("organiser-done", "organiser", "#end", "End the sitting");
  sitting.end();
  tick();
  examine("listener-over", "ann", "#heading", "The sitting has ended");
  examine("helper-over", "helper", "#heading", "The sitting has ended");
  examine("organiser-over", "organiser", "#head", sitting.head());
  hosted.desk.unseal();
  tick();
  examine("organiser-unsealed", "organiser", "#report", "Read the report");

  ann.open(hosted.host.link("listener", "ann") + "x");
  examine("wrong-link", "ann", "#problem", "this link is not valid");
  ann.open("http://127.0.0.1:" + std::to_string(hosted.host.port()) + "/");
  examine("no-link", "ann", "main", "Open the link");
}

}  // namespace
