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

/// Follows a sitting of a plan with looks event by event: every look was taken where the plan's rule has one, said what
/// the rule makes of the answers of that moment and the order, and was heeded.
class LookCheck {
 public:
  LookCheck(const plan::Plan& plan, int number, const plan::SittingShape& shape,
            const protocols::Order& order)
      : plan_(plan), looks_(*plan::looks_of(plan)), shape_(shape), order_(order), state_(plan, number) {}

  void follow(const Event& event) {
    if (event.trial > 0) check(event);
    state_.apply(event);
  }

 private:
  void check(const Event& event) const {
    const int current = state_.current_trial();
    if (event.type == kind::looked && event.word != due_after(event.trial))
      refuse("the look after trial " + std::to_string(event.trial) + " says \"" + event.word +
             "\", which the plan's rule does not");
    if (event.type == kind::presented && current != 0 && event.trial != current &&
        state_.at(current).looked != due_after(current))
      refuse("trial " + std::to_string(event.trial) +
             " begins without the look that the plan takes after trial " + std::to_string(current));
    if (event.type == kind::presented && !state_.is_played(event.trial))
      refuse("trial " + std::to_string(event.trial) + " was played although its claim was stopped");
    if ((event.type == kind::answered || event.type == kind::corrected || event.type == kind::missing) &&
        !state_.at(event.trial).looked.empty())
      refuse("an answer to trial " + std::to_string(event.trial) + " changes after the plan's look at it");
  }

  std::string_view due_after(int trial) const {
    const int comparison = shape_.comparisons[static_cast<std::size_t>(drawn(trial).comparison)];
    return look_after(plan_, looks_, plan_.comparisons[static_cast<std::size_t>(comparison)].kind, state_,
                      trial, [&](int counted) { return drawn(counted).coin; });
  }

  const protocols::Trial& drawn(int trial) const {
    return order_.trials[static_cast<std::size_t>(trial - 1)];
  }

  [[noreturn]] static void refuse(const std::string& what) {
    throw text::BadInput(what + ": the file was changed");
  }

  const plan::Plan& plan_;
  const plan::Looks looks_;
  const plan::SittingShape& shape_;
  const protocols::Order& order_;
  State state_;
};

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
  if (plan::looks_of(plan)) {
    LookCheck check(plan, number, shape, order);
    for (const Event& event : chain.events) check.follow(event);
  }
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
