#pragma once

#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

/// One start tag of a page with its attributes, values as written.
struct Tag {
  std::string name;
  std::map<std::string, std::string> attributes;
};

/// What a page is made of, read strictly: every element but the void ones is closed in order, attributes are quoted and
/// stand once, and "<", ">" and "&" stand in text only as references.
struct Page {
  std::vector<Tag> tags;
  std::vector<std::string> faults;

  std::vector<std::string> values_of(const std::string& attribute) const {
    std::vector<std::string> values;
    for (const Tag& tag : tags)
      if (const auto found = tag.attributes.find(attribute); found != tag.attributes.end())
        values.push_back(found->second);
    return values;
  }

  int count(const std::string& name) const {
    int count = 0;
    for (const Tag& tag : tags) count += tag.name == name;
    return count;
  }
};

inline bool has_loose_ampersand(const std::string& text) {
  if (text.find('&') == std::string::npos) return false;
  static const std::regex reference("&(amp|lt|gt|quot|apos|#[0-9]+);");
  return std::regex_replace(text, reference, "").find('&') != std::string::npos;
}

inline Tag tag_of(const std::string& inside, std::vector<std::string>& faults) {
  Tag tag;
  tag.name = inside.substr(0, inside.find_first_of(" /"));
  std::size_t at = tag.name.size();
  while (at < inside.size() && inside[at] == ' ') {
    const std::size_t equals = inside.find("=\"", at);
    const std::size_t end = equals == std::string::npos ? equals : inside.find('"', equals + 2);
    if (end == std::string::npos) break;
    const std::string name = inside.substr(at + 1, equals - at - 1);
    const std::string value = inside.substr(equals + 2, end - equals - 2);
    const bool is_name = !name.empty() && name.find_first_of(" \"'<>=/") == std::string::npos;
    if (!is_name || !tag.attributes.emplace(name, value).second)
      faults.push_back("attribute " + name + " wrong or twice in <" + inside + ">");
    if (value.find('<') != std::string::npos || has_loose_ampersand(value))
      faults.push_back("loose < or & in <" + inside + ">");
    at = end + 1;
  }
  if (const std::string rest = inside.substr(at); !rest.empty() && rest != "/")
    faults.push_back("left over in <" + inside + ">: " + rest);
  return tag;
}

inline Page read_page(const std::string& html) {
  static const std::set<std::string> empty = {"meta", "br", "hr", "link", "img"};
  Page page;
  std::vector<std::string> open;
  std::size_t at = html.find("<html");
  while (at != std::string::npos && at < html.size()) {
    const std::size_t end = html.find('>', at);
    if (end == std::string::npos) {
      page.faults.push_back("an unfinished tag");
      return page;
    }
    const std::string inside = html.substr(at + 1, end - at - 1);
    if (inside.starts_with("/")) {
      if (open.empty() || open.back() != inside.substr(1))
        page.faults.push_back("</" + inside.substr(1) + "> closes <" + (open.empty() ? "" : open.back()) +
                              ">");
      else
        open.pop_back();
    } else {
      page.tags.push_back(tag_of(inside, page.faults));
      if (!empty.contains(page.tags.back().name) && !inside.ends_with("/"))
        open.push_back(page.tags.back().name);
    }
    at = html.find('<', end);
    const std::string text = html.substr(end + 1, (at == std::string::npos ? html.size() : at) - end - 1);
    const bool in_style = !open.empty() && open.back() == "style";
    if (!in_style && (text.find('>') != std::string::npos || has_loose_ampersand(text)))
      page.faults.push_back("loose > or & in text: " + text);
  }
  for (const std::string& name : open) page.faults.push_back("<" + name + "> is never closed");
  return page;
}
