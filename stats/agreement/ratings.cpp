#include "stats/agreement/ratings.h"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "stats/arguments.h"

namespace stats {

void require_ratings(const Ratings& ratings) {
  require_count("number of subjects", std::ssize(ratings), 1, 50'000);
  const auto raters = std::ssize(ratings.front());
  require_count("number of raters", raters, 2, 1'000);
  require_count("subjects times raters", std::ssize(ratings) * raters, 2, 100'000);
  for (const auto& subject : ratings) {
    require_count("entries of a subject", std::ssize(subject), raters, raters);
    for (const auto& answer : subject)
      if (answer) require_between("answer", *answer, -kLargestRating, kLargestRating);
  }
}

CountTable count_ratings(const Ratings& ratings, std::span<const double> categories) {
  require_ratings(ratings);
  require_count("number of categories", std::ssize(categories), 2, 1'000);
  require_finite("categories", categories);
  for (auto category = categories.begin(); category != categories.end(); ++category)
    if (std::find(categories.begin(), category, *category) != category)
      throw std::domain_error("categories must all differ, got " + std::to_string(*category) + " twice");

  CountTable counts(ratings.size(), std::vector<int>(categories.size()));
  for (std::size_t subject = 0; subject < ratings.size(); ++subject)
    for (const auto& answer : ratings[subject]) {
      if (!answer) continue;
      const auto place = std::find(categories.begin(), categories.end(), *answer) - categories.begin();
      if (place == std::ssize(categories))
        throw std::domain_error("answer must be one of the categories, got " + std::to_string(*answer));
      ++counts[subject][static_cast<std::size_t>(place)];
    }
  return counts;
}

}  // namespace stats
