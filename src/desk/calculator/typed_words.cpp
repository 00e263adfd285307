#include "desk/calculator/typed_words.h"

#include <algorithm>

#include "stats/arguments.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {

using text::BadInput;

std::string quoted(const std::string& words) { return '"' + words + '"'; }

std::vector<std::string> split(const std::string& words, std::string_view separators) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from < words.size();) {
    const std::size_t to = std::min(words.find_first_of(separators, from), words.size());
    if (to > from) parts.push_back(words.substr(from, to - from));
    from = to + 1;
  }
  return parts;
}

long long whole(const std::string& name, const std::string& typed) {
  const auto number = text::whole_number(typed);
  if (!number) throw BadInput(name + " must be a whole number, got " + quoted(typed));
  return *number;
}

int count_of(const std::string& name, const std::string& typed, int lowest, int highest) {
  const long long number = whole(name, typed);
  stats::require_count(name, number, lowest, highest);
  return static_cast<int>(number);
}

std::vector<std::string> list_elements(const std::string& name, const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
  std::vector<std::string> elements = split(all, " ;\t\n");
  if (elements.size() == 1) {
    const std::string only = elements.front();
    elements = split(only, ",");
    if (elements.size() == 2 && only.find('.') == std::string::npos && text::number(only))
      throw BadInput(name + " " + quoted(only) + " may be one number or two; write " + elements[0] + "." +
                     elements[1] + " for one, \"" + elements[0] + "; " + elements[1] + "\" for two");
  }
  for (std::string& element : elements)
    if (element.size() > 1 && element.ends_with(',')) element.pop_back();
  if (elements.empty()) throw BadInput(name + " needs at least one number");
  return elements;
}

}  // namespace desk
