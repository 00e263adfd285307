#include "stats/pooled/count_sampler.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "stats/arguments.h"

namespace stats {

CountSampler::CountSampler(std::span<const double> probabilities) {
  require_count("number of probabilities", std::ssize(probabilities), 1, 65'536);
  for (const double probability : probabilities) require_closed_probability("probability", probability);
  const double all = std::accumulate(probabilities.begin(), probabilities.end(), 0.0);
  require_between("sum of probabilities", all, 1 - 1e-9, 1 + 1e-9);

  // Two slices at least, so that the shift stays below the width of a word.
  const std::size_t slices = std::bit_ceil(std::max<std::size_t>(2, probabilities.size()));
  shift_ = 64 - std::countr_zero(slices);
  std::vector<double> share(
      slices);  // of its slice that a number fills; above 1 the rest goes to other slices
  std::vector<std::uint32_t> small, large;
  for (std::uint32_t number = 0; number < slices; ++number) {
    if (number < probabilities.size()) share[number] = probabilities[number] / all * double(slices);
    (share[number] < 1 ? small : large).push_back(number);
  }
  slices_.resize(slices);
  const double width = std::ldexp(1.0, shift_);
  const auto fill = [&](std::uint32_t number, double filled, std::uint32_t rest) {
    const auto start = std::uint64_t{number} << shift_;
    slices_[number] = {start + static_cast<std::uint64_t>(filled * width), {number, rest}};
  };
  while (!small.empty() && !large.empty()) {
    const std::uint32_t poor = small.back(), rich = large.back();
    small.pop_back();
    fill(poor, share[poor], rich);
    share[rich] -= 1 - share[poor];
    if (share[rich] < 1) {
      large.pop_back();
      small.push_back(rich);
    }
  }
  for (const auto* left : {&small, &large})  // full, but for rounding
    for (const std::uint32_t number : *left)
      slices_[number] = {std::uint64_t{number} << shift_, {number, number}};
}

}  // namespace stats
