#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace desk {

/// What a figure can be; the first alternative stands for nothing: not possible, or not defined.
using Value = std::variant<std::monostate, bool, long long, double, std::string>;

/// The value, or nothing.
template <typename T>
Value known(const std::optional<T>& value) {
  return value ? Value(*value) : Value();
}

/// One result of a calculation.
struct Figure {
  std::string key;    ///< in JSON, snake_case: "p_one_sided"
  std::string label;  ///< in text: "one-sided p"
  Value value;
  std::string note = "";  ///< which tail, which standard error, exact or not
};

/// A column of results, one for each thing given: for each p, for each listener.
struct Series {
  std::string key;
  std::string label;
  std::vector<double> values;  ///< not-a-number for nothing
};

/// Everything that a calculation results in, what it was given included.
struct Figures {
  std::string title;
  std::vector<Figure> figures;
  std::vector<Series> series = {};  ///< all of the same length

  /// The value under `key`.
  /// @throws std::out_of_range  when there is no such figure.
  const Value& at(std::string_view key) const;

  void add(std::string key, std::string label, Value value, std::string note = "") {
    figures.push_back({std::move(key), std::move(label), std::move(value), std::move(note)});
  }
};

/// For a person: title, figures in columns, then the series side by side in numbered rows. Numbers are
/// rounded to six significant digits; nothing reads "none", infinity "infinite".
std::string figures_text(const Figures& figures);

/// For a program: {"schema": 1, "title": ..., every key: its value, "notes": {key: note}} in the order of the
/// figures, series as arrays. Numbers keep their full double precision; nothing is null; the infinities are the strings
/// "infinite" and "-infinite".
std::string figures_json(const Figures& figures);

}  // namespace desk
