#include "import/answers.h"

#include <algorithm>
#include <map>
#include <utility>

#include "import/form.h"
#include "text/nearest.h"
#include "text/table.h"
#include "text/utf8.h"

namespace imported {
namespace {

bool is_missing(std::string_view cell) { return cell == "-"; }

/// The answer in a cell; nothing for a missing one, and nothing with a problem added for one that is not
/// allowed.
std::optional<std::string> answer_in(const text::Cell& cell, const AnswerWords& words,
                                     text::Problems& problems) {
  if (cell.text.empty() || is_missing(cell.text)) return std::nullopt;
  if (words.answers.empty()) return cell.text;
  auto answer = member(cell.text, words.answers);
  if (!answer)
    problems.add(cell.place, "answer must be " + listed(words.answers) + ", got \"" + cell.text + "\"",
                 "write - for a missing answer, nothing for one to be keyed later");
  return answer;
}

/// The listener as the sitting spells the name; the name as written, with a problem added, for an unknown
/// one.
std::string listener_in(const text::Cell& cell, const AnswerWords& words, text::Problems& problems) {
  if (words.listeners.empty() && !cell.text.empty()) return cell.text;
  if (const auto listener = member(cell.text, words.listeners)) return *listener;
  problems.add(cell.place,
               cell.text.empty() ? "listener is empty"
                                 : "no listener is called \"" + cell.text + "\"" +
                                       text::did_you_mean(cell.text, words.listeners),
               words.listeners.empty() ? "" : "listeners: " + listed(words.listeners));
  return cell.text;
}

void refuse_doubles(const std::vector<KeyedAnswer>& answers, text::Problems& problems) {
  std::map<std::pair<int, std::string>, int> first_lines;
  for (const KeyedAnswer& answer : answers) {
    const std::pair key(answer.trial, text::lower_case(answer.listener));
    const auto [first, added] = first_lines.emplace(key, answer.trial_place.line);
    if (!added)
      problems.add(
          answer.trial_place,
          "trial " + std::to_string(answer.trial) + " of listener \"" + answer.listener + "\" stands twice",
          "first in line " + std::to_string(first->second));
  }
}

std::vector<KeyedAnswer> one_row_each(Form& form, const AnswerWords& words) {
  std::vector<KeyedAnswer> answers;
  for (const text::Row& row : form.rows()) {
    KeyedAnswer answer;
    const auto trial = form.count(row, "trial");
    answer.trial_place = form.place(row, "trial");
    answer.listener = listener_in(*form.cell(row, "listener"), words, form.problems());
    answer.listener_place = form.place(row, "listener");
    answer.answer = answer_in(*form.cell(row, "answer"), words, form.problems());
    answer.answer_place = form.place(row, "answer");
    if (const std::string sureness = form.text(row, "sureness"); !sureness.empty() && !is_missing(sureness))
      answer.sureness =
          words.sureness.empty() ? sureness : form.choice(row, "sureness", words.sureness).value_or("");
    answer.note = form.text(row, "note");
    if (!trial || form.text(row, "answer").empty()) continue;
    answer.trial = *trial;
    answers.push_back(std::move(answer));
  }
  return answers;
}

std::vector<KeyedAnswer> one_column_each(Form& form, const std::vector<text::Cell>& listeners,
                                         const std::vector<std::string>& spelled, const AnswerWords& words) {
  std::vector<KeyedAnswer> answers;
  for (const text::Row& row : form.rows()) {
    const auto trial = form.count(row, "trial");
    for (std::size_t i = 0; i < listeners.size(); ++i) {
      const text::Cell& cell = *form.cell(row, listeners[i].text);
      KeyedAnswer answer;
      answer.listener = spelled[i];
      answer.answer = answer_in(cell, words, form.problems());
      answer.note = form.text(row, "note");
      answer.trial_place = form.place(row, "trial");
      answer.listener_place = listeners[i].place;
      answer.answer_place = cell.place;
      if (!trial || cell.text.empty()) continue;
      answer.trial = *trial;
      answers.push_back(std::move(answer));
    }
  }
  return answers;
}

KeyedAnswers finished(std::vector<KeyedAnswer> answers, Form& form) {
  refuse_doubles(answers, form.problems());
  form.problems().refuse_if_any();
  return {std::move(answers), form.problems()};
}

}  // namespace

KeyedAnswers parse_answers(std::string_view content, const std::string& name, const AnswerWords& words) {
  text::Table table = text::parse_table(content, name);
  if (table.column("listener") || table.column("answer")) {
    Form form(std::move(table), {"trial", "listener", "answer"}, {"sureness", "note"});
    return finished(one_row_each(form, words), form);
  }
  std::vector<text::Cell> listeners;
  std::vector<std::string> columns;
  std::vector<std::string> spelled;
  for (const text::Cell& cell : table.header) {
    if (member(cell.text, {"trial", "note"})) continue;
    listeners.push_back(cell);
    columns.push_back(cell.text);
    spelled.push_back(listener_in(cell, words, table.problems));
  }
  if (listeners.empty())
    table.problems.add(table.header.back().place, "no column for a listener",
                       "columns: trial and each listener, or trial, listener and answer");
  columns.push_back("note");
  Form form(std::move(table), {"trial"}, columns);
  return finished(one_column_each(form, listeners, spelled, words), form);
}

}  // namespace imported
