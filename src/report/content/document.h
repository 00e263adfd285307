#pragma once

#include <string>
#include <variant>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"
#include "report/content/figure.h"

namespace report {

/// Running text. The first paragraph of a finding is its sentence and stands out.
struct Paragraph {
  std::string text;
  bool lead = false;
};

/// Terms with their values, such as "exact p" and "0.0384".
struct Facts {
  struct Fact {
    std::string term, value;
  };
  std::vector<Fact> facts;
};

/// Remarks one under the other; cautions stand out.
struct Points {
  std::vector<std::string> points;
  bool cautions = false;
};

/// A table; numbers are right-aligned columns. The first column names its row.
struct Table {
  struct Column {
    std::string title;
    bool number = false;
  };
  std::string caption;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row_links = {};  ///< ids of the sections that rows lead to; none, or one a row
};

using Block = std::variant<Paragraph, Facts, Points, Table, Figure>;

/// A piece of the report with its heading. Depth 2 is a chapter, 3 a comparison or sitting, 4 a part of one.
struct Section {
  int depth = 2;
  std::string id;  ///< unique; letters, digits and "-"
  std::string title;
  std::vector<Block> blocks;
};

/// A report as words, tables and charts, in the order in which it is read: text and HTML are two printings of it.
struct Document {
  std::string title, subtitle;
  std::vector<Section> sections;
  std::string kind = "Report of a blind comparison";  ///< above the title of a page
};

/// @throws std::domain_error  when the findings point at comparisons or listeners that the plan has not.
Document document_of(const findings::Evidence& evidence, const findings::Findings& findings);

}  // namespace report
