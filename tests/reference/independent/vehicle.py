"""Vehicle pulse measures: delta-v, peak, stroke, occupant load criterion."""
import math
import re

import numpy as np

import signals as s

G0 = 9.80665
FREE_M, RESTRAINED_M = 0.065, 0.235     # standards 10


def source(channels):
    """The first source present: vehicle, else both B-pillars, else both sills; the chosen channels."""
    def matching(pattern):
        return [c for c in channels if re.fullmatch(pattern, c.code)]
    single = matching(r"10VEHC.{6}ACX.")
    if single:
        return [s.choose(single)]
    for place in ("BPIL", "SILL"):
        pair = [matching(rf"10{place}{side}.{{4}}ACX.") for side in ("LE", "RI")]
        if all(pair):
            return [s.choose(found) for found in pair]
    raise s.Unfit("no vehicle channel")


def acceleration(channels, cfc):
    w = s.together(source(channels), cfc)
    return w, sum(w.cut) / len(w.cut)


def motion(acceleration_g, v0, dt):
    v = v0 + s.cumulative_integral(acceleration_g * G0, dt)
    return v, s.cumulative_integral(v, dt)


def quadratic_root(c2, c1, c0, limit):
    """Smallest root in (0, limit] of c2 u^2 + c1 u + c0."""
    if abs(c2) < 1e-300:
        roots = [-c0 / c1] if c1 else []
    else:
        q = c1 * c1 - 4 * c2 * c0
        if q < 0:
            return None
        h = -(c1 + math.copysign(math.sqrt(q), c1)) / 2
        roots = [h / c2] + ([c0 / h] if h else [])
    inside = [u for u in roots if -1e-12 * limit <= u <= limit * (1 + 1e-9)]
    return min(inside) if inside else None


def load_criterion(v, x, v0, dt):
    """OLC in g; v linear between samples, x its exact integral."""
    t = np.arange(len(v)) * dt
    free = v0 * t - x - FREE_M
    k = first_rise(free, 0)
    slope = (v[k + 1] - v[k]) / dt
    u = quadratic_root(-slope / 2, v0 - v[k], free[k], dt)
    t1, x1 = t[k] + u, x[k] + v[k] * u + slope * u * u / 2
    v1 = v[k] + slope * u
    tau = t - t1
    # a_O = (v0 - v)/tau put into v0 tau - a_O tau^2/2 - (x - x1) = 0.235
    gap = (v0 + v) * tau / 2 - (x - x1) - RESTRAINED_M
    m = first_rise(gap, k + 1)
    if gap[k + 1] >= 0:
        m, base_t, base_v, base_x, base_gap, span = k, t1, v1, x1, -RESTRAINED_M, dt - u
    else:
        base_t, base_v, base_x, base_gap, span = t[m], v[m], x[m], gap[m], dt
    slope = (v[m + 1] - v[m]) / dt
    tau0 = base_t - t1
    # (v0 + bv + k u)(tau0 + u)/2 - (bx + bv u + k u^2/2 - x1) - 0.235
    u2 = quadratic_root(0.0, (v0 + base_v + slope * tau0) / 2 - base_v, base_gap, span)
    t2, v2 = base_t + u2, base_v + slope * u2
    return (v0 - v2) / (t2 - t1) / G0, t1, t2


def first_rise(values, start):
    for i in range(start, len(values) - 1):
        if values[i] < 0 <= values[i + 1] or values[i] >= 0:
            return i
    raise s.Unfit("the load criterion's displacements are not reached in the record")


def measures(bench, channels, speeds_kmh, nominal_kmh):
    speed = sum(speeds_kmh) / len(speeds_kmh)
    v0 = speed / 3.6

    def path():
        w, a = acceleration(channels, 180.0)
        return w, *motion(a, v0, w.dt)

    def deltav():
        w, v, _ = path()
        return (v0 - float(np.min(v))) * 3.6

    def stroke():
        _, _, x = path()
        return float(np.max(x)) * 1000.0

    def peak():
        w, a = acceleration(channels, 60.0)
        return max(float(np.max(-a)), 0.0)

    def olc():
        w, v, x = path()
        return load_criterion(v, x, v0, w.dt)[0]
    bench.put("vehicle.deltav", None, deltav, "km/h")
    bench.put("vehicle.stroke", None, stroke, "mm")
    bench.put("vehicle.peak", None, peak, "g")
    bench.put("vehicle.olc", None, olc, "g")
    bench.put("conduct.speed", None, lambda: speed, "km/h")
    bench.put("conduct.energyratio", None, lambda: (speed / nominal_kmh) ** 2, "")
