arguments <- commandArgs(TRUE)
script <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
folder <- if (length(arguments) > 0) arguments[1] else dirname(script)
text <- function(f) read.csv(file.path(folder, f), colClasses = "character", check.names = FALSE, encoding = "UTF-8")
rule <- text("rule.csv"); rows <- text("units.csv")
setups <- as.integer(rule$setups); stints <- as.integer(rule$stints); block <- as.integer(rule$block)
# Of a steps day every setup is a level, which stands where two setups have -1/2 and 1/2.
levels_of <- if (file.exists(file.path(folder, "levels.csv"))) as.numeric(text("levels.csv")$level) else numeric(0)
steps <- length(levels_of) > 0
at <- if (steps) (levels_of - mean(levels_of)) / diff(range(levels_of)) else c(-0.5, 0.5)

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
placed <- function(z, by = at) matrix(by[z + 1], nrow(z))

rounding <- function(y) length(y) * 2^(floor(log2(max(abs(y), 1e-300))) - 52) / 2   # of the values: ties forgive it

nuisance <- function(use, out) {                # what is taken out: a drift of some degree, and covariates
  t <- (seq_along(use) - (length(use) + 1) / 2) / ((length(use) - 1) / 2)
  X <- outer(t[use], 0:out$degree, "^")
  for (x in out$covariates) { x <- x[use] - mean(x[use]); X <- cbind(X, x / max(abs(x))) }
  unname(X)
}

two <- function(y, order, use, out, ratio, harm = NULL) {
  Q <- qr.Q(qr(nuisance(use, out)))
  mean <- mean(y[use]); y <- y[use] - mean
  off <- function(v) v - Q %*% crossprod(Q, v)
  w <- off(at[order[use] + 1]); c0 <- sum(w^2)
  estimate <- sum(w * y) / c0
  e <- off(y) - estimate * w; n <- sum(use); ss <- sum(e^2)
  back <- if (ratio) exp else identity
  if (ss <= 1e-18 * n * max(abs(y + mean))^2) return(c(back(estimate), 1, NA, NA, NA, NA))
  s <- sqrt(c0); scale <- max(sqrt(ss / n) / s, rounding(y + mean) * 1e9)
  z <- placed(Z[, use, drop = FALSE])
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
  if (!is.null(harm)) for (d in c(harm, -harm)) {  # one-sided p: B greater than A by more, and by less
    tie <- 1e-9 * max(scale, abs(d - estimate))
    result <- c(result, (always + sum(k <= d + tie)) / total, (always + sum(k >= d - tie)) / total)
  }
  result
}

bend <- function(y, order, use, out) {           # partial t of the bent levels after drift and levels, and its p
  Q <- qr.Q(qr(nuisance(use, out))); v <- y[use] - mean(y[use]); wy <- as.vector(v - Q %*% crossprod(Q, v))
  bent <- at^2 - mean(at^2) - at * sum(at^3) / sum(at^2); df <- sum(use) - ncol(Q) - 2; total <- sum(wy^2)
  z <- rbind(Z, order)[, use, drop = FALSE]; x <- placed(z); u <- placed(z, bent); px <- x %*% Q; pu <- u %*% Q
  xx <- rowSums(x^2) - rowSums(px^2); xu <- rowSums(x * u) - rowSums(px * pu); uu <- rowSums(u^2) - rowSums(pu^2)
  tells <- xx > 1e-9 * rowSums(x^2); share <- ifelse(tells, 1 / xx, 0); told <- as.vector(x %*% wy)
  own <- uu - xu^2 * share; up <- as.vector(u %*% wy) - told * xu * share; left <- total - told^2 * share
  t <- ifelse(own <= 1e-9 * rowSums(u^2), 0, up / sqrt(pmax(own, 1e-300)) / sqrt(pmax(left - up^2 / own, total * 1e-15) / df))
  n <- length(t); seen <- t[n]
  if (df < 1 || left[n] <= 1e-18 * sum(use) * max(abs(y[use]))^2) return(c(NA, NA))
  loose <- 2 * rounding(y[use]) / sqrt(left[n] / (df + 1))
  c(seen, mean(abs(t[-n]) >= if (loose > 1e-9) abs(seen) * (1 - loose) - loose else abs(seen) * (1 - 1e-9)))
}

