# Detection theory in R: links by pnorm and integrate, inverses by uniroot, ROC by the papers and wilcox.test.

# The share right as a function of d', in the order of stats::Link. m-AFC: the strongest of m is the right
# one.
afc <- function(m, d)
  integrate(function(x) dnorm(x - d) * pnorm(x)^(m - 1), d - 10, d + 10, rel.tol = 1e-13, subdivisions = 1000)$value

# Frijters, Kooistra and Vereijken (1980).
triangle <- function(d)
  2 * integrate(function(z) (pnorm(-z * sqrt(3) + d * sqrt(2 / 3)) + pnorm(-z * sqrt(3) - d * sqrt(2 / 3))) * dnorm(z),
                0, 12, rel.tol = 1e-13, subdivisions = 1000)$value

both_or_neither <- function(a, b) pnorm(a) * pnorm(b) + pnorm(-a) * pnorm(-b)

links <- list(
  function(d) pnorm(d / sqrt(2)), function(d) afc(3, d), function(d) afc(4, d), function(d) afc(5, d),
  function(d) both_or_neither(d / sqrt(2), d / 2), function(d) both_or_neither(d / sqrt(2), d / sqrt(6)),
  function(d) both_or_neither(d / sqrt(2), d / sqrt(6)), function(d) both_or_neither(d / 2, d / 2), triangle)
chances <- c(1 / 2, 1 / 3, 1 / 4, 1 / 5, 1 / 2, 1 / 2, 1 / 2, 1 / 2, 1 / 3)

slope_of_both <- function(d, a, b) a * dnorm(a * d) * (2 * pnorm(b * d) - 1) + b * dnorm(b * d) * (2 * pnorm(a * d) - 1)

# By parts, so that nothing cancels.
slope_of_afc <- function(m, d)
  (m - 1) * integrate(function(x) dnorm(x - d) * dnorm(x) * pnorm(x)^(m - 2), d / 2 - 10, d / 2 + 10, rel.tol = 1e-12,
                      abs.tol = 0, subdivisions = 1000)$value

slope_of_triangle <- function(d) {
  at <- function(z) sqrt(2 / 3) * (dnorm(-z * sqrt(3) + d * sqrt(2 / 3)) - dnorm(-z * sqrt(3) - d * sqrt(2 / 3)))
  2 * integrate(function(z) at(z) * dnorm(z), 0, 12, rel.tol = 1e-12, abs.tol = 1e-15, subdivisions = 1000)$value
}

slopes <- list(
  function(d) dnorm(d / sqrt(2)) / sqrt(2), function(d) slope_of_afc(3, d), function(d) slope_of_afc(4, d),
  function(d) slope_of_afc(5, d), function(d) slope_of_both(d, 1 / sqrt(2), 1 / 2),
  function(d) slope_of_both(d, 1 / sqrt(2), 1 / sqrt(6)), function(d) slope_of_both(d, 1 / sqrt(2), 1 / sqrt(6)),
  function(d) slope_of_both(d, 1 / 2, 1 / 2), slope_of_triangle)

share_right <- function(link, d_prime) c(chances[link + 1], links[[link + 1]](d_prime), slopes[[link + 1]](d_prime))

choice <- function(alternatives, d_prime)
  if (d_prime == 0) 1 / alternatives else afc(alternatives, d_prime)

# Beyond d' = 40 every link is 1 to the last digit.
d_prime <- function(link, share) {
  if (share <= chances[link + 1]) return(0)
  if (share == 1) return(Inf)
  uniroot(function(d) links[[link + 1]](d) - share, c(0, 40), tol = 1e-14, maxiter = 10000)$root
}

choice_d_prime <- function(alternatives, share) {
  if (share <= 1 / alternatives) return(0)
  if (share == 1) return(Inf)
  uniroot(function(d) afc(alternatives, d) - share, c(0, 40), tol = 1e-14, maxiter = 10000)$root
}

likelihood_limits <- function(correct, trials, confidence) {
  seen <- correct / trials
  excess <- function(share)
    2 * (dbinom(correct, trials, seen, log = TRUE) - dbinom(correct, trials, share, log = TRUE)) -
      qchisq(confidence, 1)
  root <- function(from, to) uniroot(excess, c(from, to), tol = 1e-16, maxiter = 10000)$root
  c(if (correct == 0) 0 else root(.Machine$double.xmin, seen),
    if (correct == trials) 1 else root(seen, 1 - .Machine$double.eps / 2))
}

