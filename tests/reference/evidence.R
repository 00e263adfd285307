# Evidence at any time, from the definitions: dbinom, lbeta, pbeta, uniroot and integrate.

log_ratio <- function(correct, trials, chance, alternative)
  dbinom(correct, trials, alternative, log = TRUE) - dbinom(correct, trials, chance, log = TRUE)

null_log <- function(correct, trials, chance) correct * log(chance) + (trials - correct) * log1p(-chance)

mixture <- function(correct, trials, chance, a, b)
  lbeta(a + correct, b + trials - correct) - lbeta(a, b) - null_log(correct, trials, chance)

# log P(share above chance) of a beta distribution. In the far tail pbeta loses all digits (R 4.2: for a =
# 31.36, b = 3073 at 0.252 its logarithm is out by 18), and so the density is integrated there, in steps in
# which it falls by 1/e.
log_above <- function(chance, a, b) {
  mean <- a / (a + b)
  if (a + b < 30 || chance < mean + 5 * sqrt(mean * (1 - mean) / (a + b)))  # pbeta warns if the other tail underflows
    return(suppressWarnings(pbeta(chance, a, b, lower.tail = FALSE, log.p = TRUE)))
  height <- function(share) (a - 1) * log(share) + (b - 1) * log1p(-share)
  step <- 1 / ((b - 1) / (1 - chance) - (a - 1) / chance)
  area <- integrate(function(steps) exp(height(chance + steps * step) - height(chance)), 0,
                    min(60, (1 - chance) / step), rel.tol = 1e-13, subdivisions = 1000)$value
  height(chance) - lbeta(a, b) + log(area * step)
}

# The beta distribution cut off to shares above chance, before and after the answers.
mixtures <- function(correct, trials, chance, a, b)
  c(mixture(correct, trials, chance, a, b),
    mixture(correct, trials, chance, a, b) + log_above(chance, a + correct, b + trials - correct) -
      log_above(chance, a, b))

calibrators <- function(p, kappa) {
  bound <- if (p == 0) 0 else if (p < exp(-1)) -exp(1) * p * log(p) else 1
  c(kappa * p^(kappa - 1), bound)
}

confidence_sequence <- function(correct, trials, confidence, a, b) {
  excess <- function(share) mixture(correct, trials, share, a, b) + log1p(-confidence)
  seen <- min(max(correct / trials, 1e-12), 1 - 1e-12)
  root <- function(from, to) uniroot(excess, c(from, to), tol = 1e-16, maxiter = 10000)$root
  most <- 1 - .Machine$double.eps / 2  # a limit may lie closer to 1
  c(if (correct == 0) 0 else root(.Machine$double.xmin, seen),
    if (correct == trials || excess(most) <= 0) 1 else root(seen, most))
}

# Waudby-Smith and Ramdas (2024), with the prior observation of running_moments.h.
moments <- function(x) {
  mean <- cumsum(c(0.5, x)) / seq_len(length(x) + 1)
  squares <- cumsum(c(0.25, (x - mean[-1])^2))
  data.frame(mean = mean, variance = squares / seq_len(length(x) + 1))[seq_along(x), ]  # before each observation
}

hoeffding <- function(observations, level) {
  t <- seq_along(observations)
  weight <- pmin(1, sqrt(8 * log(2 / level) / (t * log(1 + t))))
  total <- cumsum(weight)
  rbind(cumsum(weight * observations) / total, (log(2 / level) + cumsum(weight^2) / 8) / total)
}

kelly <- function(observations, mean, cap) {
  before <- moments(observations)
  ahead <- before$mean - mean
  bet <- pmin(pmax(ahead / (before$variance + ahead^2), 0), cap / mean)
  cumsum(log(1 + bet * (observations - mean)))
}

hedged <- function(observations, mean, level, cap) {
  t <- seq_along(observations)
  bet <- sqrt(2 * log(2 / level) / (moments(observations)$variance * t * log(1 + t)))
  up <- cumprod(1 + pmin(bet, cap / mean) * (observations - mean)) / 2
  down <- cumprod(1 - pmin(bet, cap / (1 - mean)) * (observations - mean)) / 2
  log(pmax(up, down))
}

# After each observation the first and the last candidate, from 0, whose capital has never reached 1/level;
# then how many there are, which is their distance: no gaps.
survivors <- function(observations, candidates, level, cap) {
  lost <- sapply(candidates, function(mean) cummax(hedged(observations, mean, level, cap)) >= -log(level))
  kept <- !matrix(lost, nrow = length(observations))
  apply(kept, 1, function(row) if (any(row)) c(range(which(row)) - 1, sum(row)) else c(NA, NA, 0))
}

shared_fixed <- function(right, wrong, bet) {
  ahead <- ifelse(right + wrong == 0, 0, (right - wrong) / (right + wrong))
  sum(log(1 + bet * ahead))
}

shared_mean <- function(right, wrong) {
  ahead <- ifelse(right + wrong == 0, 0, (right - wrong) / (right + wrong))
  value <- function(bet) sapply(bet, function(b) prod(1 + b * ahead))
  log(integrate(value, 0, 1, rel.tol = 1e-12, abs.tol = 0, subdivisions = 1000)$value)
}
