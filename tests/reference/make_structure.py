#!/usr/bin/python3
"""Rigid fits by scipy as a second opinion for Measures/Structure/RigidFit.

scipy.spatial.transform.Rotation.align_vectors (Kabsch by singular value decomposition) on the centred reference points, run with
scipy 1.10.1 and numpy 1.24.2. Points are in mm, vehicle frame x forward, y right, z down; before and after stand in frames that
differ by any rotation and shift; noise 0 to 3 mm a coordinate. Input figures are written with 3 decimals and read back before the
fit, so both sides see the same numbers. Writes structure.json beside itself.
"""
import json
import pathlib

import numpy as np
from scipy.spatial.transform import Rotation

CASES = 220
rng = np.random.default_rng(20310314)


def rounded(a):
    return [[round(float(x), 3) for x in row] for row in a]


cases = []
while len(cases) < CASES:
    n = int(rng.integers(3, 10))
    pre = rounded(rng.uniform([-1200, -800, -700], [900, 800, 250], (n, 3)))
    centred = np.array(pre) - np.mean(pre, axis=0)
    singular = np.linalg.svd(centred, compute_uv=False)
    if singular[1] < 0.05 * singular[0]:
        continue
    turn = Rotation.random(random_state=rng)
    shift = rng.uniform(-3000, 3000, 3)
    noise = rng.uniform(0, 3)
    post = rounded(turn.apply(np.array(pre)) + shift + rng.normal(0, noise, (n, 3)))
    target = rounded(rng.uniform([-500, -900, -800], [2500, 900, 300], (1, 3)))[0]
    p, q = np.array(post), np.array(pre)
    fit, _ = Rotation.align_vectors(q - q.mean(axis=0), p - p.mean(axis=0))
    shift_back = q.mean(axis=0) - fit.apply(p.mean(axis=0))
    residuals = fit.apply(p) + shift_back - q
    cases.append({
        "pre": pre, "post": post, "target": target,
        "aligned": (fit.apply(target) + shift_back).tolist(),
        "rotation": fit.as_matrix().ravel().tolist(),
        "rms": float(np.sqrt(np.mean(np.sum(residuals ** 2, axis=1)))),
        "residuals": np.linalg.norm(residuals, axis=1).tolist(),
    })

path = pathlib.Path(__file__).with_name("structure.json")
path.write_text("[\n" + ",\n".join(json.dumps(c, separators=(",", ":")) for c in cases) + "\n]\n", encoding="utf-8")
print(len(cases), "cases,", path.stat().st_size, "bytes")
