#include "sitting/simulated/rehearsal.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "plan/sitting_shape.h"
#include "seal/canonical_json.h"
#include "seal/commitment.h"
#include "sitting/chain/plan_chain.h"

namespace sitting {
namespace {

/// One listener at the seat: what is known to the door, and whom it stands for.
struct Seat {
  std::string name;
  SimulatedListener* listener = nullptr;
  std::vector<int> answers;
};

std::vector<Seat> seats_of(const Sitting& sitting, const Company& company) {
  const plan::Plan& plan = sitting.plan();
  if (company.size() != plan.listeners.size())
    throw std::domain_error("a rehearsal needs " + std::to_string(plan.listeners.size()) +
                            " simulated listeners, got " + std::to_string(company.size()));
  std::vector<Seat> seats;
  for (const int listener : plan::part_of(plan, sitting.number()).listeners) {
    const auto index = static_cast<std::size_t>(listener);
    seats.push_back({plan.listeners[index], company[index], {}});
  }
  return seats;
}

void answer_trial(ListenerDoor& door, std::vector<Seat>& seats, const protocols::Protocol& protocol,
                  const protocols::Trial& trial) {
  for (Seat& seat : seats) {
    seat.listener->hear(trial.coin);
    const int answer = seat.listener->answer({trial.number, seat.answers});
    seat.answers.push_back(answer);
    door.answer(seat.name, trial.number, std::string(protocol.answers()[static_cast<std::size_t>(answer)]),
                "", "");
  }
}

}  // namespace

HandClock::HandClock() : now_(std::chrono::sys_days(std::chrono::year(2000) / 1 / 1)) {}

plan::SealedPlan sealed_with(const plan::Plan& plan, const seal::Digest& seed) {
  plan::SealedPlan sealed{plan.name, seal::canonical_text(plan::to_json(plan)), seed, {}};
  sealed.commitment = seal::commitment(sealed.text, sealed.seed);
  return sealed;
}

void rehearse(Sitting& sitting, const plan::SealedPlan& sealed, const Company& company, HandClock& clock) {
  std::vector<Seat> seats = seats_of(sitting, company);
  const plan::Plan& plan = sitting.plan();
  const protocols::Protocol& protocol = plan::protocol_of(plan);
  sitting.open("live");
  sitting.begin();
  const protocols::Order order =
      plan::order_of(plan, sealed.seed, sitting.number(), sitting.state().characters());
  for (const protocols::Trial& trial : order.trials) {
    if (trial.spare || !sitting.state().is_played(trial.number)) continue;
    for (std::size_t presentation = 0; presentation < trial.sides.size(); ++presentation) {
      sitting.present_next();
      clock.pass(std::chrono::seconds(plan.swap_seconds + plan.presentation_seconds));
    }
    answer_trial(sitting, seats, protocol, trial);
    sitting.take_look();
  }
  sitting.end();
}

void rehearse_plan(EventLog& log, const plan::Plan& plan, const plan::SealedPlan& sealed,
                   const Company& company) {
  HandClock clock;
  record_sealing(log, sealed, clock.reading());
  for (int number = 1; number <= static_cast<int>(plan.sittings.size()); ++number) {
    Sitting sitting(plan, sealed, number, log, clock.reading());
    rehearse(sitting, sealed, company, clock);
  }
  unseal(log, plan, sealed, clock.reading());
}

}  // namespace sitting