each_level <- function(y, order, use, out, lower) {  # means by one regression, their pairs, what may be said of middle and end
  ridden <- sort(unique(order[use])); ridden <- ridden[base::order(levels_of[ridden + 1])]; k <- length(ridden)
  N <- nuisance(use, out)[, -1, drop = FALSE]
  X <- cbind(outer(order[use], ridden, "==") + 0, sweep(N, 2, colMeans(N)))
  inverse <- solve(crossprod(X)); fitted <- inverse %*% crossprod(X, y[use] - mean(y[use]))
  df <- sum(use) - ncol(X); sd <- sqrt(sum((y[use] - mean(y[use]) - X %*% fitted)^2) / df)
  m <- fitted[1:k]; V <- inverse[1:k, 1:k]; error <- sd * sqrt(outer(diag(V), diag(V), "+") - 2 * V)
  alone <- sd * sqrt(diag(V)); together <- qtukey_(0.95, k, df) / sqrt(2); sign <- if (lower) 1 else -1
  means <- cbind(m + mean(y[use]), alone, m + mean(y[use]) - qt(0.975, df) * alone, m + mean(y[use]) + qt(0.975, df) * alone)
  both <- combn(k, 2); d <- m[both[2, ]] - m[both[1, ]]; e <- error[t(both)]
  best <- if (k > 2) 1 + which.min(sign * m[2:(k - 1)]) else 1
  far <- if (setups == 3) qt(0.95, df) else together
  beats <- k == setups && all(sign * (m[c(1, k)] - m[best]) > far * error[best, c(1, k)])
  list(letters = LETTERS[ridden + 1], means = means, pairs = both, between = cbind(d, d - together * e, d + together * e),
       middle = if (beats) levels_of[ridden[best] + 1] else NA, first = levels_of[ridden[which.min(sign * m)] + 1])
}

qtukey_ <- function(level, k, df) uniroot(function(q) ptukey(q, k, df) - level, c(0.1, 500), tol = 1e-13)$root

pairs <- if (setups > 1) combn(setups, 2) else NULL

many <- function(y, order, use, out) {           # p of any difference, then adjusted p of each pair
  Q <- qr.Q(qr(nuisance(use, out)))
  off <- function(v) v - Q %*% crossprod(Q, v)
  part <- rounding(y[use]); y <- off(y[use] - mean(y[use])); total <- sum(y^2)
  statistics <- function(z) {
    D <- off(sapply(1:(setups - 1), function(s) as.numeric(z[use] == s)))
    if (rcond(crossprod(D)) < 1e-9) return(rep(0, 1 + ncol(pairs)))  # cannot tell the setups apart
    inverse <- solve(crossprod(D)); effect <- inverse %*% crossprod(D, y)
    inside <- sum(crossprod(D, y) * effect)
    left <- sqrt(max(total - inside, total * 1e-15))
    apart <- apply(pairs, 2, function(p) {
      c <- (1:(setups - 1) == p[2] - 1) - (1:(setups - 1) == p[1] - 1)
      abs(sum(c * effect)) / sqrt(sum(c * (inverse %*% c)))
    })
    c(inside, apart / left)
  }
  seen <- statistics(order)
  loose <- max(1e-9, 2 * part * sqrt(length(y) / max(total - seen[1], total * 1e-15)))
  # All orders that differ only by renaming have one F and one largest |t|.
  one <- apply(Z, 1, function(z) !is.unsorted(unique(z)))
  all <- apply(Z[one, , drop = FALSE], 1, statistics)
  largest <- apply(all[-1, , drop = FALSE], 2, max)
  c(mean(sqrt(all[1, ]) >= sqrt(seen[1]) * (1 - loose)), sapply(seen[-1], function(t) mean(largest >= t * (1 - loose) - 1e-12)))
}

apart <- function(y, order, use, out, levels) {   # Tukey's and Kramer's interval of every pair, at each level
  N <- nuisance(use, out)
  X <- cbind(N, sapply(1:(setups - 1), function(s) as.numeric(order[use] == s)))
  X[, -1] <- scale(X[, -1], scale = FALSE); v <- y[use] - mean(y[use])
  R <- qr(X); df <- length(v) - ncol(X); s2 <- sum(qr.resid(R, v)^2) / df
  none <- s2 * df <= 1e-18 * length(v) * max(abs(y[use]))^2
  at <- ncol(N) + 2:setups - 1; unit <- chol2inv(qr.R(R))[base::order(R$pivot), base::order(R$pivot)][at, at, drop = FALSE]
  effect <- qr.coef(R, v)[at]
  q <- sapply(levels, qtukey_, setups, df) / sqrt(2)
  apply(pairs, 2, function(p) {
    c <- (1:(setups - 1) == p[2] - 1) - (1:(setups - 1) == p[1] - 1)
    if (none) rep(NA, 2 * length(levels)) else
      sum(c * effect) + as.vector(outer(c(-1, 1), q * sqrt(s2 * sum(c * (unit %*% c)))))
  })
}

