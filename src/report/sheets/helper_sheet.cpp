#include <algorithm>

#include "plan/sitting_shape.h"
#include "report/content/words.h"
#include "report/sheets.h"
#include "report/sheets/sheet_parts.h"
#include "report/wrapped_text.h"
#include "text/columns.h"

namespace report {
namespace {

using sitting::SheetTrial;

std::vector<std::string> excerpts_of(const std::vector<SheetTrial>& trials) {
  std::vector<std::string> excerpts;
  for (const SheetTrial& trial : trials)
    for (const sitting::HelperStep& step : trial.steps)
      if (!step.excerpt.empty() &&
          std::find(excerpts.begin(), excerpts.end(), step.excerpt) == excerpts.end())
        excerpts.push_back(step.excerpt);
  return excerpts;
}

std::string excerpt_number(const std::vector<std::string>& excerpts, const std::string& excerpt) {
  const auto found = std::find(excerpts.begin(), excerpts.end(), excerpt);
  return found == excerpts.end() ? "-" : std::to_string(found - excerpts.begin() + 1);
}

std::string actions(const plan::Plan& plan) {
  const std::string present = std::to_string(plan.presentation_seconds) + " s";
  return sheet_heading("The same actions for every presentation, same cable or not") +
         sheet_steps({"Volume to minimum, or mute.", "Wait until nothing sounds.",
                      "Unplug the cable, both ends and both channels.",
                      "Plug in the cable with the printed tag - also when it is the one just unplugged.",
                      "Check: tag, both ends, both channels, nothing touching.",
                      "Volume to the printed setting: the reference setting less the attenuation.",
                      "Read the setting back and compare it with the sheet.",
                      "Write down the time, then start the excerpt when the swap time is over, never sooner.",
                      "Stop the excerpt at its end or after " + present + "."}) +
         wrapped(
             "Do every step at the same speed and make it sound alike at the seat. The volume display must "
             "be out of the listeners' sight. Say nothing but the trial's number and the label.",
             sheet_width);
}

std::string pace(const plan::Plan& plan) {
  return sheet_heading("Pace") +
         sheet_points(
             {"Swap: " + std::to_string(plan.swap_seconds) + " s from stop to start, waited out every time.",
              "Presentation: " + std::to_string(plan.presentation_seconds) + " s.",
              "Rest: " + std::to_string(plan.break_minutes) + " minutes after every " +
                  counted(plan.block_trials, "trial") + ", where the sheet says so.",
              "Before trial 1: " + counted(plan.practice_trials, "practice trial") +
                  " with any of the tags; nothing of them is kept.",
              "The next trial begins only when every listener has answered this one."});
}

std::string presentations(const SheetTrial& trial, const std::vector<std::string>& excerpts) {
  text::Columns columns({"", "", "", "", "", ""},
                        {text::Align::right, text::Align::left, text::Align::right, text::Align::right,
                         text::Align::right, text::Align::left});
  bool first = true;
  for (const sitting::HelperStep& step : trial.steps) {
    auto padded = [](std::string cell, std::size_t width) {
      return cell.size() < width ? std::string(width - cell.size(), ' ') + cell : cell;
    };
    columns.add({padded(first ? std::to_string(trial.trial) : "", 5),
                 step.label + std::string(step.label.size() < 6 ? 6 - step.label.size() : 0, ' '),
                 padded(std::to_string(step.tag), 5), padded(step.attenuation_db, 8),
                 padded(excerpt_number(excerpts, step.excerpt), 7), "  ____ : ____ : ____"});
    first = false;
  }
  return columns.text();
}

}  // namespace

std::string helper_sheet(const plan::Plan& plan, int sitting, const std::vector<SheetTrial>& trials) {
  plan::part_of(plan, sitting);
  const std::vector<std::string> excerpts = excerpts_of(trials);
  std::string all =
      sheet_head(plan, sitting, "HELPER'S SHEET - not for listeners, nor for whoever keys their answers");
  all += "Helper ___________________________   Amplifier's reference setting __________\n";
  std::vector<std::string> cautions = swap_cautions();
  cautions.emplace_back(ears_caution());
  all += sheet_heading("Cautions") + sheet_points(cautions);
  all += actions(plan) + pace(plan) + spoiling_words();
  all += declaration_lines("the listeners");
  if (!excerpts.empty()) all += sheet_heading("Excerpts") + sheet_steps(excerpts);
  all += sheet_heading("Trials") + "trial  label     tag  atten.dB  excerpt    started\n";
  Rests rests(plan);
  for (const SheetTrial& trial : trials) {
    if (rests.is_before(trial.spare)) all += "\n" + rest_line(plan);
    all += "\n";
    if (trial.spare) all += "spare: only if needed\n";
    all += presentations(trial, excerpts);
    all += "       spoiled [ ]  why and by whom ___________________________________________\n";
  }
  return all + "\nEnd of the sitting: declare separation above, give this sheet to the organiser.\n";
}

}  // namespace report
