#include "desk/reports/reports.h"

#include <nlohmann/json.hpp>
#include <set>

#include "desk/reports/evidence.h"
#include "findings/findings.h"
#include "plan/sitting_shape.h"
#include "report/html_report.h"
#include "report/json_report.h"
#include "report/text_report.h"
#include "seal/canonical_json.h"
#include "seal/commitment.h"
#include "sitting/chain/chain_reader.h"
#include "sitting/chain/plan_chain.h"
#include "sitting/unsealed_sitting.h"

namespace desk {
namespace {

/// Faults of the recorded tags against the order derived anew.
void check_tags(const OpenedPlan& opened, int number, const sitting::Chain& chain, Checked& checked) {
  sitting::State state(opened.plan, number);
  for (const sitting::Event& event : chain.events) state.apply(event);
  if (!state.began) return;
  const plan::SittingShape shape = plan::shape_of(opened.plan, number);
  const protocols::Order order = plan::order_of(opened.plan, opened.sealed.seed, number, state.characters());
  const protocols::Order practice =
      plan::practice_of(opened.plan, opened.sealed.seed, number, state.characters());
  for (const sitting::Event& event : chain.events) {
    if (event.type != sitting::kind::presented) continue;
    const protocols::Trial& trial = event.trial < 0
                                        ? practice.trials[static_cast<std::size_t>(-event.trial - 1)]
                                        : order.trials[static_cast<std::size_t>(event.trial - 1)];
    const auto& pair = shape.shape.comparisons[static_cast<std::size_t>(trial.comparison)];
    const int side = trial.sides.at(static_cast<std::size_t>(event.presentation - 1));
    const int tag = order.tags[static_cast<std::size_t>(side == 0 ? pair.first : pair.second)];
    if (tag != event.tag)
      checked.faults.push_back("sitting " + std::to_string(number) + ", trial " +
                               std::to_string(event.trial) + ": tag " + std::to_string(event.tag) +
                               " is recorded, the order has " + std::to_string(tag));
  }
}

Checked check_plan(const store::Campaign& campaign, const plan::SealedPlan& sealed) {
  Checked checked;
  checked.plan = sealed.name;
  checked.commitment_hex = seal::to_hex(sealed.commitment);
  const OpenedPlan opened = open_plan(campaign, sealed.name);
  const auto log = campaign.log(sealed.name);
  checked.sittings = static_cast<int>(opened.plan.sittings.size());
  try {
    const sitting::PlanStory story = sitting::story_of(*log, sealed);
    checked.unsealed = story.unsealed;
    checked.events = static_cast<int>(log->events(0).size());
    for (int number = 1; number <= checked.sittings; ++number) {
      const sitting::Chain chain = sitting::read_chain(*log, sealed.commitment, number);
      checked.events += static_cast<int>(chain.events.size());
      checked.heads_hex.push_back(seal::to_hex(chain.head));
      if (checked.unsealed) {
        sitting::UnsealedSitting(opened.plan, sealed, number,
                                 *log);  // refuses a head that is not the one disclosed
        check_tags(opened, number, chain, checked);
      }
    }
    for (const sitting::HeadShown& shown : story.heads_shown)
      if (checked.heads_hex.at(static_cast<std::size_t>(shown.sitting - 1)) != shown.head_hex)
        checked.faults.push_back("sitting " + std::to_string(shown.sitting) +
                                 ": its chain head is not the one that was given to " + shown.who);
  } catch (const std::exception& fault) {
    checked.faults.push_back(fault.what());
  }
  return checked;
}

}  // namespace

std::string report_on(const Path& file, const std::string& plan, ReportForm form) {
  const store::Campaign campaign = store::Campaign::open(file);
  const findings::Evidence evidence = evidence_of(campaign, plan);
  const findings::Findings found = findings::findings_of(evidence);
  switch (form) {
    case ReportForm::json:
      return report::json_report(evidence, found).dump(2) + "\n";
    case ReportForm::html:
      return report::html_report(evidence, found, BLINDSWAP_VERSION);
    case ReportForm::text:
      break;
  }
  return report::text_report(evidence, found);
}

std::string report_dictionary() { return report::data_dictionary(); }

int check_sources(const Path& file) {
  const store::Campaign campaign = store::Campaign::open(file);
  std::set<std::string> checksums;
  for (const store::NumberedReading& each : campaign.readings({.superseded_too = true}))
    checksums.insert(each.reading.sha256_hex);
  for (const std::string& sha256_hex : checksums) campaign.source(sha256_hex);
  return static_cast<int>(checksums.size());
}

std::vector<Checked> check_campaign(const Path& file) {
  const store::Campaign campaign = store::Campaign::open(file);
  std::vector<Checked> list;
  for (const plan::SealedPlan& sealed : campaign.plans()) list.push_back(check_plan(campaign, sealed));
  return list;
}

}  // namespace desk
