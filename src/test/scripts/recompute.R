folder <- commandArgs(TRUE)[1]
text <- function(f) read.csv(file.path(folder, f), colClasses = "character", check.names = FALSE, encoding = "UTF-8")
rule <- text("rule.csv"); rows <- text("units.csv")
setups <- as.integer(rule$setups); stints <- as.integer(rule$stints); block <- as.integer(rule$block)

sequences <- function() {                       # the sequences of one block, one a row, 0 = A
  if (rule$patterns != "") {
    parts <- sort(unique(strsplit(rule$patterns, " ")[[1]]))
    return(t(sapply(parts, function(p) utf8ToInt(p) - 65L)))
  }
  grow <- function(left) {
    if (sum(left) == 0) return(matrix(integer(0), 1, 0))
    do.call(rbind, lapply(which(left > 0), function(s) {
      rest <- left; rest[s] <- rest[s] - 1
      below <- grow(rest)
      cbind(rep(s - 1L, nrow(below)), below)
    }))
  }
  grow(rep(block / setups, setups))
}

orders <- function() {                          # all admissible orders, one a row
  one <- sequences(); all <- matrix(integer(0), 1, 0)
  for (b in seq_len(stints / block)) {
    n <- nrow(all)
    all <- cbind(all[rep(seq_len(n), each = nrow(one)), , drop = FALSE],
                 one[rep(seq_len(nrow(one)), times = n), , drop = FALSE])
  }
  keep <- rep(TRUE, nrow(all))
  if (rule$max_run != "") keep <- keep & apply(all, 1, function(z) max(rle(z)$lengths)) <= as.integer(rule$max_run)
  if (rule$min_trend_efficiency != "") {
    t <- seq_len(stints); t <- t - mean(t); y <- all - 0.5
    keep <- keep & 1 - (y %*% t)^2 / sum(t^2) / rowSums(y^2) >= as.numeric(rule$min_trend_efficiency) - 1e-9
  }
  all[keep, , drop = FALSE]
}
Z <- orders()

two <- function(y, order, use, degree, ratio) {
  t <- (seq_along(y) - (length(y) + 1) / 2) / ((length(y) - 1) / 2)
  X <- outer(t[use], 0:degree, "^"); Q <- qr.Q(qr(X))
  mean <- mean(y[use]); y <- y[use] - mean
  off <- function(v) v - Q %*% crossprod(Q, v)
  w <- off(order[use] - 0.5); c0 <- sum(w^2)
  estimate <- sum(w * y) / c0
  e <- off(y) - estimate * w; n <- sum(use); ss <- sum(e^2)
  back <- if (ratio) exp else identity
  if (ss <= 1e-18 * n * max(abs(y + mean))^2) return(c(back(estimate), 1, NA, NA, NA, NA))
  s <- sqrt(c0); scale <- sqrt(ss / n) / s
  z <- Z[, use, drop = FALSE] - 0.5
  c <- rowSums(z^2) - rowSums((z %*% Q)^2)
  known <- c > 1e-9 * c0; root <- sqrt(pmax(c, 1e-300))
  a <- ifelse(known, (z %*% e) / root, 0); b <- ifelse(known, (z %*% w) / root, 0)
  same <- s - b <= 1e-9 * s; always <- sum(same)
  k <- (estimate - a / (s - b))[!same]
  k[abs(k - estimate) <= 1e-9 * scale] <- estimate
  k <- sort(k); m <- length(k); total <- always + m
  tie <- 1e-9 * max(scale, abs(estimate))
  p <- min(1, 2 * min(always + sum(k <= tie), always + sum(k >= -tie)) / total)
  result <- c(back(estimate), p)
  for (level in c(0.95, 0.90)) {
    j <- floor((1 - level) / 2 * total + 1e-9) + 1 - always
    result <- c(result, if (j > 0 && 2 * j <= m + 1) back(c(k[j], k[m - j + 1])) else c(NA, NA))
  }
  result
}

many <- function(y, order, use, degree) {
  t <- (seq_along(y) - (length(y) + 1) / 2) / ((length(y) - 1) / 2)
  Q <- qr.Q(qr(outer(t[use], 0:degree, "^")))
  off <- function(v) v - Q %*% crossprod(Q, v)
  y <- off(y[use] - mean(y[use]))
  explained <- function(z) {
    D <- off(sapply(1:(setups - 1), function(s) as.numeric(z[use] == s)))
    d <- qr(D, tol = 1e-9); own <- qr.Q(d)[, seq_len(d$rank), drop = FALSE]
    sum(crossprod(own, y)^2)
  }
  # All orders that differ only by renaming have one F.
  one <- apply(Z, 1, function(z) !is.unsorted(unique(z)))
  f <- apply(Z[one, , drop = FALSE], 1, explained)
  mean(f >= explained(order) * (1 - 1e-9))
}

for (measure in unique(rows$measure)) {
  mine <- rows[rows$measure == measure, ]
  use <- mine$value != ""; y <- as.numeric(ifelse(use, mine$value, "0"))
  order <- utf8ToInt(paste(mine$setup, collapse = "")) - 65
  degree <- match(mine$drift[1], c("none", "line", "curve")) - 1
  found <- if (setups == 2) two(y, order, use, degree, mine$scale[1] == "ratio") else many(y, order, use, degree)
  cat(measure, ifelse(is.na(found), "NA", sprintf("%.17g", found)), sep = "\t"); cat("\n")
}
