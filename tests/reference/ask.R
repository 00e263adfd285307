# Answers questions until one is "end": each line names a script, a function in it, a table of CALLS and a
# file for the ANSWERS. The header of CALLS names the arguments, and its cells are lists of numbers; the
# function is called once for each row, and the numbers that it gives are written, a line each. Numbers pass
# in hexadecimal, since R does not always read decimal ones to the last bit.
options(warn = 2)

ask <- function(script, name, calls, answers) {
  functions <- new.env()
  source(script, local = functions)
  columns <- read.csv(calls, colClasses = "character", na.strings = character())
  numbers <- lapply(columns, function(column) lapply(strsplit(column, " ", fixed = TRUE), as.numeric))
  given <- .mapply(functions[[name]], numbers, NULL)
  writeLines(vapply(given, function(answer) paste(sprintf("%a", as.numeric(answer)), collapse = " "), ""), answers)
}

questions <- file("stdin", open = "r")
while (length(question <- readLines(questions, 1)) == 1 && question != "end") {
  do.call(ask, as.list(strsplit(question, "\t", fixed = TRUE)[[1]]))
  cat("done\n")
}
