#include "sitting/unsealed_sitting.h"

#include <algorithm>

#include "plan/sitting_shape.h"
#include "seal/commitment.h"
#include "sitting/chain/chain_reader.h"
#include "sitting/chain/plan_chain.h"
#include "sitting/look.h"
#include "text/error.h"

namespace sitting {
namespace {

int answer_index(const protocols::Protocol& protocol, const std::string& word) {
  const auto answers = protocol.answers();
  return static_cast<int>(std::find(answers.begin(), answers.end(), word) - answers.begin());
}

Fate fate_of(const State& state, int trial) {
  if (!state.is_played(trial)) return Fate::not_played;
  if (state.at(trial).spoiled) return Fate::spoiled;
  return state.at(trial).late_spoiled ? Fate::late_spoiled : Fate::counted;
}

/// What was disclosed at unsealing is what is read now: the seed that was committed to, and the sitting's events.
void check_disclosed(const PlanStory& story, const plan::SealedPlan& sealed, int number,
                     const std::string& head) {
  if (seal::commitment(sealed.text, sealed.seed) != sealed.commitment)
    throw text::BadInput("plan \"" + sealed.name +
                         "\" and its seed do not give its commitment: the file was changed");
  constexpr std::size_t digits = 64;
  const std::size_t start = static_cast<std::size_t>(number) * (digits + 1);
  if (story.disclosed.substr(0, digits) != seal::to_hex(sealed.seed) ||
      story.disclosed.size() < start + digits || story.disclosed.substr(start, digits) != head)
    throw text::BadInput("sitting " + std::to_string(number) +
                         " is not what it was when the plan was unsealed: the file was changed");
}

/// Every look said what the plan's rule makes of the answers and the order.
void check_looks(const plan::Plan& plan, const State& state, const plan::SittingShape& shape,
                 const protocols::Order& order) {
  const auto looks = plan::looks_of(plan);
  if (!looks) return;
  const auto drawn = [&](int trial) -> const protocols::Trial& {
    return order.trials[static_cast<std::size_t>(trial - 1)];
  };
  for (int trial = 1; trial <= state.layout.trials(); ++trial) {
    const std::string& said = state.at(trial).looked;
    if (said.empty()) continue;
    const int comparison = shape.comparisons[static_cast<std::size_t>(drawn(trial).comparison)];
    if (look_after(plan, *looks, plan.comparisons[static_cast<std::size_t>(comparison)].kind, state, trial,
                   [&](int counted) { return drawn(counted).coin; }) != said)
      throw text::BadInput("the look after trial " + std::to_string(trial) + " says \"" + said +
                           "\", which the plan's rule does not: the file was changed");
  }
}

}  // namespace

UnsealedSitting::UnsealedSitting(const plan::Plan& plan, const plan::SealedPlan& sealed, int number,
                                 const EventLog& log)
    : state_(plan, number) {
  const PlanStory story = story_of(log, sealed);
  if (!story.unsealed)
    throw text::NotNow("plan \"" + plan.name + "\" is sealed; its findings open when it is unsealed");
  const Chain chain = read_chain(log, sealed.commitment, number);
  for (const Event& event : chain.events) state_.apply(event);
  head_hex_ = seal::to_hex(chain.head);
  check_disclosed(story, sealed, number, head_hex_);
  if (!state_.began) return;

  const plan::SittingShape shape = plan::shape_of(plan, number);
  const protocols::Protocol& protocol = plan::protocol_of(plan);
  const protocols::Order order = plan::order_of(plan, sealed.seed, number, state_.characters());
  for (std::size_t i = 0; i < order.tags.size(); ++i) specimen_by_tag_[order.tags[i]] = shape.specimens[i];
  check_looks(plan, state_, shape, order);
  for (const protocols::Trial& drawn : order.trials) {
    ScoredTrial trial;
    trial.number = drawn.number;
    trial.comparison = shape.comparisons[static_cast<std::size_t>(drawn.comparison)];
    trial.fate = fate_of(state_, drawn.number);
    trial.coin = drawn.coin;
    trial.sides = drawn.sides;
    for (const auto& [listener, answer] : state_.at(drawn.number).answers) {
      if (!answer.last.empty()) trial.last[listener] = answer_index(protocol, answer.last);
      trial.first[listener] = answer_index(protocol, answer.first);
    }
    trials_.push_back(std::move(trial));
  }
}

int UnsealedSitting::specimen_of(int tag) const {
  const auto found = specimen_by_tag_.find(tag);
  return found == specimen_by_tag_.end() ? -1 : found->second;
}

}  // namespace sitting
