#include "desk/calculator/calculation.h"

#include <algorithm>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "desk/files.h"

namespace desk {

bool Calculation::takes_table() const {
  return std::any_of(arguments.begin(), arguments.end(), [](const Argument& argument) {
    return argument.shape != Shape::word && argument.shape != Shape::flag;
  });
}

std::span<const Topic> topics() {
  static const std::vector<Topic> all{
      share_topic(),       design_topic(),    pooled_topic(),         agreement_topic(), ratings_topic(),
      association_topic(), samples_topic(),   factors_topic(),        campaigns_topic(), preferences_topic(),
      worths_topic(),      threshold_topic(), discrimination_topic(), stopping_topic(),  evidence_topic(),
      listeners_topic(),   cables_topic(),    hearing_topic()};
  return all;
}

Figures calculate(const Calculation& calculation, std::map<std::string, std::vector<std::string>> typed,
                  const std::string& table) {
  std::optional<text::Table> read;
  if (!table.empty()) {
    read = text::parse_table(read_file(table), table);
    read->problems.refuse_if_any();
  }
  return calculation.figures(Given(calculation, std::move(typed), std::move(read)));
}

}  // namespace desk
