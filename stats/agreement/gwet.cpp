#include "stats/agreement/gwet.h"

#include <cmath>
#include <vector>

namespace stats {
namespace {

struct GwetParts {
  double observed;  ///< agreement of the subject's pairs of answers, 0 with fewer than two
  double expected;  ///< the subject's part in the chance agreement; their mean is the chance agreement
  bool in_pairs;
};

CountTable answered_rows(const CountTable& counts) {
  CountTable rows;
  for (const auto& row : counts)
    if (row_sum(row) > 0) rows.push_back(row);
  return rows;
}

std::vector<double> mean_shares(const CountTable& rows) {
  std::vector<double> shares(rows.front().size());
  for (const auto& row : rows)
    for (std::size_t k = 0; k < row.size(); ++k)
      shares[k] += row[k] / double(row_sum(row)) / double(rows.size());
  return shares;
}

/// Mean weight of the ordered pairs of a subject's different answers.
double pair_agreement(const std::vector<int>& row, const AgreementWeights& weights) {
  double agreeing = 0;
  for (std::size_t k = 0; k < row.size(); ++k) {
    if (row[k] == 0) continue;
    double alike = -1;  // less the answer itself
    for (std::size_t l = 0; l < row.size(); ++l) alike += weights[k][l] * row[l];
    agreeing += row[k] * alike;
  }
  const double raters = double(row_sum(row));
  return agreeing / (raters * (raters - 1));
}

/// Sum of the weights over categories (categories - 1): 1 / (categories - 1) without weights.
double chance_factor(const AgreementWeights& weights) {
  double sum = 0;
  for (const auto& row : weights)
    for (const double weight : row) sum += weight;
  const double categories = double(weights.size());
  return sum / (categories * (categories - 1));
}

/// Gwet (2008), section 5, with n - 1 in the divisor.
double gwet_error(const std::vector<GwetParts>& subjects, double pairs, const GwetAgreement& gwet) {
  const double n = double(subjects.size());
  const double lack = 1 - gwet.expected_agreement;
  double squares = 0;
  for (const auto& [observed, expected, in_pairs] : subjects) {
    const double own = in_pairs ? n / pairs * (observed - gwet.expected_agreement) / lack : 0;
    const double part = own - 2 * (1 - gwet.coefficient) * (expected - gwet.expected_agreement) / lack;
    squares += (part - gwet.coefficient) * (part - gwet.coefficient);
  }
  return std::sqrt(squares / (n * (n - 1)));
}

}  // namespace

std::optional<GwetAgreement> gwet_ac1(const CountTable& counts) {
  checked_total(counts);
  return gwet_ac2(counts, identity_weights(static_cast<int>(counts.front().size())));
}

std::optional<GwetAgreement> gwet_ac2(const CountTable& counts, const AgreementWeights& weights) {
  checked_total(counts);
  require_weights(weights, counts.front().size());
  const CountTable rows = answered_rows(counts);
  const auto shares = mean_shares(rows);
  const double factor = chance_factor(weights);
  std::vector<GwetParts> subjects;
  GwetAgreement gwet{};
  double pairs = 0;
  for (const auto& row : rows) {
    const double raters = double(row_sum(row));
    GwetParts parts{0, 0, raters > 1};
    if (parts.in_pairs) parts.observed = pair_agreement(row, weights);
    for (std::size_t k = 0; k < row.size(); ++k) parts.expected += factor * (1 - shares[k]) * row[k] / raters;
    pairs += parts.in_pairs;
    gwet.observed_agreement += parts.observed;
    subjects.push_back(parts);
  }
  for (const double share : shares) gwet.expected_agreement += factor * share * (1 - share);
  if (pairs == 0 || gwet.expected_agreement >= 1) return std::nullopt;
  gwet.observed_agreement /= pairs;
  gwet.coefficient = (gwet.observed_agreement - gwet.expected_agreement) / (1 - gwet.expected_agreement);
  gwet.subjects = std::ssize(rows);
  if (rows.size() > 1) gwet.standard_error = gwet_error(subjects, pairs, gwet);
  return gwet;
}

}  // namespace stats
