# Agreement of raters: psych::cohen.kappa and psych::ICC, friedman.test, and the other coefficients written
# out from the papers, with matrices.

table_of <- function(counts, columns) matrix(counts, ncol = columns, byrow = TRUE)

# Equation 9 of Fleiss, Cohen and Everitt (1969).
null_error <- function(shares, weights, things) {
  rows <- rowSums(shares)
  columns <- colSums(shares)
  expected <- sum(weights * outer(rows, columns))
  of_pair <- outer(as.vector(weights %*% columns), as.vector(rows %*% weights), "+")
  sqrt(max(0, sum(outer(rows, columns) * (weights - of_pair)^2) - expected^2) / things) / (1 - expected)
}

# By the delta method: the slopes of kappa by the shares of the cells, from steps in the imaginary direction,
# which lose no digits. psych's own error of the weighted kappa is not taken: it has rowSums(w * rs) where
# Fleiss, Cohen and Everitt have the mean of the weights of a column, colSums(w * rs), and so differs from
# theirs, and from the value of vcd::Kappa in tests/stats.
weighted_error <- function(shares, weights, things) {
  kappa <- function(p) {
    expected <- sum(weights * outer(rowSums(p), colSums(p)))
    (sum(weights * p) - expected) / (1 - expected)
  }
  slopes <- sapply(seq_along(shares), function(cell) {
    moved <- shares + 0i
    moved[cell] <- moved[cell] + 1e-20i
    Im(kappa(moved)) / 1e-20
  })
  sqrt(sum(shares * (slopes - sum(shares * slopes))^2) / things)
}

# psych warns where its own interval is cut off to -1 or 1; the interval is not taken. Standard errors are
# compared as variances without their divisor, the squared lack of expected agreement: a difference of numbers
# near 1, of which rounding leaves something where it is 0.
two_raters <- function(counts, columns, weights) {
  counts <- table_of(counts, columns)
  weights <- table_of(weights, columns)
  shares <- counts / sum(counts)
  chance <- outer(rowSums(shares), colSums(shares))
  if (sum(weights * chance) > 1 - 1e-14 || sum(diag(chance)) > 1 - 1e-14) return(rep(NA, 9))
  kappa <- suppressWarnings(psych::cohen.kappa(counts, w = weights))
  one <- diag(columns)
  most <- sum(pmin(rowSums(shares), colSums(shares)))
  lack <- 1 - sum(diag(chance))
  weighted_lack <- 1 - sum(weights * chance)
  things <- sum(counts)
  c(kappa$kappa, kappa$var.kappa * lack^2, (null_error(shares, one, things) * lack)^2, (most - 1 + lack) / lack,
    kappa$weighted.kappa, (weighted_error(shares, weights, things) * weighted_lack)^2,
    (null_error(shares, weights, things) * weighted_lack)^2, sum(weights * shares), sum(weights * chance))
}

# Fleiss (1971); standard errors by Fleiss, Nee and Landis (1979).
fleiss <- function(counts, columns) {
  counts <- table_of(counts, columns)
  subjects <- nrow(counts)
  raters <- sum(counts[1, ])
  p <- colSums(counts) / sum(counts)
  observed <- mean((rowSums(counts^2) - raters) / (raters * (raters - 1)))
  expected <- sum(p^2)
  spread <- sum(p * (1 - p))
  variance <- 2 * (spread^2 - sum(p * (1 - p) * (1 - 2 * p))) / (subjects * raters * (raters - 1) * spread^2)
  of_category <- 1 - colSums(counts * (raters - counts)) / (subjects * raters * (raters - 1) * p * (1 - p))
  of_category[p == 0 | p == 1] <- NA
  all <- if (any(p == 1)) rep(NA, 4) else c((observed - expected) / (1 - expected), observed, expected, sqrt(variance))
  c(all, of_category, sqrt(2 / (subjects * raters * (raters - 1))))
}

# Conger (1980): means over pairs of raters.
conger <- function(ratings, columns) {
  ratings <- table_of(ratings, columns)
  if (length(unique(as.vector(ratings))) == 1) return(rep(NA, 3))
  categories <- unique(as.vector(ratings))
  shares <- apply(ratings, 2, function(rater) tabulate(match(rater, categories), length(categories)) / length(rater))
  pairs <- combn(columns, 2)
  observed <- mean(apply(pairs, 2, function(pair) mean(ratings[, pair[1]] == ratings[, pair[2]])))
  expected <- mean(apply(pairs, 2, function(pair) sum(shares[, pair[1]] * shares[, pair[2]])))
  c((observed - expected) / (1 - expected), observed, expected)
}

