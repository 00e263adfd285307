#include "report/html_report.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "report/html/page.h"
#include "report/page_reader.h"
#include "report/sample.h"

namespace {

std::string html_of(const findings::Evidence& evidence) {
  return report::html_report(evidence, sample::findings_for(evidence), "0.1.0");
}

/// Names and notes that try to leave their place.
findings::Evidence hostile_evidence() {
  findings::Evidence evidence = sample::evidence();
  evidence.campaign_title = "<script>alert(1)</script>";
  evidence.plan.specimens[1].cable = "<b>&\"x\"'";
  evidence.plan.listeners[0] = "</svg>";
  evidence.sittings[0].notes[0].text = "{{{svg}}} --> ]]> </style>";
  evidence.sittings[0].cues[0].text = "a\x01z";
  return evidence;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
  return text;
}

}  // namespace

TEST(PageReader, FindsWhatIsWrong) {
  EXPECT_TRUE(read_page("<html><p a=\"b\">x &amp; y</p></html>").faults.empty());
  for (const char* wrong :
       {"<html><p>x</html>", "<html><p a=b>x</p></html>", "<html><p a=\"1\" a=\"2\">x</p></html>",
        "<html>a & b</html>", "<html>a > b</html>", "<html><p>"})
    EXPECT_FALSE(read_page(wrong).faults.empty()) << wrong;
}

TEST(HtmlReport, IsWellFormedWhateverTheNames) {
  for (const findings::Evidence& evidence :
       {sample::evidence(), sample::evidence("preference"), hostile_evidence()})
    for (const std::string& fault : read_page(html_of(evidence)).faults) ADD_FAILURE() << fault;
}

TEST(HtmlReport, EscapesNamesInTextAttributesAndCharts) {
  const std::string html = html_of(hostile_evidence());
  EXPECT_EQ(html.find("<script"), std::string::npos);
  EXPECT_EQ(html.find("<b>"), std::string::npos);
  EXPECT_NE(html.find("&lt;b&gt;&amp;&quot;x&quot;"), std::string::npos);
  EXPECT_NE(html.find("{{{svg}}} --&gt; ]]&gt; &lt;/style&gt;"), std::string::npos);
  EXPECT_NE(html.find("a?z"), std::string::npos);
  const Page page = read_page(html);
  EXPECT_EQ(page.count("svg"), read_page(html_of(sample::evidence())).count("svg"));
  EXPECT_EQ(page.count("style"), 1);
}

TEST(HtmlReport, LoadsNothingAndRunsNothing) {
  const std::string html = replaced(html_of(sample::evidence()), "xmlns=\"http://www.w3.org/2000/svg\"", "");
  for (const char* word :
       {"http://", "https://", "url(//", "@import", "src=", "<script", "<link", "javascript:", "url(h"})
    EXPECT_EQ(html.find(word), std::string::npos) << word;
  for (const Tag& tag : read_page(html).tags)
    for (const auto& [name, value] : tag.attributes) EXPECT_FALSE(name.starts_with("on")) << name;
}

TEST(HtmlReport, IsTheSameForTheSameFindings) {
  EXPECT_EQ(html_of(sample::evidence()), html_of(sample::evidence()));
}

TEST(HtmlReport, HasItsLanguageAndHeadingsInOrder) {
  const Page page = read_page(html_of(sample::evidence()));
  EXPECT_EQ(page.tags.front().attributes.at("lang"), "en");
  EXPECT_EQ(page.count("h1"), 1);
  EXPECT_EQ(page.count("main"), 1);
  int depth = 0;
  for (const Tag& tag : page.tags) {
    if (tag.name.size() != 2 || tag.name[0] != 'h' || tag.name == "hr") continue;
    EXPECT_LE(tag.name[1] - '0', depth + 1);
    depth = tag.name[1] - '0';
  }
}

TEST(HtmlReport, IdsAreUniqueAndEveryReferenceLeadsToOne) {
  const Page page = read_page(html_of(sample::evidence()));
  std::set<std::string> ids;
  for (const std::string& id : page.values_of("id")) EXPECT_TRUE(ids.insert(id).second) << id;
  for (const std::string& link : page.values_of("href")) EXPECT_TRUE(ids.contains(link.substr(1))) << link;
  for (const std::string& list : page.values_of("aria-labelledby")) {
    std::istringstream stream(list);
    for (std::string id; stream >> id;) EXPECT_TRUE(ids.contains(id)) << id;
  }
}

