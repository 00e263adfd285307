# The workloads in R. Prints "time WORKLOAD WAY SECONDS" and "value WORKLOAD WAY NAME NUMBER".
arguments <- commandArgs(TRUE)
folder <- arguments[1]
wanted <- arguments[-1]

timed <- function(workload, way, work, values, inner = 1) {
  if (!(workload %in% wanted)) return(invisible())
  work()
  seconds <- system.time(for (i in seq_len(inner)) found <- work())[["elapsed"]] / inner
  cat("time", workload, way, format(seconds, digits = 10), "\n")
  numbers <- values(found)
  for (name in names(numbers)) cat("value", workload, way, name, format(numbers[[name]], digits = 17), "\n")
}

# W1
trials <- 1:500
shares <- c(.6, .7, .8, .9)
operating_table <- function() {
  k <- qbinom(.05, trials, .5, lower.tail = FALSE)
  list(minimum = k + 1, size = pbinom(k, trials, .5, lower.tail = FALSE),
       power = vapply(shares, function(p) pbinom(k, trials, p, lower.tail = FALSE), numeric(500)))
}
timed("W1", "R", operating_table, inner = 200, function(table)
  c(minimum = sum(table$minimum), size = sum(table$size), setNames(colSums(table$power), paste0("power", 1:4))))

# W2
studies <- 100000; raters <- 8; each <- 16; items <- 4
simulated_studies <- function() {
  share <- matrix(rbeta(studies * raters, 11.4, 7.6), studies)
  right <- matrix(0L, studies, items)
  for (item in 1:items) for (rater in 1:raters) right[, item] <- right[, item] + rbinom(studies, each, share[, rater])
  p_of <- pbinom(0:(raters * each) - 1, raters * each, .5, lower.tail = FALSE)
  p <- matrix(p_of[right + 1], studies)
  p <- matrix(p[order(row(p), p)], studies, byrow = TRUE)
  supported <- p <= rep(.05 / items:1, each = studies)
  for (i in 2:items) supported[, i] <- supported[, i] & supported[, i - 1]
  c(any = mean(supported[, 1]), all = mean(supported[, items]), share = mean(supported))
}
set.seed(1)
timed("W2", "R", simulated_studies, identity)

# W8
if ("W8" %in% wanted) seen <- read.csv(file.path(folder, "observations.csv"))[[1]]
betting_sequence <- function() {
  n <- length(seen); t <- seq_len(n); m <- (seq_len(1000) - .5) / 1000
  mean <- (.5 + cumsum(seen)) / (t + 1)
  variance <- (.25 + cumsum((seen - mean)^2)) / (t + 1)
  bets <- sqrt(2 * log(2 / .05) / (c(.25, variance[-n]) * t * log1p(t)))
  above <- below <- rep(1, 1000); most_above <- .5 / m; most_below <- .5 / (1 - m)
  lower <- upper <- integer(n); first <- 1L; last <- 1000L
  for (i in t) {
    surplus <- seen[i] - m
    above <- above * (1 + pmin.int(bets[i], most_above) * surplus)
    below <- below * (1 - pmin.int(bets[i], most_below) * surplus)
    while (first <= last && max(above[first], below[first]) >= 40) first <- first + 1L
    while (last >= first && max(above[last], below[last]) >= 40) last <- last - 1L
    lower[i] <- first - 1L; upper[i] <- last - 1L
  }
  list(lower = lower, upper = upper)
}
timed("W8", "R", betting_sequence, function(found) {
  at <- c(100, 1000, 10000)
  c(width = sum(found$upper - found$lower), setNames(found$lower[at], paste0("lower", at)),
    setNames(found$upper[at], paste0("upper", at)))
})
