# The formulas again, in R, written from the papers and not from our source: a table of inputs on standard input, a table of
# answers on standard output. Base R only; run by against-r.test.ts where Rscript is there.
#
#   Rscript formulas.R < inputs.tsv > answers.tsv
#   Rscript formulas.R flchain > people.tsv      (age, sex, creatinine of survival::flchain)
options(digits = 17, warn = 2)
write.tsv <- function(table) write.table(format(table, digits = 17, trim = TRUE), sep = "\t", quote = FALSE, row.names = FALSE)

if (identical(commandArgs(trailingOnly = TRUE), "flchain")) {
  people <- survival::flchain[, c("age", "sex", "creatinine")]
  write.table(people, sep = "\t", quote = FALSE, row.names = FALSE)
  quit(status = 0)
}

d <- read.delim(file("stdin"), stringsAsFactors = FALSE)
female <- d$sex == "female"
mg <- d$umol / 88.4

# Cockcroft and Gault 1976, both printed forms.
clearance.umol <- (140 - d$age) * d$kg * ifelse(female, 1.04, 1.23) / d$umol
clearance.mg <- (140 - d$age) * d$kg * ifelse(female, 0.85, 1) / (72 * mg)

# CKD-EPI: Levey 2009 (without race factor), Inker 2021.
kappa <- ifelse(female, 0.7, 0.9)
low <- pmin(mg / kappa, 1)
high <- pmax(mg / kappa, 1)
egfr.2009 <- 141 * low^ifelse(female, -0.329, -0.411) * high^-1.209 * 0.993^d$age * ifelse(female, 1.018, 1)
egfr.2021 <- 142 * low^ifelse(female, -0.241, -0.302) * high^-1.200 * 0.9938^d$age * ifelse(female, 1.012, 1)

# Mosteller 1987, Du Bois 1916; KDIGO 2011; WHO; Devine 1974; Winter 2012.
mosteller <- sqrt(d$cm * d$kg / 3600)
dubois <- 0.007184 * d$cm^0.725 * d$kg^0.425
deindexed <- egfr.2021 * mosteller / 1.73
bmi <- d$kg / (d$cm / 100)^2
inches <- d$cm / 2.54
ideal <- ifelse(female, 45.5, 50) + 2.3 * (inches - 60)
adjusted <- ideal + 0.4 * (d$kg - ideal)

# Calcium adjusted for albumin; units.
calcium <- d$calcium + 0.02 * (40 - d$albumin)
vitamin.d <- d$ng * 2.496
pounds <- d$kg / 0.45359237

# Bone density (Looker 1998, femoral neck) and least significant change (ISCD).
t.score <- (d$density - 0.858) / 0.12
change.percent <- 100 * (d$later - d$density) / d$density
lsc <- 2.77 * d$precision
fall.percent <- 100 * (d$marker - d$marker.later) / d$marker

# Rates.
pump <- 60 * d$ml / d$minutes
drops <- (d$ml * d$set) %/% d$minutes

# National Early Warning Score 2 (Royal College of Physicians 2017), by cut points. Temperature comes in tenths.
band <- function(x, upto, points) points[findInterval(x, upto + 1) + 1]
breaths <- band(d$breaths, c(8, 11, 20, 24), c(3, 1, 0, 2, 3))
scale1 <- band(d$saturation, c(91, 93, 95), c(3, 2, 1, 0))
scale2 <- ifelse(d$saturation >= 93 & d$oxygen == 0, 0,
                 band(d$saturation, c(83, 85, 87, 92, 94, 96), c(3, 2, 1, 0, 1, 2, 3)))
saturation <- ifelse(d$scale == 2, scale2, scale1)
systolic <- band(d$systolic, c(90, 100, 110, 219), c(3, 2, 1, 0, 3))
pulse <- band(d$pulse, c(40, 50, 90, 110, 130), c(3, 1, 0, 1, 2, 3))
temperature <- band(d$tenths, c(350, 360, 380, 390), c(3, 1, 0, 1, 2))
news2 <- breaths + saturation + 2 * d$oxygen + systolic + pulse + ifelse(d$conscious == "A", 0, 3) + temperature

# Fever grade (CTCAE) of the same temperature, with the hours above 40.
fever <- ifelse(d$tenths < 380, 0, ifelse(d$tenths <= 390, 1, ifelse(d$tenths <= 400, 2, ifelse(d$hours > 24, 4, 3))))

write.tsv(data.frame(clearance.umol, clearance.mg, egfr.2009, egfr.2021, mosteller, dubois, deindexed, bmi, ideal, adjusted,
                     calcium, vitamin.d, pounds, t.score, change.percent, lsc, fall.percent, pump, drops, news2, fever))
