# The R side of bench/runLength.ts: reads tasks from standard input, answers each with its time in ms and the run lengths.
# A task is: method, repeats, chart, two parameters, nodes; designs are parted by "/".
suppressPackageStartupMessages(library(spc))
shifts <- c(0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4)

# What a statistician would write by hand on R's compiled functions: nodes by eigenvalues (kept), one linear system for each shift and side.
kept <- list()
legendre <- function(n) {
  key <- as.character(n)
  if (is.null(kept[[key]])) {
    i <- seq_len(n - 1)
    off <- i / sqrt(4 * i^2 - 1)
    jacobi <- matrix(0, n, n)
    jacobi[cbind(i, i + 1)] <- off
    jacobi[cbind(i + 1, i)] <- off
    e <- eigen(jacobi, symmetric = TRUE)
    kept[[key]] <<- list(x = e$values, w = 2 * e$vectors[1, ]^2)
  }
  kept[[key]]
}
one_sided <- function(k, h, mu, n) {
  rule <- legendre(n)
  x <- h / 2 * (1 + rule$x)
  q <- rbind(dnorm(x + k - mu), dnorm(outer(x, x, function(from, to) to - from + k - mu)))
  q <- cbind(pnorm(k - mu - c(0, x)), q * rep(h / 2 * rule$w, each = n + 1))
  # tol = 0: on the side away from a large shift the system is all but singular, and the run length all but infinite.
  solve(diag(n + 1) - q, rep(1, n + 1), tol = 0)[1]
}
plain_cusum <- function(k, h, n) sapply(shifts, function(mu) {
  up <- one_sided(k, h, mu, n)
  c(up, 1 / (1 / up + 1 / one_sided(k, h, -mu, n)))
})

methods <- list(
  spc = function(chart, a, b, n) switch(chart,
    cusum = sapply(shifts, function(mu) c(xcusum.arl(a, b, mu, sided = "one", r = n), xcusum.arl(a, b, mu, sided = "two", r = n))),
    ewma = sapply(shifts, function(mu) xewma.arl(a, b, mu, sided = "two", r = n))
  ),
  plain = function(chart, a, b, n) plain_cusum(a, b, n)
)

input <- file("stdin", "r")
while (length(task <- readLines(input, 1)) > 0) {
  words <- strsplit(task, " ")[[1]]
  method <- methods[[words[1]]]
  repeats <- as.integer(words[2])
  designs <- strsplit(strsplit(paste(words[-(1:2)], collapse = " "), " / ", fixed = TRUE)[[1]], " ")
  charts <- sapply(designs, function(d) d[1])
  numbers <- lapply(designs, function(d) as.numeric(d[-1]))
  began <- Sys.time()
  for (r in seq_len(repeats)) values <- lapply(seq_along(designs), function(i) method(charts[i], numbers[[i]][1], numbers[[i]][2], numbers[[i]][3]))
  ms <- as.numeric(difftime(Sys.time(), began, units = "secs")) * 1000
  cat(sprintf("%.4f", ms), sprintf("%.17g", unlist(values)), "\n")
  flush(stdout())
}
