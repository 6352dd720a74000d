"""Verdicts of procedure offset-frontal-64, in decimal with 1e-9. within | outside | not recorded."""
from decimal import Decimal

EPS = Decimal("1e-9")


def dec(x):
    return x if isinstance(x, Decimal) else Decimal(str(x))


def within(x, low, high):
    return dec(low) - EPS <= dec(x) <= dec(high) + EPS


def verdict(ok):
    return "within" if ok else "outside"


def items(conduct):
    speeds = [dec(v) for v in conduct.get("impactSpeedKmh") or []]
    result = {}
    if speeds:
        result["speed"] = verdict(within(sum(speeds) / len(speeds), "63.4", "65.4"))
        result["speedAgreement"] = verdict(max(speeds) - min(speeds) <= Decimal("0.5") + EPS) if len(speeds) > 1 else "not recorded"
    else:
        result["speed"] = "not recorded"
    overlap = conduct.get("overlapPercent")
    result["overlap"] = "not recorded" if overlap is None else verdict(within(overlap, "39", "41"))
    temperatures = conduct.get("dummyTemperatureC") or []
    result["temperature"] = verdict(all(within(t, "20.6", "22.2") for t in temperatures)) if temperatures else "not recorded"
    mass, declared = conduct.get("testMassKg"), conduct.get("declaredTestMassKg")
    if mass is not None and declared is not None:
        result["mass"] = verdict(abs(dec(mass) - dec(declared)) <= Decimal("0.03") * dec(declared) + EPS)
    angle, vertical = conduct.get("impactAngleDeg"), conduct.get("verticalAlignmentMm")
    result["angle"] = "not recorded" if angle is None else verdict(within(angle, "-2", "2"))
    result["vertical"] = "not recorded" if vertical is None else verdict(within(vertical, "-25", "25"))
    return result


def valid(verdicts):
    return "outside" not in verdicts.values() and all(verdicts.get(k) == "within" for k in ("speed", "overlap", "temperature"))
