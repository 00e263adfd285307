# Worths of paired comparisons by R's glm, run until it stands still.
exact_glm <- function(...) suppressWarnings(glm(..., control = glm.control(epsilon = 1e-15, maxit = 500)))

design <- function(first, second, items) {
  x <- matrix(0, length(first), items)
  x[cbind(seq_along(first), first + 1)] <- 1
  x[cbind(seq_along(second), second + 1)] <- x[cbind(seq_along(second), second + 1)] - 1
  x[, -1, drop = FALSE]
}

errors <- function(fit, wanted) sqrt(diag(vcov(fit)))[wanted]

# Worths against item 0 and the order effect, their standard errors, and the deviance.
bradley_terry <- function(first, second, wins, losses, items) {
  x <- cbind(design(first, second, items), 1)
  fit <- exact_glm(cbind(wins, losses) ~ x - 1, family = binomial)
  c(coef(fit), errors(fit, seq_len(ncol(x))), deviance(fit))
}

thurstone <- function(first, second, wins, losses, items) {
  x <- design(first, second, items)
  fit <- exact_glm(cbind(wins, losses) ~ x - 1, family = binomial(probit))
  c(coef(fit), errors(fit, seq_len(ncol(x))), deviance(fit))
}

# Davidson's model with order effect as a log-linear one: a level for each pair, half a worth for each preference.
davidson <- function(first, second, wins, ties, losses, items) {
  rows <- length(first)
  x <- cbind(design(first, second, items), 1)
  x <- cbind(rbind(x / 2, 0 * x, -x / 2), rep(c(0, 1, 0), each = rows))
  pair <- factor(rep(seq_len(rows), 3))
  fit <- exact_glm(c(wins, ties, losses) ~ x + pair - 1, family = poisson)
  c(coef(fit)[seq_len(ncol(x))], errors(fit, seq_len(ncol(x))), deviance(fit))
}

# Firth's for Bradley-Terry: half of each row's leverage goes to either side, until nothing moves.
firth <- function(first, second, wins, losses, items) {
  x <- design(first, second, items)
  worth <- rep(0, ncol(x))
  for (step in 1:2000) {
    share <- plogis(drop(x %*% worth))
    weight <- (wins + losses) * share * (1 - share)
    inverse <- solve(crossprod(x, x * weight))
    leverage <- weight * rowSums((x %*% inverse) * x)
    move <- drop(inverse %*% crossprod(x, wins - (wins + losses) * share + leverage * (0.5 - share)))
    worth <- worth + move
    if (max(abs(move)) < 1e-14) break
  }
  worth
}
