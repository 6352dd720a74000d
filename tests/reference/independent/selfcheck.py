"""Checks the calculator's parts against closed forms and worked numbers (the project's fact sheet of published methods, section 16).

    python3 selfcheck.py         prints each miss; exit code 1 when there is one
"""
import math
import sys

import numpy as np
from scipy.signal import lfilter

import occupant as o
import rating as r
import signals as s
import structure as st
import vehicle as v

PI, CHECKS = np.pi, []


def check(name, got, expected, tolerance):
    CHECKS.append(abs(got - expected) <= tolerance)
    if not CHECKS[-1]:
        print(f"MISS {name}: got {got!r}, expected {expected!r}")


def filters():
    t = np.arange(2001) / 1e4
    y = s.phaseless(10 * np.sin(2 * PI * 50 * t) + 5 * np.sin(2 * PI * 1000 * t), 180.0, 1e4)
    for i, x in {50: 9.99686228, 1001: 0.36429658, 1050: 9.99686228}.items():
        check(f"1c[{i}]", y[i], x, 1e-8)
    check("1c[0], point mirrored", y[0], 0.0, 1e-6)
    table = {(1e4, 60): (0.001452367474, 1.889343224222, -0.895152694116), (1e4, 180): (0.011796271100, 1.670117463268, -0.717302547667),
             (1e4, 600): (0.097184625279, 0.945574009062, -0.334312510179), (1e4, 1000): (0.219231417219, 0.311896544996, -0.188822213872),
             (2e4, 60): (0.000373000631, 1.944633045526, -0.946125048050), (2e4, 1000): (0.071893097068, 1.111586176156, -0.399158564430)}
    for (fs, cfc), row in table.items():
        b, a = s.section(cfc, fs)
        for got, x in zip((b[0], -a[1], -a[2]), row):
            check(f"1.1 {fs} {cfc}", got, x, 1e-12)
    step = (np.arange(1001) >= 500) * 1.0
    for cfc, pair in {60: (0.48616790, 0.51383210), 180: (0.45876468, 0.54123532), 600: (0.36819675, 0.63180325), 1000: (0.28898707, 0.71101293)}.items():
        b, a = s.section(cfc, 1e4)
        zero = lfilter(b, a, lfilter(b, a, step)[::-1])[::-1]
        for y in (zero, s.phaseless(step, cfc, 1e4)):
            check(f"1d {cfc}", y[499], pair[0], 1e-8)
            check(f"1d {cfc}", y[500], pair[1], 1e-8)


def half_sine(a, length, fs, n=None):
    t = np.arange(n or int(round(length * fs)) + 1) / fs
    return np.where(t <= length + 1e-12, a * np.sin(PI * np.minimum(t, length) / length), 0.0)


def head():
    value, i, j = s.hic(half_sine(100, 0.020, 1e4), 1e-4, 0.015)
    check("2 half-sine 100", value, 829.24856482, 1e-8)
    check("2 t1", i, 33, 0), check("2 t2", j, 167, 0)
    check("2 20 kHz", s.hic(half_sine(100, 0.020, 2e4), 5e-5, 0.015)[0], 829.28053615, 1e-8)
    value, i, j = s.hic(half_sine(80, 0.030, 1e4), 1e-4, 0.015)
    check("2 half-sine 80", value, 660.38029580, 1e-8), check("2 t1", i, 75, 0), check("2 t2", j, 225, 0)
    value, i, j = s.hic(half_sine(80, 0.030, 1e4), 1e-4, 0.036)
    check("2 HIC36", value, 712.03823393, 1e-8), check("2 t1", i, 49, 0), check("2 t2", j, 251, 0)
    fine = {("square", 60, 0.020): (418.28220139, 557.70960185), ("square", 60, 0.050): (418.28220139, 1003.87728334),
            ("sine", 60, 0.060): (392.11984493, 685.32554426), ("triangle", 80, 0.030): (418.28220139, 423.14389981),
            ("haversine", 80, 0.030): (520.12858426, 520.23695824), ("haversine", 100, 0.020): (605.87770992, 605.87770992)}
    shapes = {"square": lambda u: np.ones_like(u), "sine": lambda u: np.sin(PI * u), "triangle": lambda u: 1 - np.abs(2 * u - 1), "haversine": lambda u: np.sin(PI * u) ** 2}
    for (shape, a, length), pair in fine.items():
        x = a * shapes[shape](np.arange(int(round(length * 4e4)) + 1) / (length * 4e4))
        for width, expected in zip((0.015, 0.036), pair):
            check(f"2 {shape} {a} {length} {width}", s.hic(x, 2.5e-5, width)[0] / expected, 1.0, 2e-5)
    t = np.arange(1501) / 1e4
    on = t <= 0.1 + 1e-12
    a = s.resultant([np.where(on, 60 * np.sin(PI * t / 0.1), 0), np.where(on, 20 * np.sin(2 * PI * t / 0.1), 0), 30 * np.exp(-((t - 0.06) / 0.01) ** 2)])
    check("3-axis peak", a.max(), 65.70295698, 1e-8)
    value, i, j = s.hic(a, 1e-4, 0.015)
    check("3-axis HIC15", value, 485.79484744, 1e-7), check("3-axis t1", i, 497, 0), check("3-axis t2", j, 647, 0)
    check("3-axis HIC36", s.hic(a, 1e-4, 0.036)[0], 1025.40339019, 1e-7)
    check("3-axis 3 ms", s.exceeded_for(a, 1e-4), 65.38238742, 1e-7)
    check("3 half-sine 80", s.exceeded_for(half_sine(80, 0.050, 1e6), 1e-6), 79.64495717, 1e-6)
    check("3 half-sine 90", s.exceeded_for(half_sine(90, 0.020, 1e6), 1e-6), 87.51329284, 1e-6)
    two = np.concatenate([half_sine(80, 0.004, 1e6), np.zeros(1000), half_sine(75, 0.004, 1e6)])
    check("3 two pulses", s.exceeded_for(two, 1e-6), 64.29695523, 1e-5)


