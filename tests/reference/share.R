# Tests and intervals of a share right, by R's own distributions and tests.

reaches <- function(p, level) p <= level * (1 + 1e-12)

tails <- function(correct, trials, chance)
  c(pbinom(correct - 1, trials, chance, lower.tail = FALSE), pbinom(correct, trials, chance),
    dbinom(correct, trials, chance))

two_sided <- function(correct, trials, chance) binom.test(correct, trials, chance)$p.value

minimum_correct <- function(trials, level, chance) {
  reaching <- which(reaches(pbinom(0:trials - 1, trials, chance, lower.tail = FALSE), level))
  if (length(reaching) == 0) NA else min(reaching) - 1
}

minimum_correct_two_sided <- function(trials, level) {
  agreeing <- 0:trials
  reaching <- agreeing[reaches(2 * pbinom(agreeing - 1, trials, 1 / 2, lower.tail = FALSE), level)]
  if (length(reaching) == 0) NA else min(reaching)
}

clopper_pearson <- function(correct, trials, confidence)
  c(binom.test(correct, trials, conf.level = confidence)$conf.int,
    binom.test(correct, trials, conf.level = confidence, alternative = "greater")$conf.int[1],
    binom.test(correct, trials, conf.level = confidence, alternative = "less")$conf.int[2])

# prop.test warns where its chi-square p is rough; only its interval, Wilson's, is taken. It has one-sided
# limits by turning the confidence c into the two-sided 2 c - 1, and so none below a confidence of 1/2.
wilson <- function(correct, trials, confidence) {
  limits <- function(...)
    suppressWarnings(prop.test(correct, trials, conf.level = confidence, correct = FALSE, ...))$conf.int
  one_sided <- if (confidence >= 0.5) c(limits(alternative = "greater")[1], limits(alternative = "less")[2])
  c(limits(), one_sided)
}

jeffreys <- function(correct, trials, confidence) {
  at <- function(p) qbeta(p, correct + 0.5, trials - correct + 0.5)
  lower <- function(confidence) if (correct == 0) 0 else at(1 - confidence)
  upper <- function(confidence)
    if (correct == trials) 1 else qbeta(1 - confidence, correct + 0.5, trials - correct + 0.5, lower.tail = FALSE)
  both <- (1 + confidence) / 2
  c(lower(both), upper(both), lower(confidence), upper(confidence))
}

# Where a rising function crosses 0 between 0 and 1, to the last bits.
crossing <- function(rising) {
  if (rising(0) >= 0) return(0)
  if (rising(1) <= 0) return(1)
  uniroot(rising, c(0, 1), tol = 1e-16, maxiter = 10000)$root
}

mid_p <- function(correct, trials, confidence) {
  above <- function(share)
    pbinom(correct, trials, share, lower.tail = FALSE) + dbinom(correct, trials, share) / 2
  lower <- function(confidence) crossing(function(share) above(share) - (1 - confidence))
  upper <- function(confidence) {
    below <- function(share) pbinom(correct - 1, trials, share) + dbinom(correct, trials, share) / 2
    crossing(function(share) (1 - confidence) - below(share))
  }
  both <- (1 + confidence) / 2
  c(lower(both), upper(both), lower(confidence), upper(confidence))
}

likelihood <- function(correct, trials, confidence) {
  seen <- correct / trials
  excess <- function(share)
    2 * (dbinom(correct, trials, seen, log = TRUE) - dbinom(correct, trials, share, log = TRUE)) -
      qchisq(confidence, 1)
  root <- function(from, to) uniroot(excess, c(from, to), tol = 1e-16, maxiter = 10000)$root
  c(if (correct == 0) 0 else root(.Machine$double.xmin, seen),
    if (correct == trials) 1 else root(seen, 1 - .Machine$double.eps / 2))
}

heard <- function(correct, trials, chance, confidence) {
  corrected <- function(share) max(0, (share - chance) / (1 - chance))
  c(corrected(correct / trials), correct / trials < chance,
    sapply(clopper_pearson(correct, trials, confidence), corrected))
}

power <- function(share, trials, level, chance) {
  minimum <- minimum_correct(trials, level, chance)
  if (is.na(minimum)) return(c(NA, 0, 0))
  c(minimum, pbinom(minimum - 1, trials, c(chance, share), lower.tail = FALSE))
}

# The share at which `minimum` or more have that probability, by the beta distribution.
share_caught <- function(trials, level, chance, probability) {
  minimum <- minimum_correct(trials, level, chance)
  if (is.na(minimum)) NA else qbeta(probability, minimum, trials - minimum + 1)
}

# A power that equals the target but for rounding (0.9 by one guess of 0.1) reaches it.
searched <- function(target, powers) {
  enough <- powers >= target * (1 - 1e-12)
  from_then_on <- rev(cumprod(rev(enough))) == 1
  c(if (any(enough)) which(enough)[1] else NA, if (any(from_then_on)) which(from_then_on)[1] else NA)
}

smallest_trials <- function(target, share, level, chance, limit)
  searched(target, sapply(1:limit, function(n) power(share, n, level, chance)[3]))

# P(X <= correct) by the wrong answers, whose probability keeps its digits where nearly all is heard.
at_most <- function(correct, trials, heard, chance)
  pbinom(trials - correct - 1, trials, (1 - chance) * (1 - heard), lower.tail = FALSE)

most_correct <- function(trials, level, heard, chance) {
  reaching <- which(reaches(at_most(0:trials, trials, heard, chance), level))
  if (length(reaching) == 0) NA else max(reaching) - 1
}

similarity <- function(correct, trials, level, heard, chance) {
  most <- most_correct(trials, level, heard, chance)
  c(at_most(correct, trials, heard, chance), most,
    if (is.na(most)) c(0, 0) else at_most(most, trials, c(heard, 0), chance))
}

smallest_similarity_trials <- function(target, level, heard, chance, limit)
  searched(target, sapply(1:limit, function(n) similarity(0, n, level, heard, chance)[4]))

operating_table <- function(most_trials, level, chance, share)
  unlist(lapply(1:most_trials, function(n) {
    row <- power(share, n, level, chance)
    if (is.na(row[1])) c(n + 1, 0, 0) else row
  }))

intervals <- list(function(...) clopper_pearson(...)[1:2], function(...) mid_p(...)[1:2],
                  function(...) wilson(...)[1:2], function(...) jeffreys(...)[1:2], likelihood)

coverage <- function(method, trials, share, confidence) {
  limits <- sapply(0:trials, function(correct) intervals[[method + 1]](correct, trials, confidence))
  sum(dbinom(0:trials, trials, share)[limits[1, ] <= share & share <= limits[2, ]])
}

# The coverage falls or rises between neighbouring limits, so that its lowest values lie just beside them: the
# intervals that hold the shares just above (below) a limit are those that hold the middle of the gap there.
least_coverage <- function(method, trials, confidence) {
  limits <- sapply(0:trials, function(correct) intervals[[method + 1]](correct, trials, confidence))
  ends <- sort(unique(c(0, 1, limits)))
  ends <- ends[c(TRUE, diff(ends) > 1e-12)]
  gaps <- lapply(seq_along(ends[-1]), function(i) {
    holding <- limits[1, ] <= mean(ends[i + 0:1]) & mean(ends[i + 0:1]) <= limits[2, ]
    sapply(ends[i + 0:1], function(share) sum(dbinom(0:trials, trials, share)[holding]))
  })
  min(unlist(gaps))
}
