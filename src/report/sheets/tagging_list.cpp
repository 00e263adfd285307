#include <array>
#include <stdexcept>

#include "plan/sitting_shape.h"
#include "report/content/words.h"
#include "report/sheets.h"
#include "report/sheets/sheet_parts.h"
#include "report/wrapped_text.h"

namespace report {
namespace {

constexpr std::size_t kDigitRows = 5;
using Glyph = std::array<std::string_view, kDigitRows>;

constexpr std::array<Glyph, 10> kDigits = {{
    {" ### ", "#   #", "#   #", "#   #", " ### "},
    {"  #  ", " ##  ", "  #  ", "  #  ", " ### "},
    {"#### ", "    #", " ### ", "#    ", "#####"},
    {"#### ", "    #", " ### ", "    #", "#### "},
    {"#   #", "#   #", "#####", "    #", "    #"},
    {"#####", "#    ", "#### ", "    #", "#### "},
    {" ### ", "#    ", "#### ", "#   #", " ### "},
    {"#####", "    #", "   # ", "  #  ", "  #  "},
    {" ### ", "#   #", " ### ", "#   #", " ### "},
    {" ### ", "#   #", " ####", "    #", " ### "},
}};

std::string large(int tag) {
  std::string all;
  for (std::size_t row = 0; row < kDigitRows; ++row) {
    std::string line = "   ";
    for (const char digit : std::to_string(tag))
      line += " " + std::string(kDigits[static_cast<std::size_t>(digit - '0')][row]);
    line.erase(line.find_last_not_of(' ') + 1);
    all += line + "\n";
  }
  return all;
}

}  // namespace

std::string tagging_list(const plan::Plan& plan, int sitting, const std::vector<sitting::TagLine>& tags) {
  plan::part_of(plan, sitting);
  std::string all = sheet_head(plan, sitting, "TAGGING LIST - for whoever sleeves the cables, nobody else");
  all +=
      "\n" + sheet_points({
                 "The helper and the listeners must not see this list before the plan is unsealed.",
                 "Sleeve every cable so that shape, weight and plugs tell as little as can be, and write its "
                 "tag on every sleeve; a stereo cable has two pieces with one tag.",
                 "A resistor in series belongs inside the sleeve.",
                 "Check each tag against the cable a second time, sign, then seal this list in an envelope.",
             });
  for (const sitting::TagLine& line : tags) {
    if (line.tag < 0) throw std::domain_error("tag must be 0 or more, got " + std::to_string(line.tag));
    all += "\n" + std::string(sheet_width, '-') + "\n\n" + large(line.tag) + "\n";
    all += wrapped("tag " + std::to_string(line.tag) + " goes on: " + one_line(line.specimen), sheet_width,
                   "    ", "    ");
    all += "    [ ] tagged   [ ] checked\n";
  }
  all += "\n" + std::string(sheet_width, '-') + "\n";
  return all + "\nTagged by (name) ______________________________   time ____________________\n";
}

}  // namespace report
