#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "stats/agreement/krippendorff.h"

namespace stats {

/// Answers by their place in the ascending list of the different values; kNoAnswer where there is none.
using CodedRatings = std::vector<std::vector<int>>;
inline constexpr int kNoAnswer = -1;

/// Computes alpha again and again for other arrangements of the same answers.
class AlphaCalculation {
 public:
  /// @throws std::domain_error  as `krippendorff_alpha`.
  AlphaCalculation(const Ratings& ratings, Metric metric);

  /// The ratings given to the constructor.
  const CodedRatings& coded() const { return coded_; }

  /// @param subjects  rows of codes.
  std::optional<KrippendorffAlpha> of(const CodedRatings& subjects);

 private:
  void count(const CodedRatings& subjects);
  void place_on_scale();
  double disagreement(std::size_t c, std::size_t k) const;
  double within(const std::vector<int>& subject) const;
  double over_all() const;

  Metric metric_;
  std::vector<double> values_;
  CodedRatings coded_;
  std::vector<std::int64_t> counts_;  // of the pairable answers, by code
  std::vector<double> scale_;         // where the codes lie for the interval and ordinal metrics
  std::int64_t answers_ = 0;
  std::int64_t pairable_ = 0;
};

}  // namespace stats
