# The R side of bench/mixedModel.ts: reads task names from standard input, answers each with its time in ms and the results: intercept,
# slope, their standard errors, variances of subject (and operator) and residual, restricted log-likelihood.
suppressPackageStartupMessages({
  library(lme4)
  library(nlme)
})
data <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = FALSE)

# lme4 warns on these readings that its search for the operators' variance stopped short; its results differ from ours by 0.3 % there.
lme4_fit <- function(formula) {
  fit <- suppressWarnings(lmer(formula, data, REML = TRUE))
  variances <- as.data.frame(VarCorr(fit))
  c(fixef(fit), sqrt(diag(as.matrix(vcov(fit)))), setNames(variances$vcov, variances$grp)[c("subject", if (nrow(variances) > 2) "operator", "Residual")], as.numeric(logLik(fit)))
}

nlme_fit <- function() {
  fit <- lme(value ~ time, data, random = ~ 1 | subject)
  sds <- as.numeric(VarCorr(fit)[, "StdDev"])
  c(fixef(fit), sqrt(diag(vcov(fit))), sds^2, as.numeric(logLik(fit)))
}

# What a statistician would write by hand: sums by subject on R's compiled rowsum, then one ratio searched by optimize.
profile_fit <- function() {
  x <- cbind(1, data$time)
  y <- data$value
  sums <- rowsum(cbind(x, y), data$subject, reorder = FALSE)
  counts <- sums[, 1]
  products <- crossprod(cbind(x, y))
  df <- length(y) - 2
  at <- function(ratio) {
    m <- products - crossprod(sums, sums * (ratio / (1 + counts * ratio)))
    information <- m[1:2, 1:2]
    effects <- solve(information, m[1:2, 3])
    rest <- m[3, 3] - sum(effects * m[1:2, 3])
    list(deviance = sum(log1p(counts * ratio)) + log(det(information)) + df * (1 + log(2 * pi * rest / df)), effects = effects, information = information, residual = rest / df)
  }
  share <- optimize(function(s) at(s / (1 - s))$deviance, c(0, 0.9999), tol = 1e-9)$minimum
  ratio <- share / (1 - share)
  best <- at(ratio)
  c(best$effects, sqrt(diag(solve(best$information)) * best$residual), ratio * best$residual, best$residual, -best$deviance / 2)
}

tasks <- list(
  "lme4-intercept" = function() lme4_fit(value ~ time + (1 | subject)),
  "nlme-intercept" = nlme_fit,
  "rowsum-intercept" = profile_fit,
  "lme4-crossed" = function() lme4_fit(value ~ time + (1 | subject) + (1 | operator))
)

input <- file("stdin", "r")
while (length(task <- readLines(input, 1)) > 0) {
  began <- Sys.time()
  values <- tasks[[task]]()
  ms <- as.numeric(difftime(Sys.time(), began, units = "secs")) * 1000
  cat(sprintf("%.4f", ms), sprintf("%.15g", values), "\n")
  flush(stdout())
}
