#include "stats/pooled/beta_binomial_likelihood.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <cstddef>
#include <limits>

namespace stats {
namespace {

/// Logarithm of a factor that is linear in mean and in gamma, given with its derivatives.
LikelihoodJet log_jet(double factor, double by_mean, double by_gamma, double by_both) {
  const double mean = by_mean / factor, gamma = by_gamma / factor;
  return {std::log(factor), mean, gamma, -mean * mean, by_both / factor - mean * gamma, -gamma * gamma};
}

/// Sums over j < 0, j < 1, ... of what `factor(j)` gives.
template <typename Factor>
std::vector<LikelihoodJet> running_jets(int count, Factor factor) {
  std::vector<LikelihoodJet> sums(1);
  for (int j = 0; j < count; ++j) {
    sums.push_back(sums.back());
    sums.back() += factor(j);
  }
  return sums;
}

/// Logarithm of the sum of exponentials of the terms.
LikelihoodJet log_sum_of_jets(const std::vector<LikelihoodJet>& terms) {
  const auto by_value = [](const LikelihoodJet& a, const LikelihoodJet& b) { return a.value < b.value; };
  const double largest = std::max_element(terms.begin(), terms.end(), by_value)->value;
  double all = 0;
  LikelihoodJet sum;
  for (const LikelihoodJet& term : terms) {
    const double weight = std::exp(term.value - largest);
    all += weight;
    sum.mean += weight * term.mean;
    sum.gamma += weight * term.gamma;
    sum.mean_mean += weight * (term.mean_mean + term.mean * term.mean);
    sum.mean_gamma += weight * (term.mean_gamma + term.mean * term.gamma);
    sum.gamma_gamma += weight * (term.gamma_gamma + term.gamma * term.gamma);
  }
  const double mean = sum.mean / all, gamma = sum.gamma / all;
  return {largest + std::log(all),
          mean,
          gamma,
          sum.mean_mean / all - mean * mean,
          sum.mean_gamma / all - mean * gamma,
          sum.gamma_gamma / all - gamma * gamma};
}

}  // namespace

LikelihoodJet& LikelihoodJet::operator+=(const LikelihoodJet& other) {
  value += other.value;
  mean += other.mean;
  gamma += other.gamma;
  mean_mean += other.mean_mean;
  mean_gamma += other.mean_gamma;
  gamma_gamma += other.gamma_gamma;
  return *this;
}

LikelihoodJet& LikelihoodJet::operator-=(const LikelihoodJet& other) {
  value -= other.value;
  mean -= other.mean;
  gamma -= other.gamma;
  mean_mean -= other.mean_mean;
  mean_gamma -= other.mean_gamma;
  gamma_gamma -= other.gamma_gamma;
  return *this;
}

/// The factor 1 - gamma of j = 0 is kept apart: it remains once where some but not all trials are heard.
struct BetaBinomialLikelihood::Tables {
  std::vector<LikelihoodJet> heard, missed, all;
  LikelihoodJet some_heard;
  bool some_can_be_heard;
};

BetaBinomialLikelihood::BetaBinomialLikelihood(std::span<const SubjectCount> subjects, double chance)
    : subjects_(subjects), chance_(chance) {
  int most = 0;
  for (const SubjectCount subject : subjects) most = std::max(most, subject.trials);
  for (int n = 0; n <= most; ++n) log_factorial_.push_back(boost::math::lgamma(n + 1.0));
}

BetaBinomialLikelihood::Tables BetaBinomialLikelihood::tables_at(double mean, double gamma) const {
  const auto count = static_cast<int>(log_factorial_.size()) - 1;
  const auto heard = [=](int j) {
    if (j == 0) return log_jet(mean, 1, 0, 0);
    return log_jet(mean * (1 - gamma) + j * gamma, 1 - gamma, j - mean, -1);
  };
  const auto missed = [=](int j) {
    if (j == 0) return log_jet(1 - mean, -1, 0, 0);
    return log_jet((1 - mean) * (1 - gamma) + j * gamma, gamma - 1, j - (1 - mean), 1);
  };
  const auto all = [=](int j) {
    if (j == 0) return LikelihoodJet{};
    return log_jet(1 - gamma + j * gamma, 0, j - 1, 0);
  };
  return {running_jets(count, heard), running_jets(count, missed), running_jets(count, all),
          gamma < 1 ? log_jet(1 - gamma, 0, -1, 0) : LikelihoodJet{}, gamma < 1};
}

double BetaBinomialLikelihood::log_ways(int trials, int correct, int heard) const {
  const auto log_factorial = [&](int n) { return log_factorial_[static_cast<std::size_t>(n)]; };
  const int guessed = correct - heard;
  double ways =
      log_factorial(trials) - log_factorial(heard) - log_factorial(guessed) - log_factorial(trials - correct);
  if (guessed > 0) ways += guessed * std::log(chance_);
  return ways + (trials - correct) * std::log1p(-chance_);
}

LikelihoodJet BetaBinomialLikelihood::of_subject(const SubjectCount& subject, const Tables& tables) const {
  const auto [correct, trials] = subject;
  std::vector<LikelihoodJet> terms;
  for (int heard = chance_ > 0 ? 0 : correct; heard <= correct; ++heard) {
    const bool some = heard > 0 && heard < trials;
    if (some && !tables.some_can_be_heard) continue;
    LikelihoodJet term;
    term.value = log_ways(trials, correct, heard);
    term += tables.heard[static_cast<std::size_t>(heard)];
    term += tables.missed[static_cast<std::size_t>(trials - heard)];
    term -= tables.all[static_cast<std::size_t>(trials)];
    if (some) term += tables.some_heard;
    terms.push_back(term);
  }
  if (!terms.empty()) return log_sum_of_jets(terms);
  LikelihoodJet impossible;
  impossible.value = -std::numeric_limits<double>::infinity();
  return impossible;
}

LikelihoodJet BetaBinomialLikelihood::at(double mean, double gamma) const {
  const Tables tables = tables_at(mean, gamma);
  LikelihoodJet sum;
  for (const SubjectCount& subject : subjects_) sum += of_subject(subject, tables);
  return sum;
}

double BetaBinomialLikelihood::nothing_heard() const {
  double sum = 0;
  for (const auto [correct, trials] : subjects_)
    sum +=
        chance_ == 0 && correct > 0 ? -std::numeric_limits<double>::infinity() : log_ways(trials, correct, 0);
  return sum;
}

}  // namespace stats
