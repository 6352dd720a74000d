"""Dummy measures by methods edition 1. `Bench` collects values and reasons; every measure is computed on its own."""
import math
import re

import numpy as np

import signals as s

NECK = {"H3": (6806.0, 6160.0, 310.0, 135.0), "HF": (4287.0, 3880.0, 155.0, 67.0)}  # N, N, N·m, N·m: standards 5.2
TIBIA = {"H3": (225.0, 35.9), "HF": (115.0, 22.9)}      # N·m, kN: standards 7
CHEST_CLASS = {"H3": 180.0, "HF": 600.0}
CHEST_DEPTH = {"H3": 0.229, "HF": 0.187}                # m: standards 4.2
OC_ARM = 0.01778                                        # m
SIDES = (("left", "LE"), ("right", "RI"))
CELLS = (("upper", "UP"), ("lower", "LO"))


class Bench:
    def __init__(self):
        self.rows = {}

    def put(self, code, position, compute, unit):
        """Keeps what `compute` returns: value or (value, from, to); Unfit becomes the reason."""
        try:
            found = compute()
            value, start, stop = found if isinstance(found, tuple) else (found, None, None)
            row = dict(value=s.digits(value), **{"from": start, "to": stop}, absent=None)
        except s.Unfit as reason:
            row = dict(value=None, **{"from": None, "to": None}, absent=str(reason))
        self.rows[(code, position)] = dict(code=code, position=position, unit=unit, **row)

    def value(self, code, position):
        row = self.rows.get((code, position))
        return row["value"] if row else None


class Seat:
    """Finds the channels of one occupant; pattern text after the two leading characters."""

    def __init__(self, channels, position):
        self.prefix, self.channels = f"1{position}", channels

    def has(self, pattern):
        return bool(self._all(pattern))

    def _all(self, pattern):
        regex = re.compile(self.prefix + pattern.replace("..", "[A-Z0-9?]{2}") + ".")
        return [c for c in self.channels if regex.fullmatch(c.code)]

    def one(self, pattern):
        found = self._all(pattern)
        if not found:
            raise s.Unfit(f"no channel {self.prefix}{pattern}?")
        return s.choose(found)

    def signals(self, cfc, *patterns):
        return s.together([self.one(p) for p in patterns], cfc)


def peak(window, signal):
    i = int(np.argmax(signal))
    return max(float(signal[i]), 0.0), window.time(i), window.time(i)


def head_like(bench, seat, p, part, prefix, cfc, names):
    def spatial():
        return seat.signals(cfc, *(f"{prefix}AC{axis}" for axis in "XYZ"))

    def hic(width):
        w = spatial()
        value, i, j = s.hic(s.resultant(w.cut), w.dt, width)
        return value, w.time(i), w.time(j)

    def a3ms():
        w = spatial()
        return s.exceeded_for(s.resultant(w.cut), w.dt)

    def top():
        w = spatial()
        return peak(w, s.resultant(w.cut))

    rules = {"hic15": (lambda: hic(0.015), ""), "hic36": (lambda: hic(0.036), ""), "a3ms": (a3ms, "g"), "peak": (top, "g")}
    for name in names:
        bench.put(f"{part}.{name}", p, *rules[name])


def signed_peak(bench, seat, code, p, pattern, cfc, sign, unit):
    def compute():
        w = seat.signals(cfc, pattern)
        return peak(w, sign * w.cut[0])
    bench.put(code, p, compute, unit)


def occipital_moment(seat):
    w = seat.signals(600.0, "NECKUP00..MOY", "NECKUP00..FOX")
    return w, w.cut[0] - OC_ARM * (w.cut[1] * 1000.0)


def nij(seat, dummy):
    w = seat.signals(600.0, "NECKUP00..MOY", "NECKUP00..FOX", "NECKUP00..FOZ")
    return peak(w, nij_history(w.cut[0], w.cut[1] * 1000.0, w.cut[2] * 1000.0, dummy))


def nij_history(my, fx, fz, dummy):
    """N·m, N, N -> Nij at each instant."""
    tension, compression, flexion, extension = NECK[dummy]
    moment = my - OC_ARM * fx
    return np.where(fz >= 0, fz / tension, -fz / compression) + np.where(moment >= 0, moment / flexion, -moment / extension)


