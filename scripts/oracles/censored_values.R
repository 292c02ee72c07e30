# Regression through censored observations by the survival package: one set a line, figures only.
# In: scale (0: to be found), then for each row kind (0 value, 1 at most, 2 at least, 3 between), x, low, high.
suppressPackageStartupMessages(library(survival))

answer <- function(line) {
  figures <- as.numeric(strsplit(line, " ")[[1]])
  rows <- matrix(figures[-1], ncol = 4, byrow = TRUE)
  kind <- rows[, 1]
  low <- ifelse(kind == 1, NA, rows[, 3])
  high <- ifelse(kind == 2, NA, ifelse(kind == 0, rows[, 3], rows[, 4]))
  control <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)
  fit <- survreg(Surv(low, high, type = "interval2") ~ rows[, 2], dist = "gaussian", scale = figures[1], control = control)
  doubts <- sqrt(diag(fit$var))
  c(fit$coefficients, fit$scale, doubts, fit$var[1, 2], fit$loglik[2])
}

for (line in readLines(file("stdin"))) {
  cat(tryCatch(sprintf("%.17g", answer(line)), error = function(fault) paste("fault:", conditionMessage(fault))), "\n")
}
