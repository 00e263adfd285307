#include "stats/redraw/redraw_layouts.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include "stats/arguments.h"

namespace stats {
namespace {

int largest_layout(const Layouts& layouts) { return *std::max_element(layouts.begin(), layouts.end()); }

void require_layouts(std::span<const Layouts> trials) {
  constexpr int most = 1'000'000;
  std::int64_t sum = 0, count = 0;
  for (const Layouts& layouts : trials) {
    require_count("layouts of a trial", std::ssize(layouts), 1, 24);
    for (const int adds : layouts) require_count("right answers of a layout", adds, 0, most);
    sum += largest_layout(layouts);
    require_count("sum of the largest of each trial", sum, 0, most);
    count += std::ssize(layouts);
    require_count("layouts of all trials", count, 1, 100 * most);
  }
  require_count("steps of the work", sum * count, 0, 10'000'000'000);
}

TotalDistribution after_layouts(const TotalDistribution& before, const Layouts& layouts) {
  TotalDistribution after(before.size() + static_cast<std::size_t>(largest_layout(layouts)));
  for (const int adds : layouts)
    for (std::size_t total = 0; total < before.size(); ++total)
      after[total + static_cast<std::size_t>(adds)] += before[total];
  for (double& probability : after) probability /= double(layouts.size());
  return after;
}

}  // namespace

TotalDistribution redraw_layouts(std::span<const Layouts> trials) {
  require_layouts(trials);
  TotalDistribution distribution{1.0};
  for (const Layouts& layouts : trials) distribution = after_layouts(distribution, layouts);
  return distribution;
}

}  // namespace stats
