# One rater with fixed numbers: fisher.test and dhyper. Of all trials `ones` have their truth one way, and
# `called` were answered so; `hits` were both. Right are these and the trials that are neither.
fixed_of_one <- function(trials, ones, called, hits) {
  table <- matrix(c(hits, ones - hits, called - hits, trials - ones - called + hits), 2)
  p <- function(alternative) fisher.test(table, alternative = alternative)$p.value
  c(dhyper(hits, ones, trials - ones, called), p("greater"), p("less"), p("two.sided"))
}

# Two raters of the same trials, right and wrong: fisher.test, greater.
agreement_of_two <- function(first, second) {
  both <- table(factor(first, 0:1), factor(second, 0:1))
  c(sum(diag(both)), fisher.test(both, alternative = "greater")$p.value)
}
