#include "stats/worth/row_means.h"

#include <boost/math/distributions/normal.hpp>

namespace stats {

std::optional<std::vector<double>> thurstone_row_means(const PreferenceTable& table) {
  require_preferences(table, 2);
  const std::size_t n = table.size();
  std::vector<double> means(n);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j) {
      if (i == j) continue;
      if (table[i][j] == 0 || table[j][i] == 0) return std::nullopt;
      means[i] +=
          quantile(boost::math::normal(), double(table[i][j]) / (table[i][j] + table[j][i])) / double(n);
    }
  for (std::size_t i = n; i-- > 0;) means[i] -= means.front();
  return means;
}

}  // namespace stats
