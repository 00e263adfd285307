#include "desk/plans/planning.h"

#include <nlohmann/json.hpp>

#include "desk/plans/plan_draft.h"
#include "seal/canonical_json.h"
#include "seal/commitment.h"
#include "sitting/chain/plan_chain.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/time.h"

namespace desk {
namespace {

seal::Digest seed_of(const PlanTyped& typed) {
  if (typed.supplied_seed_hex.empty()) return seal::random_digest();
  const auto seed = seal::from_hex(typed.supplied_seed_hex);
  if (!seed)
    throw text::BadInput("the supplied seed must be 64 hexadecimal digits, got \"" + typed.supplied_seed_hex +
                         "\"");
  return *seed;
}

}  // namespace

SealedNow seal_plan(const Path& file, const PlanTyped& typed, const sitting::Clock& clock) {
  store::Campaign campaign = store::Campaign::open(file);
  SealedNow now;
  now.plan = drafted(campaign, typed);
  now.plan.sealed_at = text::rfc3339(clock());
  plan::check(now.plan);
  plan::refuse_hopeless(now.plan);
  now.requirements = plan::requirements(now.plan);
  for (int sitting = 1; sitting <= static_cast<int>(now.plan.sittings.size()); ++sitting)
    now.minutes.push_back(plan::minutes_of(now.plan, sitting));

  const seal::Digest seed = seed_of(typed);
  if (typed.dry_run) return now;
  now.sealed.name = now.plan.name;
  now.sealed.text = seal::canonical_text(plan::to_json(now.plan));
  now.sealed.seed = seed;
  now.sealed.commitment = seal::commitment(now.sealed.text, now.sealed.seed);
  campaign.all_or_none([&] {
    campaign.add_plan(now.sealed);
    sitting::record_sealing(*campaign.log(now.sealed.name), now.sealed, clock);
  });
  return now;
}

OpenedPlan open_plan(const store::Campaign& campaign, const std::string& name) {
  const std::vector<plan::SealedPlan> plans = campaign.plans();
  if (plans.empty()) throw text::BadInput("this campaign has no plan yet; seal one first");
  std::vector<std::string> names;
  for (const plan::SealedPlan& each : plans) names.push_back(each.name);
  if (name.empty() && plans.size() > 1) {
    std::string list;
    for (const std::string& each : names) list += (list.empty() ? "\"" : ", \"") + each + "\"";
    throw text::BadInput("this campaign has more than one plan; name one of " + list);
  }
  for (const plan::SealedPlan& sealed : plans)
    if (name.empty() || sealed.name == name)
      return {plan::from_json(seal::parse_canonical(sealed.text)), sealed};
  throw text::BadInput("no plan is called \"" + name + "\"" + text::did_you_mean(name, names));
}

void record_handover(const Path& file, const std::string& name, const std::string& who,
                     const std::string& how, const sitting::Clock& clock) {
  const store::Campaign campaign = store::Campaign::open(file);
  const OpenedPlan opened = open_plan(campaign, name);
  sitting::record_shown(*campaign.log(opened.plan.name), opened.sealed, clock, who, how);
}

void end_plan_early(const Path& file, const std::string& name, const std::string& who,
                    const std::string& reason, bool had_seen_answers_and_order, const sitting::Clock& clock) {
  store::Campaign campaign = store::Campaign::open(file);
  const OpenedPlan opened = open_plan(campaign, name);
  const auto log = campaign.log(opened.plan.name);
  campaign.all_or_none([&] {
    sitting::end_plan_early(*log, opened.plan, opened.sealed, clock, who, reason, had_seen_answers_and_order);
  });
}

void unseal_plan(const Path& file, const std::string& name, const sitting::Clock& clock) {
  const store::Campaign campaign = store::Campaign::open(file);
  const OpenedPlan opened = open_plan(campaign, name);
  sitting::unseal(*campaign.log(opened.plan.name), opened.plan, opened.sealed, clock);
}

}  // namespace desk
