# Own seeded simulations of readings (natural logs) by several operators on several people, fitted by lme4; prints the part
# "crossedOperator" of trend.json. Run: Rscript test/reference/statistics/trend.R
suppressMessages(library(lme4))
options(digits = 16)
set.seed(20261126)
tight <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12, maxfun = 1e5), check.conv.singular = "ignore")

simulate_readings <- function(people, operators, sd_operator) {
  visits <- sample(2:5, people, replace = TRUE)
  patient <- rep(sprintf("S%02d", seq_len(people)), visits)
  month <- unlist(lapply(visits, function(v) cumsum(sample(1:6, v, replace = TRUE))))
  operator <- sample(sprintf("O%d", seq_len(operators)), length(patient), replace = TRUE)
  own <- rnorm(people, 0, 0.6)[match(patient, sprintf("S%02d", seq_len(people)))]
  hand <- rnorm(operators, 0, sd_operator)[as.integer(sub("O", "", operator))]
  y <- round(7.5 - 0.04 * month + own + hand + rnorm(length(patient), 0, 0.35), 4)
  data.frame(patient, month, operator, y)
}
list_of <- function(x) paste0("[", paste(if (is.character(x)) sprintf('"%s"', x) else format(x, digits = 16, trim = TRUE), collapse = ", "), "]")
fit_of <- function(d) {
  m <- lmer(y ~ month + (1 | patient) + (1 | operator), d, REML = TRUE, control = tight)
  v <- as.data.frame(VarCorr(m)); v <- setNames(v$vcov, v$grp)
  r <- ranef(m)
  sprintf('{\n  "patient": %s,\n  "month": %s,\n  "operator": %s,\n  "y": %s,\n  "fixef": %s,\n  "se": %s,\n  "variance": { "patient": %.16g, "operator": %.16g, "residual": %.16g },\n  "logLik": %.16g,\n  "operators": %s,\n  "operatorEffects": %s,\n  "patientEffects": %s\n}',
    list_of(d$patient), list_of(d$month), list_of(d$operator), list_of(d$y), list_of(unname(fixef(m))), list_of(unname(sqrt(diag(as.matrix(vcov(m)))))),
    v["patient"], v["operator"], v["Residual"], as.numeric(logLik(m)), list_of(rownames(r$operator)), list_of(r$operator[, 1]), list_of(r$patient[, 1]))
}
cat("[", fit_of(simulate_readings(40, 8, 0.25)), ",", fit_of(simulate_readings(30, 6, 0)), "]\n")