sizes <- function(m) {                           # (z'Wy)^2 / (z'Wz y'Wy): of all orders, the ridden one last
  use <- m$use; Q <- qr.Q(qr(nuisance(use, m$out)))
  y <- m$y[use] - mean(m$y[use]); e <- y - Q %*% crossprod(Q, y); ss <- sum(e^2)
  z <- rbind(Z, order)[, use, drop = FALSE] - 0.5
  c <- rowSums(z^2) - rowSums((z %*% Q)^2)
  flat <- ss <= 1e-18 * sum(use) * max(abs(m$y[use]))^2
  if (flat) rep(0, nrow(z)) else ifelse(c > 1e-9, (z %*% e)^2 / (pmax(c, 1e-300) * ss), 0)
}

family <- function(measures) {                   # step-down maximum, or Holm where the stints differ
  same <- all(sapply(measures, function(m) identical(m$use, measures[[1]]$use)))
  if (steps) return(p.adjust(sapply(measures, function(m) two(m$y, order, m$use, m$out, FALSE)[2]), "holm"))
  if (setups > 2) return(p.adjust(sapply(measures, function(m) many(m$y, order, m$use, m$out)[1]), "holm"))
  R <- sapply(measures, sizes); n <- nrow(R)
  seen <- R[n, ]; R <- R[-n, , drop = FALSE]
  limit <- seen * (1 - 1e-9) - 1e-15
  if (!same) return(p.adjust(sapply(seq_along(seen), function(i) mean(R[, i] >= limit[i])), "holm"))
  ranks <- order_of(seen); adjusted <- numeric(length(seen)); before <- 0
  for (j in seq_along(ranks)) {
    rest <- ranks[j:length(ranks)]
    before <- adjusted[ranks[j]] <- max(before, mean(apply(R[, rest, drop = FALSE], 1, max) >= limit[ranks[j]]))
  }
  adjusted
}
along <- function(Y, use, out) {                 # differences, running sums, half the width of the band of these
  Q <- qr.Q(qr(nuisance(use, out))); off <- function(v) v - Q %*% crossprod(Q, v)
  w <- as.vector(off(order[use] - 0.5)); c0 <- sum(w^2); m <- ncol(Y)
  V <- off(sweep(Y[use, , drop = FALSE], 2, colMeans(Y[use, , drop = FALSE])))
  estimates <- as.vector(crossprod(V, w)) / c0
  E <- (V - outer(w, estimates)) %*% (+upper.tri(diag(m), diag = TRUE)); squares <- colSums(E^2)
  z <- Z[, use, drop = FALSE] - 0.5; c <- rowSums(z^2) - rowSums((z %*% Q)^2)
  largest <- apply(sweep((z %*% E)^2, 2, squares, "/"), 1, max)
  shares <- ifelse(c > 1e-9 * sum(use) / 4, largest / pmax(c, 1e-300), 0)
  k <- length(shares); half <- rep(NA_real_, m)  # too few orders have no band that holds
  if (k >= 200 || (stints == 8 && k == 50)) {
    share <- sort(shares, decreasing = TRUE)[floor(0.05 * k + 1e-9) + 1]
    half <- sqrt(share / (1 - share) * squares / c0)
  }
  list(estimates, cumsum(estimates), half)
}
order_of <- function(seen) base::order(-seen)

line <- function(name, numbers) {
  cat(name, ifelse(is.na(numbers), "NA", sprintf("%.17g", numbers)), sep = "\t"); cat("\n")
}

