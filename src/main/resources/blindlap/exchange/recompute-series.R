arguments <- commandArgs(TRUE)
file <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
folder <- if (length(arguments) > 0) arguments[1] else dirname(file)
WHOLE <- 2^24; DRAWS <- 999999; OWN <- 100000    # so many combinations are walked; beyond, the program drew DRAWS, and this draws OWN
set.seed(1)
text <- function(...) read.csv(file.path(folder, ...), colClasses = "character", check.names = FALSE, encoding = "UTF-8")

sequences <- function(rule) {                   # the sequences of one block, one a row, 0 = A
  if (rule$patterns != "") return(t(sapply(sort(unique(strsplit(rule$patterns, " ")[[1]])), function(p) utf8ToInt(p) - 65L)))
  all <- as.matrix(expand.grid(rep(list(0:1), as.integer(rule$block))))
  all[2 * rowSums(all) == ncol(all), , drop = FALSE]
}
orders <- function(rule) {                      # all admissible orders of two setups, one a row
  one <- sequences(rule); all <- matrix(integer(0), 1, 0)
  for (b in seq_len(as.integer(rule$stints) / ncol(one))) {
    n <- nrow(all)
    all <- cbind(all[rep(seq_len(n), each = nrow(one)), , drop = FALSE], one[rep(seq_len(nrow(one)), times = n), , drop = FALSE])
  }
  keep <- rep(TRUE, nrow(all))
  if (rule$max_run != "") keep <- keep & apply(all, 1, function(z) max(rle(z)$lengths)) <= as.integer(rule$max_run)
  if (rule$min_trend_efficiency != "") {
    t <- seq_len(ncol(all)); t <- t - mean(t); y <- all - 0.5
    keep <- keep & 1 - (y %*% t)^2 / sum(t^2) / rowSums(y^2) >= as.numeric(rule$min_trend_efficiency) - 1e-9
  }
  all[keep, , drop = FALSE]
}

