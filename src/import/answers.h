#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace imported {

/// What answers may be, given by the sitting.
struct AnswerWords {
  std::vector<std::string> listeners;  ///< empty: any name
  std::vector<std::string> answers;    ///< "A", "B"; empty: any text
  std::vector<std::string> sureness;   ///< "guess", ...; empty: any text
};

/// One listener's answer in one trial, keyed in from paper.
struct KeyedAnswer {
  int trial = 0;
  std::string listener{};             ///< spelled as in AnswerWords
  std::optional<std::string> answer;  ///< spelled as in AnswerWords; nothing when none was given
  std::string sureness;               ///< spelled as in AnswerWords; "" when not said
  std::string note;
  text::Place trial_place{};
  text::Place listener_place{};  ///< in the form with a column for each listener: the name in the header
  text::Place answer_place{};
};

struct KeyedAnswers {
  std::vector<KeyedAnswer> answers;  ///< in the order of the table
  text::Problems problems;           ///< none yet: for what the sitting finds about an answer
};

/// Reads answers keyed in from paper, in either form:
///
///     trial,anna,ben            trial,listener,answer,sureness,note
///     1,A,B                     1,anna,A,certain,
///
/// The second has the columns sureness and note where wanted; the first may have a column note, which goes
/// to all answers of its row. "-" is a missing answer; an empty cell is not keyed yet and left out. Upper and
/// lower case are the same.
///
/// @throws BadInput  with everything wrong: text::parse_table, an unknown listener or column, an answer
///         that is not allowed, a trial that is no whole number from 1, a trial answered twice by one
///         listener.
KeyedAnswers parse_answers(std::string_view content, const std::string& name, const AnswerWords& words);

}  // namespace imported
