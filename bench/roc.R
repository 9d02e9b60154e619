# The R side of bench/roc.ts: reads task names from standard input, answers each with its time in ms and the results.
suppressPackageStartupMessages(library(pROC))
files <- commandArgs(TRUE)
large <- read.csv(files[1])
small <- read.csv(files[2])

# One sort of all cases and one of each group, on R's own compiled rank and var: what a statistician would write by hand.
rank_delong <- function(d) {
  positive <- d$positive == 1
  m <- sum(positive)
  n <- length(positive) - m
  all <- rank(d$value)
  of_positives <- (all[positive] - rank(d$value[positive])) / n
  of_negatives <- 1 - (all[!positive] - rank(d$value[!positive])) / m
  c(mean(of_positives), sqrt(var(of_positives) / m + var(of_negatives) / n))
}

proc_delong <- function(d) {
  curve <- roc(d$positive, d$value, levels = c(0, 1), direction = "<", quiet = TRUE)
  c(as.numeric(curve$auc), sqrt(var(curve, method = "delong")))
}

# Sorted once, a resample is a count for each distinct value.
count_bootstrap <- function(d, resamples) {
  values <- sort(unique(d$value))
  place <- match(d$value, values)
  with_it <- place[d$positive == 1]
  without <- place[d$positive == 0]
  m <- length(with_it)
  n <- length(without)
  k <- length(values)
  cutoffs <- numeric(resamples)
  for (r in seq_len(resamples)) {
    hits <- tabulate(with_it[sample.int(m, m, TRUE)], k)
    alarms <- tabulate(without[sample.int(n, n, TRUE)], k)
    score <- rev(cumsum(rev(hits * as.numeric(n) - alarms * as.numeric(m))))
    score[hits + alarms == 0] <- -Inf
    cutoffs[r] <- values[which.max(score)]
  }
  quantile(cutoffs, c(0.025, 0.5, 0.975), names = FALSE)
}

proc_bootstrap <- function(d, resamples) {
  curve <- roc(d$positive, d$value, levels = c(0, 1), direction = "<", quiet = TRUE)
  as.numeric(ci.coords(curve, x = "best", best.method = "youden", best.policy = "random", ret = "threshold",
    boot.n = resamples, progress = "none")$threshold)
}

tasks <- list(
  "proc-delong" = function() proc_delong(large),
  "rank-delong" = function() rank_delong(large),
  "proc-bootstrap-small" = function() proc_bootstrap(small, 2000),
  "count-bootstrap-small" = function() count_bootstrap(small, 2000),
  "count-bootstrap-large" = function() count_bootstrap(large, 200)
)

set.seed(1)
input <- file("stdin", "r")
while (length(task <- readLines(input, 1)) > 0) {
  began <- Sys.time()
  values <- tasks[[task]]()
  ms <- as.numeric(difftime(Sys.time(), began, units = "secs")) * 1000
  cat(sprintf("%.4f", ms), sprintf("%.15g", values), "\n")
  flush(stdout())
}
