"""Invented crash pulses with noise. One seeded stream a package; numpy's RandomState, whose stream is frozen, so bytes repeat."""
import numpy as np

# level of severity 0..3 -> target peak; the average-man dummy, plausible orders of magnitude only
HEAD_G = (46, 70, 86, 108)
TENSION_KN = (0.9, 1.7, 2.6, 4.6)
MOMENT_NM = (-12, -38, -80, -130)
CHEST_MM = (23, 37, 49, 64)
CHEST_G = (32, 41, 50, 63)
FEMUR_KN = (2.4, 6.4, 8.9, 11.5)
TIBIA_NM = (55, 100, 135, 190)
TIBIA_KN = (1.6, 3.3, 4.8, 6.6)
KNEE_MM = (3, 7, 11, 16)
SMALL = dict(head=0.97, neck=0.6, moment=0.5, chest=0.8, femur=0.62, tibia=0.5, axial=0.52, knee=0.8)


class Maker:
    def __init__(self, seed, fs, t0, end):
        self.r = np.random.RandomState(seed)
        self.dt = 1.0 / fs
        count = int(np.floor((end - t0) * fs + 1e-6)) + 1
        self.t = t0 + np.arange(count) * self.dt

    def around(self, value, spread=0.12):
        return value * (1 + spread * (2 * self.r.random_sample() - 1))

    def pulse(self, amplitude, centre, width, noise=0.012, ring=0.12, offset=0.01):
        """A bell, a decaying ringing that starts with it, white noise and a constant offset."""
        t, a = self.t, self.around(amplitude)
        centre, width = self.around(centre, 0.06), self.around(width, 0.1)
        late = np.clip(t - (centre - 2 * width), 0, None)
        frequency = 40 + 160 * self.r.random_sample()
        ringing = ring * a * np.exp(-late / 0.03) * np.sin(2 * np.pi * frequency * late)
        x = a * np.exp(-((t - centre) / width) ** 2) + ringing
        x = x + abs(a) * noise * self.r.standard_normal(len(t))
        return x + offset * a * (2 * self.r.random_sample() - 1)

    def vehicle(self, peak=-27.5, length=0.115):
        t, a, length = self.t, self.around(peak, 0.05), self.around(length, 0.04)
        on = (t >= 0) & (t <= length)
        x = np.where(on, a * np.sin(np.pi * np.clip(t, 0, length) / length), 0.0)
        shake = 4 * np.sin(2 * np.pi * 65 * t) * np.exp(-((t - 0.04) / 0.03) ** 2)
        return x + shake + 0.6 * self.r.standard_normal(len(t)) + 0.3 * (2 * self.r.random_sample() - 1)


def occupant(maker, position, dummy, level):
    """[(code without filter letter, kind, samples in working units)] of one occupant."""
    f = SMALL if dummy == "HF" else dict.fromkeys(SMALL, 1.0)
    p, out = f"1{position}", []

    def add(place, what, kind, *pulse):
        out.append((f"{p}{place}{dummy}{what}", kind, maker.pulse(*pulse)))

    def spatial(place, size, centre, width):
        for axis, share in (("X", -0.84), ("Y", 0.22), ("Z", 0.48)):
            add(place, f"AC{axis}", "g", share * size, centre, width)

    spatial("HEAD0000", f["head"] * HEAD_G[level], 0.095, 0.017)
    add("NECKUP00", "FOX", "kN", -0.35 * f["neck"] * TENSION_KN[level], 0.085, 0.02)
    add("NECKUP00", "FOZ", "kN", f["neck"] * TENSION_KN[level], 0.100, 0.022)
    add("NECKUP00", "MOY", "N·m", f["moment"] * MOMENT_NM[level], 0.110, 0.018, 0.012, 0.35)
    spatial("CHST0000", CHEST_G[level], 0.075, 0.025)
    add("CHST0003", "DSX", "mm", -f["chest"] * CHEST_MM[level], 0.080, 0.03, 0.003, 0.04)
    spatial("PELV0000", 0.9 * CHEST_G[level], 0.068, 0.022)
    for side, share in (("LE", 1.0), ("RI", 0.85)):
        add(f"FEMR{side}00", "FOZ", "kN", -share * f["femur"] * FEMUR_KN[level], 0.07, 0.015)
        add(f"KNSL{side}00", "DSX", "mm", -share * f["knee"] * KNEE_MM[level], 0.07, 0.02, 0.004, 0.05)
        for cell, part in (("UP", 1.0), ("LO", 0.9)):
            add(f"TIBI{side}{cell}", "MOX", "N·m", 0.5 * part * f["tibia"] * TIBIA_NM[level], 0.06, 0.014)
            add(f"TIBI{side}{cell}", "MOY", "N·m", -share * part * f["tibia"] * TIBIA_NM[level], 0.062, 0.015)
            add(f"TIBI{side}{cell}", "FOZ", "kN", -share * (0.8 if cell == "UP" else 1.0) * f["axial"] * TIBIA_KN[level], 0.06, 0.013)
        spatial(f"FOOT{side}00", 70 + 25 * level, 0.05, 0.01)
    return out