session <- function(row) {                      # the tables of one session; its letters go by the setups of the first plan
  stints <- text(row$folder, "stints.csv"); letters <- strsplit(row$setups, "")[[1]]
  measures <- text(row$folder, "measures.csv"); if (is.null(measures$summary)) measures$summary <- rep("mean", nrow(measures))
  own <- list(at = paste0("sessions/", row$number), pooled = row$becomes == "pooled", rider = tolower(trimws(row$rider)),
              setups = length(letters), order = match(stints$setup, letters) - 1, units = text(row$folder, "units.csv"),
              measures = measures, laps = text(row$folder, "laps.csv"))
  own$Z <- if (own$setups == 2) orders(text(row$folder, "rule.csv")) else NULL
  if (own$setups == 2 && letters[1] == "B") own$Z <- 1 - own$Z
  own
}
day <- function(s, name) {                      # one measure of one session: residuals, noise, and sums of every order over the noise
  units <- s$units[s$units$measure == name, ]; use <- units$value != ""; known <- sum(use)
  if (known == 0) return(NULL)
  t <- (seq_along(use) - (length(use) + 1) / 2) / ((length(use) - 1) / 2)
  Q <- qr.Q(qr(outer(t[use], 0:c(none = 0, line = 1, curve = 2)[[units$drift[1]]], "^")))
  off <- function(v) v - Q %*% crossprod(Q, v)
  raw <- as.numeric(units$value[use]); y <- as.vector(off(raw - mean(raw))); squares <- sum(y^2)
  d <- list(use = use, known = known, rider = s$rider, left = c(sum(s$order[use] == 0), sum(s$order[use] == 1)))
  if (s$setups > 2) {                           # how far each setup lies above the first, by least squares
    D <- off(sapply(seq_len(s$setups - 1), function(k) as.numeric(s$order[use] == k)))
    fit <- qr(D); d$above <- c(0, qr.coef(fit, y)); d$df <- known - ncol(Q) - s$setups + 1
    d$sd <- sqrt(sum(qr.resid(fit, y)^2) / d$df)
    return(d)
  }
  w <- as.vector(off(s$order[use] - 0.5)); c0 <- sum(w^2); d$df <- known - ncol(Q) - 1
  if (d$df < 1 || c0 <= 1e-9 * known || squares <= 1e-18 * known * max(abs(raw))^2) return(NULL)
  d$estimate <- sum(w * y) / c0; d$above <- c(0, d$estimate)
  d$sd <- sqrt(sum((y - d$estimate * w)^2) / d$df); d$error <- d$sd / sqrt(c0)
  noise <- squares / (known - ncol(Q)); d$information <- c0 / noise
  d$rest <- (squares - d$estimate^2 * c0) / noise
  z <- s$Z[, use, drop = FALSE] - 0.5
  d$a <- as.vector(z %*% y) / noise; d$b <- as.vector(z %*% w) / noise
  d$c <- (rowSums(z^2) - rowSums((z %*% Q)^2)) / noise
  d$a0 <- sum(w * y) / noise
  d
}
says <- function(s, wanted) {                   # what a session says of a measure beside the primary one, or NULL
  own <- s$measures[s$measures$measure == wanted$measure, ]
  fields <- c("kind", "unit", "scale", "better", "role", "summary")
  if (nrow(own) == 0 || any(own[fields] != wanted[fields])) return(NULL)
  size <- as.numeric(c(own$worthwhile, wanted$worthwhile))
  d <- day(s, wanted$measure)
  if (is.null(d) || !identical(size[1], size[2])) return(NULL)
  counted <- s$laps[s$laps$scored == "true" & s$laps$ridden == "true", ]
  state <- sapply(seq_along(d$use), function(i) {
    own <- counted[counted$stint == i, ]; void <- own$void != ""
    short <- !d$use[i] && any(void) && any(own[[wanted$measure]] != "" & !void)
    if (nrow(own) == 0 || all(void) || short) "" else if (d$use[i]) "known" else "missing"
  })
  if (10 * sum(state == "missing") <= 3 * sum(state != "")) d else NULL
}
curve <- function(days) {                       # one curve over all combinations of the days' orders, or over draws of them
  c0 <- sum(sapply(days, function(d) d$information)); s <- sqrt(c0)
  estimate <- sum(sapply(days, function(d) d$information * d$estimate)) / c0
  scale <- sqrt(sum(sapply(days, function(d) d$rest + (d$estimate - estimate)^2 * d$information)) / sum(sapply(days, function(d) d$known)) / c0)
  count <- prod(sapply(days, function(d) length(d$a))); sampled <- count > WHOLE
  a <- b <- c <- 0
  for (d in days) {
    if (sampled) {
      pick <- sample.int(length(d$a), OWN, TRUE)
      a <- a + d$a[pick] - estimate * d$b[pick]; b <- b + d$b[pick]; c <- c + d$c[pick]
    } else {
      a <- as.vector(outer(a, d$a - estimate * d$b, "+")); b <- as.vector(outer(b, d$b, "+")); c <- as.vector(outer(c, d$c, "+"))
    }
  }
  if (sampled) { a <- c(a, -a, 0, 0); b <- c(b, -b, c0, -c0); c <- c(c, c, c0, c0) }  # mirror images, and the order ridden
  known <- c > 1e-9 * c0; reach <- ifelse(known, s * sqrt(pmax(c, 0)), s); a[!known] <- 0; b[!known] <- 0
  same <- reach - b <= 1e-9 * reach
  k <- (-a / (reach - b))[!same]; k[abs(k) <= 1e-9 * scale] <- 0
  list(estimate = estimate, scale = scale, count = count, sampled = sampled, always = sum(same), knots = sort(estimate + k))
}
total <- function(x) x$always + length(x$knots)
tie <- function(x, shift) 1e-9 * max(x$scale, abs(shift - x$estimate))
above <- function(x, shift) {                   # one-sided p of "more than the shift"
  if (is.null(x$knots)) return(pt((x$estimate - shift) / x$error, x$df, lower.tail = FALSE))
  (x$always + sum(x$knots <= shift + tie(x, shift))) / total(x)
}
below <- function(x, shift) {
  if (is.null(x$knots)) return(pt((x$estimate - shift) / x$error, x$df))
  (x$always + sum(x$knots >= shift - tie(x, shift))) / total(x)
}
p_of <- function(x) min(1, 2 * min(above(x, 0), below(x, 0)))
interval <- function(x, level) {
  if (is.null(x)) return(NULL)
  if (is.null(x$knots)) return(x$estimate + c(-1, 1) * qt((1 + level) / 2, x$df) * x$error)
  j <- floor((1 - level) / 2 * total(x) + 1e-9) + 1 - x$always
  if (j > 0) x$knots[c(j, length(x$knots) - j + 1)] else NULL
}
mean_of <- function(means) {                    # several riders: the mean of their means, with its t
  k <- length(means); error <- if (k > 1) sd(means) / sqrt(k) else 0
  list(estimate = mean(means), error = error, df = k - 1, sampled = FALSE, tested = k >= 4 && error > 1e-12 * abs(mean(means)))
}

