#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "desk/calculator/calculation.h"
#include "stats/agreement/kappa.h"
#include "stats/permutation.h"
#include "stats/resampling/agreement_permutation.h"
#include "text/quantity.h"
#include "text/table.h"

namespace desk {

/// What was typed for one calculation, read argument by argument. Names are plain ("share" for "--share") and stand
/// in messages.
///
/// @throws text::BadInput     for what is missing or cannot be read: name, what was expected, what was found.
/// @throws std::domain_error  for what is outside its range.
class Given {
 public:
  using Cells = std::vector<std::vector<std::string>>;
  using Numbers = std::vector<std::vector<std::optional<double>>>;

  /// @param table  where lists, rows and raters come from; nothing: from the words.
  Given(const Calculation& calculation, std::map<std::string, std::vector<std::string>> typed,
        std::optional<text::Table> table);

  /// Whether a flag, or an argument that may be left out, was typed.
  bool has(const std::string& name) const { return typed_.contains(name); }

  /// As typed.
  const std::string& word(const std::string& name) const;

  /// As typed, one of `words`.
  const std::string& one_of(const std::string& name, const std::vector<std::string>& words) const;

  /// The one of `names` that was typed: there must be one, and no second.
  std::string only_one(const std::vector<std::string>& names) const;

  /// A whole number from `lowest` to `highest`.
  int count(const std::string& name, int lowest, int highest) const;

  /// A number with decimal point or comma, or a fraction of two: "0.333", "0,333", "1/3".
  double number(const std::string& name) const;

  /// A number with its unit, in the unit kept: "2.5mm2", "0,6 uH". Below 0 only where that has a meaning: a level, an
  /// angle, a temperature.
  double quantity(const std::string& name, text::Unit unit) const;

  /// The same, above 0.
  double positive_quantity(const std::string& name, text::Unit unit) const;

  /// A share strictly between 0 and 1: a level of significance, a power.
  double level(const std::string& name) const;

  /// Strictly between 0 and 1, the probability that a guess is right.
  double chance() const;

  /// Numbers separated by spaces or semicolons, which may have decimal commas: "0,5;0,7"; or by commas alone,
  /// and then with decimal points: "0.5,0.7". A list of one comma and no other mark, "1,5", is refused, since
  /// it may be one number or two. A comma before a space separates: "1, 2". At least one number.
  std::vector<double> list(const std::string& name) const;

  /// Whole numbers, separated by commas too. At least one.
  std::vector<int> counts(const std::string& name, int lowest, int highest) const;

  /// The words of a list that are no numbers: "2:1" and the like.
  std::vector<std::string> words(const std::string& name) const;

  /// Counts with colons between, for each word of a list: "2:1".
  std::vector<std::vector<int>> colon_counts(const std::string& name) const;

  /// Rows of counts: each word one or more rows, separated by semicolons; counts by commas or spaces. At least
  /// one row; all of equal length.
  stats::CountTable count_rows(const std::string& name) const;

  /// A row of numbers for each rater: rows by semicolons, numbers by spaces, or by commas and then with decimal
  /// points; - or . for a missing one. All of equal length.
  Numbers ratings(const std::string& name) const;

  /// A rater each: 1 right, 0 wrong, - or . missing. All of equal length.
  std::vector<stats::Marks> marks(const std::string& name) const;

  /// The same without gaps.
  std::vector<std::vector<bool>> whole_marks(const std::string& name) const;

  /// "two-sided", "greater" or "less", of the argument "alternative".
  stats::Alternative alternative() const;

  /// The arguments "seed" and "draws".
  stats::MonteCarlo draws() const;

 private:
  const std::vector<std::string>& typed(const std::string& name) const;
  std::vector<stats::Marks> marks_of_any_length(const std::string& name) const;
  /// Columns of the table, those named or all.
  Cells columns(const std::string& name) const;

  std::map<std::string, std::vector<std::string>> typed_;
  std::optional<text::Table> table_;
  std::string see_;  ///< where the help is
};

}  // namespace desk