TEST(HtmlReport, TablesHaveScopedHeadersAndFiguresAreDescribed) {
  const Page page = read_page(html_of(sample::evidence()));
  EXPECT_GT(page.count("table"), 10);
  EXPECT_GT(page.count("svg"), 7);
  EXPECT_EQ(page.count("svg"), page.count("figcaption"));
  EXPECT_EQ(page.count("svg"), page.count("desc"));
  for (const Tag& tag : page.tags) {
    EXPECT_TRUE(tag.name != "th" || tag.attributes.contains("scope"));
    const bool is_named = tag.attributes.contains("aria-labelledby");
    EXPECT_TRUE(is_named || (tag.name != "table" && tag.name != "svg"));
  }
}

TEST(HtmlReport, SaysWhatTheTextReportSays) {
  const findings::Evidence evidence = sample::evidence();
  const std::string html = html_of(evidence);
  for (const char* words :
       {"one ended with a supported difference", "What would have been caught", "0.897 or more",
        "separation not kept in sitting 2", "What the record can and cannot show",
        "It cannot show that nobody told the listener.", "the editor, printed in issue 14",
        "heard a plug once", "rehearsal", "Written by blindswap 0.1.0."})
    EXPECT_NE(html.find(words), std::string::npos) << words;
}

namespace {

using kainjow::mustache::data;

/// Walks a template against its data: every name must be supplied by the innermost context.
struct TemplateWalk {
  std::vector<std::pair<char, std::string>> tags;  // '#', '^', '/' or ' ', and the name
  std::set<std::string> visited;

  explicit TemplateWalk(const std::string& text) {
    static const std::regex tag(R"(\{\{\{?\s*([#^/]?)\s*([a-z_]+)\s*\}?\}\})");
    for (std::sregex_iterator match(text.begin(), text.end(), tag), end; match != end; ++match)
      tags.emplace_back((*match)[1].length() == 0 ? ' ' : (*match)[1].str()[0], (*match)[2].str());
  }

  std::size_t end_of(std::size_t begin) const {
    int depth = 0;
    for (std::size_t i = begin; i < tags.size(); ++i) {
      if (tags[i].first == '#' || tags[i].first == '^') ++depth;
      if (tags[i].first == '/' && --depth == 0) return i;
    }
    return tags.size();
  }

  void walk(std::size_t begin, std::size_t end, const data& context) {
    for (std::size_t i = begin; i < end; ++i) {
      const auto& [kind, name] = tags[i];
      const data* value = context.get(name);
      EXPECT_NE(value, nullptr) << "not supplied: " << name;
      if (value == nullptr) return;
      visited.insert(name);
      if (kind == ' ') continue;
      const std::size_t close = end_of(i);
      if (value->is_list() && kind == '#')
        for (const data& item : value->list_value()) walk(i + 1, close, item);
      else
        walk(i + 1, close, context);
      i = close;
    }
  }
};

}  // namespace

TEST(PageTemplate, EveryNameIsSuppliedWhereItStands) {
  const findings::Evidence evidence = sample::evidence();
  const auto page = report::page_data(report::document_of(evidence, sample::findings_for(evidence)), "0.1.0");
  TemplateWalk walk(report::page_template());
  walk.walk(0, walk.tags.size(), page);
  std::set<std::string> all;
  for (const auto& [kind, name] : walk.tags) all.insert(name);
  EXPECT_EQ(walk.visited, all);
  EXPECT_GT(all.size(), 25U);
}

TEST(PageTemplate, OnlyFinishedChartsAreRaw) {
  const std::string page = report::page_template();
  EXPECT_EQ(page.find("{{{"), page.find("{{{svg}}}"));
  EXPECT_EQ(page.rfind("{{{"), page.find("{{{svg}}}"));
  EXPECT_EQ(page.find("{{&"), std::string::npos);
}
