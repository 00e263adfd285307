#include <string_view>
#include <utility>

#include "report/svg/svg_chart.h"

namespace report {

std::string standalone(std::string svg) {
  constexpr std::pair<std::string_view, std::string_view> colours[] = {
      {"var(--chart-first, currentColor)", "#0a4450"},
      {"var(--chart-second, currentColor)", "#8a3e00"},
      {"var(--chart-quiet, currentColor)", "#555"},
      {"var(--chart-grid, currentColor)", "#ddd"},
      {"var(--chart-paper, none)", "#fff"},
      {"currentColor", "#000"},
  };
  for (const auto& [named, colour] : colours)
    for (std::size_t at = svg.find("=\"" + std::string(named) + "\""); at != std::string::npos;
         at = svg.find("=\"" + std::string(named) + "\"", at))
      svg.replace(at + 2, named.size(), colour);
  svg.insert(svg.find('>') + 1, "\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>");
  svg.insert(svg.find(" role="),
             " font-family=\"DejaVu Sans, Helvetica, Arial, sans-serif\" font-size=\"12\"");
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + svg;
}

}  // namespace report
