# The statistic of conditional inference, where the package is installed.
statistic <- function(values, levels, blocks) {
  test <- coin::independence_test(y ~ g | b, data.frame(y = values, g = factor(levels), b = factor(blocks)), teststat = "quad")
  c(coin::statistic(test), test@statistic@df)
}
