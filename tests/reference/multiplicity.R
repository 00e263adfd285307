# Adjusted p-values by R's p.adjust.
adjusted <- function(p)
  unlist(lapply(c("bonferroni", "holm", "hochberg", "hommel", "BH", "BY"), function(method) p.adjust(p, method)))
