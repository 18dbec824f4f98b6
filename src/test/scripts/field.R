# A field by R's lm: Rscript --vanilla field.R TABLE
# TABLE: a line a stint that counts: day, stint, degree of the drift, covariates (0 where none), setup, value
d <- read.csv(commandArgs(trailingOnly = TRUE)[1], stringsAsFactors = FALSE)
d$day <- factor(d$day)
d$t <- ifelse(d$degree >= 1, d$stint, 0)
d$tt <- ifelse(d$degree >= 2, d$stint^2, 0)
d$setup <- factor(d$setup)
names <- levels(d$setup)
own <- if (nlevels(d$day) > 1) ~ day + day:t + day:tt + day:c1 + day:c2 else ~ t + tt + c1 + c2
one <- lm(update(own, value ~ . + setup), d)
each <- lm(update(own, value ~ . + day:setup), d)
line <- function(name, numbers)
  cat(paste(c(name, ifelse(is.na(numbers), "NA", sprintf("%.17g", numbers))), collapse = "\t"), "\n", sep = "")
line("field", c(df.residual(one), summary(one)$sigma))
f <- anova(one, each)
line("agreement", if (is.na(f$Df[2]) || f$Df[2] == 0) c(NA, NA, NA, NA) else c(f$F[2], f$Df[2], df.residual(each), f[["Pr(>F)"]][2]))
# Columns that nothing tells apart are left out by lm; a contrast is known if it lies in the span of the rows.
x <- model.matrix(one)
keep <- !is.na(coef(one))
basis <- qr.Q(qr(t(x), tol = 1e-9))[, seq_len(qr(t(x), tol = 1e-9)$rank), drop = FALSE]
for (a in seq_along(names)) for (b in seq_along(names)) if (a < b) {
  contrast <- setNames(numeric(ncol(x)), colnames(x))
  if (b > 1) contrast[paste0("setup", names[b])] <- 1
  if (a > 1) contrast[paste0("setup", names[a])] <- -1
  known <- max(abs(contrast - basis %*% crossprod(basis, contrast))) < 1e-6
  if (!known) { line(paste(names[a], names[b], sep = " "), c(NA, NA, NA, NA)); next }
  v <- contrast[keep]
  estimate <- sum(v * coef(one)[keep])
  se <- sqrt(drop(t(v) %*% vcov(one, complete = FALSE) %*% v))
  reach <- qtukey(0.95, length(names), df.residual(one)) / sqrt(2) * se
  line(paste(names[a], names[b], sep = " "), c(estimate, se, estimate - reach, estimate + reach))
}
