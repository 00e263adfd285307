#include "sitting/simulated/simulated_listener.h"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "text/number.h"

namespace sitting {
namespace {

int coin(stats::Random& random) { return static_cast<int>(random.word() >> 63); }

/// True in a share of the draws; 53 random bits against the share.
bool happens(stats::Random& random, double share) {
  return static_cast<double>(random.word() >> 11) * 0x1p-53 < share;
}

double checked_share(double share) {
  if (!(share >= 0 && share <= 1))
    throw std::domain_error("share must be 0 to 1, got " + text::shortest(share));
  return share;
}

}  // namespace

void SimulatedListener::hear(int) {}

int Guesser::answer(const Moment&) { return coin(random_); }

Hearer::Hearer(std::uint64_t seed, double share) : random_(seed), share_(checked_share(share)) {}

int Hearer::answer(const Moment&) { return happens(random_, share_) ? coin_ : coin(random_); }

ImpressionFollower::ImpressionFollower(std::uint64_t impression_seed, std::uint64_t own_seed, double share)
    : impressions_(impression_seed), random_(own_seed), share_(checked_share(share)) {}

int ImpressionFollower::answer(const Moment&) {
  const int impression = coin(impressions_);
  return happens(random_, share_) ? impression : coin(random_);
}

int BalanceExploiter::answer(const Moment& moment) {
  const auto ones = std::count(moment.own_answers.begin(), moment.own_answers.end(), 1);
  const auto zeros = std::ssize(moment.own_answers) - ones;
  return ones == zeros ? coin(random_) : ones < zeros ? 1 : 0;
}

RunBreaker::RunBreaker(std::uint64_t seed, int longest)
    : random_(seed), longest_(static_cast<std::size_t>(longest)) {
  if (longest < 1) throw std::domain_error("longest must be 1 or more, got " + std::to_string(longest));
}

int RunBreaker::answer(const Moment& moment) {
  const auto own = moment.own_answers;
  if (own.size() < longest_) return coin(random_);
  const auto run = own.last(longest_);
  const bool lasts = std::all_of(run.begin(), run.end(), [&](int answer) { return answer == own.back(); });
  return lasts ? 1 - own.back() : coin(random_);
}

}  // namespace sitting