# Holding numbers against the answer
rows <- text("answer.csv"); answer <- setNames(rows$value, rows$number)
done <- character(0); wrong <- character(0)
is_ <- function(name, value, agrees = NULL) {   # one number: printed, and held against the answer
  done <<- c(done, name); there <- unname(answer[name])
  shown <- if (is.null(value)) "" else if (is.logical(value)) tolower(value) else if (is.numeric(value)) sprintf("%.17g", value) else value
  cat(name, shown, sep = "\t"); cat("\n")
  if (is.na(there)) return(wrong <<- c(wrong, paste(name, "is not in the answer; here", shown)))
  if (!is.null(agrees)) {
    if (there == "" || !agrees(as.numeric(there))) wrong <<- c(wrong, paste0(name, ": ", there, " in the answer is further from ", shown, " than draws can be"))
    return(invisible())
  }
  number <- is.numeric(value) && there != ""
  same <- if (number) abs(suppressWarnings(as.numeric(there)) - value) <= 1e-8 * max(1, abs(value)) else there == shown
  if (!isTRUE(same)) wrong <<- c(wrong, paste0(name, ": ", there, " in the answer, ", shown, " here"))
}
slack <- function(p) 5 * sqrt(max(p * (1 - p), 1 / OWN) * (1 / DRAWS + 1 / OWN))  # five standard errors of the draws of both sides
p_is <- function(name, p, sampled) is_(name, p, if (sampled) function(there) abs(there - p) <= slack(p))
interval_is <- function(name, x, level) {
  ends <- interval(x, level)
  if (is.null(ends)) return(is_(name, NULL))
  tail <- (1 - level) / 2
  is_(paste0(name, "/1"), ends[1], if (x$sampled) function(there) abs(above(x, there) - tail) <= slack(tail))
  is_(paste0(name, "/2"), ends[2], if (x$sampled) function(there) abs(below(x, there) - tail) <= slack(tail))
}
at_most <- function(p) p <= 0.05 + 1e-12
near_limit <- function(...) any(abs(c(...) - 0.05) <= slack(0.05))
verdict <- function(real, big, within) {
  if (within) { if (real) "real but small" else "no worthwhile difference" }
  else if (real && big) "real and worthwhile" else if (real) "not settled: direction known" else "not settled"
}
margin <- function(m) { size <- as.numeric(m$worthwhile); if (m$scale == "raw") size else log1p(size / 100) }

