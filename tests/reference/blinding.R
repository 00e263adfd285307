# Indices of blinding, written out from the papers; James' standard error by the delta method.

limits <- function(index, error, confidence)
  c(index, error, index + c(-1, 1) * qnorm((1 - confidence) / 2, lower.tail = FALSE) * error,
    index + c(-1, 1) * qnorm(confidence) * error)

# Bang, Ni and Davis (2004), for one arm: (2 r - 1) times the share of guesses, with r the share of right
# guesses. Guesses count 1 or -1, "don't know" 0; the error is that of the mean of n such numbers.
bang <- function(right, wrong, dont_know, confidence) {
  if (right + wrong == 0) return(rep(NA, 6))
  scores <- rep(c(1, -1, 0), c(right, wrong, dont_know))
  index <- (2 * right / (right + wrong) - 1) * (right + wrong) / length(scores)
  limits(index, sqrt(mean((scores - mean(scores))^2) / length(scores)), confidence)
}

# James and others (1996): (1 + d + (1 - d) K) / 2, where K is a kappa of disagreement, with weight 1/2 for
# wrong guesses. `shares` are those of all subjects: right, wrong of the first arm, right, wrong of the
# second, "don't know" of both.
james_index <- function(shares) {
  d <- shares[5]
  guesses <- matrix(c(shares[1], shares[4], shares[2], shares[3]), 2)  # rows: given; columns: guessed
  weights <- matrix(c(0, 0.5, 0.5, 0), 2)
  seen <- sum(weights * guesses) / (1 - d)
  given <- guesses %*% c(1, 1)
  guessed <- c(1, 1) %*% guesses
  expected <- sum(weights * (given %*% guessed)) / (1 - d)^2
  (1 + d + (1 - d) * (seen - expected) / expected) / 2
}

james <- function(first, second, confidence) {
  counts <- c(first[1], first[2], second[2], second[1], first[3] + second[3])
  shares <- counts / sum(counts)
  if (shares[5] == 1) return(limits(1, 0, confidence))
  if (counts[1] + counts[4] == 0 && counts[2] == 0 || counts[2] + counts[3] == 0 && counts[4] == 0) return(rep(NA, 6))
  slopes <- sapply(1:5, function(cell) {
    moved <- shares + 0i
    moved[cell] <- moved[cell] + 1e-20i
    Im(james_index(moved)) / 1e-20
  })
  error <- sqrt(sum(shares * (slopes - sum(shares * slopes))^2) / sum(counts))
  limits(james_index(shares), error, confidence)
}
