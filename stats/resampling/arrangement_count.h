#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace stats {

/// The trials that one rater answered, and the marks given there (1 right, 0 wrong).
struct Answered {
  std::vector<std::size_t> trials;
  std::vector<char> marks;
  std::int64_t right() const;
};

/// Up to this many steps the arrangements are counted: 0.3 s or so.
inline constexpr double kMostCountingSteps = 1e8;

/// Share of all arrangements of the raters' marks, each over the trials that the rater answered, with at
/// least `agreeing` pairs alike. Counted trial by trial: what is still open after a trial depends only on how
/// many right marks each rater has placed and how many pairs were alike so far.
///
/// @param trials  number of trials; every rater's are below it.
/// @return  nothing where that takes more than `kMostCountingSteps`.
std::optional<double> share_of_arrangements(std::span<const Answered> raters, std::size_t trials,
                                            std::int64_t agreeing);

}  // namespace stats
