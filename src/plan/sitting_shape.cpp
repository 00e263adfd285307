#include "plan/sitting_shape.h"

#include <algorithm>
#include <stdexcept>

#include "seal/commitment.h"

namespace plan {
namespace {

/// The shape's own index of a plan's specimen, given one when it is new.
int local_index(std::vector<int>& specimens, int specimen) {
  const auto found = std::find(specimens.begin(), specimens.end(), specimen);
  if (found == specimens.end()) {
    specimens.push_back(specimen);
    return static_cast<int>(specimens.size()) - 1;
  }
  return static_cast<int>(found - specimens.begin());
}

}  // namespace

const Part& part_of(const Plan& plan, int sitting) {
  if (sitting < 1 || sitting > static_cast<int>(plan.sittings.size()))
    throw std::domain_error("sitting must be 1 to " + std::to_string(plan.sittings.size()) + ", got " +
                            std::to_string(sitting));
  return plan.sittings[static_cast<std::size_t>(sitting - 1)];
}

SittingShape shape_of(const Plan& plan, int sitting) {
  const Part& part = part_of(plan, sitting);
  SittingShape sitting_shape;
  sitting_shape.comparisons = part.comparisons;
  for (const int index : part.comparisons) {
    const Comparison& comparison = plan.comparisons.at(static_cast<std::size_t>(index));
    const int first = local_index(sitting_shape.specimens, comparison.first);
    const int second = local_index(sitting_shape.specimens, comparison.second);
    sitting_shape.shape.comparisons.push_back({first, second});
  }
  sitting_shape.shape.specimens = static_cast<int>(sitting_shape.specimens.size());
  sitting_shape.shape.trials_each = part.trials_each;
  sitting_shape.shape.spares_each = plan.spares_each;
  return sitting_shape;
}

protocols::Order order_of(const Plan& plan, const seal::Digest& seed, int sitting,
                          std::span<const std::string> contributions) {
  return protocol_of(plan).draw(shape_of(plan, sitting).shape,
                                seal::order_seed(seed, contributions, sitting));
}

protocols::Order practice_of(const Plan& plan, const seal::Digest& seed, int sitting,
                             std::span<const std::string> contributions) {
  protocols::Order practice{order_of(plan, seed, sitting, contributions).tags, {}};
  if (plan.practice_trials == 0) return practice;
  std::vector<std::string> and_practice(contributions.begin(), contributions.end());
  and_practice.emplace_back("practice");
  protocols::Shape shape = shape_of(plan, sitting).shape;
  shape.trials_each = plan.practice_trials;
  shape.spares_each = 0;
  practice.trials = protocol_of(plan).draw(shape, seal::order_seed(seed, and_practice, sitting)).trials;
  practice.trials.resize(static_cast<std::size_t>(plan.practice_trials));
  return practice;
}

}  // namespace plan
