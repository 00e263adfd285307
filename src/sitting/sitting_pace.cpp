#include <algorithm>
#include <cmath>

#include "sitting/look.h"
#include "sitting/sitting.h"
#include "text/error.h"
#include "text/number.h"
#include "text/time.h"

namespace sitting {

using std::chrono::system_clock;

const protocols::Order& Sitting::order() const {
  if (!state_.began) throw text::NotNow("the order is drawn when the sitting begins");
  if (!order_)
    order_ =
        std::make_unique<protocols::Order>(plan::order_of(plan_, sealed_.seed, number_, state_.characters()));
  return *order_;
}

const protocols::Trial& Sitting::drawn(int trial) const {
  if (trial > 0) return order().trials[static_cast<std::size_t>(trial - 1)];
  if (!practice_)
    practice_ = std::make_unique<protocols::Order>(
        plan::practice_of(plan_, sealed_.seed, number_, state_.characters()));
  return practice_->trials.at(static_cast<std::size_t>(-trial - 1));
}

std::vector<std::string_view> Sitting::labels(int trial) const { return protocol_.labels(std::abs(trial)); }

bool Sitting::is_running(int trial) const {
  return trial != 0 && !state_.at(trial).spoiled && state_.at(trial).started.size() < labels(trial).size();
}

int Sitting::next_trial() const {
  for (int trial = state_.current_trial() + 1; trial <= state_.layout.trials(); ++trial)
    if (state_.is_played(trial) && !state_.at(trial).spoiled) return trial;
  return 0;
}

int Sitting::next_practice() const {
  const int trial = state_.current_practice() - 1;
  return state_.current_trial() == 0 && state_.is_practice(trial) ? trial : 0;
}

void Sitting::require_live() const {
  require_running();
  if (state_.way != "live")
    throw text::NotNow("this sitting is on paper; its presentations are keyed with their times");
}

void Sitting::require_answered(int trial) const {
  if (trial != 0 && !state_.waits_for(trial).empty())
    throw text::NotNow("trial " + std::to_string(trial) + " still waits for " +
                       std::to_string(state_.waits_for(trial).size()) + " of the listeners");
}

void Sitting::present(int trial) {
  const int presentation = static_cast<int>(state_.at(trial).started.size()) + 1;
  record({.type = std::string(kind::presented),
          .trial = trial,
          .presentation = presentation,
          .tag = step_of(trial, presentation).tag,
          .text = text::rfc3339(clock_(), text::Precision::milliseconds)});
}

void Sitting::present_next() {
  require_live();
  take_look();
  const int trial = state_.current_trial();
  if (is_running(trial)) return present(trial);
  require_answered(trial);
  const int next = next_trial();
  if (next == 0) throw text::NotNow("every trial of this sitting has been played");
  present(next);
}

void Sitting::practise_next() {
  require_live();
  const int trial = state_.current_practice();
  if (is_running(trial)) return present(trial);
  if (next_practice() == 0) throw text::NotNow("practice is over");
  present(next_practice());
}

HelperStep Sitting::next_step() const {
  const int trial = state_.current_trial();
  if (is_running(trial)) return step_of(trial, static_cast<int>(state_.at(trial).started.size()) + 1);
  return next_trial() == 0 ? HelperStep{} : step_of(next_trial(), 1);
}

HelperStep Sitting::next_practice_step() const {
  if (state_.current_trial() != 0) return {};
  const int trial = state_.current_practice();
  if (is_running(trial)) return step_of(trial, static_cast<int>(state_.at(trial).started.size()) + 1);
  return next_practice() == 0 ? HelperStep{} : step_of(next_practice(), 1);
}

void Sitting::ready(int trial, int presentation) {
  require_live();
  const HelperStep next = trial < 0 ? next_practice_step() : next_step();
  if (next.trial == 0)
    throw text::NotNow(trial < 0 ? "practice is over" : "every trial of this sitting has been played");
  if (next.trial != trial || next.presentation != presentation)
    throw text::NotNow("presentation " + std::to_string(presentation) + " of trial " + std::to_string(trial) +
                       " does not come next; look again at what to connect");
  ready_ = next;
}

/// A trial spoiled in the meantime, or a break, asks for another look.
bool Sitting::is_ready() const {
  if (ready_.trial == 0) return false;
  const HelperStep next = ready_.trial < 0 ? next_practice_step() : next_step();
  return next.trial == ready_.trial && next.presentation == ready_.presentation;
}

void Sitting::keep_pace() {
  if (state_.ended || !is_ready() || clock_() < due()) return;
  if (ready_.trial < 0) return practise_next();
  const int trial = state_.current_trial();
  if (trial != 0 && !is_running(trial) && !state_.waits_for(trial).empty()) return;
  take_look();
  if (is_ready()) present_next();
}

void Sitting::take_look() {
  const int trial = state_.current_trial();
  if (!looks_ || trial == 0 || state_.ended || !state_.at(trial).looked.empty()) return;
  const int comparison = shape_.comparisons[static_cast<std::size_t>(drawn(trial).comparison)];
  const std::string_view word =
      look_after(plan_, *looks_, plan_.comparisons[static_cast<std::size_t>(comparison)].kind, state_, trial,
                 [&](int counted) { return drawn(counted).coin; });
  if (!word.empty()) record({.type = std::string(kind::looked), .trial = trial, .word = std::string(word)});
}

void Sitting::close_trial() {
  require_running();
  if (state_.way != "live")
    throw text::NotNow("this sitting is on paper; missing answers are keyed one by one");
  const int trial = state_.current_trial();
  if (trial == 0) throw text::NotNow("no trial has begun");
  if (is_running(trial))
    throw text::NotNow("trial " + std::to_string(trial) +
                       " is still being presented; play it to its end, or spoil it");
  for (const std::string& listener : state_.waits_for(trial)) miss(listener, trial);
}

void Sitting::rehearse_swap(double seconds) {
  require_open();
  if (!(seconds > 0) || seconds > 3600)
    throw text::BadInput("a swap must take more than 0 and at most 3600 seconds, got " +
                         text::shortest(seconds));
  if (seconds <= state_.longest_rehearsed_swap_seconds) return;
  record({.type = std::string(kind::fact),
          .word = "longest-rehearsed-swap",
          .text = text::shortest(std::ceil(seconds * 10) / 10) + " s"});
}

int Sitting::swap_seconds() const {
  return std::max(plan_.swap_seconds,
                  static_cast<int>(std::floor(state_.longest_rehearsed_swap_seconds)) + 1);
}

system_clock::time_point Sitting::plays_until() const {
  const int trial = state_.current_trial() != 0 ? state_.current_trial() : state_.current_practice();
  if (trial == 0) return {};
  return text::parse_rfc3339(state_.at(trial).started.back()).value_or(system_clock::time_point{}) +
         std::chrono::seconds(plan_.presentation_seconds);
}

system_clock::time_point Sitting::due() const {
  auto free_from = plays_until();
  for (const std::string& moment : {state_.began_at, state_.rested_at})
    if (const auto time = text::parse_rfc3339(moment)) free_from = std::max(free_from, *time);
  return free_from + std::chrono::seconds(swap_seconds());
}

}  // namespace sitting
