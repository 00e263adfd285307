#include "report/content/words.h"
#include "report/html/page.h"

namespace report {
namespace {

using kainjow::mustache::data;
using List = kainjow::mustache::list;

data object() { return data(data::type::object); }

/// A block of no kind: the printing of one kind sets its own names.
data empty_block() {
  data block = object();
  for (const char* kind :
       {"is_lead", "is_paragraph", "is_facts", "is_points", "is_cautions", "is_table", "is_figure"})
    block.set(kind, data(data::type::bool_false));
  for (const char* words : {"text", "caption", "caption_id", "svg"}) block.set(words, "");
  for (const char* list : {"facts", "points", "columns", "rows"}) block.set(list, data(List{}));
  return block;
}

data truth(bool value) { return data(value ? data::type::bool_true : data::type::bool_false); }

data row_data(const Table& table, std::size_t place) {
  const std::vector<std::string>& row = table.rows[place];
  const bool linked = place < table.row_links.size();
  data entry = object();
  entry.set("name", row.empty() ? "" : one_line(row.front()));
  entry.set("number", truth(!table.columns.empty() && table.columns.front().number));
  entry.set("is_linked", truth(linked));
  entry.set("link", linked ? table.row_links[place] : "");
  List cells;
  for (std::size_t i = 1; i < row.size(); ++i) {
    data cell = object();
    cell.set("cell", one_line(row[i]));
    cell.set("number", truth(i < table.columns.size() && table.columns[i].number));
    cells.push_back(cell);
  }
  entry.set("cells", data(cells));
  return entry;
}

struct BlockData {
  data operator()(const Paragraph& paragraph) const {
    data block = empty_block();
    block.set(paragraph.lead ? "is_lead" : "is_paragraph", truth(true));
    block.set("text", one_line(paragraph.text));
    return block;
  }

  data operator()(const Facts& facts) const {
    List list;
    for (const auto& fact : facts.facts) {
      data entry = object();
      entry.set("term", one_line(fact.term));
      entry.set("value", one_line(fact.value));
      list.push_back(entry);
    }
    data block = empty_block();
    block.set("is_facts", truth(true));
    block.set("facts", data(list));
    return block;
  }

  data operator()(const Points& points) const {
    List list;
    for (const std::string& point : points.points) {
      data entry = object();
      entry.set("point", one_line(point));
      list.push_back(entry);
    }
    data block = empty_block();
    block.set(points.cautions ? "is_cautions" : "is_points", truth(true));
    block.set("points", data(list));
    return block;
  }

  data operator()(const Table& table) const {
    List columns, rows;
    for (const auto& column : table.columns) {
      data entry = object();
      entry.set("column", column.title);
      entry.set("number", truth(column.number));
      columns.push_back(entry);
    }
    for (std::size_t i = 0; i < table.rows.size(); ++i) rows.push_back(row_data(table, i));
    data block = empty_block();
    block.set("is_table", truth(true));
    block.set("caption", one_line(table.caption));
    block.set("columns", data(columns));
    block.set("rows", data(rows));
    return block;
  }

  data operator()(const Figure& figure) const {
    data block = empty_block();
    block.set("is_figure", truth(true));
    block.set("caption", one_line(figure.caption));
    block.set("svg", figure.svg);
    return block;
  }
};

data section_data(const Section& section) {
  data entry = object();
  entry.set("id", section.id);
  entry.set("title", one_line(section.title));
  entry.set("depth", std::to_string(section.depth));
  entry.set("is_chapter", truth(section.depth == 2));
  entry.set("is_item", truth(section.depth == 3));
  entry.set("is_part", truth(section.depth == 4));
  List blocks;
  for (const Block& block : section.blocks) {
    blocks.push_back(std::visit(BlockData{}, block));
    blocks.back().set("caption_id", section.id + "-caption-" + std::to_string(blocks.size()));
  }
  entry.set("blocks", data(blocks));
  return entry;
}

}  // namespace

data page_data(const Document& document, std::string_view version) {
  List chapters, sections;
  for (const Section& section : document.sections) {
    sections.push_back(section_data(section));
    if (section.depth != 2) continue;
    data chapter = object();
    chapter.set("id", section.id);
    chapter.set("title", one_line(section.title));
    chapters.push_back(chapter);
  }
  data page = object();
  page.set("kind", document.kind);
  page.set("title", one_line(document.title));
  page.set("subtitle", one_line(document.subtitle));
  page.set("version", std::string(version));
  page.set("chapters", data(chapters));
  page.set("sections", data(sections));
  return page;
}

}  // namespace report
