#include "protocols/preference.h"

namespace protocols {

std::vector<std::string_view> Preference::labels(int) const { return {"first", "second"}; }

void Preference::draw_block(Draw& draw, const Shape& shape, int comparison, Order& order) const {
  for (int i = 0; i < shape.trials_each + shape.spares_each; ++i) {
    const int number = static_cast<int>(order.trials.size()) + 1;
    const int second_first = draw.coin() ? 1 : 0;
    order.trials.push_back(
        {number, comparison, i >= shape.trials_each, {second_first, 1 - second_first}, second_first});
  }
}

}  // namespace protocols
