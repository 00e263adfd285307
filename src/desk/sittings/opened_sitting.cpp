#include "desk/sittings/opened_sitting.h"

#include "text/error.h"

namespace desk {
namespace {

int checked_number(const plan::Plan& plan, int number) {
  const auto count = static_cast<int>(plan.sittings.size());
  if (number < 1 || number > count)
    throw text::BadInput("plan \"" + plan.name + "\" has sittings 1 to " + std::to_string(count) + ", not " +
                         std::to_string(number));
  return number;
}

}  // namespace

OpenedSitting::OpenedSitting(const SittingName& name, const sitting::Clock& clock)
    : campaign(store::Campaign::open(name.campaign)),
      opened(open_plan(campaign, name.plan)),
      log(campaign.log(opened.plan.name)),
      sitting(opened.plan, opened.sealed, checked_number(opened.plan, name.number), *log, clock) {}

}  // namespace desk
