#include "desk/shelf/one_state.h"

#include <algorithm>

namespace desk {

const std::vector<double>* column(const imported::Reading& reading, std::string_view name) {
  const auto found = std::find(reading.columns.begin(), reading.columns.end(), name);
  return found == reading.columns.end()
             ? nullptr
             : &reading.values[static_cast<std::size_t>(found - reading.columns.begin())];
}

std::vector<store::NumberedReading> of_one_state(std::vector<store::NumberedReading> readings) {
  const auto state = [](const store::NumberedReading& each) {
    return std::pair(each.reading.feature, each.reading.state);
  };
  const bool some_plain = std::any_of(readings.begin(), readings.end(),
                                      [](const auto& each) { return each.reading.feature.empty(); });
  const auto wanted =
      some_plain || readings.empty() ? std::pair<std::string, std::string>() : state(readings.front());
  std::erase_if(readings, [&](const auto& each) { return state(each) != wanted; });
  return readings;
}

}  // namespace desk
