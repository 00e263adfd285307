#include "protocols/abx.h"

namespace protocols {

std::vector<std::string_view> Abx::labels(int trial_number) const {
  if (trial_number % 2 != 0) return {"A", "B", "X"};
  return {"B", "A", "X"};
}

void Abx::draw_block(Draw& draw, const Shape& shape, int comparison, Order& order) const {
  const int side_of_a = draw.coin() ? 1 : 0;
  for (int i = 0; i < shape.trials_each + shape.spares_each; ++i) {
    const int number = static_cast<int>(order.trials.size()) + 1;
    const int x_is_b = draw.coin() ? 1 : 0;
    std::vector<int> sides;
    for (const std::string_view label : labels(number)) {
      const int letter = label == "X" ? x_is_b : label == "B" ? 1 : 0;
      sides.push_back(letter ^ side_of_a);
    }
    order.trials.push_back({number, comparison, i >= shape.trials_each, std::move(sides), x_is_b});
  }
}

}  // namespace protocols