# Gwet's AC1 and AC2: Handbook of Inter-Rater Reliability, 4th edition (2014), equations for incomplete tables
# (memory).
gwet <- function(counts, columns, weights) {
  counts <- table_of(counts, columns)
  weights <- table_of(weights, columns)
  counts <- counts[rowSums(counts) > 0, , drop = FALSE]
  raters <- rowSums(counts)
  paired <- raters > 1
  n <- nrow(counts)
  if (!any(paired)) return(rep(NA, 5))
  shares <- colMeans(counts / raters)
  factor <- sum(weights) / (columns * (columns - 1))
  agreeing <- ifelse(paired, rowSums(counts * (counts %*% weights - 1)) / (raters * (raters - 1)), 0)
  observed <- sum(agreeing) / sum(paired)
  expected <- factor * sum(shares * (1 - shares))
  if (expected >= 1 - 1e-14) return(rep(NA, 5))
  ac <- (observed - expected) / (1 - expected)
  own <- n / sum(paired) * (agreeing - expected * paired) / (1 - expected)
  chance <- factor * as.vector(counts %*% (1 - shares)) / raters
  parts <- own - 2 * (1 - ac) * (chance - expected) / (1 - expected)
  c(ac, observed, expected, if (n > 1) sqrt(sum((parts - ac)^2) / (n * (n - 1))) else NA, n)
}

squared_difference <- list(
  function(c, k, values, counts) c != k,
  function(c, k, values, counts) (sum(counts[c:k]) - (counts[c] + counts[k]) / 2)^2,
  function(c, k, values, counts) (values[c] - values[k])^2,
  function(c, k, values, counts) if (c == k) 0 else ((values[c] - values[k]) / (values[c] + values[k]))^2)

# Krippendorff (2011): the matrix of observed coincidences, and the one expected from its margins.
alpha <- function(ratings, columns, metric) {
  ratings <- table_of(ratings, columns)
  subjects <- lapply(seq_len(nrow(ratings)), function(i) ratings[i, !is.na(ratings[i, ])])
  paired <- Filter(function(answers) length(answers) > 1, subjects)
  values <- sort(unique(unlist(paired)))
  given <- sum(lengths(subjects))
  if (length(values) < 2) return(rep(NA, 5))
  observed <- matrix(0, length(values), length(values))
  for (answers in paired) {
    used <- tabulate(match(answers, values), length(values))
    observed <- observed + (outer(used, used) - diag(used)) / (length(answers) - 1)
  }
  counts <- rowSums(observed)
  pairable <- sum(counts)
  expected <- (outer(counts, counts) - diag(counts)) / (pairable - 1)
  places <- seq_along(values)
  apart <- outer(places, places, Vectorize(function(c, k) squared_difference[[metric + 1]](c, k, values, counts)))
  c(1 - sum(observed * apart) / sum(expected * apart), sum(observed * apart) / pairable,
    sum(expected * apart) / pairable, given, pairable)
}

# McGraw and Wong (1996), table 7: limits of ICC(A,1). psych has the same, but with fewer than one degree of
# freedom where the estimate is far below 0; ours takes 1 there.
random_limits <- function(between, raters, residual, n, k, confidence) {
  icc <- (between - residual) / (between + (k - 1) * residual + k * (raters - residual) / n)
  a <- k * icc / (n * (1 - icc))
  b <- 1 + k * icc * (n - 1) / (n * (1 - icc))
  freedom <- (a * raters + b * residual)^2 /
    ((a * raters)^2 / (k - 1) + (b * residual)^2 / ((n - 1) * (k - 1)))
  freedom <- max(1, freedom)
  others <- k * raters + (k * n - k - n) * residual
  above <- qf((1 - confidence) / 2, n - 1, freedom, lower.tail = FALSE)
  below <- qf((1 - confidence) / 2, freedom, n - 1, lower.tail = FALSE)
  c(n * (between - above * residual) / (above * others + n * between),
    n * (below * between - residual) / (others + n * below * between))
}

# For means of k: minus infinity where the variance of a mean is estimated as not above 0, for which psych has
# a number.
mean_of <- function(single, k) ifelse(1 + (k - 1) * single > 0, k * single / (1 + (k - 1) * single), -Inf)

intraclass <- function(answers, columns, confidence) {
  icc <- psych::ICC(table_of(answers, columns), alpha = 1 - confidence, lmer = FALSE)
  squares <- icc$stats["MS", ]
  forms <- icc$results[c(1, 4, 2, 5, 3, 6), ]
  n <- icc$n.obs
  limits <- random_limits(squares[1], squares[2], squares[3], n, columns, confidence)
  forms[3, 7:8] <- limits
  forms[4, c(2, 7, 8)] <- c(mean_of(forms[3, 2], columns), mean_of(limits, columns))
  c(squares[1], icc$MSW, squares[2:3], as.vector(t(as.matrix(forms[, c(2, 7, 8)]))),
    t(as.matrix(forms[c(1, 5), 3:6])))
}

concordance <- function(answers, columns) {
  answers <- table_of(answers, columns)
  if (all(apply(answers, 1, function(rater) length(unique(rater)) == 1))) return(rep(NA, 5))
  test <- friedman.test(answers)
  sums <- rowSums(apply(answers, 1, rank))
  c(test$statistic / (nrow(answers) * (columns - 1)), sum((sums - mean(sums))^2), test$statistic, test$parameter,
    test$p.value)
}
