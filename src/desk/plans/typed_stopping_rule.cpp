#include "desk/plans/typed_stopping_rule.h"

#include <algorithm>
#include <functional>

#include "plan/looks.h"
#include "text/error.h"
#include "text/nearest.h"

namespace desk {
namespace {

stats::Spending spending_of(const std::string& typed) {
  if (typed == "obrien-fleming") return stats::Spending::obrien_fleming;
  if (typed == "pocock") return stats::Spending::pocock;
  throw text::BadInput("--spending must be obrien-fleming or pocock, got \"" + typed + "\"" +
                       text::did_you_mean(typed, {"obrien-fleming", "pocock"}));
}

}  // namespace

std::string stopping_rule_of(const std::vector<int>& looks, const std::string& spending) {
  if (looks.empty()) return plan::fixed_number_of_trials;
  std::string got;
  for (const int look : looks) got += (got.empty() ? "" : ",") + std::to_string(look);
  if (looks.front() < 1 ||
      std::adjacent_find(looks.begin(), looks.end(), std::greater_equal<>()) != looks.end())
    throw text::BadInput("--looks must be trials of a claim in rising order, 1 or more, got " + got +
                         "\nwrite them like --looks 8,16,24, the last as many as --trials");
  return plan::rule_text({looks, spending_of(spending)});
}

}  // namespace desk
