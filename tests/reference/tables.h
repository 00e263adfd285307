#pragma once

#include <cmath>
#include <optional>
#include <vector>

#include "reference/call.h"

namespace reference {

/// A table goes to the reference row after row.
inline Numbers flat(const std::vector<Numbers>& rows) {
  Numbers list;
  for (const Numbers& row : rows) list.insert(list.end(), row.begin(), row.end());
  return list;
}

inline std::vector<Numbers> rows_of(const Numbers& list, int columns) {
  std::vector<Numbers> rows;
  for (auto from = list.begin(); from != list.end(); from += columns) rows.emplace_back(from, from + columns);
  return rows;
}

inline std::vector<std::vector<int>> whole_rows(const Numbers& list, int columns) {
  std::vector<std::vector<int>> rows;
  for (const Numbers& row : rows_of(list, columns)) rows.emplace_back(row.begin(), row.end());
  return rows;
}

inline std::vector<std::vector<bool>> truth_rows(const Numbers& list, int columns) {
  std::vector<std::vector<bool>> rows;
  for (const Numbers& row : rows_of(list, columns)) rows.emplace_back(row.begin(), row.end());
  return rows;
}

/// Answers, of which not-a-number is one that was not given.
inline std::vector<std::vector<std::optional<double>>> ratings_of(const Numbers& list, int columns) {
  std::vector<std::vector<std::optional<double>>> rows;
  for (const Numbers& row : rows_of(list, columns)) {
    auto& ratings = rows.emplace_back();
    for (double rating : row) ratings.push_back(std::isnan(rating) ? std::nullopt : std::optional(rating));
  }
  return rows;
}

}  // namespace reference
