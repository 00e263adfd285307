#include "report/sheets/sheet_parts.h"

#include "report/content/words.h"
#include "report/sheets.h"
#include "report/wrapped_text.h"
#include "sitting/words.h"
#include "text/utf8.h"

namespace report {

std::string sheet_head(const plan::Plan& plan, int sitting, std::string_view title) {
  const std::string line = one_line(plan.name) + ", sitting " + std::to_string(sitting) + " of " +
                           std::to_string(plan.sittings.size());
  return wrapped(title, sheet_width) + std::string(sheet_width, '=') + "\n" +
         wrapped("Plan " + line, sheet_width) + "Date ____________________________   Page ______ of ______\n";
}

std::string sheet_heading(std::string_view title) {
  return "\n" + std::string(title) + "\n" + std::string(text::length_in_characters(title), '-') + "\n";
}

std::string sheet_steps(const std::vector<std::string>& steps) {
  std::string all;
  int number = 0;
  for (const std::string& step : steps) {
    const std::string digits = std::to_string(++number);
    all += wrapped(step, sheet_width, std::string(digits.size() < 2 ? " " : "") + digits + ". ", "    ");
  }
  return all;
}

std::string sheet_points(const std::vector<std::string>& points) {
  std::string all;
  for (const std::string& point : points) all += wrapped(point, sheet_width, "  - ", "    ");
  return all;
}

std::string declaration_lines(std::string_view from_whom) {
  const std::string seen = "No sight, hearing or talk between me and " + std::string(from_whom) +
                           ", but for a trial's number and the label";
  return sheet_heading("Separation") + wrapped(seen + ":", sheet_width) +
         "  at the start   [ ] so it is   [ ] not so:  __________________________________\n"
         "                 name ______________________________   time ________________\n"
         "  at the end     [ ] so it was  [ ] not so:  __________________________________\n"
         "                 name ______________________________   time ________________\n";
}

std::string spoiling_words() {
  std::vector<std::string> reasons;
  for (const std::string_view reason : sitting::spoil_reasons())
    reasons.push_back(reason == "other" ? "other, in words" : std::string(reason));
  return sheet_heading("A spoiled trial") +
         wrapped(
             "Helper or listener may withdraw a trial, before any answer to it can be seen by anybody else "
             "and before the next one begins, for one of these reasons and no other:",
             sheet_width) +
         sheet_points(reasons) +
         wrapped(
             "Write \"spoiled\", the reason and who said so beside the trial. The next spare of the same "
             "group replaces it; the helper says \"spare\" and its number. Nothing is erased.",
             sheet_width);
}

std::string rest_line(const plan::Plan& plan) {
  return "---- rest, " + std::to_string(plan.break_minutes) +
         " minutes; stay apart, do not talk about the trials ----\n";
}

Rests::Rests(const plan::Plan& plan) : block_(plan.block_trials) {}

bool Rests::is_before(bool spare) {
  if (spare) return false;
  const bool due = planned_before_ > 0 && planned_before_ % block_ == 0;
  ++planned_before_;
  return due;
}

}  // namespace report
