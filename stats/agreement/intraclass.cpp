#include "stats/agreement/intraclass.h"

#include <algorithm>
#include <boost/math/distributions/fisher_f.hpp>
#include <limits>
#include <numeric>

#include "stats/agreement/ratings.h"
#include "stats/arguments.h"

namespace stats {
namespace {

constexpr double kIntraclassInfinity = std::numeric_limits<double>::infinity();

/// Subjects, raters, and the tail of the interval on either side.
struct IntraclassDesign {
  double n, k, tail;
};

void check_scale_answers(const std::vector<std::vector<double>>& answers, double confidence) {
  require_count("number of subjects", std::ssize(answers), 2, 50'000);
  const auto raters = std::ssize(answers.front());
  require_count("number of raters", raters, 2, 1'000);
  require_count("subjects times raters", std::ssize(answers) * raters, 4, 100'000);
  for (const auto& subject : answers) {
    require_count("entries of a subject", std::ssize(subject), raters, raters);
    for (const double answer : subject) require_between("answer", answer, -kLargestRating, kLargestRating);
  }
  require_level("confidence", confidence);
}

/// A sum of squares, or 0 where it is no more than what rounding leaves of 0.
double without_rounding(double squares, double largest) { return squares < 1e-25 * largest ? 0 : squares; }

void add_mean_squares(Intraclass& result, const std::vector<std::vector<double>>& answers) {
  const double n = double(answers.size()), k = double(answers.front().size());
  const double origin = answers.front().front();  // subtracted, so that little is lost far from 0
  std::vector<double> of_subject(answers.size()), of_rater(answers.front().size());
  for (std::size_t i = 0; i < answers.size(); ++i)
    for (std::size_t j = 0; j < answers[i].size(); ++j) {
      of_subject[i] += answers[i][j] - origin;
      of_rater[j] += answers[i][j] - origin;
    }
  const double mean = std::accumulate(of_rater.begin(), of_rater.end(), 0.0) / (n * k);
  double between = 0, within = 0, residual = 0, raters = 0;
  for (double& rater : of_rater) {
    rater = rater / n - mean;
    raters += n * rater * rater;
  }
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const double subject = of_subject[i] / k;
    between += k * (subject - mean) * (subject - mean);
    for (std::size_t j = 0; j < answers[i].size(); ++j) {
      const double apart = answers[i][j] - origin - subject;
      within += apart * apart;
      residual += (apart - of_rater[j]) * (apart - of_rater[j]);
    }
  }
  const double largest = std::max(between, within);
  result.between_subjects = without_rounding(between, largest) / (n - 1);
  result.within_subjects = without_rounding(within, largest) / (n * (k - 1));
  result.between_raters = without_rounding(raters, largest) / (k - 1);
  result.residual = without_rounding(residual, largest) / ((n - 1) * (k - 1));
}

double f_quantile(double tail, double freedom, double divisor_freedom) {
  return quantile(complement(boost::math::fisher_f(freedom, divisor_freedom), tail));
}

VarianceRatio variance_ratio(double numerator, double divisor, double freedom, double divisor_freedom) {
  if (divisor == 0) return {kIntraclassInfinity, freedom, divisor_freedom, 0};
  const double f = numerator / divisor;
  return {f, freedom, divisor_freedom, cdf(complement(boost::math::fisher_f(freedom, divisor_freedom), f))};
}

/// ICC of one answer, and of a mean of k, from the ratio of mean squares between subjects and about them.
double single_from_ratio(double f, double k) { return f == kIntraclassInfinity ? 1 : (f - 1) / (f + k - 1); }
double mean_from_ratio(double f) { return f == 0 ? -kIntraclassInfinity : 1 - 1 / f; }

Interval ratio_limits(const VarianceRatio& ratio, double tail) {
  return {ratio.f / f_quantile(tail, ratio.freedom, ratio.divisor_freedom),
          ratio.f * f_quantile(tail, ratio.divisor_freedom, ratio.freedom)};
}

IntraclassCorrelation single_of_ratio(const VarianceRatio& ratio, const IntraclassDesign& design) {
  const auto [lower, upper] = ratio_limits(ratio, design.tail);
  return {single_from_ratio(ratio.f, design.k),
          {single_from_ratio(lower, design.k), single_from_ratio(upper, design.k)}};
}

IntraclassCorrelation mean_of_ratio(const VarianceRatio& ratio, const IntraclassDesign& design) {
  const auto [lower, upper] = ratio_limits(ratio, design.tail);
  return {mean_from_ratio(ratio.f), {mean_from_ratio(lower), mean_from_ratio(upper)}};
}

/// ICC(2,1) and its interval: McGraw and Wong, table 7, case ICC(A,1).
IntraclassCorrelation random_of_one(const Intraclass& ms, const IntraclassDesign& design) {
  const auto [n, k, tail] = design;
  const double bms = ms.between_subjects, jms = ms.between_raters, ems = ms.residual;
  if (jms == 0 && ems == 0) return {1, {1, 1}};
  const double icc = (bms - ems) / (bms + (k - 1) * ems + k * (jms - ems) / n);
  const double of_raters = k * icc * jms;
  const double of_residual = (n * (1 + (k - 1) * icc) - k * icc) * ems;
  const double sum = of_raters + of_residual;
  const double freedom = std::max(
      1.0, (k - 1) * (n - 1) * sum * sum / ((n - 1) * of_raters * of_raters + of_residual * of_residual));
  const double above = f_quantile(tail, n - 1, freedom);
  const double below = f_quantile(tail, freedom, n - 1);
  const double others = k * jms + (k * n - k - n) * ems;
  return {icc,
          {n * (bms - above * ems) / (above * others + n * bms),
           n * (below * bms - ems) / (others + n * below * bms)}};
}

/// ICC(2,k) from what is estimated for ICC(2,1).
double mean_from_single(double single, double k) {
  const double divisor = 1 + (k - 1) * single;
  return divisor > 0 ? k * single / divisor : -kIntraclassInfinity;
}

}  // namespace

std::optional<Intraclass> intraclass(const std::vector<std::vector<double>>& answers, double confidence) {
  check_scale_answers(answers, confidence);
  const IntraclassDesign design{double(answers.size()), double(answers.front().size()), (1 - confidence) / 2};
  const auto [n, k, tail] = design;
  Intraclass result{};
  add_mean_squares(result, answers);
  if (result.between_subjects == 0 && result.within_subjects == 0) return std::nullopt;

  result.one_way_test = variance_ratio(result.between_subjects, result.within_subjects, n - 1, n * (k - 1));
  result.two_way_test = variance_ratio(result.between_subjects, result.residual, n - 1, (n - 1) * (k - 1));
  result.one_way_single = single_of_ratio(result.one_way_test, design);
  result.one_way_mean = mean_of_ratio(result.one_way_test, design);
  result.fixed_single = single_of_ratio(result.two_way_test, design);
  result.fixed_mean = mean_of_ratio(result.two_way_test, design);
  result.random_single = random_of_one(result, design);
  const auto& single = result.random_single;
  result.random_mean = {
      mean_from_single(single.value, k),
      {mean_from_single(single.interval.lower, k), mean_from_single(single.interval.upper, k)}};
  return result;
}

}  // namespace stats
