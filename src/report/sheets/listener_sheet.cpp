#include <algorithm>
#include <stdexcept>

#include "plan/sitting_shape.h"
#include "report/content/words.h"
#include "report/sheets.h"
#include "report/sheets/sheet_parts.h"
#include "report/wrapped_text.h"
#include "sitting/layout.h"
#include "sitting/words.h"

namespace report {
namespace {

void check_attends(const plan::Plan& plan, int sitting, const std::string& listener) {
  for (const int index : plan::part_of(plan, sitting).listeners)
    if (listener_of(plan, index) == listener) return;
  throw std::domain_error("listener must attend sitting " + std::to_string(sitting) + ", got \"" + listener +
                          "\"");
}

std::string boxes(std::span<const std::string_view> words) {
  std::string all;
  for (const std::string_view word : words) all += (all.empty() ? "[ ] " : "  [ ] ") + std::string(word);
  return all;
}

std::string row(const protocols::Protocol& protocol, int trial) {
  std::string number = std::to_string(trial);
  number.insert(0, number.size() < 4 ? 4 - number.size() : 0, ' ');
  std::string labels;
  for (const std::string_view label : protocol.labels(trial))
    labels += (labels.empty() ? "" : " ") + std::string(label);
  const auto answers = protocol.answers();
  return number + "  heard " + labels + "   answer " + boxes(answers) + "\n      sure?  " +
         boxes(sitting::sureness_words()) +
         "\n      note  ______________________________________________________________\n";
}

std::string rules(const protocols::Protocol& protocol, const plan::Plan& plan) {
  return sheet_heading("How to answer") +
         wrapped("The question of every trial: " + std::string(protocol.question()), sheet_width) +
         sheet_points({
             "Answer every trial, by a guess if need be: say then that it is a guess.",
             "An answer may be corrected until the first presentation of the next trial begins: cross the "
             "old one out so that it can still be read, mark the new one, and write \"corrected\". Later, "
             "nothing is changed.",
             "Do not talk about a trial, nod or sigh, before it is settled; best not before the sitting has "
             "ended.",
             "You may ask for a rest or stop at any time.",
             "Practice before trial 1: " + counted(plan.practice_trials, "trial") + ", not written down.",
             std::string(ears_caution()),
         });
}

std::string afterwards() {
  const std::string line = std::string(sheet_width, '_') + "\n";
  return sheet_heading("After the sitting") + "If you told some apart: what gave it away?\n" + line + line +
         "Was there any other cue - a sound, a pause, a light, a word?\n" + line + line;
}

}  // namespace

std::string listener_sheet(const plan::Plan& plan, int sitting, const std::string& listener) {
  check_attends(plan, sitting, listener);
  const protocols::Protocol& protocol = plan::protocol_of(plan);
  const sitting::Layout layout(plan, sitting);
  std::string all = sheet_head(plan, sitting, "LISTENER'S SHEET");
  all += wrapped("Listener: " + one_line(listener), sheet_width) + rules(protocol, plan) + spoiling_words() +
         declaration_lines("the helper") + sheet_heading("Trials");
  Rests rests(plan);
  for (int trial = 1; trial <= layout.trials(); ++trial) {
    const bool spare = layout.spare_of(trial) > 0;
    if (rests.is_before(spare)) all += "\n" + rest_line(plan);
    all += "\n";
    if (spare) all += "spare: only if the helper says so\n";
    all += row(protocol, trial);
  }
  return all + afterwards();
}

}  // namespace report
