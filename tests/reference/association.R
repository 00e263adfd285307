# Spearman's correlation by R's cor.test, which is exact to nine pairs without ties.
spearman <- function(x, y)
  c(cor.test(x, y, method = "spearman", exact = TRUE)$estimate,
    sapply(c("greater", "less", "two.sided"), function(alternative)
      cor.test(x, y, method = "spearman", exact = TRUE, alternative = alternative)$p.value))

# Beyond the exact pairs: the t approximation.
approximate_rho <- function(n, level) {
  t <- qt(level / 2, n - 2, lower.tail = FALSE)
  t / sqrt(n - 2 + t^2)
}

# Kendall's, exact below 50 pairs without ties.
kendall <- function(x, y)
  c(cor.test(x, y, method = "kendall", exact = TRUE)$estimate,
    sapply(c("greater", "less", "two.sided"), function(alternative)
      cor.test(x, y, method = "kendall", exact = TRUE, alternative = alternative)$p.value))

# Partial rank correlation by what is left of ranks after lm, and its p by t. More than one control: one after the other.
partial <- function(x, y, first, second) {
  left <- function(values) {
    rest <- resid(lm(rank(values) ~ rank(first) + rank(second)))
    if (sum(rest^2) <= 1e-18 * sum((rank(values) - mean(rank(values)))^2)) NULL else rest
  }
  if (is.null(left(x)) || is.null(left(y))) return(c(NaN, NaN))
  rho <- cor(left(x), left(y))
  df <- length(x) - 4
  c(rho, 2 * pt(-abs(rho) * sqrt(df / (1 - rho^2)), df))
}