GRID = [(f"footwell-{row}-{col}", (900 + 40 * i, -560 + 110 * j, 250 + 90 * i)) for i, row in enumerate(("upper", "middle", "lower"))
        for j, col in enumerate(("outer", "centre", "inner"))]
OTHERS = [("pedal-brake", (860, -330, 330)), ("knee-panel-outer", (700, -520, 120)), ("knee-panel-inner", (705, -260, 125)), ("wheel-hub", (480, -370, -60)),
          ("door-opening-front-upper", (760, -760, -150)), ("door-opening-rear-upper", (-190, -770, -170)), ("door-opening-front-lower", (790, -770, 300)),
          ("door-opening-rear-lower", (-160, -775, 310)), ("seat-front-outer", (260, -560, 420)), ("seat-front-inner", (262, -190, 421)),
          ("seat-rear-outer", (-140, -555, 405)), ("seat-rear-inner", (-139, -186, 406)), ("windscreen-base", (1150, -300, -260)),
          ("exterior-front-left", (2150, -600, 180)), ("exterior-front-centre", (2240, 0, 170)), ("exterior-front-right", (2160, 610, 175)),
          ("roof-rail-extra", (150, -600, -720))]
REFERENCES = [("ref-floor-left", (-900, -500, 480)), ("ref-floor-right", (-905, 505, 478)), ("ref-sill", (-1150, -720, 250)), ("ref-tow", (-1700, 310, 330)),
              ("ref-shelf-left", (-1300, -430, -310)), ("ref-shelf-right", (-1310, 440, -305))]
SHIFT = {"footwell": (48, 118, 195, 285), "knee": (24, 58, 98, 140), "wheel": (18, 48, 82, 118), "closure": (8, 40, 82, 125), "exterior": (420, 470, 520, 560)}


def displacement(r, name, level):
    """(forward, right, down) in mm that the crash gave a point."""
    def size(key):
        return SHIFT[key][level] * (0.75 + 0.3 * r.random_sample())
    if name.startswith("footwell"):
        return -size("footwell"), 12 * r.standard_normal(), -0.25 * size("footwell")
    if name.startswith("pedal"):
        return -0.9 * size("footwell"), 6 * r.standard_normal(), -20.0
    if name.startswith("knee"):
        return -size("knee"), 5 * r.standard_normal(), -8.0
    if name.startswith("wheel"):
        return -size("wheel"), 3 * r.standard_normal(), -0.7 * size("wheel")
    if name.startswith("door-opening-front"):
        return -size("closure"), 2.0, -4.0
    if name.startswith("exterior"):
        return -size("exterior"), 30 * r.standard_normal(), 15.0
    return tuple(4 * r.standard_normal(3))


def survey(maker, level, noise=0.6):
    """[(name, role, pre, post)] in the vehicle frame, mm; the post frame is turned and shifted."""
    r = maker.r
    a, b, c = np.radians(3 * r.standard_normal(3))
    rz = np.array([[np.cos(a), -np.sin(a), 0], [np.sin(a), np.cos(a), 0], [0, 0, 1]])
    ry = np.array([[np.cos(b), 0, np.sin(b)], [0, 1, 0], [-np.sin(b), 0, np.cos(b)]])
    rx = np.array([[1, 0, 0], [0, np.cos(c), -np.sin(c)], [0, np.sin(c), np.cos(c)]])
    turn, shift = rz @ ry @ rx, np.array([35.0, -60.0, 12.0]) * r.standard_normal(3)
    rows = []
    for role, points in (("reference", REFERENCES), ("measured", GRID + OTHERS)):
        for name, pre in points:
            pre = np.array(pre, float) + np.round(8 * r.standard_normal(3), 1)
            d = noise * r.standard_normal(3) if role == "reference" else np.array(displacement(r, name, level))
            rows.append([name, role, pre, turn @ (pre + d) + shift])
    return rows
