"""Risks, region levels, caps and the overall level of the scheme "Offset frontal, edition 1"."""
import math

from scipy.stats import norm

import occupant as o
import signals as s

LEVELS = ["high", "moderate", "low", "very low"]
REGIONS = ["head", "neck", "chest", "thigh.left", "thigh.right", "lowerleg.left", "lowerleg.right"]
SEVERITY = {"note": 0, "concern": 1, "severe": 2}
LIMITS = {  # measure -> (H3, HF); exceeded holds the region to low at best
    "head": {"head.hic15": (700, 700), "head.a3ms": (80, 80)},
    "neck": {"neck.nij": (1.0, 1.0), "neck.tension": (4.17, 2.62), "neck.compression": (4.0, 2.52)},
    "chest": {"chest.deflection": (63, 52), "chest.a3ms": (60, 60), "chest.viscous": (1.0, 1.0)},
    "thigh.S": {"femur.S.compression": (10.008, 6.805), "knee.S.slide": (15, 15)},
    "lowerleg.S": {"tibia.S.upper.index": (1.3, 1.3), "tibia.S.lower.index": (1.3, 1.3), "tibia.S.compression": (8, None)},
}
STRUCTURE = {
    "structure.footwell.rearward": (80, 160, 240), "structure.wheel-hub.rearward": (33, 67, 100), "structure.wheel-hub.upward": (27, 53, 80),
    "structure.knee-panel-outer.rearward": (40, 80, 120), "structure.knee-panel-inner.rearward": (40, 80, 120),
    "structure.opening.closure": (25, 60, 110),
}
OVERALL_CAPS = {"door-opened": ("concern", 2), "seat-anchorage-failed": ("concern", 2), "belt-failure": ("concern", 2), "fuel-leak": ("severe", 2),
                "isolation-lost": ("severe", 2), "electrolyte-leak": ("severe", 2), "fire": ("severe", 3), "thermal-event": ("severe", 3)}
REGION_CAPS = {"head-strike": ("severe", "head", 2), "wheel-contact": ("severe", "neck", 2), "airbag-missed": ("concern", "head", 2)}
LEG_CAPS = {"occupant-trapped": "concern", "dummy-damaged": "severe"}
PLATEAU_MASS_KG = 75.0


def logistic(x):
    return 1 / (1 + math.exp(-x))


def head_risk(hic15):
    return 0.0 if hic15 <= 0 else float(norm.cdf((math.log(hic15) - 7.45231) / 0.73998))


def chest_risk(mm, dummy):
    return logistic({"H3": 1.568, "HF": 1.7212}[dummy] * max(mm, 0.0) ** 0.4612 - 10.5456)


def nij_risk(nij):
    return logistic(1.9688 * nij - 3.2269)


def force_risk(kn, dummy):
    a, b = {"H3": (10.9745, 2.375), "HF": (10.958, 3.770)}[dummy]
    return logistic(b * kn - a)


def thigh_risk(kn, dummy):
    return logistic({"H3": 0.5196, "HF": 0.7619}[dummy] * kn - 5.7949)


def plateau_risk(kn):
    return logistic(0.8189 * kn - 0.0686 * PLATEAU_MASS_KG - 0.5204)


def ankle_risk(kn):
    return logistic(0.670 * kn - 4.572)


def shaft_risk(revised_index):
    return 0.0 if revised_index <= 0 else 1 - math.exp(-math.exp((math.log(revised_index) - 0.2728) / 0.2468))


def zero_load(region, dummy):
    if region == "head":
        return 0.0
    if region == "neck":
        return max(nij_risk(0), force_risk(0, dummy))
    if region == "chest":
        return chest_risk(0, dummy)
    if region.startswith("thigh"):
        return thigh_risk(0, dummy)
    return max(plateau_risk(0), ankle_risk(0), shaft_risk(0))


def step(value, bounds):
    """0 high … 3 very low; a bound itself is still the better level."""
    return sum(value > b for b in bounds)


def need(bench, p, *codes):
    values = [bench.value(code, p) for code in codes]
    for code, value in zip(codes, values):
        if value is None:
            raise s.Unfit(f"{code} is absent")
    return values


def lower_leg_risk(bench, seat, p, side, ss):
    """Largest of shaft, ankle, plateau; Unfit where the region has not all its inputs."""
    need(bench, p, f"tibia.{side}.compression")
    if all(bench.value(f"tibia.{side}.{cell}.index", p) is None for cell, _ in o.CELLS):
        raise s.Unfit("no tibia index")
    upper = seat.signals(600.0, f"TIBI{ss}UP..FOZ")
    lower = seat.signals(600.0, f"TIBI{ss}LO..FOZ")
    risks = [plateau_risk(o.peak(upper, -upper.cut[0])[0]), ankle_risk(o.peak(lower, -lower.cut[0])[0])]
    for cell, cc in o.CELLS:
        if bench.value(f"tibia.{side}.{cell}.index", p) is None:
            continue
        w = seat.signals(600.0, f"TIBI{ss}{cc}..MOX", f"TIBI{ss}{cc}..MOY", f"TIBI{ss}{cc}..FOZ")
        mx, my, fz = w.cut
        index = abs(fz) / 12.0 + (mx * mx + my * my) ** 0.5 / 240.0
        risks.append(shaft_risk(float(max(index))))
    return max(risks)


