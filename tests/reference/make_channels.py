#!/usr/bin/python3
"""Second opinion for channel filtering and integration: scipy on seeded random signals.

Writes channels.json beside this script. Origin: scipy.signal.filtfilt and scipy.integrate.cumulative_trapezoid
(scipy is BSD-3-Clause; the figures are ours to give away, MIT like the rest). Signals are made by the integer
generator below, which ChannelReference.cs repeats bit for bit, so that only outputs need to be kept: of each signal
the first and last three samples and seven between. Never regenerate from our own output.

    /usr/bin/python3 tests/reference/make_channels.py
"""
import json
import pathlib

import numpy as np
import scipy
from scipy.integrate import cumulative_trapezoid
from scipy.signal import filtfilt

CLASSES = (60, 180, 600, 1000)
RATES = (10000, 12500, 20000, 50000, 100000)
SIGNALS = 240


def draws(seed, count):
    """32-bit linear congruential generator (Numerical Recipes constants), 24 high bits as a number in [-0.5, 0.5)."""
    state = seed
    for _ in range(count):
        state = (1664525 * state + 1013904223) % 2**32
        yield (state >> 8) / 2**24 - 0.5


def signal(seed):
    """Offset + random walk + noise; every operation exact or rounded once, in the order the C# repeats."""
    head = list(draws(seed, 4))
    rate = RATES[seed % len(RATES)]
    count = 4 + int((head[0] + 0.5) * 1500) if seed % 8 else 4 + seed // 8
    offset, walk_scale, noise_scale = head[1] * 20, (head[2] + 0.5) * 4, (head[3] + 0.5) * 10
    walk, values, numbers = 0.0, [], list(draws(seed + 1000003, 2 * count))
    for i in range(count):
        walk = walk + numbers[2 * i] * walk_scale
        values.append(offset + walk + numbers[2 * i + 1] * noise_scale)
    return rate, np.array(values)


def section(cfc, interval):
    """The 2-pole section of SAE J211-1 Appendix C in scipy's convention (a = [1, -b1, -b2])."""
    wa = np.tan(2 * np.pi * cfc * 2.0775 * interval / 2)
    d = 1 + np.sqrt(2) * wa + wa**2
    a0 = wa**2 / d
    b1, b2 = -2 * (wa**2 - 1) / d, (-1 + np.sqrt(2) * wa - wa**2) / d
    return [a0, 2 * a0, a0], [1, -b1, -b2]


def kept(count):
    return sorted({0, 1, 2, count - 3, count - 2, count - 1} | {count * k // 8 for k in range(1, 8)})


def main():
    cases = []
    for seed in range(1, SIGNALS + 1):
        rate, x = signal(seed)
        at = kept(len(x))
        pad = min(len(x) - 1, round(0.010 * rate))
        case = {"seed": seed, "rate": rate, "count": len(x), "last": float(x[-1])}
        for cfc in CLASSES:
            b, a = section(cfc, 1 / rate)
            y = filtfilt(b, a, x, padtype="odd", padlen=pad)
            case[f"cfc{cfc}"] = {"scale": float(np.max(np.abs(y))), "values": [float(y[i]) for i in at]}
        z = cumulative_trapezoid(x, dx=1 / rate, initial=0)
        case["integral"] = {"scale": float(np.max(np.abs(z))), "values": [float(z[i]) for i in at]}
        cases.append(case)
    out = pathlib.Path(__file__).with_name("channels.json")
    header = {
        "origin": f"scipy {scipy.__version__}, numpy {np.__version__}; tests/reference/make_channels.py; scipy is BSD-3-Clause",
        "tolerance": "relative to the largest magnitude of the output (scale): 1e-9",
    }
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    out.write_text(json.dumps(header)[:-1] + ', "cases": [\n' + lines + "\n]}\n")


if __name__ == "__main__":
    main()
