#include "sitting/layout.h"

#include <algorithm>

#include "plan/sitting_shape.h"

namespace sitting {

Layout::Layout(const plan::Plan& plan, int sitting)
    : blocks_(static_cast<int>(plan::part_of(plan, sitting).comparisons.size())),
      trials_each_(plan::part_of(plan, sitting).trials_each),
      spares_each_(plan.spares_each) {}

int Layout::spare_of(int trial) const {
  const int place = (trial - 1) % block_length();
  return std::max(0, place - trials_each_ + 1);
}

}  // namespace sitting
