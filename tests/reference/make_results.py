#!/usr/bin/python3
"""352 historic results and what R says of them, class by class.

Writes results.csv (the file a laboratory would bring) and results.json (counts, means, sample standard deviations, medians and type 7 quartiles by R; the
correlations and least-squares lines of two measures by R) beside this script. Origin: random draws of numpy (BSD-3-Clause), invented vehicles; R is Debian's
r-base-core (GPL, run as a program alone). Licence of the figures: MIT like the rest. Convention: one driver (position 1) a test, some tests with a passenger
(position 3); class statistics are over drivers. Every hundredth cell is empty. The file has a byte-order mark, CRLF line ends and quoted fields. Never
regenerate from our own output.

    /usr/bin/python3 tests/reference/make_results.py
"""
import csv
import io
import json
import pathlib
import subprocess

import numpy as np

HERE = pathlib.Path(__file__).parent
COUNT = 352
CLASSES = ["delivery-van", "compact-electric", "crew-cab-pickup", "city-quadricycle"]
FIXED = "test,vehicle,make,model,class,modelYear,procedure,date,position,dummy,testMassKg".split(",")
MEASURES = {
    "head.hic15": (420, 160), "head.a3ms": (58, 12), "neck.nij": (0.45, 0.14), "neck.tension": (1.7, 0.5), "chest.deflection": (33, 8),
    "chest.viscous": (0.35, 0.15), "femur.left.compression": (3.4, 1.3), "femur.right.compression": (3.1, 1.2), "tibia.left.upper.index": (0.6, 0.2),
    "vehicle.deltav": (72, 3), "vehicle.peak": (33, 6), "structure.footwell.rearward": (95, 60), "structure.pedal-brake.upward": (10, 25),
    "clearance.knee.residual": (40, 35), "risk.head": (0.06, 0.02), "conduct.speed": (64.4, 0.4),
}

R = r"""
d <- read.csv(file("stdin"), check.names = FALSE, colClasses = c(test = "character", modelYear = "numeric"))
num <- function(x) ifelse(is.na(x), "null", sprintf("%.17g", x))
one <- function(x) { x <- x[!is.na(x)]; q <- quantile(x, c(.25, .5, .75), type = 7, names = FALSE)
  sprintf('{"count":%d,"mean":%s,"sd":%s,"lowerQuartile":%s,"median":%s,"upperQuartile":%s}', length(x), num(mean(x)), num(sd(x)), num(q[1]), num(median(x)), num(q[3])) }
drivers <- d[d$position == 1, ]
measures <- names(d)[-(1:11)]
part <- function(c) { k <- drivers[drivers$class == c, ]
  sprintf('"%s":{%s}', c, paste(sapply(measures, function(m) sprintf('"%s":%s', m, one(k[[m]]))), collapse = ",")) }
x <- drivers[["structure.footwell.rearward"]]; y <- drivers[["tibia.left.upper.index"]]; both <- !is.na(x) & !is.na(y); f <- coef(lm(y[both] ~ x[both]))
cat(sprintf('{"classes":{%s},"pair":{"count":%d,"pearson":%s,"spearman":%s,"intercept":%s,"slope":%s}}\n', paste(sapply(sort(unique(d$class)), part), collapse = ","),
  sum(both), num(cor(x[both], y[both])), num(cor(x[both], y[both], method = "spearman")), num(f[1]), num(f[2])))
"""


def rows(random):
    for i in range(COUNT):
        kind = CLASSES[i % 7 % len(CLASSES)]
        year = 2012 + int(random.integers(0, 16))
        make, model = ["Tarnbrook", "Velsey", "Quillon", "Dunmere", "Askervold"][i % 5], f"Row {i // 4:02d}, \"long\"" if i % 9 == 0 else f"Mod\u00e8le {i // 4:02d}"
        head = [f"HR-{1000 + i}", f"row-{i:03d}", make, model, kind, year, "offset-frontal-64" if i % 10 else "offset-frontal-56", f"{year}-{1 + i % 12:02d}-{1 + i % 28:02d}"]
        mass = float(np.round(random.normal(1700, 200), 1))
        vehicle = {code: value(random, code) for code in MEASURES if of_vehicle(code)}
        for position in [1, 3] if i % 6 == 0 else [1]:
            cells = [vehicle[code] if of_vehicle(code) and position == 1 else "" if of_vehicle(code) else value(random, code) for code in MEASURES]
            yield head + [position, "H3" if position == 1 else "HF", mass] + ["" if random.integers(0, 100) == 0 else cell for cell in cells]


def of_vehicle(code):
    return code.split(".")[0] in ("vehicle", "structure", "clearance", "conduct")


def value(random, code):
    mean, sd = MEASURES[code]
    drawn = random.normal(mean, sd)
    return repr(float(drawn if code.startswith(("structure.pedal", "clearance")) else abs(drawn)))


def main():
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(FIXED + list(MEASURES))
    writer.writerows(rows(np.random.default_rng(352)))
    (HERE / "results.csv").write_bytes(b"\xef\xbb\xbf" + text.getvalue().encode("utf-8"))
    answer = subprocess.run(["Rscript", "--vanilla", "-e", R], input=text.getvalue(), capture_output=True, text=True, check=True)
    (HERE / "results.json").write_text(json.dumps(json.loads(answer.stdout), indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