estimate <- function(link, correct, trials, confidence) {
  share <- correct / trials
  d <- d_prime(link, share)
  error <- if (d == 0 || is.infinite(d)) NA else sqrt(share * (1 - share) / trials) / slopes[[link + 1]](d)
  c(d, error, sapply(likelihood_limits(correct, trials, confidence), function(limit) d_prime(link, limit)))
}

answer_bias <- function(answers_a, answers, confidence) {
  test <- binom.test(answers_a, answers, conf.level = confidence)
  c(test$estimate, test$p.value, test$conf.int)
}

# d' of rates, in the order of stats::HitModel.
differencing_hit <- function(d, criterion) pnorm((d - criterion) / sqrt(2)) + pnorm((-d - criterion) / sqrt(2))

of_rates <- function(model, hit, false_alarm) {
  if (hit == false_alarm && hit %in% c(0, 1)) return(NA)
  if (model == 0) return(qnorm(hit) - qnorm(false_alarm))
  if (hit <= false_alarm) return(0)
  if (hit == 1 || false_alarm == 0) return(Inf)
  if (model == 1) {
    criterion <- -sqrt(2) * qnorm(false_alarm / 2)
    return(uniroot(function(d) differencing_hit(d, criterion) - hit, c(0, 100), tol = 1e-14, maxiter = 10000)$root)
  }
  share <- pnorm((qnorm(hit) - qnorm(false_alarm)) / 2)
  d_prime(c(NA, NA, 7, 5, 4)[model + 1], share)
}

rates <- function(model, hits, signals, false_alarms, noises) {
  hit <- hits / signals
  alarm <- false_alarms / noises
  adjusted <- c((hits + 0.5) / (signals + 1), (false_alarms + 0.5) / (noises + 1))
  z <- qnorm(c(hit, alarm))
  c(of_rates(model, hit, alarm), of_rates(model, adjusted[1], adjusted[2]), -sum(z) / 2, (z[2]^2 - z[1]^2) / 2)
}

# Twice the logarithm of the likelihood ratio against the rates seen, at its least over the criterion.
deviance_at <- function(d, model, counts) {
  lost <- function(right, of, share)
    min(1e6, 2 * (dbinom(right, of, right / of, log = TRUE) - dbinom(right, of, share, log = TRUE)))
  of_criterion <- function(criterion) {
    if (model == 1) shares <- c(differencing_hit(d, criterion), 2 * pnorm(-criterion / sqrt(2)))
    else shares <- pnorm(c(d / 2 - criterion, -d / 2 - criterion))
    lost(counts[1], counts[2], shares[1]) + lost(counts[3], counts[4], shares[2])
  }
  ends <- if (model == 1) c(0, 12 + d) else c(-8 - d, 8 + d)
  starts <- seq(ends[1], ends[2], length.out = 41)
  best <- which.min(sapply(starts, of_criterion))
  optimize(of_criterion, starts[pmin(pmax(best + c(-1, 1), 1), 41)], tol = 1e-10)$objective
}

# In ABX and by independent observation the limits are those of z(H) - z(F), taken to d'.
hits_interval <- function(model, hits, signals, false_alarms, noises, confidence) {
  counts <- c(hits, signals, false_alarms, noises)
  kind <- if (model == 1) 1 else 0
  seen <- of_rates(kind, hits / signals, false_alarms / noises)
  excess <- function(d) deviance_at(d, kind, counts) - qchisq(confidence, 1)
  top <- uniroot(excess, c(seen, 12), tol = 1e-12)$root
  least <- if (kind == 1) 0 else -12
  bottom <- if (kind == 1 && excess(0) <= 0) 0 else uniroot(excess, c(least, seen), tol = 1e-12)$root
  to_d <- function(difference)
    if (model < 2) difference else d_prime(c(NA, NA, 7, 5, 4)[model + 1], pnorm(difference / 2))
  c(to_d(bottom), to_d(top))
}

# Bamber (1975), DeLong, DeLong and Clarke-Pearson (1988): every answer to A against every answer to B.
roc <- function(signal, noise) {
  a <- rep(seq_along(signal), signal)
  b <- rep(seq_along(noise), noise)
  surer <- outer(a, b, "<") + outer(a, b, "==") / 2
  error <- if (length(a) == 1 || length(b) == 1) NA
           else sqrt(var(rowMeans(surer)) / length(a) + var(colMeans(surer)) / length(b))
  c(mean(surer), error)
}

# Without ties: wilcox.test is exact. Its two-sided p is twice the smaller tail, at most 1.
roc_p <- function(signal, noise) {
  a <- -rep(seq_along(signal), signal)
  b <- -rep(seq_along(noise), noise)
  sapply(c("greater", "less", "two.sided"),
         function(alternative) wilcox.test(a, b, exact = TRUE, alternative = alternative)$p.value)
}