def body():
    t = np.arange(1001) / 1e4
    d = 0.050 * np.sin(PI * t / 0.1) ** 2
    check("4 sampled", o.viscous_history(d, 1e-4, 0.229).max(), 0.28959279, 1e-8)
    check("4 instant", int(o.viscous_history(d, 1e-4, 0.229).argmax()), 333, 0)
    check("4 small", o.viscous_history(d, 1e-4, 0.187).max(), 0.35463657, 2e-6)
    rows = [(2000, 50, -300, 0.47235513, 0.82352026), (2000, -30, 400, 0.56876206, 1.02043716), (-1500, 60, 100, 0.43131940, 0.76222374),
            (-2500, -40, -250, 0.66921453, 1.17500154), (3300, 0, 0, 0.48486629, 0.76976907), (1000, -57, 0, 0.56915140, 1.08400962)]
    for fz, my, fx, big, small in rows:
        for dummy, x in (("H3", big), ("HF", small)):
            check(f"5 {fz} {dummy}", float(o.nij_history(*(np.array([float(q)]) for q in (my, fx, fz)), dummy)[0]), x, 1e-8)
    t = np.arange(2001) / 2e4
    history = o.nij_history(40 * np.sin(2 * PI * t / 0.1), -500 * np.sin(PI * t / 0.1), 2500 * np.sin(PI * t / 0.1), "H3")
    check("5 history", history.max(), 0.52570243, 1e-8), check("5 instant", t[history.argmax()], 0.07015, 1e-9)
    for (mx, my, fz), big, small in [((100, 150, -4), 0.91265423, 1.74230348), ((0, 225, 0), 1.0, 1.95652174), ((-80, 60, -8), 0.66728567, 1.21891020)]:
        check("7 TI", float(o.tibia_history(*map(np.float64, (mx, my, fz)), "H3")), big, 1e-8)
        check("7 TI", float(o.tibia_history(*map(np.float64, (mx, my, fz)), "HF")), small, 1e-8)
    t = np.arange(1001) / 1e4
    ti = o.tibia_history(120 * np.sin(PI * t / 0.1), -90 * np.sin(2 * PI * t / 0.1), np.where(t <= 0.08, -6 * np.sin(PI * t / 0.08), 0), "H3")
    check("7 history", ti.max(), 0.73915134, 1e-8), check("7 instant", int(ti.argmax()), 342, 0)


