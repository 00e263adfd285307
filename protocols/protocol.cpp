#include "protocols/protocol.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <string>

namespace protocols {
namespace {

constexpr int first_tag = 100;
constexpr int tag_count = 900;

void check(const Shape& shape) {
  const auto refuse = [](const std::string& what) { throw std::domain_error("shape of a sitting: " + what); };
  if (shape.comparisons.empty()) refuse("there must be at least one comparison");
  if (shape.trials_each < 1)
    refuse("trials_each must be 1 or more, got " + std::to_string(shape.trials_each));
  if (shape.spares_each < 0)
    refuse("spares_each must be 0 or more, got " + std::to_string(shape.spares_each));
  if (shape.specimens < 1 || shape.specimens > tag_count)
    refuse("specimens must be 1 to 900, got " + std::to_string(shape.specimens));
  for (const auto& [first, second] : shape.comparisons)
    if (std::min(first, second) < 0 || std::max(first, second) >= shape.specimens || first == second)
      refuse("a comparison needs two different specimens below " + std::to_string(shape.specimens) +
             ", got " + std::to_string(first) + " and " + std::to_string(second));
}

std::vector<int> draw_tags(Draw& draw, int specimens) {
  std::vector<int> tags;
  while (static_cast<int>(tags.size()) < specimens) {
    const int tag = first_tag + static_cast<int>(draw.below(tag_count));
    if (std::find(tags.begin(), tags.end(), tag) == tags.end()) tags.push_back(tag);
  }
  return tags;
}

}  // namespace

Order Protocol::draw(const Shape& shape, const Seed& seed) const {
  check(shape);
  Draw draw(seed);
  Order order;
  order.tags = draw_tags(draw, shape.specimens);
  std::vector<int> blocks(shape.comparisons.size());
  std::iota(blocks.begin(), blocks.end(), 0);
  draw.shuffle(blocks);
  for (const int comparison : blocks) draw_block(draw, shape, comparison, order);
  return order;
}

}  // namespace protocols
