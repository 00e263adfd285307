#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "stats/worth/pair_count.h"
#include "stats/worth/pair_likelihood.h"
#include "stats/worth/worth.h"

namespace stats {

/// Of a parameter that is not fitted.
inline constexpr std::size_t kNoPlace = std::numeric_limits<std::size_t>::max();

/// Likelihood of the worths of a paired comparison. Its parameters: the worths but the reference's, then the order effect,
/// then the logarithm of the tie weight, as far as they are fitted. Keeps a view of the counts.
class WorthLikelihood {
 public:
  WorthLikelihood(int items, std::span<const PairCount> counts, int reference, const WorthOptions& options);

  /// With the worths of two items held equal.
  WorthLikelihood(int items, std::span<const PairCount> counts, std::pair<int, int> equal,
                  const WorthOptions& options);

  std::size_t size() const { return size_; }
  std::size_t order() const { return order_; }
  std::size_t tie() const { return tie_; }
  std::size_t place(std::size_t item) const { return places_[item]; }

  struct At {
    double value = 0;
    std::vector<double> slope;
    std::vector<double> information;  ///< expected, lower triangle
    /// Likewise, by which a step is found; with Firth's penalty each row has as many answers more as it has leverage, since
    /// steps by the information alone go twice as far as they should where a row has one answer.
    std::vector<double> curvature;
  };

  /// With Firth's penalty where asked for; nothing where the information is singular then.
  std::optional<At> at(const std::vector<double>& parameters) const;

  /// Without penalty.
  double log_likelihood(const std::vector<double>& parameters) const;

  /// The difference of worths of a row, order effect included, and the logarithm of the tie weight (0 without).
  std::pair<double, double> difference_and_tie(const PairCount& count,
                                               const std::vector<double>& parameters) const;

 private:
  /// The difference of one row, and where its parts stand.
  struct Row {
    double x = 0, log_tie = 0;
    std::size_t at[3] = {};
    double sign[3] = {};
    std::size_t used = 0;
  };

  void place_order_and_tie();
  Row row_of(const PairCount& count, const std::vector<double>& parameters) const;
  void add_information(const Row& row, const PairTerm& term, double times, std::vector<double>& matrix) const;
  bool penalize(At& found, const std::vector<double>& parameters) const;

  std::span<const PairCount> counts_;
  WorthOptions options_;
  std::vector<std::size_t> places_;
  std::size_t size_ = 0, order_ = kNoPlace, tie_ = kNoPlace;
};

/// Where the likelihood is largest, by scoring from 0, steps halved until it does not fall. Where it is largest at infinity,
/// as far out as its information is not singular: the likelihood there has no more to gain than rounding.
std::vector<double> largest_parameters(const WorthLikelihood& likelihood);

}  // namespace stats