def risks():
    for x, p in {100: 0.00005964, 250: 0.00453604, 500: 0.04720152, 700: 0.11162893, 1000: 0.23089436}.items():
        check(f"8 HIC {x}", r.head_risk(x), p, 1e-8)
    for x, p, q in [(20, 0.01335030, 0.02429650), (42, 0.14734165, 0.28971131), (52, 0.30033352, 0.52548007), (63, 0.51296291, 0.74786893)]:
        check(f"8 chest {x}", r.chest_risk(x, "H3"), p, 1e-8), check(f"8 chest {x}", r.chest_risk(x, "HF"), q, 1e-8)
    for x, p in {0: 0.03816588, 0.5: 0.09599837, 1: 0.22130114}.items():
        check(f"8 Nij {x}", r.nij_risk(x), p, 1e-8)
    for x, p, q in [(2.62, 0.00856049, 0.25339249), (3.3, 0.04160658, 0.81502529), (4.17, 0.25526048, 0.99153152)]:
        check(f"8 neck {x}", r.force_risk(x, "H3"), p, 1e-8), check(f"8 neck {x}", r.force_risk(x, "HF"), q, 1e-8)
    for x, p, q in [(5, 0.03928255, 0.12074437), (6.805, 0.09457408, 0.35202031), (10, 0.35459540, 0.86105737)]:
        check(f"8 femur {x}", r.thigh_risk(x, "H3"), p, 1e-8), check(f"8 femur {x}", r.thigh_risk(x, "HF"), q, 1e-8)
    check("8 plateau", r.plateau_risk(4), 0.08395381, 1e-8), check("8 ankle", r.ankle_risk(4), 0.13101660, 1e-8)
    check("8 shaft", r.shaft_risk(1.0), 0.28186341, 1e-8)
    joint = 1 - math.prod(1 - q for q in (r.head_risk(300), r.nij_risk(0.3), r.chest_risk(25, "H3"), r.thigh_risk(3, "H3")))
    check("8 joint", joint, 0.11212006, 1e-8)


def pulse():
    n = 400_001
    t = np.arange(n) * (0.25 / (n - 1))

    def run(name, a, v0, expected):
        speed, x = v.motion(a, v0, t[1])
        olc, t1, t2 = v.load_criterion(speed, x, v0, t[1])
        for what, got, value, tolerance in zip(("olc", "t1", "t2"), (olc, t1, t2), expected, (2e-6, 1e-7, 1e-7)):
            check(f"10 {name} {what}", got, value, tolerance)
        return speed, x
    _, x = run("constant", np.full(n, -10.0), 17.8816, (12.76595745, 0.03640922, 0.16804254))
    check("10 crush", x.max(), 1.63027955, 1e-6)
    run("half-sine 30", np.where(t <= 0.1, -30 * np.sin(PI * t / 0.1), 0), 18.72932187, (31.34284609, 0.03554654, 0.09627231))
    speed, x = run("half-sine 28", np.where(t <= 0.11, -28 * np.sin(PI * t / 0.11), 0), 17.8816, (29.62138014, 0.03748431, 0.10302479))
    check("10 delta-v", 17.8816 - speed.min(), 19.22877046, 1e-6), check("10 crush", x.max(), 0.92616011, 1e-6)


def frames():
    a, b, c = np.radians([3, -2, 1])
    rz = np.array([[np.cos(a), -np.sin(a), 0], [np.sin(a), np.cos(a), 0], [0, 0, 1]])
    ry = np.array([[np.cos(b), 0, np.sin(b)], [0, 1, 0], [-np.sin(b), 0, np.cos(b)]])
    rx = np.array([[1, 0, 0], [0, np.cos(c), -np.sin(c)], [0, np.sin(c), np.cos(c)]])
    turn, shift = rz @ ry @ rx, np.array([12.5, -7.25, 4.0])
    pre = np.array([(3000, -600, 200), (3000, 600, 200), (3200, -500, 900), (3200, 500, 900), (2600, 0, 150)], float)
    noise = np.array([(.4, -.3, .2), (-.2, .5, -.1), (.1, .2, -.4), (-.3, -.1, .3), (0, -.3, 0)])
    fit = st.Fit({str(i): (q, turn @ q + shift + e) for i, (q, e) in enumerate(zip(pre, noise))})
    check("11 rms", fit.rms, 0.37953032, 1e-8), check("11 max", max(fit.residual.values()), 0.51278842, 1e-8)
    check("11 R", fit.r[0, 1], 0.0527910907, 1e-10), check("11 t", fit.t[2], -3.30494876, 1e-8)
    for q, d, expected in [((900, -350, 700), (-60, 5, 25), (-60.13431413, 6.09242540, 25.33766868)), ((700, -300, 150), (-120, -10, 40), (-120.18969470, -8.84948474, 40.36838978)),
                           ((1000, -350, 850), (-80, 0, 35), (-80.11507086, 1.07395203, 35.32746721))]:
        q = np.array(q, float)
        for got, x in zip(fit.displacement(q, turn @ (q + np.array(d)) + shift), expected):
            check("11 displacement", got, x, 1e-7)


for part in (filters, head, body, risks, pulse, frames):
    part()
print(f"{sum(CHECKS)} of {len(CHECKS)} checks hold")
sys.exit(0 if all(CHECKS) else 1)
