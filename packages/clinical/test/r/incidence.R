# Incidence beside competing ends of all of survival::mgus2 (1,384 people, months), with the limits survfit gives by default.
#
#   Rscript incidence.R > table.tsv
suppressMessages(library(survival))
options(digits = 17, warn = 2)
d <- transform(mgus2, days = ifelse(pstat == 0, futime, ptime),
  end = factor(ifelse(pstat == 1, 1, 2 * death), 0:2, c("still under way", "pcm", "death")))
fit <- survfit(Surv(days, end) ~ 1, d)
s <- summary(fit, times = sort(unique(d$days[d$end != "still under way"])))
steps <- do.call(rbind, lapply(2:3, function(j) data.frame(row = "step", days = s$time, end = fit$states[j],
  share = s$pstate[, j], error = s$std.err[, j], lower = s$lower[, j], upper = s$upper[, j])))
people <- data.frame(row = "person", days = d$days, end = d$end, share = 0, error = 0, lower = 0, upper = 0)
write.table(format(rbind(people, steps), digits = 17, trim = TRUE), sep = "\t", quote = FALSE, row.names = FALSE)
