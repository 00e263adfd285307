#include "sitting/chain/plan_chain.h"

#include "seal/chain.h"
#include "sitting/chain/chain_reader.h"
#include "sitting/words.h"
#include "text/error.h"
#include "text/time.h"

namespace sitting {
namespace {

void append(EventLog& log, const plan::SealedPlan& sealed, const Clock& clock, Event event) {
  const Chain chain = read_chain(log, sealed.commitment, 0);
  event.time = text::rfc3339(clock(), text::Precision::milliseconds);
  const std::string canonical = text_of(event);
  log.append(0, static_cast<int>(chain.events.size()) + 1,
             {canonical, seal::to_hex(seal::chain_next(chain.head, canonical))});
}

void require_sealed(const PlanStory& story, const plan::SealedPlan& sealed) {
  if (story.unsealed)
    throw text::NotNow("plan \"" + sealed.name + "\" is unsealed; nothing can be added to it");
}

void require_over(const State& state, int number) {
  if (state.ended) return;
  if (state.way.empty())
    throw text::NotNow("the order stays sealed: sitting " + std::to_string(number) +
                       " has not been held\nhold it, or end the plan early with a reason");
  throw text::NotNow("the order stays sealed: sitting " + std::to_string(number) + " has not ended, " +
                     std::to_string(state.open_trials().size()) + " of its " +
                     std::to_string(state.planned_trials()) +
                     " trials wait for answers\nend it, or end it early and keep what was planned");
}

}  // namespace

PlanStory story_of(const EventLog& log, const plan::SealedPlan& sealed) {
  PlanStory story;
  for (const Event& event : read_chain(log, sealed.commitment, 0).events) {
    if (event.type == kind::sealed) {
      story.sealed_at = event.time;
    } else if (event.type == kind::shown) {
      story.shown_to.push_back({event.who, event.text});
      story.shown_at.push_back(event.time);
    } else if (event.type == kind::head_shown) {
      story.heads_shown.push_back({event.trial, event.word, event.who, event.text, event.time});
    } else if (event.type == kind::ended_plan) {
      story.ended_early = true;
      story.ended_by = event.who;
      story.end_reason = event.text;
      story.ender_had_seen = event.flag;
    } else if (event.type == kind::unsealed) {
      story.unsealed = true;
      story.unsealed_at = event.time;
      story.disclosed = event.text;
    }
  }
  return story;
}

void record_sealing(EventLog& log, const plan::SealedPlan& sealed, const Clock& clock) {
  if (!log.events(0).empty()) throw text::NotNow("plan \"" + sealed.name + "\" is sealed already");
  append(log, sealed, clock, {.type = std::string(kind::sealed), .text = seal::to_hex(sealed.commitment)});
}

void record_shown(EventLog& log, const plan::SealedPlan& sealed, const Clock& clock, const std::string& who,
                  const std::string& how) {
  require_sealed(story_of(log, sealed), sealed);
  require_words("who received the commitment", who, 1);
  require_words("how it was given", how, 0);
  append(log, sealed, clock, {.type = std::string(kind::shown), .who = who, .text = how});
}

void record_head_shown(EventLog& log, const Sitting& sitting, const plan::SealedPlan& sealed,
                       const Clock& clock, const std::string& who, const std::string& how) {
  require_sealed(story_of(log, sealed), sealed);
  if (!sitting.state().ended)
    throw text::NotNow("sitting " + std::to_string(sitting.number()) +
                       " has not ended; its chain head is given away at the end");
  require_words("who received the chain head", who, 1);
  require_words("how it was given", how, 0);
  append(log, sealed, clock,
         {.type = std::string(kind::head_shown),
          .trial = sitting.number(),
          .who = who,
          .word = sitting.head(),
          .text = how});
}

void end_plan_early(EventLog& log, const plan::Plan& plan, const plan::SealedPlan& sealed, const Clock& clock,
                    const std::string& who, const std::string& reason, bool had_seen_answers_and_order) {
  const PlanStory story = story_of(log, sealed);
  require_sealed(story, sealed);
  if (story.ended_early) throw text::NotNow("plan \"" + sealed.name + "\" has been ended early already");
  require_words("who decided", who, 1);
  require_words("the reason", reason, 1);
  append(log, sealed, clock,
         {.type = std::string(kind::ended_plan),
          .who = who,
          .text = reason,
          .flag = had_seen_answers_and_order});
  for (int number = 1; number <= static_cast<int>(plan.sittings.size()); ++number) {
    Sitting sitting(plan, sealed, number, log, clock);
    if (!sitting.state().way.empty() && !sitting.state().ended)
      sitting.end_early(who, reason, had_seen_answers_and_order);
  }
}

void unseal(EventLog& log, const plan::Plan& plan, const plan::SealedPlan& sealed, const Clock& clock) {
  const PlanStory story = story_of(log, sealed);
  if (story.unsealed) throw text::NotNow("plan \"" + sealed.name + "\" is unsealed already");
  std::string disclosed = seal::to_hex(sealed.seed);
  for (int number = 1; number <= static_cast<int>(plan.sittings.size()); ++number) {
    const Sitting sitting(plan, sealed, number, log, clock);
    const bool never_held = sitting.state().way.empty();
    if (!(story.ended_early && never_held)) require_over(sitting.state(), number);
    disclosed += " " + sitting.head();
  }
  append(log, sealed, clock, {.type = std::string(kind::unsealed), .text = disclosed});
}

}  // namespace sitting
