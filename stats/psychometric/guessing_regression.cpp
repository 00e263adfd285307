#include "stats/psychometric/guessing_regression.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "stats/arguments.h"
#include "stats/cholesky.h"

namespace stats {
namespace {

void require_rows(std::span<const GuessingRow> rows) {
  require_count("number of rows", std::ssize(rows), 1, 10'000);
  const auto predictors = std::ssize(rows.front().predictors);
  require_count("number of predictors", predictors, 1, 30);
  std::int64_t trials = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string of_row = " of row " + std::to_string(i + 1);
    require_count("number of predictors" + of_row, std::ssize(rows[i].predictors), predictors, predictors);
    require_finite("predictors" + of_row, rows[i].predictors);
    require_count("trials" + of_row, rows[i].trials, 0, 1'000'000);
    require_count("right" + of_row, rows[i].right, 0, rows[i].trials);
    trials += rows[i].trials;
  }
  if (trials == 0) throw std::domain_error("no trial was given: all counts are 0");
}

double share_at(const GuessingModel& model, double sum) {
  return model.chance + (1 - model.chance - model.lapse) * link_at(model.link, sum).share;
}

double rest_at(const GuessingModel& model, double sum) {
  return model.lapse + (1 - model.chance - model.lapse) * link_at(model.link, sum).rest;
}

/// Least squares of what the shares would be on the line of sums, each kept from the ends by half an answer.
std::vector<double> straight_start(std::span<const GuessingRow> rows, const GuessingModel& model) {
  const std::size_t size = rows.front().predictors.size();
  std::vector<double> normal(size * size), right(size);
  for (const GuessingRow& row : rows) {
    if (row.trials == 0) continue;
    const double n = double(row.trials), share = (double(row.right) + 0.5) / (n + 1);
    const double noticed = std::clamp((share - model.chance) / (1 - model.chance - model.lapse),
                                      0.5 / (n + 1), 1 - 0.5 / (n + 1));
    const double sum = link_inverse(model.link, noticed) - row.offset;
    for (std::size_t i = 0; i < size; ++i) {
      right[i] += n * row.predictors[i] * sum;
      for (std::size_t j = 0; j < size; ++j)
        normal[i * size + j] += n * row.predictors[i] * row.predictors[j];
    }
  }
  const auto cholesky = Cholesky::of(std::move(normal), size);
  return cholesky ? cholesky->solve(std::move(right)) : std::vector<double>(size);
}

std::vector<std::vector<double>> inverse_rows(const std::vector<double>& information, std::size_t size) {
  std::vector<std::vector<double>> rows;
  const auto cholesky = Cholesky::of(information, size);
  if (!cholesky) return rows;
  const auto inverse = cholesky->inverse();
  for (std::size_t i = 0; i < size; ++i)
    rows.emplace_back(inverse.begin() + std::ptrdiff_t(i * size),
                      inverse.begin() + std::ptrdiff_t((i + 1) * size));
  return rows;
}

}  // namespace

void require_guessing_model(const GuessingModel& model) {
  require_between("chance", model.chance, 0, 0.99);
  require_between("lapse", model.lapse, 0, 0.5);
  if (model.chance + model.lapse >= 1) throw std::domain_error("chance and lapse together must be below 1");
}

double guessing_deviance(std::span<const GuessingRow> rows, const GuessingModel& model,
                         std::span<const double> sums) {
  const auto part = [](double count, double of, double share) {
    return count == 0 ? 0 : 2 * count * std::log(count / (of * share));
  };
  double deviance = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double n = double(rows[i].trials), k = double(rows[i].right);
    deviance += part(k, n, share_at(model, sums[i])) + part(n - k, n, rest_at(model, sums[i]));
  }
  return deviance;
}

double guessing_pearson(std::span<const GuessingRow> rows, const GuessingModel& model,
                        std::span<const double> sums) {
  double pearson = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double n = double(rows[i].trials), share = share_at(model, sums[i]),
                 off = double(rows[i].right) - n * share;
    if (n > 0) pearson += off * off / (n * share * rest_at(model, sums[i]));
  }
  return pearson;
}

std::optional<GuessingRegression> fit_guessing_regression(std::span<const GuessingRow> rows,
                                                          const GuessingModel& model,
                                                          std::vector<double> start) {
  require_rows(rows);
  require_guessing_model(model);
  const std::size_t size = rows.front().predictors.size();
  if (!start.empty())
    require_count("number of starting coefficients", std::ssize(start), std::ssize(rows.front().predictors),
                  std::ssize(rows.front().predictors));
  const GuessingLikelihood likelihood({rows.begin(), rows.end()}, model, false);
  const auto largest =
      largest_from(likelihood, start.empty() ? straight_start(rows, model) : std::move(start));
  if (!largest) return std::nullopt;
  GuessingRegression fit{};
  fit.coefficients = largest->parameters;
  fit.expected_covariance = inverse_rows(largest->at.expected, size);
  fit.observed_covariance = inverse_rows(largest->at.observed, size);
  if (fit.expected_covariance.empty()) return std::nullopt;
  fit.log_likelihood = largest->at.value + log_orders(rows);
  std::vector<double> sums;
  int used = 0;
  for (const GuessingRow& row : rows) {
    sums.push_back(row.offset);
    for (std::size_t i = 0; i < size; ++i) sums.back() += fit.coefficients[i] * row.predictors[i];
    used += row.trials > 0;
  }
  fit.deviance = guessing_deviance(rows, model, sums);
  fit.pearson = guessing_pearson(rows, model, sums);
  fit.degrees_of_freedom = used - static_cast<int>(size);
  return fit;
}

}  // namespace stats
