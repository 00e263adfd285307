#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/table.h"

namespace imported {

/// A keyed-in table whose columns have plain names, such as a manifest or a list of times.
class Form {
 public:
  /// @throws BadInput  when the header is wrong, with the shape of the rows: a required column is missing, a
  ///         column is neither required nor optional (with the nearest name).
  Form(text::Table table, const std::vector<std::string>& required, const std::vector<std::string>& optional);

  const std::vector<text::Row>& rows() const { return table_.rows; }
  text::Problems& problems() { return table_.problems; }

  /// The cell of a row in the column `name`, or null when the table has no such column.
  const text::Cell* cell(const text::Row& row, std::string_view name) const;

  /// The text of that cell; empty when there is none.
  std::string text(const text::Row& row, std::string_view name) const;

  /// The place of that cell; of the row's first cell when there is none.
  text::Place place(const text::Row& row, std::string_view name) const;

  /// The whole number from 1 in that cell; nothing, with a problem added, for anything else.
  std::optional<int> count(const text::Row& row, std::string_view name);

  /// The text of that cell, which must not be empty; empty with a problem added when it is.
  std::string name(const text::Row& row, std::string_view name);

  /// The member of `allowed` that the cell writes in any case; nothing, with a problem added, for anything
  /// else.
  std::optional<std::string> choice(const text::Row& row, std::string_view name,
                                    const std::vector<std::string>& allowed);

 private:
  text::Table table_;
};

/// The member of `allowed` that `word` writes in any ASCII case.
std::optional<std::string> member(std::string_view word, const std::vector<std::string>& allowed);

/// "A, B or same".
std::string listed(const std::vector<std::string>& words);

}  // namespace imported
