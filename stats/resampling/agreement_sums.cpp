#include "stats/resampling/agreement_sums.h"

#include <algorithm>

#include "stats/arguments.h"

namespace stats {
namespace {

constexpr std::size_t kSubjectsField = 0, kAgreeingField = 1, kFirstCategory = 2;
constexpr std::int64_t kMostRecordFields = 100'000'000;

std::vector<std::int64_t> different_row_sums(const CountTable& counts) {
  std::vector<std::int64_t> sums;
  for (const auto& row : counts) sums.push_back(row_sum(row));
  std::sort(sums.begin(), sums.end());
  sums.erase(std::unique(sums.begin(), sums.end()), sums.end());
  return sums;
}

}  // namespace

AgreementSums::AgreementSums(const CountTable& counts) {
  checked_total(counts);
  categories_ = counts.front().size();
  groups_ = different_row_sums(counts);
  require_count("subjects times numbers of raters times categories",
                std::ssize(counts) * static_cast<std::int64_t>(fields()), 1, kMostRecordFields);
  records_.resize(counts.size() * fields());
  for (std::size_t subject = 0; subject < counts.size(); ++subject) {
    const auto& row = counts[subject];
    require_count("raters of a subject", row_sum(row), 0, 1'000);
    const auto group = std::lower_bound(groups_.begin(), groups_.end(), row_sum(row)) - groups_.begin();
    const auto record = std::span(records_).subspan(
        subject * fields() + static_cast<std::size_t>(group) * (categories_ + 2), categories_ + 2);
    record[kSubjectsField] = 1;
    for (std::size_t k = 0; k < categories_; ++k) {
      record[kAgreeingField] += std::int64_t{row[k]} * (row[k] - 1);
      record[kFirstCategory + k] = row[k];
    }
  }
}

std::vector<std::int64_t> AgreementSums::total() const {
  std::vector<std::int64_t> sums(fields());
  for (std::size_t i = 0; i < records_.size(); ++i) sums[i % sums.size()] += records_[i];
  return sums;
}

std::optional<double> AgreementSums::nominal_alpha(std::span<const std::int64_t> sums) const {
  std::int64_t pairable = 0, squares = 0;
  double disagreeing = 0;  // pairs of a subject over its raters - 1
  for (std::size_t group = 0; group < groups_.size(); ++group) {
    const std::int64_t raters = groups_[group];
    if (raters < 2) continue;
    const auto own = sums.subspan(group * (categories_ + 2), categories_ + 2);
    pairable += raters * own[kSubjectsField];
    disagreeing +=
        double(raters * (raters - 1) * own[kSubjectsField] - own[kAgreeingField]) / double(raters - 1);
  }
  for (std::size_t k = 0; k < categories_; ++k) {
    std::int64_t chosen = 0;
    for (std::size_t group = 0; group < groups_.size(); ++group)
      if (groups_[group] >= 2) chosen += sums[group * (categories_ + 2) + kFirstCategory + k];
    squares += chosen * chosen;
  }
  if (squares == pairable * pairable) return std::nullopt;
  return 1 - double(pairable - 1) * disagreeing / double(pairable * pairable - squares);
}

std::optional<double> AgreementSums::fleiss_kappa(std::span<const std::int64_t> sums) const {
  if (groups_.size() != 1 || groups_[0] < 2) return std::nullopt;
  const std::int64_t ratings = groups_[0] * sums[kSubjectsField];
  std::int64_t squares = 0;
  for (const std::int64_t chosen : sums.subspan(kFirstCategory)) squares += chosen * chosen;
  if (squares == ratings * ratings) return std::nullopt;
  const double agreeing = double(ratings) * double(sums[kAgreeingField]) / double(groups_[0] - 1);
  return (agreeing - double(squares)) / double(ratings * ratings - squares);
}

std::optional<double> AgreementSums::gwet_ac1(std::span<const std::int64_t> sums) const {
  double answered = 0, in_pairs = 0, agreeing = 0;
  for (std::size_t group = 0; group < groups_.size(); ++group) {
    const auto own = sums.subspan(group * (categories_ + 2), categories_ + 2);
    const double raters = double(groups_[group]), subjects = double(own[kSubjectsField]);
    if (raters >= 1) answered += subjects;
    if (raters < 2) continue;
    in_pairs += subjects;
    agreeing += double(own[kAgreeingField]) / (raters * (raters - 1));
  }
  if (in_pairs == 0) return std::nullopt;
  double squares = 0;
  for (std::size_t k = 0; k < categories_; ++k) {
    double share = 0;
    for (std::size_t group = 0; group < groups_.size(); ++group)
      if (groups_[group] >= 1)
        share += double(sums[group * (categories_ + 2) + kFirstCategory + k]) / double(groups_[group]);
    squares += share * share / (answered * answered);
  }
  const double expected = (1 - squares) / double(categories_ - 1);
  return (agreeing / in_pairs - expected) / (1 - expected);
}

}  // namespace stats
