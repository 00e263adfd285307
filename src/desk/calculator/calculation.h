#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "desk/calculator/figures.h"

namespace desk {

class Given;

/// How an argument is typed.
enum class Shape {
  word,   ///< one number, fraction or word
  flag,   ///< there or not
  list,   ///< numbers; from a table, one column of it
  rows,   ///< a row of cells for each thing; from a table, a row of the columns named, or of all
  raters  ///< the cells of one rater after the other; from a table, a column each
};

/// What a calculation is given.
struct Argument {
  std::string name;  ///< "--share" is typed by its name; "trials", without dashes, by its place
  std::string description;
  std::string standard = required;  ///< what is taken when nothing is typed; "" for nothing
  Shape shape = Shape::word;

  inline static const std::string required = "(required)";
  bool is_required() const { return standard == required && shape != Shape::flag; }
  /// "share" for "--share": the name in messages and for `Given`.
  std::string plain_name() const { return name.substr(name.find_first_not_of('-')); }
};

/// Statistics, electricity or hearing on bare numbers, so that a reader can check a published claim. Everything is
/// taken as typed, word for word: numbers have a decimal point or a decimal comma; a chance or a share may be a
/// fraction, "1/3"; a physical quantity has its unit, "2.5mm2". Results hold what was given beside what came out.
struct Calculation {
  std::string name;
  std::string does;
  std::string example;  ///< what is typed after the name
  std::vector<Argument> arguments;
  Figures (*figures)(const Given&);

  /// Whether its lists and rows can be the columns of a table.
  bool takes_table() const;
};

/// Calculations on one subject.
struct Topic {
  std::string title;
  std::vector<Calculation> calculations;
};

/// All of them: what a program lists and runs.
std::span<const Topic> topics();

/// The figures of a calculation.
///
/// @param typed  the words of each argument by its plain name; a flag is there with no words.
/// @param table  a text table (file) that lists, rows and raters are taken from: their words are then names of
///               columns. "" for none.
/// @throws text::BadInput     for what is missing or cannot be read.
/// @throws std::domain_error  for what is outside its range, naming the argument, its range and its value.
Figures calculate(const Calculation& calculation, std::map<std::string, std::vector<std::string>> typed,
                  const std::string& table = "");

}  // namespace desk
