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
  static const std::regex reference("&(amp|lt|gt|quot|apos|#[0-9]+);");
  return std::regex_replace(text, reference, "").find('&') != std::string::npos;
}

inline Tag tag_of(const std::string& inside, std::vector<std::string>& faults) {
  Tag tag;
  static const std::regex attribute(R"re(\s+([a-zA-Z][a-zA-Z-]*)="([^"<]*)")re");
  tag.name = inside.substr(0, inside.find_first_of(" /"));
  std::string rest = inside.substr(tag.name.size());
  for (std::smatch match; std::regex_search(rest, match, attribute, std::regex_constants::match_continuous);
       rest = match.suffix()) {
    if (!tag.attributes.emplace(match[1], match[2]).second)
      faults.push_back("attribute twice in <" + inside + ">");
    if (has_loose_ampersand(match[2])) faults.push_back("loose & in <" + inside + ">");
  }
  if (!rest.empty() && rest != "/") faults.push_back("left over in <" + inside + ">: " + rest);
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
