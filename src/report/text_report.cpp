#include "report/text_report.h"

#include "report/content/document.h"
#include "report/content/words.h"
#include "report/wrapped_text.h"
#include "text/utf8.h"

namespace report {
namespace {

constexpr std::size_t kColumns = 100;

std::string heading(const Section& section) {
  const std::string title = one_line(section.title);
  if (section.depth >= 4) return wrapped(title, kColumns) + "\n";
  const std::size_t length = std::min(kColumns, text::length_in_characters(title));
  return wrapped(title, kColumns) + std::string(length, section.depth == 2 ? '=' : '-') + "\n\n";
}

struct Printer {
  std::string operator()(const Paragraph& paragraph) const {
    return wrapped(one_line(paragraph.text), kColumns);
  }

  std::string operator()(const Facts& facts) const {
    Table table{"", {{""}, {""}}, {}, {}};
    for (const auto& fact : facts.facts) table.rows.push_back({fact.term, fact.value});
    return wrapped_table(table, kColumns - 2, 2);
  }

  std::string operator()(const Points& points) const {
    std::string all;
    for (const std::string& point : points.points)
      all += wrapped(one_line(point), kColumns, points.cautions ? "  ! " : "  - ", "    ");
    return all;
  }

  std::string operator()(const Table& table) const {
    const std::string rows = table.rows.empty() ? "  none\n" : wrapped_table(table, kColumns - 2, 2);
    return wrapped(one_line(table.caption), kColumns) + "\n" + rows;
  }

  std::string operator()(const Figure&) const { return ""; }
};

}  // namespace

std::string text_of(const Document& document) {
  std::string all =
      wrapped(one_line(document.title), kColumns) + wrapped(one_line(document.subtitle), kColumns);
  for (const Section& section : document.sections) {
    all += "\n" + heading(section);
    bool first = true;
    for (const Block& block : section.blocks) {
      const std::string printed = std::visit(Printer{}, block);
      if (printed.empty()) continue;
      all += (first ? "" : "\n") + printed;
      first = false;
    }
  }
  return all;
}

std::string text_report(const findings::Evidence& evidence, const findings::Findings& findings) {
  return text_of(document_of(evidence, findings));
}

}  // namespace report
