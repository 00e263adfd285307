#include "text/nearest.h"

#include <algorithm>

#include "text/utf8.h"

namespace text {
namespace {

constexpr std::size_t longest_word = 64;

std::size_t edits_allowed(std::size_t longer) {
  if (longer < 2) return 0;
  return std::max<std::size_t>(1, longer / 3);
}

}  // namespace

std::size_t edit_distance(std::string_view one, std::string_view other) {
  std::vector<std::vector<std::size_t>> edits(one.size() + 1, std::vector<std::size_t>(other.size() + 1));
  for (std::size_t i = 0; i <= one.size(); ++i) edits[i][0] = i;
  for (std::size_t j = 0; j <= other.size(); ++j) edits[0][j] = j;
  for (std::size_t i = 1; i <= one.size(); ++i) {
    for (std::size_t j = 1; j <= other.size(); ++j) {
      const std::size_t replaced = edits[i - 1][j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1);
      edits[i][j] = std::min({edits[i - 1][j] + 1, edits[i][j - 1] + 1, replaced});
      const bool exchanged = i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1];
      if (exchanged) edits[i][j] = std::min(edits[i][j], edits[i - 2][j - 2] + 1);
    }
  }
  return edits[one.size()][other.size()];
}

std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& names) {
  if (word.size() > longest_word) return std::nullopt;
  const std::string lower = lower_case(word);
  std::optional<std::string> best;
  std::size_t fewest = longest_word;
  for (const std::string& name : names) {
    if (name.size() > longest_word || name == word) continue;
    const std::size_t longer = std::max(word.size(), name.size());
    const std::size_t allowed = edits_allowed(longer);
    if (longer - std::min(word.size(), name.size()) > allowed) continue;
    const std::size_t edits = edit_distance(lower, lower_case(name));
    if (edits > allowed || edits >= fewest) continue;
    fewest = edits;
    best = name;
  }
  return best;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& names) {
  const auto name = nearest(word, names);
  return name ? "; did you mean \"" + *name + "\"?" : "";
}

}  // namespace text
