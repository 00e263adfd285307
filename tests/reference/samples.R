# Welch's interval by R's t.test, which calls data constant where their spread is below 2e-15 of the means.
welch <- function(x, y, confidence) {
  if (length(x) < 2 || length(y) < 2 || (var(x) == 0 && var(y) == 0)) return(c(mean(x) - mean(y), NA, NA))
  c(mean(x) - mean(y), t.test(x, y, conf.level = confidence)$conf.int)
}

# Wilcoxon's signed ranks, exact without ties. R doubles the smaller tail; the null is symmetric, so that this is ours.
signed_rank <- function(differences)
  c(0, wilcox.test(differences, exact = TRUE)$statistic,
    sapply(c("greater", "less", "two.sided"), function(alternative)
      wilcox.test(differences, exact = TRUE, alternative = alternative)$p.value))

# Rank sums of larger samples with ties, where the package is installed. Only one-sided: its two-sided p may leave out sums
# on the other side that are just as far from the mean.
rank_sum <- function(x, y) {
  one <- function(alternative) suppressWarnings(exactRankTests::wilcox.exact(x, y, exact = TRUE, alternative = alternative)$p.value)
  c(exactRankTests::wilcox.exact(x, y, exact = TRUE)$statistic, one("greater"), one("less"))
}
