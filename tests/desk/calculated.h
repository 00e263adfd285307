#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

#include "desk/calculator/calculation.h"

/// Words between spaces; single quotes hold together.
inline std::vector<std::string> typed_words(const std::string& line) {
  std::vector<std::string> words;
  for (std::size_t from = 0, to; from < line.size(); from = to + 1) {
    const bool quoted = line[from] == '\'';
    if (quoted) ++from;
    to = std::min(line.find(quoted ? '\'' : ' ', from), line.size());
    if (to > from) words.push_back(line.substr(from, to - from));
  }
  return words;
}

/// The figures of what is typed after "calc": "right 12 16 --level 0.01".
inline desk::Figures calculated(const std::string& line) {
  const std::vector<std::string> words = typed_words(line);
  const desk::Calculation* found = nullptr;
  for (const desk::Topic& topic : desk::topics())
    for (const desk::Calculation& calculation : topic.calculations)
      if (calculation.name == words.front()) found = &calculation;
  if (!found) throw std::out_of_range(words.front());
  std::map<std::string, std::vector<std::string>> typed;
  std::string table;
  const desk::Argument* taking = nullptr;
  auto place = found->arguments.begin();
  for (auto word = words.begin() + 1; word != words.end(); ++word) {
    if (word->starts_with("--")) {
      const auto named = std::find_if(found->arguments.begin(), found->arguments.end(),
                                      [&](const desk::Argument& argument) { return argument.name == *word; });
      if (*word == "--csv")
        table = *++word;
      else if (named == found->arguments.end())
        throw std::out_of_range(*word);
      else
        typed[(taking = &*named)->plain_name()];
    } else {
      if (!taking) taking = &*place++;
      typed[taking->plain_name()].push_back(*word);
      if (taking->shape == desk::Shape::word) taking = nullptr;
    }
  }
  return desk::calculate(*found, std::move(typed), table);
}

inline double amount(const desk::Figures& figures, const std::string& key) {
  return std::get<double>(figures.at(key));
}

inline double amount(const std::string& line, const std::string& key) {
  return amount(calculated(line), key);
}

inline const std::string& note(const desk::Figures& figures, const std::string& key) {
  for (const desk::Figure& figure : figures.figures)
    if (figure.key == key) return figure.note;
  throw std::out_of_range(key);
}

inline const std::vector<double>& series(const desk::Figures& figures, const std::string& key) {
  for (const desk::Series& column : figures.series)
    if (column.key == key) return column.values;
  throw std::out_of_range(key);
}

/// What the help of each calculation gives as its example, after "calc".
inline std::vector<std::string> calculated_examples() {
  std::vector<std::string> examples;
  for (const desk::Topic& topic : desk::topics())
    for (const desk::Calculation& calculation : topic.calculations) {
      examples.push_back(calculation.name + " " + calculation.example);
      std::replace(examples.back().begin(), examples.back().end(), '"', '\'');
    }
  return examples;
}
