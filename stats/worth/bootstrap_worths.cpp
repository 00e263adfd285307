#include "stats/worth/bootstrap_worths.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "stats/arguments.h"
#include "stats/blocks.h"
#include "stats/cholesky.h"
#include "stats/random.h"
#include "stats/resampling/percentile_interval.h"
#include "stats/worth/worth.h"

namespace stats {
namespace {

constexpr std::int64_t kBlockOfRefits = 50;

/// Refits from sums: of each item half its preferences less half of those against it, the same of the order, and the ties.
/// The parameters are logarithms of the items' weights, then of the order's and the tie's; the reference's stays 0.
class QuickRefit {
 public:
  QuickRefit(std::size_t items, std::span<const PairCount> counts, std::size_t reference, bool order_effect,
             bool with_ties)
      : items_(items),
        reference_(reference),
        order_effect_(order_effect),
        with_ties_(with_ties),
        size_(items + 2) {
    for (const PairCount& count : counts)
      if (count.first_preferred + count.ties + count.second_preferred > 0)
        rows_.push_back({static_cast<std::size_t>(count.first), static_cast<std::size_t>(count.second),
                         double(count.first_preferred + count.ties + count.second_preferred)});
  }

  std::size_t order() const { return items_; }
  std::size_t tie() const { return items_ + 1; }

  /// Sums of a resample's answers.
  std::vector<double> drawn_sums(std::span<const PairCount> counts, QuickRandom& random) const {
    std::vector<double> sums(size_);
    for (const PairCount& count : counts) {
      const auto answers =
          static_cast<std::uint32_t>(count.first_preferred + count.ties + count.second_preferred);
      if (answers == 0) continue;
      const auto first = static_cast<std::uint32_t>(count.first_preferred),
                 not_second = first + static_cast<std::uint32_t>(count.ties);
      std::int64_t lead = 0, ties = 0;
      random.each_below(answers, answers, [&](std::uint32_t answer) {
        lead += (answer < first) - (answer >= not_second);
        ties += answer >= first && answer < not_second;
      });
      sums[static_cast<std::size_t>(count.first)] += double(lead) / 2;
      sums[static_cast<std::size_t>(count.second)] -= double(lead) / 2;
      sums[order()] += double(lead) / 2;
      sums[tie()] += double(ties);
    }
    return sums;
  }

  /// Every refit starts here: its first step needs no more than its sums.
  bool start_at(std::vector<double> parameters) {
    std::vector<double> information(size_ * size_);
    start_slope_.assign(size_, 0.0);
    differentiate<true>(parameters, start_slope_, information.data());
    start_information_ = Cholesky::of(std::move(information), size_);
    start_ = std::move(parameters);
    return start_information_.has_value();
  }

  /// Nothing where that does not settle. Newton's steps, the last ones with the information of a step before: each leaves at
  /// most a tenth of the error, so that what is left is below 1e-7.
  std::optional<std::vector<double>> fitted(const std::vector<double>& sums) const {
    std::vector<double> parameters = start_, slope = sums;
    for (std::size_t i = 0; i < size_; ++i) slope[i] += start_slope_[i];
    hold_all(slope, nullptr);
    std::optional<Cholesky> fresh;
    for (int step = 0; step < 40; ++step) {
      const auto move = (fresh ? *fresh : *start_information_).solve(std::move(slope));
      double longest = 0;
      for (const double one : move) longest = std::max(longest, std::abs(one));
      if (longest > 30) return std::nullopt;
      const double part = std::min(1.0, 2 / longest);
      for (std::size_t i = 0; i < size_; ++i) parameters[i] += part * move[i];
      if (longest < 5e-7) return parameters;
      slope = sums;
      if (longest > 0.03) {
        std::vector<double> information(size_ * size_);
        differentiate<true>(parameters, slope, information.data());
        fresh = Cholesky::of(std::move(information), size_);
        if (!fresh) return std::nullopt;
      } else {
        differentiate<false>(parameters, slope, nullptr);
      }
    }
    return std::nullopt;
  }

 private:
  struct Row {
    std::size_t first, second;
    double answers;
  };

