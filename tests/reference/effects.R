# Two shares by Fisher's exact test; effects of several campaigns by metafor, where it is installed.
shares <- function(right, trials, confidence) {
  table <- matrix(c(right[2], trials[2] - right[2], right[1], trials[1] - right[1]), 2)
  counts <- max(0, sum(right) - trials[1]):min(trials[2], sum(right))
  p <- fisher.test(table)$p.value
  # fisher.test finds its limits to 1e-4 of their inverse only: the same equations, further.
  tail <- function(log_odds, which) {
    d <- dhyper(counts, trials[2], trials[1], sum(right), log = TRUE) + log_odds * counts
    d <- exp(d - max(d))
    sum(d[which(counts, right[2])]) / sum(d)
  }
  limit <- function(which) exp(uniroot(function(x) tail(x, which) - (1 - confidence) / 2, c(-300, 300), tol = 1e-13)$root)
  c(p, if (right[2] == min(counts)) 0 else limit(`>=`), if (right[2] == max(counts)) Inf else limit(`<=`))
}

campaigns <- function(estimates, errors, confidence) {
  suppressMessages(library(metafor))
  varying <- rma(estimates, sei = errors, method = "PM", test = "knha", level = confidence, control = list(tol = 1e-14, maxiter = 10000))
  common <- rma(estimates, sei = errors, method = "FE", level = confidence)
  c(varying$QE, varying$QEp, varying$tau2, varying$beta, varying$se, varying$ci.lb, varying$ci.ub, common$beta, common$se, common$ci.lb, common$ci.ub)
}
