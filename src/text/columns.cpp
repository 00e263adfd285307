#include "text/columns.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "text/utf8.h"

namespace text {

Columns::Columns(std::vector<std::string> header, std::vector<Align> align)
    : header_(std::move(header)), align_(std::move(align)) {
  align_.resize(header_.size(), Align::left);
}

void Columns::add(std::vector<std::string> cells) {
  if (cells.size() > header_.size())
    throw std::domain_error("cells of a row must be at most " + std::to_string(header_.size()) + ", got " +
                            std::to_string(cells.size()));
  cells.resize(header_.size());
  rows_.push_back(std::move(cells));
}

std::string Columns::text(std::size_t indent) const {
  std::vector<std::vector<std::string>> lines = rows_;
  const bool titled =
      std::any_of(header_.begin(), header_.end(), [](const auto& title) { return !title.empty(); });
  if (titled) lines.insert(lines.begin(), header_);
  std::vector<std::size_t> widths(header_.size());
  for (const auto& cells : lines)
    for (std::size_t i = 0; i < cells.size(); ++i)
      widths[i] = std::max(widths[i], length_in_characters(cells[i]));
  std::string all;
  for (const auto& cells : lines) {
    std::string line(indent, ' ');
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const std::string padding(widths[i] - length_in_characters(cells[i]), ' ');
      line += (i == 0 ? "" : "  ") + (align_[i] == Align::left ? cells[i] + padding : padding + cells[i]);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    all += line + "\n";
  }
  return all;
}

}  // namespace text
