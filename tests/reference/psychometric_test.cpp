// Curves of share right against level: R's optimizers find the same, and where it is installed lme4 for listeners who differ.
#include "reference/draws.h"
#include "stats/psychometric/guessing_regression.h"
#include "stats/psychometric/psychometric_function.h"

namespace reference {
namespace {

using PsychometricR = AgainstR;

constexpr std::array kLinks{stats::CurveLink::logit, stats::CurveLink::probit, stats::CurveLink::cloglog};

double noticed(int link, double sum) {
  return stats::link_at(kLinks[static_cast<std::size_t>(link)], sum).share;
}

std::vector<stats::LevelCount> counts_of(const Call& call) {
  std::vector<stats::LevelCount> counts;
  for (std::size_t i = 0; i < call.list(0).size(); ++i)
    counts.push_back({call.list(0)[i], int(call.list(1)[i]), int(call.list(2)[i]),
                      call.arguments.size() > 4 ? int(call.list(3)[i]) : 0});
  return counts;
}

stats::PsychometricOptions options_of(const Numbers& options) {
  return {.link = kLinks[static_cast<std::size_t>(options[0])],
          .chance = options[1],
          .lapse = options[2],
          .confidence = options[3]};
}

TEST_F(PsychometricR, CurvesAndIntervalsAreThoseOfOtherSearches) {
  const auto calls = drawn(25, 1'000, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int levels = draws.whole(3, 7), link = draws.whole(0, 2), trials = draws.whole(8, 60);
      const Numbers options{double(link), std::array{0.0, 0.5, 1. / 3}[std::size_t(draws.whole(0, 2))],
                            draws.one_in(3) ? 0.02 : 0.0, draws.one_in(2) ? 0.95 : 0.8};
      Numbers places, right, all;
      double at = draws.between(-3, -1);
      const double slope = draws.between(0.5, 3) * (draws.one_in(5) ? -1 : 1);
      for (int i = 0; i < levels; ++i, at += draws.between(0.3, 1.5)) {
        places.push_back(at);
        all.push_back(trials);
        right.push_back(
            draws.binomial(trials, options[1] + (1 - options[1] - options[2]) * noticed(link, slope * at)));
      }
      const Call call{{places, right, all, options}};
      const auto found = stats::psychometric_function(counts_of(call), options_of(options));
      // R's searches are not sure of likelihoods that hardly fall.
      if (found.state == stats::CurveState::found && found.threshold_interval && found.slope_upper &&
          found.slope_lower && found.flat_likelihood_ratio > 8)
        return call.arguments;
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::psychometric_function(counts_of(call), options_of(call.list(3)));
    return {*found.threshold, -found.log_likelihood, found.threshold_interval->lower,
            found.threshold_interval->upper, *found.slope > 0 ? *found.slope_lower : *found.slope_upper};
  };
  expect_alike({"psychometric.R", "psychometric", "levels,right,trials,options"}, calls, ours, {1e-5, 2e-5});
}

std::vector<stats::GuessingRow> guessing_rows(const Call& call) {
  std::vector<stats::GuessingRow> rows;
  for (std::size_t i = 0; i < call.list(0).size(); ++i)
    rows.push_back({{1, call.list(0)[i], call.list(1)[i]}, int(call.list(2)[i]), int(call.list(3)[i])});
  return rows;
}

std::optional<stats::GuessingRegression> regression_of(const Call& call) {
  const auto options = options_of(call.list(4));
  return stats::fit_guessing_regression(guessing_rows(call), {options.link, options.chance, 0});
}

// Only where R's own search ends: with guesses its steps may go astray, and it says so.
TEST_F(PsychometricR, RegressionsAreThoseOfGlm) {
  if (!has_package("psyphy")) GTEST_SKIP() << "needs psyphy: Debian package r-cran-psyphy";
  const auto calls = drawn(60, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int rows = draws.whole(6, 20), link = draws.whole(0, 2), trials = draws.whole(20, 80);
      const Numbers options{double(link), std::array{0.0, 0.5, 0.25}[std::size_t(draws.whole(0, 2))], 0,
                            0.95};
      Numbers first = draws.numbers(rows, -2, 2), second = draws.numbers(rows, -1, 1), right;
      for (int i = 0; i < rows; ++i)
        right.push_back(draws.binomial(
            trials, options[1] + (1 - options[1]) * noticed(link, 0.3 + 0.8 * first[std::size_t(i)] -
                                                                      0.5 * second[std::size_t(i)])));
      const Call call{{first, second, right, Numbers(std::size_t(rows), trials), options}};
      const auto fit = regression_of(call);
      if (fit && std::abs(fit->coefficients[0]) < 3 && fit->expected_covariance[0][0] < 1)
        return call.arguments;
    }
  });
  const auto ours = [](const Call& call) {
    const auto fit = regression_of(call).value();
    Numbers all = fit.coefficients;
    for (std::size_t i = 0; i < 3; ++i) all.push_back(std::sqrt(fit.expected_covariance[i][i]));
    all.push_back(fit.deviance);
    return all;
  };
  expect_alike({"psychometric.R", "regression", "first,second,right,trials,options"}, calls, ours,
               {1e-5, 1e-5});
}

TEST_F(PsychometricR, ListenersWhoDifferAreThoseOfAMixedModel) {
  if (!has_package("lme4") || !has_package("psyphy"))
    GTEST_SKIP() << "needs lme4 and psyphy: Debian packages r-cran-lme4, r-cran-psyphy";
  const auto calls = drawn(5, 100, [](Draws& draws) -> std::vector<Numbers> {
    for (;;) {
      const int listeners = draws.whole(4, 10), link = draws.whole(0, 1), trials = draws.whole(8, 30);
      const Numbers options{double(link), draws.one_in(2) ? 0.0 : 0.5, 0, 0.95};
      Numbers places, right, all, who;
      for (int listener = 0; listener < listeners; ++listener) {
        const double shift = 1.5 * (draws.share() + draws.share() + draws.share() - 1.5);
        for (int level = 0; level < 5; ++level) {
          places.push_back(level - 1.0);
          all.push_back(trials);
          who.push_back(listener);
          right.push_back(draws.binomial(
              trials, options[1] + (1 - options[1]) * noticed(link, 0.3 + 0.9 * (level - 1) + shift)));
        }
      }
      const Call call{{places, right, all, who, options}};
      auto asked = options_of(options);
      asked.listeners_differ = true;
      const auto found = stats::psychometric_function(counts_of(call), asked);
      if (found.state == stats::CurveState::found && *found.listener_spread > 0.15) return call.arguments;
    }
  });
  const auto ours = [](const Call& call) -> Numbers {
    auto asked = options_of(call.list(4));
    asked.listeners_differ = true;
    const auto found = stats::psychometric_function(counts_of(call), asked);
    return {*found.intercept, *found.slope, *found.listener_spread};
  };
  expect_alike({"psychometric.R", "listeners", "levels,right,trials,who,options"}, calls, ours, {1e-6, 1e-7});
}

}  // namespace
}  // namespace reference
