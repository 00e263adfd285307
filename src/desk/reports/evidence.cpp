#include "desk/reports/evidence.h"

#include "desk/shelf/circuit.h"
#include "sitting/chain/plan_chain.h"

namespace desk {
namespace {

std::string state_of(const sitting::PlanStory& story, const plan::Plan& plan, const sitting::EventLog& log) {
  if (story.unsealed) return story.ended_early ? "ended early, unsealed" : "unsealed";
  if (story.ended_early) return "ended early";
  for (int number = 1; number <= static_cast<int>(plan.sittings.size()); ++number)
    if (!log.events(number).empty()) return "in progress";
  return "sealed";
}

}  // namespace

findings::Evidence evidence_of(const store::Campaign& campaign, const std::string& name) {
  const OpenedPlan opened = open_plan(campaign, name);
  const auto log = campaign.log(opened.plan.name);
  findings::Evidence evidence = listening_evidence(opened.plan, opened.sealed, *log);
  evidence.campaign_title = campaign.title();
  for (const plan::Specimen& specimen : opened.plan.specimens)
    if (!evidence.cables.contains(specimen.cable))
      evidence.cables[specimen.cable] = cable_evidence(campaign, specimen.cable, opened.plan.rig);
  evidence.rig = rig_evidence(campaign, opened.plan.rig);
  evidence.all_plans = plan_lines(campaign);
  return evidence;
}

std::vector<findings::PlanLine> plan_lines(const store::Campaign& campaign) {
  std::vector<findings::PlanLine> lines;
  for (const plan::SealedPlan& sealed : campaign.plans()) {
    const OpenedPlan each = open_plan(campaign, sealed.name);
    const auto each_log = campaign.log(sealed.name);
    const sitting::PlanStory story = sitting::story_of(*each_log, sealed);
    lines.push_back({sealed.name, each.plan.protocol, each.plan.sealed_at,
                     state_of(story, each.plan, *each_log), seal::to_hex(sealed.commitment)});
  }
  return lines;
}

}  // namespace desk
