# Several subjects' counts in R: chisq.test, wilcox.test and friedman.test, and maximum likelihood by nlminb.

# Pearson's X^2 over its degrees of freedom, and the moment estimate of gamma. chisq.test warns of small
# expected counts; its p is not taken.
spread <- function(correct, trials) {
  if (length(trials) == 1 || sum(correct) %in% c(0, sum(trials))) return(rep(NA, 4))
  x2 <- suppressWarnings(chisq.test(rbind(correct, trials - correct), correct = FALSE)$statistic)
  if (all(trials == 1)) return(c(x2 / (length(trials) - 1), rep(NA, 3)))
  gamma <- (x2 - (length(trials) - 1)) / sum((1 - trials / sum(trials)) * (trials - 1))
  share <- sum(correct) / sum(trials)
  z <- (sum((correct - trials * share)^2) / (share * (1 - share)) - sum(trials)) / sqrt(2 * sum(trials * (trials - 1)))
  c(x2 / (length(trials) - 1), gamma, z, pnorm(z, lower.tail = FALSE))
}

# log P(heard) of the beta-binomial as sums of logarithms, also of complex mean or gamma.
log_heard <- function(heard, trials, mean, gamma) {
  up_to <- function(n, share) if (n == 0) 0 else sum(log(share * (1 - gamma) + (seq_len(n) - 1) * gamma))
  lchoose(trials, heard) + up_to(heard, mean) + up_to(trials - heard, 1 - mean) - up_to(trials, 1)
}

log_likelihood <- function(correct, trials, chance, mean, gamma)
  sum(mapply(function(x, n) {
    if (chance == 0) return(log_heard(x, n, mean, gamma))
    heard <- 0:x
    logs <- sapply(heard, log_heard, n, mean, gamma) + dbinom(x - heard, n - heard, chance, log = TRUE)
    max(logs) + log(sum(exp(logs - max(logs))))
  }, correct, trials))

# From several starts.
highest <- function(correct, trials, chance) {
  share <- max(0, (sum(correct) / sum(trials) - chance) / (1 - chance))
  loss <- function(at) -log_likelihood(correct, trials, chance, at[1], at[2])
  least <- 1e-9
  ends <- lapply(c(0.01, 0.2, 0.7), function(gamma)
    nlminb(c(min(max(share, 0.05), 0.95), gamma), loss, lower = least, upper = 1 - least,
           control = list(rel.tol = 1e-15, x.tol = 1e-13, iter.max = 1000, eval.max = 2000)))
  ends[[which.min(sapply(ends, function(end) end$objective))]]
}

# Of all, and with gamma 0: then the share right is the pooled one, or chance where that is less. The search
# stops short of gamma 0, so that the larger of both counts.
largest_likelihoods <- function(correct, trials, chance) {
  binomial <- sum(dbinom(correct, trials, max(chance, sum(correct) / sum(trials)), log = TRUE))
  c(max(binomial, -highest(correct, trials, chance)$objective), binomial)
}

# The likelihood ratio against gamma 0, at the boundary: half the tail of chi-square.
half_p <- function(ratio) if (ratio == 0) 1 else pchisq(ratio, 1, lower.tail = FALSE) / 2

# Mean and gamma, where both are well inside 0 to 1.
estimates <- function(correct, trials, chance) {
  place <- highest(correct, trials, chance)$par
  inside <- place[2] > 0.01 && place[2] < 0.9 && place[1] > 0.02 && place[1] < 0.98
  if (inside) place else c(NA, NA)
}

# Standard errors of the plain fit by the information at (mean, gamma): slopes by steps in the imaginary
# direction, their slopes by differences.
errors <- function(correct, trials, mean, gamma) {
  slope <- function(at, i) {
    moved <- at + 0i
    moved[i] <- moved[i] + 1e-20i
    Im(log_likelihood(correct, trials, 0, moved[1], moved[2])) / 1e-20
  }
  step <- 1e-5
  information <- outer(1:2, 1:2, Vectorize(function(i, j) {
    by <- step * (1:2 == j)
    -(slope(c(mean, gamma) + by, i) - slope(c(mean, gamma) - by, i)) / (2 * step)
  }))
  sqrt(diag(solve(information)))
}

cochran <- function(answers, columns) {
  answers <- matrix(answers, ncol = columns, byrow = TRUE)
  if (all(rowSums(answers) %in% c(0, columns))) return(rep(NA, 3))
  test <- friedman.test(answers)
  c(test$statistic, test$parameter, test$p.value)
}

# Two conditions: McNemar's exact test, binom.test of the subjects who differ.
mcnemar <- function(answers) {
  answers <- matrix(answers, ncol = 2, byrow = TRUE)
  ahead <- c(sum(answers[, 1] > answers[, 2]), sum(answers[, 1] < answers[, 2]))
  if (sum(ahead) == 0) NA else binom.test(ahead)$p.value
}

trend <- function(right) {
  numbers <- seq_along(right)
  if (length(unique(right)) == 1) return(c(sum(numbers * right), sum(numbers * right), 1, 1, 1))
  p <- sapply(c("greater", "less", "two.sided"), function(alternative)
    wilcox.test(numbers[right == 1], numbers[right == 0], exact = TRUE, alternative = alternative)$p.value)
  c(sum(numbers[right == 1]), sum(right) * (length(right) + 1) / 2, p)
}

# Several raters: their rank sums, by dwilcox, added.
trend_of_all <- function(right, columns) {
  right <- matrix(right, ncol = columns, byrow = TRUE)
  added <- 1
  for (count in rowSums(right)) {
    one <- if (count %in% c(0, columns)) 1 else dwilcox(0:(count * (columns - count)), count, columns - count)
    added <- rowSums(outer(seq_len(length(added) + length(one) - 1), seq_along(one), function(place, i)
      ifelse(place - i + 1 >= 1 & place - i + 1 <= length(added), added[pmax(1, place - i + 1)] * one[i], 0)))
  }
  least <- sum(rowSums(right) * (rowSums(right) + 1) / 2)
  seen <- sum(right %*% seq_len(columns)) - least
  totals <- seq_along(added) - 1
  far <- abs(totals - mean(range(totals))) >= abs(seen - mean(range(totals)))
  c(sum(added[totals >= seen]), sum(added[totals <= seen]), sum(added[far]))
}

# The number of comparisons that Holm's method supports, for one rater: given the share right they are
# independent.
holm_of_one <- function(comparisons, trials, chance, level, mean, gamma) {
  a <- mean * (1 - gamma) / gamma
  b <- (1 - mean) * (1 - gamma) / gamma
  all <- as.matrix(expand.grid(rep(list(0:trials), comparisons)))
  p <- pbinom(0:trials - 1, trials, chance, lower.tail = FALSE)
  supported <- apply(all, 1, function(counts) sum(p.adjust(p[counts + 1], "holm") <= level * (1 + 1e-12)))
  sums <- rowSums(all)
  ways <- apply(all, 1, function(counts) prod(choose(trials, counts)))
  weight <- ways * exp(lbeta(a + sums, b + comparisons * trials - sums) - lbeta(a, b))
  sapply(0:comparisons, function(count) sum(weight[supported == count]))
}
