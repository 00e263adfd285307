#pragma once

#include <functional>
#include <string_view>

#include "plan/looks.h"
#include "sitting/state.h"

namespace sitting {

/// What a trial's coin fell to: the index of the answer that scores.
using CoinOf = std::function<int(int trial)>;

/// What a look after this trial says, as the plan's rule has it: "continue" or "stop"; "" where none is due: the trial is
/// not settled, has no answer that counts, or is not one after which the plan looks. A control is never stopped. It
/// depends on the answers and coins of the trial's block up to the trial, and on nothing else.
std::string_view look_after(const plan::Plan& plan, const plan::Looks& looks, plan::Kind kind,
                            const State& state, int trial, const CoinOf& coin_of);

}  // namespace sitting