def put_risks(bench, seat, p, dummy):
    bench.put("risk.head", p, lambda: head_risk(*need(bench, p, "head.hic15")), "")

    def neck():
        nij, tension, compression = need(bench, p, "neck.nij", "neck.tension", "neck.compression")
        return max(nij_risk(nij), force_risk(tension, dummy), force_risk(compression, dummy))
    bench.put("risk.neck", p, neck, "")
    bench.put("risk.chest", p, lambda: chest_risk(*need(bench, p, "chest.deflection"), dummy), "")
    for side, ss in o.SIDES:
        bench.put(f"risk.thigh.{side}", p, lambda: thigh_risk(*need(bench, p, f"femur.{side}.compression"), dummy), "")
        if dummy == "H3":
            bench.put(f"risk.lowerleg.{side}", p, lambda: lower_leg_risk(bench, seat, p, side, ss), "")

    def joint():
        head, nk, ch, tl, tr = need(bench, p, "risk.head", "risk.neck", "risk.chest", "risk.thigh.left", "risk.thigh.right")
        parts = [head, nk, ch, max(tl, tr)]
        if dummy == "H3":
            parts.append(max(need(bench, p, "risk.lowerleg.left", "risk.lowerleg.right")))
        return 1 - math.prod(1 - q for q in parts)
    bench.put("risk.joint", p, joint, "")


def small_leg_step(bench, p, side):
    """HF: tibia index and compression, the worse; None where an input is missing."""
    indices = [v for v in (bench.value(f"tibia.{side}.{c}.index", p) for c, _ in o.CELLS) if v is not None]
    compression = bench.value(f"tibia.{side}.compression", p)
    if not indices or compression is None:
        return None
    return max(step(max(indices), (0.67, 0.90, 1.14)), step(compression, (1.5, 2.7, 3.8)))


def limits_over(bench, region, p, dummy):
    head, _, side = region.partition(".")
    table = LIMITS[f"{head}.S" if side else head]
    over = []
    for code, pair in table.items():
        code = code.replace("S", side) if side else code
        limit, value = pair[0 if dummy == "H3" else 1], bench.value(code, p)
        if limit is not None and value is not None and value > limit:
            over.append(code)
    return over


class Region:
    def __init__(self, bench, name, p, dummy):
        self.name, self.position = name, p
        risk = bench.value(f"risk.{name}", p)
        if name.startswith("lowerleg") and dummy == "HF":
            self.excess, self.step = None, small_leg_step(bench, p, name.split(".")[1])
        elif risk is None:
            self.excess = self.step = None
        else:
            p0 = zero_load(name, dummy)
            self.excess = max(0.0, (risk - p0) / (1 - p0))
            self.step = step(self.excess, (0.05, 0.15, 0.35))
        self.base, self.over, self.caps = self.step, limits_over(bench, name, p, dummy), []
        if self.over and self.step is not None:
            self.step = max(self.step, 2)

    def cap(self, kind, worst):
        self.caps.append(kind)
        if self.step is not None:
            self.step = max(self.step, worst)

    def json(self):
        return dict(region=self.name, position=self.position, level=word(self.step), excess=self.excess, overLimits=self.over, caps=self.caps)


def word(step_index):
    return None if step_index is None else LEVELS[step_index]


def structure_step(bench):
    grid, hub = bench.value("structure.footwell.rearward", None), bench.value("structure.wheel-hub.rearward", None)
    if grid is None or hub is None:
        return None
    return max(step(v, bounds) for code, bounds in STRUCTURE.items() if (v := bench.value(code, None)) is not None)


def finding_caps(findings, regions, driver):
    """Applies the region caps; returns (kind, step) of the overall caps."""
    overall = []
    for f in findings:
        kind, severity = f["kind"].lower(), SEVERITY.get(f["severity"].lower(), 0)
        p = int(f["position"]) if f.get("position") else driver
        if kind in OVERALL_CAPS and severity >= SEVERITY[OVERALL_CAPS[kind][0]]:
            overall.append((kind, OVERALL_CAPS[kind][1]))
        if kind in REGION_CAPS and severity >= SEVERITY[REGION_CAPS[kind][0]] and (p, REGION_CAPS[kind][1]) in regions:
            regions[(p, REGION_CAPS[kind][1])].cap(kind, REGION_CAPS[kind][2])
        leg = {"lower-leg-left": "lowerleg.left", "lower-leg-right": "lowerleg.right"}.get(f["region"].lower())
        if leg and kind in LEG_CAPS and severity >= SEVERITY[LEG_CAPS[kind]] and (p, leg) in regions:
            regions[(p, leg)].cap(kind, 3)
    return overall


def overall_step(r, dummy, structure, caps):
    """Regions of the driver by name -> step or None."""
    if structure is None or any(x.step is None for x in r.values()):
        return None
    life = step(1 - math.prod(1 - r[n].excess for n in ("head", "neck", "chest")), (0.10, 0.30, 0.60))
    if dummy == "H3":
        thigh = max(r["thigh.left"].excess, r["thigh.right"].excess)
        leg = max(r["lowerleg.left"].excess, r["lowerleg.right"].excess)
        legs = step(1 - (1 - thigh) * (1 - leg), (0.10, 0.25, 0.55))
    else:
        legs = max(r[n].step for n in REGIONS[3:])
    worst = max(x.step for x in r.values())
    result = min(max(life, legs, worst - 1), worst)
    result = max(result, {3: 2, 2: 1}.get(structure, 0))
    return max([result] + [c for _, c in caps])


def rate(bench, occupants, findings):
    driver = next((o_ for o_ in occupants if o_.get("seat") == "driver"), min(occupants, key=lambda x: x["position"]))
    regions = {(x["position"], n): Region(bench, n, x["position"], x["dummy"]) for x in occupants for n in REGIONS}
    caps = finding_caps(findings, regions, driver["position"])
    structure = structure_step(bench)
    own = {n: regions[(driver["position"], n)] for n in REGIONS}
    result = overall_step(own, driver["dummy"], structure, caps)
    return dict(overall=word(result), structure=word(structure), regions=[r.json() for r in regions.values()],
                overallCaps=sorted({k for k, _ in caps}), driver=driver["position"])
