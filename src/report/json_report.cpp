#include "report/json_report.h"

#include "report/json/parts.h"

namespace report {
namespace {

using nlohmann::json;

json seal_json(const findings::Evidence& evidence) {
  json shown = json::array();
  for (const auto& [who, how] : evidence.commitment_shown_to) shown.push_back({{"who", who}, {"how", how}});
  return {{"commitment_hex", evidence.commitment_hex},
          {"seed_hex", evidence.seed_hex},
          {"sealed_at", evidence.sealed_at},
          {"unsealed_at", evidence.unsealed_at},
          {"shown_to", shown}};
}

json ending_json(const findings::Evidence& evidence) {
  return {{"early", evidence.plan_ended_early},
          {"by", evidence.plan_ended_by},
          {"reason", evidence.plan_end_reason},
          {"had_seen_answers_and_order", evidence.ender_had_seen}};
}

json all_plans_json(const findings::Evidence& evidence) {
  json list = json::array();
  for (const auto& plan : evidence.all_plans)
    list.push_back({{"name", plan.name},
                    {"protocol", plan.protocol},
                    {"sealed_at", plan.sealed_at},
                    {"state", plan.state},
                    {"commitment_hex", plan.commitment_hex}});
  return list;
}

}  // namespace

json json_report(const findings::Evidence& evidence, const findings::Findings& findings) {
  json report = {{"schema", json_schema},
                 {"campaign_title", evidence.campaign_title},
                 {"plan", plan::to_json(evidence.plan)},
                 {"seal", seal_json(evidence)},
                 {"ending", ending_json(evidence)},
                 {"rig", rig_json(evidence.rig)},
                 {"all_plans", all_plans_json(evidence)},
                 {"level", findings.level},
                 {"family", findings.family},
                 {"preference_scale", scale_json(findings.preference_scale)},
                 {"pace", pace_json(findings.pace)},
                 {"conditions", findings.conditions},
                 {"cautions", findings.cautions},
                 {"limits_of_the_method", findings.limits_of_the_method}};
  for (const char* list : {"sittings", "cables", "comparisons", "answer_shares", "correlations"})
    report[list] = json::array();
  for (const auto& sitting : evidence.sittings) report["sittings"].push_back(sitting_json(evidence, sitting));
  for (const auto& [name, cable] : evidence.cables) report["cables"].push_back(cable_json(name, cable));
  for (const auto& finding : findings.comparisons)
    report["comparisons"].push_back(comparison_json(evidence, finding));
  for (const auto& share : findings.answer_shares)
    report["answer_shares"].push_back(answer_share_json(evidence.plan, share));
  for (const auto& correlation : findings.correlations)
    report["correlations"].push_back(correlation_json(correlation));
  return report;
}

}  // namespace report
