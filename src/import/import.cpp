#include "import/import.h"

#include "import/cable_table.h"
#include "import/curves.h"
#include "import/header.h"
#include "import/touchstone.h"
#include "import/warnings.h"
#include "text/error.h"
#include "text/utf8.h"

namespace imported {

Parsed parse(const Source& source, const Assignment& assignment) {
  if (text::lower_case(source.name).ends_with(".s1p")) return parse_touchstone(source, assignment);
  text::Table table = text::parse_table(source.content, source.name);
  const KnownHeader header = known_header(table);
  Warnings warnings(table.problems);
  Parsed parsed;
  if (header.kind->rows_mean == RowsMean::one_reading_each)
    parsed.readings = cable_readings(table, header, assignment, warnings);
  else
    parsed.readings.push_back(curve_reading(table, header, assignment, warnings));
  parsed.warnings = warnings.all();
  return parsed;
}

CablesNamed cables_named(const Source& source) try {
  const text::Table table = text::parse_table(source.content, source.name);
  CablesNamed found{{}, table.problems.empty()};
  if (const auto column = table.column("cable"))
    for (const text::Row& row : table.rows) found.names.push_back(row.cells[*column].text);
  return found;
} catch (const text::BadInput&) {
  return {};
}

}  // namespace imported
