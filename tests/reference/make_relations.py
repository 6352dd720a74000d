#!/usr/bin/python3
"""scipy as a second opinion for Analysis/Relations, and NIST's one-way sets.

scipy.stats.pearsonr (with its Fisher interval), spearmanr and theilslopes on seeded points, run with scipy 1.10.1. The points come from the
32-bit generator of Numerical Recipes (24 high bits), so a test makes the same ones bit for bit: y = a*x + noise, each rounded to a step so
that ties occur. The interval of Spearman's coefficient is formed here by the formula of Bonett and Wright (2000, from memory): scipy has none.
The NIST StRD sets (analysis of variance, public domain) are read from the copies that scipy's own tests carry. Writes relations.json beside itself.
"""
import json
import math
import pathlib

import numpy as np
import scipy.stats as st

NIST = pathlib.Path(st.__file__).parent / "tests" / "data" / "nist_anova"


def draws(seed, count):
    state, out = seed, []
    for _ in range(count):
        state = (1664525 * state + 1013904223) % 2**32
        out.append((state >> 8) / 16777216.0 - 0.5)
    return out


def points(seed, count, slope, step):
    numbers = draws(seed, 2 * count)
    x = [math.floor(200 * numbers[2 * i] / step + 0.5) * step for i in range(count)]
    y = [math.floor((slope * x[i] + 90 * numbers[2 * i + 1]) / step + 0.5) * step for i in range(count)]
    return x, y


cases = []
for seed, count, slope, step in [(11, 5, 0, 0.25), (2, 12, -1, 0.25), (3, 40, 0.25, 8), (4, 40, 0, 0.015625), (5, 300, 2, 1), (6, 601, 0.125, 0.5),
                                 (7, 1500, -0.5, 0.0078125), (8, 2500, 0.25, 4), (9, 3000, 0, 0.0009765625)]:
    x, y = points(seed, count, slope, step)
    pearson = st.pearsonr(x, y)
    interval = pearson.confidence_interval(0.95)
    rho, rho_p = st.spearmanr(x, y)
    s = math.sqrt((1 + rho * rho / 2) / (count - 3))
    z, q = math.atanh(rho), st.norm.ppf(0.975)
    slopes = st.theilslopes(y, x, 0.95)
    cases.append({
        "seed": seed, "count": count, "slope": slope, "step": step, "sumX": sum(x), "sumY": sum(y),
        "pearson": [pearson.statistic, interval.low, interval.high, pearson.pvalue],
        "spearman": [float(rho), math.tanh(z - q * s), math.tanh(z + q * s), float(rho_p)],
        "theilSen": [float(v) for v in slopes]})

nist = []
for name in ["SiRstv", "AtmWtAg", "SmLs01", "SmLs02", "SmLs03", "SmLs04", "SmLs05", "SmLs06"]:
    lines = (NIST / f"{name}.dat").read_text().splitlines()
    between = next(line.split() for line in lines if line.startswith("Between"))
    within = next(line.split() for line in lines if line.startswith("Within"))
    deviation = next(lines[i + 1].split() for i, line in enumerate(lines) if "Certified Residual" in line)
    start = next(i for i, line in enumerate(lines) if line.startswith("Data:") and i > 50) + 1
    rows = [line.split() for line in lines[start:] if len(line.split()) == 2]
    groups = {}
    for group, value in rows:
        groups.setdefault(group, []).append(value)
    nist.append({
        "name": name, "between": between[-3], "within": within[-2], "f": between[-1], "residualSd": deviation[-1],
        "groups": [" ".join(values) for values in groups.values()] if len(rows) < 300 else None,
        "probability": None, "rows": len(rows)})

# Internally studentized residuals by the hat matrix of numpy: r / (s sqrt(1 - h)), s with n - 2.
studentized = []
for seed, count, slope, step in [(21, 8, 0.5, 1), (22, 40, -0.25, 0.5), (23, 200, 0, 4)]:
    x, y = points(seed, count, slope, step)
    design = np.column_stack([np.ones(count), x])
    hat = design @ np.linalg.inv(design.T @ design) @ design.T
    residual = np.array(y) - hat @ np.array(y)
    s = math.sqrt(float(residual @ residual) / (count - 2))
    studentized.append({"seed": seed, "count": count, "slope": slope, "step": step, "residuals": [float(v) for v in residual / (s * np.sqrt(1 - np.diag(hat)))]})

curve = [[f, a, b, float(st.f.sf(f, a, b))] for f, a, b in [(0.5, 1, 10), (1.18046237440255, 4, 20), (4, 2, 27), (21, 8, 180), (60, 3, 400)]]
out = {"cases": cases, "nist": [n for n in nist if n["groups"]], "survival": curve, "studentized": studentized}
pathlib.Path(__file__).with_name("relations.json").write_text(json.dumps(out, indent=1) + "\n")
