#include "desk/circuits/tradeoff.h"

#include <algorithm>

#include "desk/files.h"
#include "desk/shelf/circuit.h"
#include "report/svg/svg_chart.h"
#include "report/tradeoff/tradeoff.h"
#include "text/error.h"

namespace desk {
namespace {

std::vector<report::ShelfCable> cables_with_lines(const store::Campaign& campaign) {
  std::vector<report::ShelfCable> cables;
  for (const store::Cable& cable : campaign.cables())
    cables.push_back({cable.name, cable_evidence(campaign, cable.name, "").line});
  if (cables.empty())
    throw text::BadInput(
        "the campaign has no cable yet\n"
        "import a table of them: cable,length_m,resistance_ohm,inductance_uH,capacitance_pF");
  return cables;
}

}  // namespace

Tradeoff tradeoff(const Path& file) {
  const store::Campaign campaign = store::Campaign::open(file);
  const auto cables = cables_with_lines(campaign);
  return {report::tradeoff_text(campaign.title(), cables), report::tradeoff_json(cables)};
}

void write_tradeoff(const Path& file, const Path& page, const Path& svg, bool replace) {
  const store::Campaign campaign = store::Campaign::open(file);
  const auto cables = cables_with_lines(campaign);
  if (page.empty() && svg.empty()) return;
  if (std::none_of(cables.begin(), cables.end(), report::has_place))
    throw text::BadInput(
        "no cable can be drawn: inductance and capacitance are known of none\n"
        "import them: cable,length_m,resistance_ohm,inductance_uH,capacitance_pF");
  const std::string html =
      page.empty() ? "" : report::tradeoff_page(campaign.title(), cables, BLINDSWAP_VERSION);
  const std::string picture = svg.empty() ? "" : report::standalone(report::tradeoff_figure(cables).svg);
  if (!page.empty()) write_file(page, html, replace);
  if (!svg.empty()) write_file(svg, picture, replace);
}

}  // namespace desk
