#!/usr/bin/python3
"""Second opinion for occupant measures and risk functions: numpy and scipy on seeded random signals and loads.

Writes injury.json beside this script. Origin: HIC by brute force over every pair of samples (numpy), the 3 ms level by
scipy.optimize.brentq on the time above it, the viscous criterion with numpy.convolve, Nij and the tibia index with numpy,
risks with scipy.stats.norm.cdf, scipy.special.expit and scipy.stats.weibull_min.cdf (scipy and numpy are BSD-3-Clause; the
figures are ours to give away, MIT like the rest). Formulas and constants: standards quoted in docs/formulas.md. Signals are made
by the integer generator below, which InjuryReference.cs repeats bit for bit, so that only results need to be kept. Units: g, kN,
N·m, mm, s. Never regenerate from our own output.

    /usr/bin/python3 tests/reference/make_injury.py
"""
import json
import pathlib

import numpy as np
import scipy
from scipy.integrate import cumulative_trapezoid
from scipy.optimize import brentq
from scipy.special import expit
from scipy.stats import norm, weibull_min

RATES = (10000, 20000)
SIGNALS = 220
LOADS = 240


def draws(seed, count):
    """32-bit linear congruential generator (Numerical Recipes constants), 24 high bits as a number in [-0.5, 0.5)."""
    state = seed
    for _ in range(count):
        state = (1664525 * state + 1013904223) % 2**32
        yield (state >> 8) / 2**24 - 0.5


def signal(seed, count):
    """Random walk + noise; every operation exact or rounded once, in the order the C# repeats."""
    head = list(draws(seed, 2))
    walk_scale, noise_scale = (head[0] + 0.5) * 6, (head[1] + 0.5) * 10
    walk, values, numbers = 0.0, [], list(draws(seed + 1000003, 2 * count))
    for i in range(count):
        walk = walk + numbers[2 * i] * walk_scale
        values.append(walk + numbers[2 * i + 1] * noise_scale)
    return np.array(values)


def hic(a, rate, longest):
    """Every pair, no shortcut: value and the earliest maximising pair."""
    integral = cumulative_trapezoid(a, dx=1 / rate, initial=0)
    best = (-1.0, 0, 0)
    for first in range(len(a) - 1):
        last = np.arange(first + 1, min(len(a), first + longest + 1))
        length = (last - first) / rate
        values = length * ((integral[last] - integral[first]) / length) ** 2.5
        at = int(np.argmax(values))
        if values[at] > best[0]:
            best = (float(values[at]), first, int(last[at]))
    return best


def a3ms(a, rate):
    low, high = np.minimum(a[:-1], a[1:]), np.maximum(a[:-1], a[1:])

    def excess(level):
        part = np.clip((high - level) / np.where(high > low, high - low, 1), 0, 1)
        return np.sum(np.where(low > level, 1.0, part)) / rate - 0.003

    return brentq(excess, a.min(), a.max(), xtol=1e-15 * a.max(), rtol=1e-14, maxiter=500)


def viscous(x, rate, depth):
    pressed = -x / 1000
    speed = np.convolve(pressed, np.array([-1, 8, 0, -8, 1]) * rate / 12, mode="valid")
    inner = pressed[2:-2]
    return float(np.max(np.where(inner > 0, np.abs(1.3 * speed * inner / depth), 0)))


def nij(fz, fx, my, tension, compression, flexion, extension):
    moment = my - 0.01778 * fx * 1000
    return float(np.max(np.where(fz >= 0, fz / tension, -fz / compression) + np.where(moment >= 0, moment / flexion, -moment / extension)))


def case(seed):
    rate = RATES[seed % 2]
    count = 120 + (seed * 37) % 780
    x, y, z = (signal(3 * seed + k, count) for k in range(3))
    a = np.sqrt(x * x + y * y + z * z)
    return {
        "seed": seed, "rate": rate, "count": count, "last": float(z[-1]),
        "hic15": hic(a, rate, rate * 15 // 1000), "hic36": hic(a, rate, rate * 36 // 1000),
        "peak": float(a.max()), "a3ms": a3ms(a, rate),
        "viscousH3": viscous(x, rate, 0.229), "viscousHF": viscous(x, rate, 0.187),
        "nijH3": nij(x / 10, y / 10, z, 6.806, 6.160, 310, 135), "nijHF": nij(x / 10, y / 10, z, 4.287, 3.880, 155, 67),
        "indexH3": float(np.max(np.hypot(x, y) / 225 + np.abs(z) / 35.9)), "indexHF": float(np.max(np.hypot(x, y) / 115 + np.abs(z) / 22.9)),
    }


def curves():
    """Name and dummy as RiskFunctions has them, greatest load drawn, and the curve."""
    head = (2500, lambda x: norm.cdf((np.log(x) - 7.45231) / 0.73998))
    nij_curve = (3, lambda x: expit(1.9688 * x - 3.2269))
    return {
        "head.hic15 H3": head, "head.hic15 HF": head, "neck.nij H3": nij_curve, "neck.nij HF": nij_curve,
        "neck.force H3": (8, lambda x: expit(2.375 * x - 10.9745)), "neck.force HF": (8, lambda x: expit(3.770 * x - 10.958)),
        "chest.deflection H3": (100, lambda x: expit(1.568 * x**0.4612 - 10.5456)),
        "chest.deflection HF": (100, lambda x: expit(1.7212 * x**0.4612 - 10.5456)),
        "thigh.force H3": (20, lambda x: expit(0.5196 * x - 5.7949)), "thigh.force HF": (20, lambda x: expit(0.7619 * x - 5.7949)),
        "lowerleg.shaft H3": (2, lambda x: weibull_min.cdf(x, 1 / 0.2468, scale=np.exp(0.2728))),
        "lowerleg.ankle H3": (12, lambda x: expit(0.670 * x - 4.572)),
        "lowerleg.plateau H3": (12, lambda x: expit(0.8189 * x - 0.5204 - 0.0686 * 75)),
    }


def risks():
    result = {}
    for k, (name, (greatest, curve)) in enumerate(curves().items()):
        loads = [(d + 0.5) * greatest for d in draws(77 + k, LOADS)]
        result[name] = {"seed": 77 + k, "greatest": greatest, "last": loads[-1], "risks": [float(curve(load)) for load in loads]}
    return result


def main():
    document = {
        "origin": f"tests/reference/make_injury.py, scipy {scipy.__version__}, numpy {np.__version__}",
        "cases": [case(seed) for seed in range(1, SIGNALS + 1)],
        "risks": risks(),
    }
    target = pathlib.Path(__file__).with_name("injury.json")
    target.write_text(json.dumps(document, separators=(",", ":")) + "\n")
    print(target, target.stat().st_size)


if __name__ == "__main__":
    main()