  /// @param slope        the sums; expectations are taken away.
  /// @param information  lower triangle, zeros; or not asked for.
  template <bool WithInformation>
  void differentiate(const std::vector<double>& parameters, std::vector<double>& slope,
                     double* information) const {
    std::vector<double> root(items_);
    for (std::size_t i = 0; i < items_; ++i) root[i] = std::exp(parameters[i] / 2);
    const double order_root = order_effect_ ? std::exp(parameters[order()] / 2) : 1,
                 nu = with_ties_ ? std::exp(parameters[tie()]) : 0;
    double all_means = 0, all_ties = 0, all_xx = 0, all_xt = 0, all_tt = 0;
    for (const Row& row : rows_) {
      const double a = root[row.first] * order_root, b = root[row.second], first = a * a, second = b * b,
                   tie_weight = nu * a * b;
      const double share = row.answers / (first + second + tie_weight), mean = (first - second) * share / 2;
      slope[row.first] -= mean;
      slope[row.second] += mean;
      all_means += mean;
      all_ties += tie_weight * share;
      if constexpr (WithInformation) {
        const double ties = tie_weight * share / row.answers;
        const double xx = (first + second) * share / 4 - mean * mean / row.answers, xt = -mean * ties;
        information[row.first * size_ + row.first] += xx;
        information[row.second * size_ + row.second] += xx;
        information[std::max(row.first, row.second) * size_ + std::min(row.first, row.second)] -= xx;
        information[tie() * size_ + row.first] += xt;
        information[tie() * size_ + row.second] -= xt;
        if (order_effect_) {
          information[order() * size_ + row.first] += xx;
          information[order() * size_ + row.second] -= xx;
        }
        all_xx += xx;
        all_xt += xt;
        all_tt += tie_weight * share * (1 - ties);
      }
    }
    slope[order()] -= all_means;
    slope[tie()] -= all_ties;
    if constexpr (WithInformation) {
      information[order() * size_ + order()] = all_xx;
      information[tie() * size_ + order()] = all_xt;
      information[tie() * size_ + tie()] = all_tt;
    }
    hold_all(slope, information);
  }

  void hold_all(std::vector<double>& slope, double* information) const {
    hold(reference_, slope, information);
    if (!order_effect_) hold(order(), slope, information);
    if (!with_ties_) hold(tie(), slope, information);
  }

  /// Keeps a parameter where it is.
  void hold(std::size_t place, std::vector<double>& slope, double* information) const {
    slope[place] = 0;
    if (!information) return;
    for (std::size_t i = 0; i < size_; ++i) information[std::max(i, place) * size_ + std::min(i, place)] = 0;
    information[place * size_ + place] = 1;
  }

  std::size_t items_, reference_;
  bool order_effect_, with_ties_;
  std::size_t size_;
  std::vector<Row> rows_;
  std::vector<double> start_, start_slope_;
  std::optional<Cholesky> start_information_;
};

}  // namespace

std::optional<BootstrapWorths> bootstrap_worths(int items, std::span<const PairCount> counts, int reference,
                                                bool order_effect, double confidence,
                                                const MonteCarlo& monte_carlo, int threads) {
  require_level("confidence", confidence);
  require_count("draws", monte_carlo.draws, 1, 1'000'000);
  require_count("threads", threads, 1, 256);
  const auto fit = fit_worths(items, counts, reference, {.order_effect = order_effect});
  if (!fit) return std::nullopt;
  const auto n = static_cast<std::size_t>(items), draws = static_cast<std::size_t>(monte_carlo.draws);
  QuickRefit refit(n, counts, static_cast<std::size_t>(reference), order_effect, fit->tie_weight.has_value());
  std::vector<double> start = fit->worth;
  start.push_back(fit->order_effect.value_or(0));
  start.push_back(fit->tie_weight ? std::log(*fit->tie_weight) : 0);
  if (!refit.start_at(std::move(start))) return std::nullopt;

  std::vector<std::vector<double>> worths(draws);  // empty where infinite
  for_each_block(
      (monte_carlo.draws + kBlockOfRefits - 1) / kBlockOfRefits, threads, [&](std::int64_t block, int) {
        QuickRandom random(monte_carlo.seed + (static_cast<std::uint64_t>(block) << 32));
        const auto from = static_cast<std::size_t>(block * kBlockOfRefits);
        for (std::size_t draw = from; draw < std::min(draws, from + std::size_t{kBlockOfRefits}); ++draw)
          if (auto found = refit.fitted(refit.drawn_sums(counts, random))) worths[draw] = std::move(*found);
      });
  std::erase_if(worths, [](const auto& one) { return one.empty(); });
  if (worths.empty()) return std::nullopt;
  BootstrapWorths found{
      {}, {}, static_cast<int>(worths.size()), monte_carlo.draws - static_cast<int>(worths.size())};
  std::vector<double> values(worths.size());
  for (std::size_t item = 0; item < n; ++item) {
    std::transform(worths.begin(), worths.end(), values.begin(), [&](const auto& one) { return one[item]; });
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / double(values.size());
    double squares = 0;
    for (const double value : values) squares += (value - mean) * (value - mean);
    found.standard_error.push_back(values.size() > 1 ? std::sqrt(squares / double(values.size() - 1)) : 0);
    found.interval.push_back(percentile_interval(values, confidence));
  }
  return found;
}

}  // namespace stats