# The answer
first <- text("measures.csv"); if (is.null(first$summary)) first$summary <- rep("mean", nrow(first))
primary <- first[first$role == "primary", ]
listed <- text("sessions.csv"); listed <- listed[listed$folder != "", ]
sessions <- lapply(seq_len(nrow(listed)), function(i) session(listed[i, ]))
pooled <- Filter(function(s) s$pooled, sessions)
two <- length(pooled) > 0 && pooled[[1]]$setups == 2
stated <- function(name) { v <- unname(answer[name]); if (is.na(v)) "" else v }
is_("pooled_sessions", length(pooled))
if (two) for (s in sessions) {
  own <- curve(list(day(s, primary$measure)))
  is_(paste0(s$at, "/estimate"), own$estimate)
  if (nrow(s$Z) <= 2^22) interval_is(paste0(s$at, "/interval_95"), own, 0.95)
}
days <- lapply(pooled, function(s) day(s, primary$measure))
riders <- unique(sapply(pooled, function(s) s$rider)); known <- NULL; rankings <- NULL
field <- function(days, name) sapply(days, function(d) d[[name]])
for (i in seq_along(riders)) {
  own <- Filter(function(d) d$rider == riders[i], days); n <- length(own); at <- paste0("riders/", i, "/")
  done <- c(done, paste0(at, "rider")); is_(paste0(at, "sessions"), n)
  df <- field(own, "df"); noise <- sqrt(sum(df * field(own, "sd")^2) / sum(df))
  lies <- rowMeans(matrix(sapply(own, function(d) d$above), ncol = n))
  if (two) {
    v <- field(own, "error")^2
    mine <- list(estimate = mean(field(own, "estimate")), error = sqrt(sum(v)) / n, df = sum(v)^2 / sum(v^2 / df), sampled = FALSE)
    known <- rbind(known, c(mine$estimate, mine$error, mean(field(own, "known")), noise))
    is_(paste0(at, "estimate"), mine$estimate); is_(paste0(at, "standard_error"), mine$error)
    interval_is(paste0(at, "interval_95"), if (n == 1) curve(own) else mine, 0.95)
  }
  is_(paste0(at, "noise_sd"), noise)
  for (k in seq_along(lies)) is_(paste0(at, "above_first/", k), lies[k])
  rankings <- rbind(rankings, lies)
}
d <- margin(primary)
if (two) {
  these <- curve(days); at <- "these_riders_on_these_days/"
  is_(paste0(at, "estimate"), these$estimate)
  interval_is(paste0(at, "interval_95"), these, 0.95); interval_is(paste0(at, "interval_90"), these, 0.90)
  p_is(paste0(at, "p"), p_of(these), these$sampled)
  is_(paste0(at, "count"), these$count); is_(paste0(at, "sampled"), these$sampled)
  if (these$sampled) {
    done <- c(done, paste0(at, c("draws", "seed")))  # how the program drew
    p <- as.numeric(answer[paste0(at, "p")]); is_(paste0(at, "p_error"), sqrt(p * (1 - p) / DRAWS))
  }
  if (length(riders) == 1 && stated("verdict") != "" && !is.na(d)) {
    bounds <- c(p_of(these), if (these$estimate > 0) above(these, d) else below(these, -d), below(these, d), above(these, -d))
    word <- verdict(at_most(bounds[1]), at_most(bounds[2]), at_most(max(bounds[3:4])))
    is_("verdict", if (these$sampled && near_limit(bounds)) stated("verdict") else word)
  }
}
reml <- function(y, v) {                        # weighted mean and its error where the restricted likelihood is largest
  at <- function(tau) {
    w <- 1 / (v + tau); m <- sum(w * y) / sum(w); r <- (y - m)^2
    list(value = -0.5 * (sum(log(v + tau)) + log(sum(w)) + sum(w * r)), mean = m, error = 1 / sqrt(sum(w)),
         slope = -0.5 * (sum(w) - sum(w^2) / sum(w) - sum(w^2 * r)), root = sqrt(sum(w * r) / (length(y) - 1)))
  }
  grid <- c(0, (var(y) + mean(v)) * 10^(1:320 / 20 - 10)); best <- which.max(sapply(grid, function(t) at(t)$value))
  low <- if (best <= 2) 0 else grid[best - 1]; high <- grid[min(best + 1, length(grid))]
  if (low == 0 && at(0)$slope <= 0) return(at(0))
  for (i in 1:300) { half <- (low + high) / 2; if (at(half)$slope > 0) low <- half else high <- half }
  at((low + high) / 2)
}
if (two && length(riders) > 1) {
  at <- "riders_in_general/"
  uneven <- any(apply(known[, 3:4], 2, max) > 3 * apply(known[, 3:4], 2, min) * (1 + 1e-9))
  general <- mean_of(known[, 1])
  if (uneven) { r <- reml(known[, 1], known[, 2]^2); general$estimate <- r$mean; general$error <- r$error * max(1, r$root) }
  is_(paste0(at, "method"), if (uneven) "modified hartung knapp" else "equal weight t")
  is_(paste0(at, "riders"), length(riders)); is_(paste0(at, "estimate"), general$estimate)
  interval_is(paste0(at, "interval_95"), general, 0.95); interval_is(paste0(at, "interval_90"), general, 0.90)
  if (stated("verdict") != "" && !is.na(d)) {
    wide <- interval(general, 0.95); thick <- interval(general, 0.90)
    is_("verdict", if (wide[1] == wide[2]) "no variation" else
      verdict(wide[1] > 0 || wide[2] < 0, thick[1] > d || thick[2] < -d, thick[1] > -d && thick[2] < d))
  }
}
if (!two && length(riders) > 1 && any(startsWith(names(answer), "agreement/"))) {
  ranks <- t(apply(rankings, 1, rank)); k <- ncol(ranks); centred <- ranks - (k + 1) / 2
  chi <- (k - 1) * sum(colSums(centred)^2) / sum(centred^2)
  is_("agreement/kendall_w", chi / nrow(ranks) / (k - 1)); is_("agreement/p", pchisq(chi, k - 1, lower.tail = FALSE))
}
together <- function(measures) {                # p from (sum of a)^2 over sum of c; step-down maximum of several measures jointly
  there <- sapply(measures, function(m) !sapply(m, is.null)); there <- matrix(there, ncol = length(measures))
  at <- which(rowSums(there) > 0)
  size <- sapply(at, function(s) length(measures[[which(there[s, ])[1]]][[s]]$a))
  sampled <- prod(size) > WHOLE
  picks <- if (sampled) lapply(size, function(n) sample.int(n, OWN, TRUE)) else NULL
  R <- sapply(seq_along(measures), function(m) {
    a <- c <- 0; a0 <- c0 <- 0
    for (i in seq_along(at)) {
      d <- measures[[m]][[at[i]]]; none <- is.null(d)
      da <- if (none) numeric(size[i]) else d$a; dc <- if (none) numeric(size[i]) else d$c
      if (!none) { a0 <- a0 + d$a0; c0 <- c0 + d$information }
      if (sampled) { a <- a + da[picks[[i]]]; c <- c + dc[picks[[i]]] }
      else { a <- as.vector(outer(a, da, "+")); c <- as.vector(outer(c, dc, "+")) }
    }
    c(ifelse(c > 0, a^2 / c, 0), a0^2 / c0)     # the order ridden comes last
  })
  n <- nrow(R); seen <- R[n, ]; limit <- seen * (1 - 1e-9) - 1e-18
  if (!sampled) R <- R[-n, , drop = FALSE]
  ranks <- order(-limit); adjusted <- numeric(length(seen)); before <- 0
  for (j in seq_along(ranks)) {
    rest <- ranks[j:length(ranks)]; largest <- R[, rest[1]]
    for (m in rest[-1]) largest <- pmax(largest, R[, m])
    before <- adjusted[ranks[j]] <- max(before, mean(largest >= limit[ranks[j]]))
  }
  adjusted
}
others <- list()
if (two) for (i in seq_len(nrow(first))) if (first$role[i] != "primary") {
  told <- lapply(pooled, says, wanted = first[i, ])
  if (!all(sapply(told, is.null))) others <- c(others, list(list(wanted = first[i, ], says = told)))
}
watched <- sum(first$role == "watch for harm" & first$worthwhile != "")
family <- list(); harms <- list()
for (i in seq_along(others)) {
  at <- paste0("other_measures/", i, "/"); wanted <- others[[i]]$wanted
  own <- Filter(Negate(is.null), others[[i]]$says)
  if (length(riders) == 1) { found <- curve(own); found$tested <- TRUE } else {
    means <- tapply(field(own, "estimate"), field(own, "rider"), mean)
    found <- mean_of(as.vector(means[intersect(riders, names(means))]))
  }
  is_(paste0(at, "measure"), wanted$measure); is_(paste0(at, "role"), wanted$role); is_(paste0(at, "sessions"), length(own))
  is_(paste0(at, "estimate"), found$estimate)
  interval_is(paste0(at, "interval_95"), if (found$tested) found, 0.95)
  interval_is(paste0(at, "interval_90"), if (found$tested) found, 0.90)
  if (!found$tested) next
  p_is(paste0(at, "p"), p_of(found), found$sampled)
  if (wanted$role == "secondary") family <- c(family, list(list(at = at, says = others[[i]]$says, p = p_of(found))))
  if (wanted$role == "watch for harm" && wanted$worthwhile != "") {
    size <- margin(wanted)
    fewest <- if (length(riders) == 1) min(rowSums(sapply(own, function(d) d$left))) else 3
    harms <- c(harms, list(list(at = at, up = above(found, size), down = below(found, -size), more = below(found, size), less = above(found, -size),
                                fewest = fewest, better = wanted$better, sampled = found$sampled)))
  }
}
if (length(family) > 0) {
  measures <- lapply(family, function(f) f$says)
  same <- all(sapply(seq_along(pooled), function(i) length(unique(lapply(Filter(Negate(is.null), lapply(measures, function(m) m[[i]])), function(d) d$use))) <= 1))
  adjusted <- if (length(riders) > 1) p.adjust(sapply(family, function(f) f$p), "holm") else
    if (same) together(measures) else p.adjust(sapply(measures, function(m) together(list(m))), "holm")
  large <- length(riders) == 1 && prod(sapply(pooled, function(s) nrow(s$Z))) > WHOLE
  for (i in seq_along(family)) p_is(paste0(family[[i]]$at, "p_adjusted"), adjusted[i], large)
}
both <- sapply(harms, function(h) min(1, 2 * min(h$up, h$down)))
holm <- if (length(both) > 0) p.adjust(both, "holm", watched)
for (i in seq_along(harms)) {
  h <- harms[[i]]; at <- paste0(h$at, "harm/")
  p_is(paste0(at, "p"), both[i], h$sampled); p_is(paste0(at, "p_adjusted"), holm[i], h$sampled)
  said <- function(shown, out) if (shown) "harm of D or more shown" else if (out) "harm of D or more ruled out" else "not settled"
  more <- said(holm[i] <= 0.05 + 1e-9 && h$up <= h$down, h$fewest >= 3 && at_most(h$more))
  less <- said(holm[i] <= 0.05 + 1e-9 && h$up > h$down, h$fewest >= 3 && at_most(h$less))
  words <- if (h$better == "higher") c(less, more) else c(more, less)
  close <- h$sampled && near_limit(holm[i], h$more, h$less)
  for (j in 1:2) {
    name <- paste0(at, c("second_against_first", "first_against_second")[j])
    is_(name, if (close) stated(name) else words[j])
  }
}
left <- setdiff(names(answer), done)
if (length(left) > 0) wrong <- c(wrong, paste(left, "is in the answer, and not computed here"))
for (each in wrong) cat("DIFFERS:", each, "\n")
cat(length(done), "numbers and words computed again,", length(wrong), "differ\n")
quit(status = if (length(wrong) > 0) 1 else 0)
