#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

#include "reference/compared.h"
#include "stats/permutation.h"
#include "stats/random.h"

namespace reference {

inline constexpr std::array kAlternatives{stats::Alternative::greater, stats::Alternative::less,
                                          stats::Alternative::two_sided};

/// Draws arguments, with the edges of each range far more often than by chance.
class Draws {
 public:
  explicit Draws(std::uint64_t seed) : random_(seed) {}

  /// Happens once in `times`.
  bool one_in(int times) { return whole(1, times) == 1; }
  int whole(int least, int most) {
    return least + static_cast<int>(random_.below(static_cast<std::uint32_t>(most - least + 1)));
  }
  /// Strictly between 0 and 1.
  double share() { return (static_cast<double>(random_.word() >> 12) + 0.5) * 0x1p-52; }
  double between(double least, double most) { return least + (most - least) * share(); }
  /// From 0 to 1; 0 and 1 in one of eight each.
  double closed_share() {
    const int edge = whole(1, 8);
    return edge == 1 ? 0 : edge == 2 ? 1 : share();
  }
  /// One of the given numbers, or any strictly between 0 and 1.
  double share_or(const std::vector<double>& usual) {
    return one_in(2) ? share()
                     : usual[static_cast<std::size_t>(whole(0, static_cast<int>(usual.size()) - 1))];
  }
  double chance() { return share_or({1. / 2, 1. / 3, 1. / 4, 0.1, 0.9}); }
  double level() { return share_or({0.05, 0.01, 0.001, 0.1, 0.5}); }
  double confidence() { return share_or({0.95, 0.9, 0.99, 0.5, 0.999}); }
  /// 1 to `most`, small numbers and large ones alike.
  int size(int most) {
    if (one_in(10)) return whole(1, std::min(most, 2));
    return static_cast<int>(std::exp(between(0, std::log(most + 1.0))));
  }
  /// 0 to `trials`; nothing right and everything right in one of ten each.
  int right_of(int trials) {
    const int edge = whole(1, 10);
    return edge == 1 ? 0 : edge == 2 ? trials : whole(0, trials);
  }
  /// As many right as that share makes likely.
  int binomial(int trials, double share_right) {
    int right = 0;
    for (int i = 0; i < trials; ++i) right += share() < share_right;
    return right;
  }
  Numbers wholes(int count, int least, int most) {
    Numbers list;
    for (int i = 0; i < count; ++i) list.push_back(whole(least, most));
    return list;
  }
  Numbers numbers(int count, double least, double most) {
    Numbers list;
    for (int i = 0; i < count; ++i) list.push_back(between(least, most));
    return list;
  }
  /// 1, 2, ... `count` in any order.
  Numbers order(int count) {
    Numbers list;
    for (int i = 1; i <= count; ++i) list.push_back(i);
    random_.shuffle(std::span(list));
    return list;
  }

 private:
  stats::Random random_;
};

/// `plain` calls, in the long tier `many`, of fixed seed.
template <typename Make>
std::vector<Call> drawn(int plain, int many, Make make) {
  Draws draws(1);
  std::vector<Call> calls;
  const int count = tier() == "long" ? many : plain;
  for (int i = 0; i < count; ++i) calls.push_back(Call{make(draws)});
  return calls;
}

}  // namespace reference