def neck(bench, seat, p, dummy):
    signed_peak(bench, seat, "neck.tension", p, "NECKUP00..FOZ", 1000.0, 1, "kN")
    signed_peak(bench, seat, "neck.compression", p, "NECKUP00..FOZ", 1000.0, -1, "kN")

    def shear():
        w = seat.signals(1000.0, "NECKUP00..FOX")
        return peak(w, np.abs(w.cut[0]))

    def bending(sign):
        w, moment = occipital_moment(seat)
        return peak(w, sign * moment)
    bench.put("neck.shear", p, shear, "kN")
    bench.put("neck.flexion", p, lambda: bending(1), "N·m")
    bench.put("neck.extension", p, lambda: bending(-1), "N·m")
    bench.put("neck.nij", p, lambda: nij(seat, dummy), "")


def chest(bench, seat, p, dummy):
    place = "CHST0003..DSX" if seat.has("CHST0003..DSX") else "CHST0000..DSX"
    signed_peak(bench, seat, "chest.deflection", p, place, CHEST_CLASS[dummy], -1, "mm")

    def viscous():
        w = seat.signals(CHEST_CLASS[dummy], place)
        history = viscous_history(-w.full[0] / 1000.0, w.dt, CHEST_DEPTH[dummy])[w.start: w.stop]
        i = int(np.argmax(history))
        return float(history[i]), w.time(i), w.time(i)
    bench.put("chest.viscous", p, viscous, "m/s")


def viscous_history(d, dt, depth):
    """|1.3 V C| where D > 0, else 0; D in m, V by the five-point rule."""
    speed = np.zeros_like(d)
    if len(d) >= 5:
        speed[2:-2] = (8 * (d[3:-1] - d[1:-3]) - (d[4:] - d[:-4])) / (12 * dt)
    return np.where(d > 0, np.abs(1.3 * speed * d / depth), 0.0)


def tibia_history(mx, my, fz, dummy):
    """N·m, N·m, kN."""
    moment, force = TIBIA[dummy]
    return np.sqrt(mx * mx + my * my) / moment + np.abs(fz) / force


def lower_leg(bench, seat, p, dummy, side, ss):
    force = {cell: f"TIBI{ss}{cc}..FOZ" for cell, cc in CELLS}

    def index(cell, cc):
        own = force[cell] if seat.has(force[cell]) else force["lower" if cell == "upper" else "upper"]
        w = seat.signals(600.0, f"TIBI{ss}{cc}..MOX", f"TIBI{ss}{cc}..MOY", own)
        return peak(w, tibia_history(*w.cut, dummy))

    def compression():
        present = [force[cell] for cell, _ in CELLS if seat.has(force[cell])]
        if not present:
            raise s.Unfit(f"no tibia force channel, {side}")
        found = []
        for pattern in present:
            w = seat.signals(600.0, pattern)
            found.append(peak(w, -w.cut[0]))
        return max(found, key=lambda f: f[0])

    def foot():
        axes = [a for a in "XYZ" if a in "XZ" or seat.has(f"FOOT{ss}00..AC{a}")]
        w = seat.signals(1000.0, *(f"FOOT{ss}00..AC{a}" for a in axes))
        return s.exceeded_for(s.resultant(w.cut), w.dt)
    for cell, cc in CELLS:
        bench.put(f"tibia.{side}.{cell}.index", p, lambda: index(cell, cc), "")
    bench.put(f"tibia.{side}.compression", p, compression, "kN")
    bench.put(f"foot.{side}.a3ms", p, foot, "g")


def measures(bench, channels, p, dummy):
    seat = Seat(channels, p)
    head_like(bench, seat, p, "head", "HEAD0000..", 1000.0, ("hic15", "hic36", "a3ms", "peak"))
    neck(bench, seat, p, dummy)
    head_like(bench, seat, p, "chest", "CHST0000..", 180.0, ("a3ms",))
    chest(bench, seat, p, dummy)
    head_like(bench, seat, p, "pelvis", "PELV0000..", 1000.0, ("a3ms",))
    for side, ss in SIDES:
        signed_peak(bench, seat, f"femur.{side}.compression", p, f"FEMR{ss}00..FOZ", 600.0, -1, "kN")
        signed_peak(bench, seat, f"knee.{side}.slide", p, f"KNSL{ss}00..DSX", 180.0, -1, "mm")
        lower_leg(bench, seat, p, dummy, side, ss)
