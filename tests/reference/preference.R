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

# Firth's for Bradley-Terry: half of each row's leverage is added to either side, until nothing moves. A step that would lower
# the likelihood with half the logarithm of the information's determinant added is halved.
firth <- function(first, second, wins, losses, items) {
  x <- design(first, second, items)
  penalized <- function(worth) {
    sums <- drop(x %*% worth)
    weight <- (wins + losses) * plogis(sums) * plogis(-sums)
    sum(wins * plogis(sums, log.p = TRUE) + losses * plogis(-sums, log.p = TRUE)) +
      as.numeric(determinant(crossprod(x, x * weight))$modulus) / 2
  }
  worth <- rep(0, ncol(x))
  for (step in 1:2000) {
    share <- plogis(drop(x %*% worth))
    weight <- (wins + losses) * share * (1 - share)
    leverage <- weight * rowSums((x %*% solve(crossprod(x, x * weight))) * x)
    curvature <- crossprod(x, x * (wins + losses + leverage) * share * (1 - share))
    move <- drop(solve(curvature, crossprod(x, wins - (wins + losses) * share + leverage * (0.5 - share))))
    while (max(abs(move)) > 1e-6 && !(penalized(worth + move) >= penalized(worth))) move <- move / 2
    worth <- worth + move
    if (max(abs(move)) < 1e-14) break
  }
  worth
}

# Likelihood ratio of each two items against equal worths, and its p adjusted over all.
pairwise <- function(first, second, wins, losses, items) {
  x <- matrix(0, length(first), items)
  x[cbind(seq_along(first), first + 1)] <- 1
  x[cbind(seq_along(second), second + 1)] <- -1
  deviance_of <- function(x) {
    x <- x[, -1, drop = FALSE]
    deviance(if (ncol(x) == 0) exact_glm(cbind(wins, losses) ~ 0, family = binomial)
             else exact_glm(cbind(wins, losses) ~ x - 1, family = binomial))
  }
  full <- deviance_of(x)
  ratio <- numeric()
  for (i in seq_len(items - 1)) for (j in (i + 1):items) {
    joined <- x[, -j, drop = FALSE]
    joined[, i] <- x[, i] + x[, j]
    ratio <- c(ratio, max(0, deviance_of(joined) - full))
  }
  p <- pchisq(ratio, 1, lower.tail = FALSE)
  c(ratio, p.adjust(p, "holm"))
}

# Quasi-variances: least squares of the logarithms of the variances of differences, until they stand still.
quasi <- function(covariance, items) {
  v <- matrix(covariance, items)
  sums <- numeric()
  pairs <- NULL
  for (i in seq_len(items - 1)) for (j in (i + 1):items) {
    pairs <- rbind(pairs, replace(numeric(items), c(i, j), 1))
    sums <- c(sums, v[i, i] + v[j, j] - 2 * v[i, j])
  }
  q <- rep(mean(sums) / 2, items)
  for (step in 1:500) {
    fitted <- drop(pairs %*% q)
    move <- qr.solve(pairs / fitted, log(sums / fitted))
    while (any(pairs %*% (q + move) <= 0)) move <- move / 2
    q <- q + move
    if (max(abs(move)) < 1e-15 * max(q)) break
  }
  q
}

# Where installed, the same by a package of its own, whose search goes on until it stands still.
quasi_of_package <- function(covariance, items) {
  qvcalc <- qvcalc::qvcalc.default
  searching <- function(...) stats::glm(..., control = glm.control(epsilon = 1e-14, maxit = 1000))
  environment(qvcalc) <- list2env(list(glm = searching), parent = environment(qvcalc))
  suppressWarnings(qvcalc(matrix(covariance, items))$qvframe$quasiVar)
}

# Where installed: worths with an effect of the order, and worths with ties, by packages of their own. Their searches end at a
# change of the deviance of 1e-8.
worths_of_package <- function(first, second, wins, losses, items) {
  suppressMessages(library(BradleyTerry2))
  one <- function(item, is_first) data.frame(team = factor(item, levels = seq_len(items) - 1), order = is_first)
  data <- list(a = one(first, 1), b = one(second, 0), wins = wins, losses = losses)
  coef(suppressWarnings(BTm(cbind(wins, losses), a, b, ~ team + order, id = "team", data = data, epsilon = 1e-14, maxit = 200)))
}

ties_of_package <- function(first, second, wins, ties, losses, items) {
  suppressMessages(library(psychotools))
  answers <- list()
  for (j in 2:items) for (i in seq_len(j - 1)) {
    forward <- first == i - 1 & second == j - 1
    back <- first == j - 1 & second == i - 1
    answers <- c(answers, list(c(rep(1, sum(wins[forward], losses[back])), rep(0, sum(ties[forward | back])),
                                 rep(-1, sum(losses[forward], wins[back])))))
  }
  rows <- sapply(answers, `length<-`, max(lengths(answers)))
  fit <- suppressWarnings(btmodel(paircomp(rows, labels = paste0("item", seq_len(items))), type = "loglin", ref = 1, undecided = TRUE))
  fit$coefficients
}
