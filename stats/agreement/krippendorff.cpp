#include "stats/agreement/krippendorff.h"

#include <algorithm>

#include "stats/agreement/coded_ratings.h"
#include "stats/arguments.h"

namespace stats {
namespace {

std::vector<double> different_answers(const Ratings& ratings) {
  std::vector<double> values;
  for (const auto& subject : ratings)
    for (const auto& answer : subject)
      if (answer) values.push_back(*answer);
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
  return values;
}

std::int64_t answers_given(const std::vector<int>& subject) {
  return std::ssize(subject) - std::count(subject.begin(), subject.end(), kNoAnswer);
}

}  // namespace

AlphaCalculation::AlphaCalculation(const Ratings& ratings, Metric metric) : metric_(metric) {
  require_ratings(ratings);
  values_ = different_answers(ratings);
  if (metric == Metric::ratio && !values_.empty())
    require_between("answer on a ratio scale", values_.front(), 0, kLargestRating);
  for (const auto& subject : ratings) {
    auto& row = coded_.emplace_back();
    for (const auto& answer : subject)
      row.push_back(answer ? static_cast<int>(std::lower_bound(values_.begin(), values_.end(), *answer) -
                                              values_.begin())
                           : kNoAnswer);
  }
  counts_.resize(values_.size());
  scale_.resize(values_.size());
}

std::optional<KrippendorffAlpha> AlphaCalculation::of(const CodedRatings& subjects) {
  count(subjects);
  place_on_scale();
  const double everything = over_all();
  if (!(everything > 0)) return std::nullopt;
  double observed = 0;
  for (const auto& subject : subjects)
    if (const auto answers = answers_given(subject); answers >= 2)
      observed += within(subject) / double(answers - 1);
  const double n = double(pairable_);
  const double expected = everything / (n * (n - 1));
  return KrippendorffAlpha{1 - observed / n / expected, observed / n, expected, answers_, pairable_};
}

void AlphaCalculation::count(const CodedRatings& subjects) {
  std::fill(counts_.begin(), counts_.end(), 0);
  answers_ = pairable_ = 0;
  for (const auto& subject : subjects) {
    const auto answers = answers_given(subject);
    answers_ += answers;
    if (answers < 2) continue;
    pairable_ += answers;
    for (const int code : subject)
      if (code != kNoAnswer) ++counts_[static_cast<std::size_t>(code)];
  }
}

/// The ordinal metric is the squared difference of mid-ranks among the pairable answers.
void AlphaCalculation::place_on_scale() {
  double before = 0;
  for (std::size_t c = 0; c < values_.size(); ++c) {
    const double count = double(counts_[c]);
    scale_[c] = metric_ == Metric::ordinal ? before + count / 2 : values_[c];
    before += count;
  }
}

double AlphaCalculation::disagreement(std::size_t c, std::size_t k) const {
  if (c == k) return 0;
  if (metric_ == Metric::nominal) return 1;
  const double gap = scale_[c] - scale_[k];
  if (metric_ != Metric::ratio) return gap * gap;
  const double ratio = gap / (scale_[c] + scale_[k]);
  return ratio * ratio;
}

/// Sum over the ordered pairs of a subject's answers.
double AlphaCalculation::within(const std::vector<int>& subject) const {
  double sum = 0;
  for (std::size_t i = 0; i < subject.size(); ++i)
    for (std::size_t j = 0; j < i && subject[i] != kNoAnswer; ++j)
      if (subject[j] != kNoAnswer)
        sum += 2 * disagreement(static_cast<std::size_t>(subject[i]), static_cast<std::size_t>(subject[j]));
  return sum;
}

/// Sum over all ordered pairs of pairable answers.
double AlphaCalculation::over_all() const {
  const double n = double(pairable_);
  double sum = 0;
  if (metric_ == Metric::nominal) {
    for (const std::int64_t count : counts_) sum += double(count) * double(pairable_ - count);
  } else if (metric_ == Metric::ratio) {
    for (std::size_t c = 0; c < counts_.size(); ++c)
      for (std::size_t k = 0; k < c; ++k)
        sum += 2 * double(counts_[c]) * double(counts_[k]) * disagreement(c, k);
  } else {
    double mean = 0;
    for (std::size_t c = 0; c < counts_.size(); ++c) mean += double(counts_[c]) / n * scale_[c];
    for (std::size_t c = 0; c < counts_.size(); ++c)
      sum += 2 * n * double(counts_[c]) * (scale_[c] - mean) * (scale_[c] - mean);
  }
  return sum;
}

std::optional<KrippendorffAlpha> krippendorff_alpha(const Ratings& ratings, Metric metric) {
  AlphaCalculation calculation(ratings, metric);
  return calculation.of(calculation.coded());
}

}  // namespace stats
