#include "stats/resampling/alpha_permutation.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <span>
#include <vector>

#include "stats/agreement/coded_ratings.h"
#include "stats/random.h"

namespace stats {
namespace {

/// The answers of one rater and the subjects they were given for.
struct RaterAnswers {
  std::size_t rater;
  std::vector<std::size_t> subjects;
  std::vector<int> codes;

  void put_into(CodedRatings& ratings) const {
    for (std::size_t i = 0; i < codes.size(); ++i) ratings[subjects[i]][rater] = codes[i];
  }

  /// Different orders of the answers: n! over the factorials of the counts.
  double orders() const {
    std::map<int, double> seen;
    double product = 1;
    for (std::size_t i = 0; i < codes.size(); ++i) product *= double(i + 1) / ++seen[codes[i]];
    return std::round(product);
  }
};

std::vector<RaterAnswers> answers_by_rater(const CodedRatings& ratings) {
  std::vector<RaterAnswers> raters;
  for (std::size_t rater = 0; rater < ratings.front().size(); ++rater) {
    auto& answers = raters.emplace_back(RaterAnswers{rater, {}, {}});
    for (std::size_t subject = 0; subject < ratings.size(); ++subject) {
      if (ratings[subject][rater] == kNoAnswer) continue;
      answers.subjects.push_back(subject);
      answers.codes.push_back(ratings[subject][rater]);
    }
  }
  return raters;
}

/// Calls `visit` with every arrangement of the answers of these raters in `ratings`.
template <typename Visit>
void for_each_alpha_arrangement(std::span<RaterAnswers> raters, CodedRatings& ratings, const Visit& visit) {
  if (raters.empty()) return visit();
  RaterAnswers& rater = raters.front();
  std::sort(rater.codes.begin(), rater.codes.end());
  do {
    rater.put_into(ratings);
    for_each_alpha_arrangement(raters.subspan(1), ratings, visit);
  } while (std::next_permutation(rater.codes.begin(), rater.codes.end()));
}

/// Where everybody answered everything only the places of the others' answers beside the first one's matter.
std::span<RaterAnswers> raters_to_permute(std::vector<RaterAnswers>& raters, std::size_t subjects) {
  const bool complete = std::all_of(raters.begin(), raters.end(),
                                    [=](const RaterAnswers& r) { return r.codes.size() == subjects; });
  return std::span(raters).subspan(complete ? 1 : 0);
}

}  // namespace

std::optional<AlphaTest> permute_alpha(const Ratings& ratings, Metric metric, const MonteCarlo& monte_carlo) {
  require_draws(monte_carlo);
  AlphaCalculation calculation(ratings, metric);
  CodedRatings arranged = calculation.coded();
  const auto seen = calculation.of(arranged);
  if (!seen) return std::nullopt;
  const double tolerance = 1e-12 * std::max(1.0, std::abs(seen->alpha));
  std::int64_t reaching = 0;
  const auto count = [&] {
    const auto drawn = calculation.of(arranged);
    reaching += !drawn || counts_against(drawn->alpha, seen->alpha, Alternative::greater, tolerance);
  };

  auto raters = answers_by_rater(arranged);
  const auto permuted = raters_to_permute(raters, ratings.size());
  double arrangements = 1;
  for (const RaterAnswers& rater : permuted) arrangements *= rater.orders();
  if (arrangements <= kExactAlphaArrangements) {
    for_each_alpha_arrangement(permuted, arranged, count);
    return AlphaTest{seen->alpha, exact_p(double(reaching) / arrangements)};
  }
  Random random(monte_carlo.seed);
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (RaterAnswers& rater : permuted) {
      random.shuffle(std::span(rater.codes));
      rater.put_into(arranged);
    }
    count();
  }
  return AlphaTest{seen->alpha, monte_carlo_p(reaching, monte_carlo.draws)};
}

}  // namespace stats
