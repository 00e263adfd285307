#pragma once

#include <vector>

namespace protocols {

/// What is asked of an order: how many specimens need tags, which two of them each comparison sets against
/// each other, and how many trials each comparison gets. All comparisons of a sitting get the same number, so
/// that a listener's layout is the same for every seed.
struct Shape {
  struct Pair {
    int first;   ///< index of a specimen
    int second;  ///< index of a specimen
  };
  int specimens = 0;
  std::vector<Pair> comparisons;
  int trials_each = 0;
  int spares_each = 0;
};

struct Trial {
  int number;              ///< 1, 2, ... as every listener counts them
  int comparison;          ///< index into the shape's comparisons
  bool spare;              ///< played only in place of a spoiled trial of its comparison
  std::vector<int> sides;  ///< what each presentation plays, in order: 0 the comparison's first, 1 its second
  int coin;                ///< the trial's own draw; the answer with this index is the one that scores
};

/// One sitting's order: a tag for each specimen and the trials in the order of their numbers, each
/// comparison's trials together and followed by its spares.
struct Order {
  std::vector<int> tags;
  std::vector<Trial> trials;
};

}  // namespace protocols
