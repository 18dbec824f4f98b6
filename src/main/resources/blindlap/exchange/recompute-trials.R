arguments <- commandArgs(TRUE)
script <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
folder <- if (length(arguments) > 0) arguments[1] else dirname(script)
text <- function(f) read.csv(file.path(folder, f), colClasses = "character", check.names = FALSE, encoding = "UTF-8")
rule <- text("rule.csv"); stints <- text("stints.csv"); laps_of <- text("laps.csv"); helper <- text("helper.csv")
plan <- paste(readLines(file.path(folder, "plan.json"), encoding = "UTF-8", warn = FALSE), collapse = "")
key <- paste(readLines(file.path(folder, "key.json"), encoding = "UTF-8", warn = FALSE), collapse = "")
own <- regmatches(plan, regexpr('"telling_run" *: *\\{.*', plan))        # the run's fields stand in its object
field <- function(name) {
  found <- regmatches(own, regexpr(paste0('"', name, '" *: *("[^"]*"|[0-9.]+)'), own))
  gsub('^"|"$', "", sub(paste0('"', name, '" *: *'), "", found))
}
task <- sub(" ", "-", field("task")); matters <- as.numeric(field("matters")); laps <- as.integer(rule$trial)
chance <- if (task == "triangle") 1 / 3 else 1 / 2
null <- !grepl('"null_run" *: *null', key)
more <- if (task == "two-choice") {             # which of two setups was declared to have more
  setups <- regmatches(plan, regexpr('"setups" *: *\\[\\{.*', plan))
  a <- gsub('.*: *"|"$', "", regmatches(setups, regexpr('"name" *: *"[^"]*"', setups)))
  if (field("more") == a) "A" else "B"
} else NA
first <- seq(1, nrow(stints), by = laps)
ridden <- sapply(stints$stint, function(s) {
  l <- laps_of[laps_of$stint == s, ]; nrow(l) == 1 && l$ridden == "true" && l$void == ""
})
fitted <- helper$fitted[match(stints$stint, ifelse(helper$fitted == "", NA, helper$stint))]
wrong <- !null & !is.na(fitted) & fitted != stints$setup
differed <- function(s) {                       # the lap that was to be named, from 1 within its trial
  if (task == "two-choice") return(match(more, s))
  if (task == "duo-trio") return(if (s[2] != s[1]) 2 else 3)
  which(sapply(s, function(x) sum(s == x)) == 1)[[1]]
}
trials <- lapply(first, function(i) i:(i + laps - 1))
answered <- sapply(trials, function(t) all(ridden[t]) && !(stints$guess[t[laps]] %in% c("", "-")))
clean <- sapply(trials, function(t) !any(wrong[t]) && all(stints$blind_broken[t] == ""))
correct <- sapply(trials, function(t) differed(stints$setup[t]) == suppressWarnings(as.integer(stints$guess[t[laps]])))
told <- function(share) pmax(0, (share - chance) / (1 - chance))
right <- function(d) switch(task,               # share of right answers at a distance d'
  "two-choice" = pnorm(d / sqrt(2)),
  "duo-trio" = { a <- pnorm(d / sqrt(2)); b <- pnorm(d / sqrt(6)); 1 - a - b + 2 * a * b },
  "triangle" = integrate(function(z) 2 * (pnorm(-z * sqrt(3) + d * sqrt(2 / 3)) + pnorm(-z * sqrt(3) - d * sqrt(2 / 3))) * dnorm(z),
                         0, 12, rel.tol = 1e-12, abs.tol = 1e-14)$value)
distance <- function(share) {
  if (share >= 1) return(NA)
  if (share <= chance) return(0)
  uniroot(function(d) right(d) - share, c(0, 40), tol = 1e-12)$root
}
limits <- function(k, n, out)                   # Clopper and Pearson: out is what is left on either side
  c(if (k == 0) 0 else qbeta(out, k, n - k + 1), if (k == n) 1 else qbeta(1 - out, k + 1, n - k))
line <- function(name, numbers) cat(paste(c(name, sapply(numbers, function(v) if (is.character(v)) v else if (is.na(v)) "NA" else sprintf("%.17g", v))), collapse = "\t"), "\n", sep = "")
count <- function(name, which) {
  n <- sum(which); k <- sum(correct[which])
  p <- pbinom(k - 1, n, chance, lower.tail = FALSE); fewer <- pbinom(k, n, chance); ends <- limits(k, n, 0.05)
  least <- which(pbinom(0:n - 1, n, chance, lower.tail = FALSE) <= 0.05)
  verdict <- if (length(least) == 0) "this plan could not show anything" else if (k >= least[1] - 1) "can tell" else
    if (fewer > 0.05 && told(ends[2]) < matters) "cannot tell as often as would matter" else "not settled"
  line(name, c(n, k, p, fewer))
  line(paste0(name, ", really told"), c(told(k / n), told(ends)))
  line(paste0(name, ", distance"), sapply(c(k / n, limits(k, n, 0.025)), distance))
  line(paste0(name, ", verdict"), verdict)
}
count("trials", answered)
if (any(answered & !clean) && any(answered & clean)) count("without", answered & clean)
