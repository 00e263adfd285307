#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "stats/agreement/count_table.h"

namespace stats {

/// Whole numbers for each subject whose sums over subjects give the coefficients of agreement: so a resample
/// needs sums only, and the sums are exact.
///
/// Subjects are grouped by how many raters answered; a group's fields are its number of subjects, the ordered
/// pairs of agreeing answers, and the answers in each category.
class AgreementSums {
 public:
  /// @throws std::domain_error  as `checked_total`, and for more than 1,000 raters of a subject.
  explicit AgreementSums(const CountTable& counts);

  std::size_t fields() const { return groups_.size() * (categories_ + 2); }
  std::span<const std::int64_t> records() const { return records_; }  ///< subject by subject
  std::vector<std::int64_t> total() const;                            ///< of the table given

  /// The coefficients of these sums; nothing where they are undefined (see krippendorff.h, kappa.h, gwet.h).
  /// Fleiss' kappa is so also for a table in which not all rows have the same sum.
  std::optional<double> nominal_alpha(std::span<const std::int64_t> sums) const;
  std::optional<double> fleiss_kappa(std::span<const std::int64_t> sums) const;
  std::optional<double> gwet_ac1(std::span<const std::int64_t> sums) const;

 private:
  std::size_t categories_;
  std::vector<std::int64_t> groups_;  // raters who answered
  std::vector<std::int64_t> records_;
};

}  // namespace stats
