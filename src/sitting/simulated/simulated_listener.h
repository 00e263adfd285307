#pragma once

#include <cstdint>
#include <span>

#include "stats/random.h"

namespace sitting {

/// What a simulated listener goes by at one trial: no more than any listener at the seat knows.
struct Moment {
  int trial = 0;
  std::span<const int> own_answers;  ///< indices of the answers given before, in this sitting
};

/// Somebody who answers one trial after another, for rehearsals and tests.
///
/// The door to a sitting tells a listener nothing of the order, so whoever is to hear a difference is told by the
/// rehearsal, which holds the seed: `hear` comes before each answer.
class SimulatedListener {
 public:
  virtual ~SimulatedListener() = default;

  /// @param coin  index of the answer that scores.
  virtual void hear(int coin);
  /// Index of the answer, 0 or 1.
  virtual int answer(const Moment& moment) = 0;
};

/// Answers by a fair coin. Guessers with the same seed answer alike.
class Guesser : public SimulatedListener {
 public:
  explicit Guesser(std::uint64_t seed) : random_(seed) {}
  int answer(const Moment& moment) override;

 private:
  stats::Random random_;
};

/// Hears a share of the trials and guesses the others: right in share + (1 - share) / 2 of them in the long run.
class Hearer : public SimulatedListener {
 public:
  /// @param share  0 to 1. @throws std::domain_error outside.
  Hearer(std::uint64_t seed, double share);
  void hear(int coin) override { coin_ = coin; }
  int answer(const Moment& moment) override;

 private:
  stats::Random random_;
  double share_;
  int coin_ = 0;
};

/// Follows an impression that has nothing to do with the truth and that everybody with the same `impression_seed` has,
/// in a share of the trials; guesses the others.
class ImpressionFollower : public SimulatedListener {
 public:
  /// @param share  0 to 1. @throws std::domain_error outside.
  ImpressionFollower(std::uint64_t impression_seed, std::uint64_t own_seed, double share);
  int answer(const Moment& moment) override;

 private:
  stats::Random impressions_;
  stats::Random random_;
  double share_;
};

/// Believes that the truth balances out: gives the answer given less often so far, and a guess when both are level.
class BalanceExploiter : public SimulatedListener {
 public:
  explicit BalanceExploiter(std::uint64_t seed) : random_(seed) {}
  int answer(const Moment& moment) override;

 private:
  stats::Random random_;
};

/// Believes that runs do not last: gives the other answer than the last one, after a run of `longest` at the latest.
class RunBreaker : public SimulatedListener {
 public:
  /// @param longest  1 or more. @throws std::domain_error otherwise.
  RunBreaker(std::uint64_t seed, int longest);
  int answer(const Moment& moment) override;

 private:
  stats::Random random_;
  std::size_t longest_;
};

}  // namespace sitting