stints_of <- text("stints.csv"); laps <- text("laps.csv"); measures <- text("measures.csv")
order <- utf8ToInt(paste(stints_of$setup, collapse = "")) - 65
counted <- laps[laps$scored == "true" & laps$ridden == "true", ]
ridden <- sapply(stints_of$stint, function(s) any(counted$stint == s))
gone <- character(0)                             # recorded times with a void sector on their way are void like their laps
if (file.exists(file.path(folder, "timed.csv"))) {
  times <- text("timed.csv"); times <- times[times$counts == "recording" & times$void == "true", ]
  gone <- paste(times$measure, times$stint, times$lap_in_stint)
}
lost <- function(measure) counted$void != "" | paste(measure, counted$stint, counted$lap_in_stint) %in% gone
all_void <- function(v) sapply(stints_of$stint, function(s) any(counted$stint == s) && all(v[counted$stint == s]))
looked <- function(y, use, degree, summary, ratio) {  # smallest level at which a look, or the end, marks the ridden order
  rows <- text("looks.csv"); after <- as.integer(rows$after_stint); taken <- sort(unique(after))
  last <- rep(NA_real_, stints); days <- list()
  for (n in taken) {
    last[] <- NA
    mine <- rows[after == n & rows$value != "", ]
    for (s in unique(mine$stint)) {
      v <- as.numeric(mine$value[mine$stint == s]); if (ratio) v <- log(v)
      if (summary != "median") last[as.integer(s)] <- mean(v)
      else if (length(v) == sum(counted$stint == s)) last[as.integer(s)] <- median(v)
    }
    days <- c(days, list(list(share = n / stints, values = last)))
  }
  if (!(any(stints_of$in_the_day != "true") && any(rows$settled == "true"))) {
    end <- ifelse(use, y, NA); end[seq_len(max(taken))] <- last[seq_len(max(taken))]
    days <- c(days, list(list(share = 1, values = end)))
  }
  every <- Z[Z[, 1] == 0, , drop = FALSE]              # a mirror image gives the same
  own <- which(colSums(t(every) != if (order[1] == 0) order else 1 - order) == 0)
  ranked <- lapply(days, function(day) {
    at <- which(!is.na(day$values)); found <- rep(0, nrow(every))
    if (length(at) > degree + 1) {
      Q <- qr.Q(qr(outer((at - (stints + 1) / 2) / ((stints - 1) / 2), 0:degree, "^")))
      v <- day$values[at]; v <- v - mean(v); if (any(v != 0)) v <- v / max(abs(v))
      S <- every[, at, drop = FALSE] - 0.5; c <- length(at) / 4 - rowSums((S %*% Q)^2)
      e <- as.vector(v - Q %*% crossprod(Q, v)); told <- abs(as.vector(S %*% e))
      found <- ifelse(c > 1e-9 * length(at) / 4, told / sqrt(pmax(c, 1e-300)), 0)
    }
    by <- base::order(-found); gap <- -diff(found[by]) > 1e-9 * found[by[1]]
    list(share = day$share, by = by, group = cumsum(c(1, gap)))
  })
  marked <- function(level) {
    z <- qnorm(level / 2, lower.tail = FALSE); done <- rep(FALSE, nrow(every))
    for (look in ranked) {
      spent <- 2 * pnorm(z / sqrt(look$share), lower.tail = FALSE)
      room <- floor(2 * nrow(every) * spent + 1e-9) %/% 2 - sum(done)
      if (room > 0) {
        new <- cumsum(rowsum(as.integer(!done[look$by]), look$group)[, 1])
        fits <- which(new > room)[1]; fits <- if (is.na(fits)) length(new) else fits - 1
        full <- which(new >= room)[1]; if (!is.na(full)) fits <- min(fits, full)
        done[look$by[look$group <= fits]] <- TRUE
      }
      if (done[own]) return(TRUE)
    }
    FALSE
  }
  halved <- function(low, high) {
    while (high - low > 1e-12) { m <- (low + high) / 2; if (marked(m)) high <- m else low <- m }
    high
  }
  low <- 0; high <- 0.3
  if (!marked(high)) {
    low <- 0.3; high <- 1
    for (i in 1:27) { level <- 0.3 + 0.7 * i / 28; if (marked(level)) { high <- level; break }; low <- level }
  }
  p <- halved(low, high); least <- p; half <- 0.25 / nrow(every)
  for (i in 1:40) if (p - i * half > 0 && marked(p - i * half)) least <- p - i * half
  if (least == p) p else halved(max(0, least - half), least)
}
secondary <- list(); harmed <- list()
taken <- if (file.exists(file.path(folder, "taken_out.csv"))) text("taken_out.csv") else data.frame(measure = character(0), covariate = character(0), value = character(0))
looks <- if (file.exists(file.path(folder, "looks.csv"))) text("looks.csv") else NULL
stopped <- any(looks$settled == "true") && any(stints_of$in_the_day != "true")
watched <- measures$measure[measures$role == "watch for harm" & measures$worthwhile != ""]
for (measure in unique(rows$measure)) {
  mine <- rows[rows$measure == measure, ]
  use <- mine$value != ""
  if (!any(use)) next                            # nobody gave a value
  y <- as.numeric(ifelse(use, mine$value, "0"))
  own <- taken[taken$measure == measure, ]       # covariates: a stint that lacks one is masked
  covariates <- lapply(unique(own$covariate), function(c) as.numeric(own$value[own$covariate == c]))
  covered <- Reduce(`&`, lapply(covariates, function(x) !is.na(x)), rep(TRUE, stints))
  out <- list(degree = match(mine$drift[1], c("none", "line", "curve")) - 1, covariates = covariates)
  ratio <- mine$scale[1] == "ratio"
  v <- lost(measure); void <- all_void(v)
  # A median that lacks a lap for a void has no value, and does not count as missing.
  short <- sapply(stints_of$stint, function(s) {
    at <- counted$stint == s; any(v[at]) && any(!v[at] & counted[[measure]][at] != "")
  })
  there <- use[ridden & !void & covered & (use | !short)]
  primary <- measures$role[measures$measure == measure] == "primary"
  tested <- sum(!there) <= 0.3 * length(there) && (primary || !stopped)
  if (setups == 2 || steps) {
    size <- as.numeric(measures$worthwhile[measures$measure == measure])
    told <- measure %in% watched || steps && primary && !is.na(size)
    harm <- if (!told || !tested) NULL else if (ratio) log1p(size / 100) else size
    found <- two(y, order, use, out, ratio, harm)
    line(measure, found[1:6])
    if (length(found) > 6 && measure %in% watched) harmed[[measure]] <- found[7:10]
    else if (length(found) > 6) line(paste0(measure, ", against D"), found[7:10])
    if (steps) {
      bent <- bend(y, order, use, out); better <- measures$better[measures$measure == measure]
      line(paste0(measure, ", bend"), bent)
      told <- each_level(y, order, use, out, better == "lower"); back <- if (ratio) exp else identity
      for (i in seq_along(told$letters))
        line(paste0(measure, ", ", told$letters[i]), c(back(told$means[i, 1]), told$means[i, 2], back(told$means[i, 3:4])))
      for (i in seq_len(ncol(told$pairs)))
        line(paste0(measure, ", ", paste(told$letters[told$pairs[, i]], collapse = "-")), back(told$between[i, ]))
      if (primary && better != "neither") {
        plain <- two(y, order, use, out, FALSE)
        end <- if ((plain[1] < 0) == (better == "lower")) max(levels_of) else min(levels_of)
        line(paste0(measure, ", middle"), if (!is.na(bent[2]) && bent[2] <= 0.05 + 1e-12) told$middle else NA)
        line(paste0(measure, ", end"), if (plain[2] <= 0.05 + 1e-12 && told$first == end) end else NA)
      }
    }
    if (primary && length(looks) > 0) {
      of <- measures$summary[measures$measure == measure]
      line("session looks", looked(y, use, out$degree, if (is.null(of)) "mean" else of, ratio))
    }
  } else {
    found <- many(y, order, use, out)
    line(measure, found[1])
    ends <- apart(y, order, use, out, c(0.95, if (measure %in% watched) 1 - 0.05 / length(watched)))
    if (ratio) ends <- exp(ends)
    for (i in seq_len(ncol(pairs)))
      line(paste0(measure, ", ", LETTERS[pairs[1, i]], "-", LETTERS[pairs[2, i]]), c(found[1 + i], ends[, i]))
  }
  if (measures$role[measures$measure == measure] == "secondary" && tested)
    secondary[[measure]] <- list(y = y, use = use, out = out)
}
if (length(secondary) > 0) {
  p <- family(secondary)
  for (i in seq_along(p)) line(paste0(names(secondary)[i], ", adjusted"), p[i])
}
both <- sapply(harmed, function(p) min(1, 2 * min(p[1], p[4])))
holm <- if (length(both) > 0) p.adjust(both, "holm", length(watched))   # what was not tested counts with p = 1
for (measure in names(harmed)) line(paste0(measure, ", harm"), c(harmed[[measure]], both[[measure]], holm[[measure]]))
way <- if (file.exists(file.path(folder, "way.csv"))) text("way.csv") else NULL
for (part in unique(way$part)) {
  all <- way[way$part == part, ]; numbers <- unique(all$number)
  out <- list(degree = match(all$drift[1], c("none", "line", "curve")) - 1, covariates = list())
  columns <- lapply(numbers, function(i) all[all$number == i, ])
  columns <- columns[sapply(columns, function(r) r$tested[1] == "true" && any(r$value != ""))]
  if (length(columns) == 0) next
  units <- lapply(columns, function(r) list(y = as.numeric(ifelse(r$value == "", "0", r$value)), use = r$value != "", out = out))
  line(paste0("where ", part, ", adjusted"), family(units))
  use <- units[[1]]$use
  if (length(units) == length(numbers) && all(sapply(units, function(u) identical(u$use, use)))) {
    found <- along(sapply(units, function(u) u$y), use, out)
    for (i in 1:3) line(paste0("where ", part, c("", ", sums", ", bands")[i]), found[[i]])
  }
}
said <- ifelse(stints_of$in_the_day == "true", stints_of$guess, "")
if ((setups == 2 || steps) && any(said != "")) {  # right less wrong, of levels where they lay; guesses held fixed
  score <- ifelse(said %in% c("A", "low"), -1, ifelse(said %in% c("B", "high"), 1, 0))
  t <- sum(at[order + 1] * score); every <- as.vector(placed(Z) %*% score); same <- mean(abs(every - t) <= 1e-9)
  more <- mean(every > t + 1e-9); line("session guesses", c(more + same, more + same / 2, if (steps) t))
}
waits <- function(seconds) {                      # real swaps less dummy ones, then by setup: difference, p, mid-p
  use <- !is.na(seconds); at <- which(use); n <- length(at); v <- seconds[at]
  Q <- qr.Q(qr(cbind(1, at - mean(at)))); off <- function(y) y - Q %*% crossprod(Q, y)
  w <- as.vector(off(v - mean(v)))               # a constant and a straight line are taken out
  if (sum(w^2) <= 1e-18 * n * max(abs(v))^2) w <- 0 * w
  slack <- max(1e-9 * sqrt(sum(w^2)), 2 * rounding(v))
  share <- function(all, seen) c(mean(all >= seen - slack), mean(all > seen + slack) + mean(abs(all - seen) <= slack) / 2)
  X <- rbind(Z, order)[, at, drop = FALSE] != rbind(Z, order)[, at - 1, drop = FALSE]
  X <- X - 0.5; size <- rowSums(X^2) - rowSums((X %*% Q)^2); told <- as.vector(X %*% w)
  t <- ifelse(size > 1e-9 * n / 4, told / sqrt(pmax(size, 1e-300)), 0); m <- length(t)
  line("session waits", c(if (t[m] == 0) 0 else told[m] / size[m], share(t[-m], t[m])))
  apart <- function(z) {
    D <- off(sapply(1:(setups - 1), function(s) as.numeric(z[at] == s))); C <- crossprod(D)
    if (min(diag(C)) <= 1e-9 * n || rcond(C) < 1e-9) return(c(0, NA))  # cannot tell the setups apart
    effect <- solve(C, crossprod(D, w))
    c(sqrt(max(0, sum(crossprod(D, w) * effect))), diff(range(c(0, effect))))
  }
  seen <- apart(order)
  if (!is.na(seen[2])) line("session waits by setup", c(seen[2], share(apply(Z, 1, apart)[1, ], seen[1])))
}
uneven <- function(voids) {                      # share of orders whose voids fall at least as unevenly
  squares <- function(z) sum(sapply(0:(setups - 1), function(a) sum(voids[z == a]))^2)
  mean(apply(Z, 1, squares) >= squares(order))
}
if (file.exists(file.path(folder, "waits.csv"))) {
  timed <- text("waits.csv"); timed <- timed[timed$counts == "true", ]
  waited <- as.numeric(timed$wait[match(stints_of$stint, timed$stint)]); one <- which(!is.na(waited))
  if (length(one) >= 8 && length(unique(order[one] != order[one - 1])) == 2) waits(waited)
}
v <- lost(measures$measure[measures$role == "primary"])
line("session voids", uneven(all_void(v)))
line("session void laps", uneven(sapply(stints_of$stint, function(s) sum(v[counted$stint == s]))))
