# Curves of share right against level by R's own optimizers, from many starts, and their likelihood intervals.
curve_of <- function(link) switch(link + 1, plogis, pnorm, function(x) -expm1(-exp(pmin(x, 6.5))))
inverse_of <- function(link) switch(link + 1, qlogis, qnorm, function(p) log(-log1p(-p)))

psychometric <- function(levels, right, trials, options) {
  link <- options[1]; chance <- options[2]; lapse <- options[3]; confidence <- options[4]
  share <- function(x) chance + (1 - chance - lapse) * curve_of(link)(x)
  loss <- function(sum) {
    p <- pmin(pmax(share(sum), 1e-300), 1 - 1e-16)
    -sum(dbinom(right, trials, p, log = TRUE))
  }
  centre <- mean(range(levels)); width <- diff(range(levels)); unit <- (levels - centre) / width
  best <- list(value = Inf)
  for (slope in c(1.5, 5, 15, -1.5, -5, -15)) for (middle in c(-0.5, -0.2, 0, 0.2, 0.5)) {
    found <- optim(c(-slope * middle, slope), function(b) loss(b[1] + b[2] * unit), method = "BFGS",
                   control = list(reltol = 1e-15, maxit = 1000))
    if (found$value < best$value) best <- found
  }
  best <- optim(best$par, function(b) loss(b[1] + b[2] * unit), method = "Nelder-Mead", control = list(reltol = 1e-16, maxit = 5000))
  target <- inverse_of(link)(0.5)
  allowed <- qchisq(confidence, 1) / 2
  least <- function(f, places) {
    values <- vapply(places, f, 0)
    i <- which.min(values)
    min(values[i], optimize(f, c(places[max(1, i - 1)], places[min(length(places), i + 1)]), tol = 1e-12)$objective)
  }
  slopes <- c(-10^seq(3, -2, length.out = 120), 0, 10^seq(-2, 3, length.out = 120))
  at_threshold <- function(m) least(function(b) loss(target + b * (unit - m)), slopes) - best$value - allowed
  places <- seq(-60, 60, length.out = 1201)
  at_slope <- function(b) least(function(a) loss(a - b * 0 + b * unit), c(places, -b * unit)[order(c(places, -b * unit))]) - best$value - allowed
  outwards <- function(f, from, step, times) {
    for (i in seq_len(times)) {
      if (f(from + step) > 0) return(uniroot(f, sort(c(from, from + step)), tol = 1e-11)$root)
      from <- from + step
      step <- step * 1.5
    }
    NA
  }
  m <- (target - best$par[1]) / best$par[2]
  c(centre + width * m, best$value,
    centre + width * outwards(at_threshold, m, -0.05, 30), centre + width * outwards(at_threshold, m, 0.05, 30),
    uniroot(at_slope, sort(c(0, best$par[2])), tol = 1e-11)$root / width)
}

# The log likelihood of listeners whose curves are shifted, each shift summed over in steps of 1/100 of its deviate.
likelihood_of_listeners <- function(levels, right, trials, who, options) function(p) {
  deviates <- seq(-9, 9, by = 0.01)
  curve <- curve_of(options[1]); chance <- options[2]
  sum(vapply(split(seq_along(who), who), function(rows) {
    log <- dnorm(deviates, log = TRUE)
    for (row in rows) {
      sums <- p[1] + p[2] * levels[row] + p[3] * deviates
      log <- log + right[row] * log(chance + (1 - chance) * curve(sums)) +
        (if (right[row] < trials[row]) (trials[row] - right[row]) * log((1 - chance) * curve(-sums)) else 0)
    }
    max(log) + log(sum(exp(log - max(log))) * 0.01)
  }, 0))
}

slopes_of <- function(f, p, step = 1e-3) vapply(seq_along(p), function(i) {
  at <- function(times) f(replace(p, i, p[i] + times * step))
  (8 * (at(1) - at(-1)) - at(2) + at(-2)) / (12 * step)
}, 0)

# Listeners whose curves are shifted: glmer with the link for guesses. Where it stops short of the peak, as it may with
# guesses, Newton's steps go on from there.
listeners <- function(levels, right, trials, who, options) {
  suppressMessages(library(lme4))
  suppressMessages(library(psyphy))
  link <- if (options[2] == 0) c("logit", "probit")[options[1] + 1]
          else list(mafc.logit, mafc.probit)[[options[1] + 1]](1 / options[2])
  data <- data.frame(levels, right, wrong = trials - right, who = factor(who))
  fit <- suppressMessages(suppressWarnings(
    glmer(cbind(right, wrong) ~ levels + (1 | who), data, binomial(link), nAGQ = 25,
          control = glmerControl(optimizer = "bobyqa", tolPwrss = 1e-10, optCtrl = list(rhoend = 1e-9, maxfun = 1e5)))))
  found <- unname(c(fixef(fit), getME(fit, "theta")))
  likelihood <- likelihood_of_listeners(levels, right, trials, who, options)
  slopes <- function(p) slopes_of(likelihood, p)
  if (max(abs(slopes(found))) < 1e-3) return(found)
  for (step in 1:50) {
    bends <- vapply(1:3, function(i) slopes_of(function(p) slopes(p)[i], found), numeric(3))
    move <- -solve(bends, slopes(found))
    found <- found + move * min(1, 0.1 / max(abs(move)))
    if (max(abs(move)) < 1e-10) break
  }
  found
}

# A regression on two predictors with the link for guesses.
regression <- function(first, second, right, trials, options) {
  suppressMessages(library(psyphy))
  link <- if (options[2] == 0) c("logit", "probit", "cloglog")[options[1] + 1]
          else list(mafc.logit, mafc.probit, mafc.cloglog)[[options[1] + 1]](round(1 / options[2]))
  fit <- suppressWarnings(glm(cbind(right, trials - right) ~ first + second, binomial(link), control = glm.control(epsilon = 1e-15, maxit = 500)))
  c(coef(fit), sqrt(diag(vcov(fit))), deviance(fit))
}
