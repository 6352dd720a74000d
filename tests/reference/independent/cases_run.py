"""Cases about the run: levels, occupants, structure, conduct, findings."""
import sys

import numpy as np

packages = sys.modules.get("packages") or sys.modules["__main__"]
Case, Style, case, SI = packages.Case, packages.Style, packages.case, packages.SI


def axes(x, y, z):
    return {"x": x, "y": y, "z": z}


@case
def very_low_average_man(n):
    return Case(n, level=3)


@case
def very_low_small_woman(n):
    return Case(n, level=3, fs=2e4, people=[(1, "driver", "HF", None)])


@case
def high_small_woman_in_poor_structure(n):
    return Case(n, level=0, people=[(1, "driver", "HF", None)], structure_level=3)


@case
def moderate_in_low_structure(n):
    return Case(n, level=1, structure_level=2)


@case
def right_hand_drive_three_occupants(n):
    return Case(n, people=[(6, "rear-right", "HF", 2), (3, "driver", "H3", 1), (4, "rear-left", "H3", 0)])


@case
def no_driver_seat_lowest_position(n):
    return Case(n, people=[(4, "rear-left", "HF", 1), (1, "front-left", "H3", 0)])


@case
def left_handed_axes_in_metres(n):
    c = Case(n, level=1)
    c.programme["structure"] = {"unit": "m", "axes": axes("forward", "left", "down")}
    c.clearances = [("knee-gap-outer", "knee-panel-outer", 0.1315), ("roof-gap", "no-such-point", 0.2), ("pedal-gap", "pedal-brake", 0.162)]
    return c


@case
def permuted_axes_in_centimetres(n):
    c = Case(n, level=2)
    c.programme["structure"] = {"unit": "cm", "axes": axes("up", "rearward", "right")}
    c.clearances = [("knee-gap-inner", "knee-panel-inner", 13.15)]
    return c


@case
def no_structure_member(n):
    c = Case(n, level=1)
    del c.programme["structure"]
    c.clearances = []
    return c


def along_line(c, side_mm, pre=True, post=True):
    """Puts the references on a line but for `side_mm`; post keeps its own frame."""
    rows = [row for row in c.points if row[1] == "reference"]
    turn, shift = np.array([[0, -1.0, 0], [1, 0, 0], [0, 0, 1]]), np.array([100.0, -50, 20])
    for i, row in enumerate(rows):
        flat = np.array([-900.0 - 160 * i, -400 + 60 * i, 300.0]) + np.array([0, 0, side_mm * (-1) ** i])
        wide = np.array([-900.0 - 160 * i, -400 + 60 * i, 300.0]) + np.array([0, 0, 250.0 * (-1) ** (i // 2)])
        row[2] = flat if pre else wide
        row[3] = turn @ (flat if post else wide) + shift
    for row in c.points:
        if row[1] == "measured":
            row[3] = turn @ (row[2] + np.array([-40.0, 3, -5])) + shift


@case
def collinear_references(n):
    c = Case(n, level=0)
    along_line(c, 0.5)
    return c


@case
def collinear_after_the_crash_only(n):
    c = Case(n, level=0)
    along_line(c, 0.5, pre=False)
    return c


@case
def nearly_collinear_but_enough(n):
    c = Case(n, level=0)
    along_line(c, 5.0)
    return c


@case
def moved_reference(n):
    c = Case(n, level=1)
    c.point("ref-tow")[3] = c.point("ref-tow")[3] + np.array([9.0, -7.0, 5.0])
    return c


@case
def three_references_left(n):
    c = Case(n, level=1)
    c.point("ref-sill")[3] = ["", "", ""]
    c.point("ref-tow")[2] = [f"{c.point('ref-tow')[2][0]:.6g}", "", "330"]
    c.points.remove(c.point("ref-shelf-right"))
    return c


@case
def two_references_left(n):
    c = Case(n, level=1)
    c.points = [r for r in c.points if r[0] not in ("ref-sill", "ref-tow", "ref-shelf-right", "ref-shelf-left")]
    return c


@case
def doubled_and_blank_points(n):
    c = Case(n, level=1)
    twice = list(c.point("footwell-upper-outer"))
    twice[3] = twice[3] + np.array([300.0, 0, 0])
    reference = list(c.point("ref-shelf-left"))
    reference[2] = reference[2] + np.array([50.0, 0, 0])
    c.points += [twice, reference]
    c.point("knee-panel-outer")[3] = ["", "", ""]
    c.point("door-opening-front-lower")[3] = ["", "1.5", "2.5"]
    c.clearances += [("knee-gap-outer", "knee-panel-inner", 99)]
    return c


@case
def no_wheel_hub(n):
    c = Case(n, level=0)
    c.points = [r for r in c.points if r[0] != "wheel-hub"]
    return c


@case
def one_grid_point_one_opening_level(n):
    c = Case(n, level=0)
    keep = ("footwell-middle-centre", "wheel-hub", "door-opening-front-upper", "door-opening-rear-upper")
    c.points = [r for r in c.points if r[1] == "reference" or r[0] in keep]
    return c


@case
def no_points_file(n):
    c = Case(n, level=0)
    c.points = None
    return c


@case
def conduct_exactly_on_bounds(n):
    c = Case(n, level=0)
    c.conduct.update(impactSpeedKmh=[65.15, 65.65], overlapPercent=41, dummyTemperatureC=[20.6, 22.2], testMassKg=1895.2, declaredTestMassKg=1840, impactAngleDeg=-2, verticalAlignmentMm=25)
    return c


@case
def conduct_on_lower_bounds_one_reading(n):
    c = Case(n, level=0)
    c.conduct.update(impactSpeedKmh=[63.4], overlapPercent=39.0, dummyTemperatureC=[20.6], testMassKg=1784.8, impactAngleDeg=2.0, verticalAlignmentMm=-25.0)
    return c


@case
def over_speed(n):
    c = Case(n, level=0)
    c.conduct.update(impactSpeedKmh=[65.40, 65.41, 65.42])
    return c


@case
def overlap_not_recorded(n):
    c = Case(n, level=1)
    del c.conduct["overlapPercent"]
    return c


@case
def one_temperature_outside(n):
    c = Case(n, level=1)
    c.conduct["dummyTemperatureC"] = [21.0, 22.21, 21.4]
    return c


@case
def temperature_not_recorded_and_mass_not_declared(n):
    c = Case(n, level=1)
    del c.conduct["dummyTemperatureC"], c.conduct["declaredTestMassKg"], c.conduct["impactAngleDeg"], c.conduct["verticalAlignmentMm"]
    return c


@case
def mass_outside(n):
    c = Case(n, level=1)
    c.conduct["testMassKg"] = 1895.3
    return c


@case
def readings_disagree(n):
    c = Case(n, level=1)
    c.conduct["impactSpeedKmh"] = [64.1, 64.61]
    return c


@case
def angle_and_height_outside(n):
    c = Case(n, level=1)
    c.conduct.update(impactAngleDeg=-2.01, verticalAlignmentMm=25.5, overlapPercent=38.99)
    return c


def found(*rows):
    return [(f"{10 * i + 5}", "K2", kind, region, severity, "note, with comma") for i, (kind, region, severity) in enumerate(rows)]


@case
def findings_cap_regions(n):
    c = Case(n, level=0)
    c.findings = found(("head-strike", "head", "severe"), ("wheel-contact", "neck", "severe"), ("occupant-trapped", "lower-leg-left", "concern"))
    return c


@case
def findings_too_mild_to_cap(n):
    c = Case(n, level=0)
    c.findings = found(("door-opened", "structure", "note"), ("head-strike", "head", "concern"), ("wheel-contact", "chest", "concern"), ("fire", "vehicle", "concern"),
                       ("occupant-trapped", "lower-leg-right", "note"), ("dummy-damaged", "lower-leg-right", "concern"), ("fuel-leak", "vehicle", "concern"),
                       ("occupant-trapped", "chest", "severe"), ("dummy-damaged", "head", "severe"), ("airbag-late", "restraint", "severe"), ("door-jammed", "structure", "severe"))
    return c


def one_finding(kind, region, severity, level=0):
    @case
    def finding(n):
        c = Case(n, level=level, end=0.20)
        c.findings = found((kind, region, severity))
        return c
    return finding


one_finding("door-opened", "structure", "concern")
one_finding("dummy-damaged", "lower-leg-right", "severe")
one_finding("airbag-missed", "restraint", "concern")
one_finding("seat-anchorage-failed", "restraint", "concern")
one_finding("belt-failure", "restraint", "severe")
one_finding("fuel-leak", "vehicle", "severe", 1)
one_finding("isolation-lost", "vehicle", "severe")
one_finding("electrolyte-leak", "vehicle", "severe")
one_finding("fire", "vehicle", "severe")
one_finding("thermal-event", "vehicle", "severe", 1)


@case
def findings_of_the_passenger(n):
    c = Case(n, people=[(1, "driver", "H3", 0), (3, "passenger", "HF", 0)])
    c.findings = [row + (p,) for row, p in zip(found(("head-strike", "head", "severe"), ("occupant-trapped", "lower-leg-right", "severe"), ("wheel-contact", "neck", "severe"), ("sun-glare", "head", "severe")),
                                               ("3", "3", "", "1"))]
    return c


@case
def cap_on_a_region_not_rated_and_belt_of_passenger(n):
    c = Case(n, people=[(1, "driver", "H3", 1), (3, "passenger", "H3", 0)])
    c.drop("11HEAD0000H3ACZ")
    c.findings = [row + (p,) for row, p in zip(found(("head-strike", "head", "severe"), ("belt-failure", "restraint", "concern")), ("1", "3"))]
    return c


@case
def passenger_belt_caps_the_overall(n):
    c = Case(n, people=[(1, "driver", "H3", 0), (3, "passenger", "H3", 2)])
    c.findings = [row + (p,) for row, p in zip(found(("belt-failure", "restraint", "concern")), ("3",))]
    return c


def scaled(part, factor, level=0, people=None):
    @case
    def run(n):
        c = Case(n, level=level, people=people or [(1, "driver", "H3", None)])
        for s in c.sensors:
            if part in s.code:
                s.samples = s.samples * factor
        return c
    return run


scaled("KNSL", 6.5)                     # knee slide over its limit holds the thigh
scaled("CHST0000", 2.1)                 # chest.a3ms over 60 g
scaled("FEMR", 4.4)                     # one region bad, the rest good: at most one step better
scaled("TIBILE", 3.2)
scaled("CHST0003", 2.9, 0, [(1, "driver", "HF", None)])
scaled("TIBIRI", 2.9, 0, [(1, "driver", "HF", None)])
scaled("HEAD", 1.8)
scaled("NECK", 4.6)
scaled("NECK", 4.2, 0, [(3, "driver", "HF", None)])


@case
def occupant_without_channels(n):
    c = Case(n, people=[(1, "driver", "H3", 0), (3, "passenger", "HF", 0)])
    c.sensors = [s for s in c.sensors if not s.code.startswith("13")]
    return c


def random_level(seed_offset):
    @case
    def run(n):
        r = np.random.RandomState(seed_offset)
        dummy = ("H3", "HF")[r.randint(2)]
        c = Case(n, level=int(r.randint(4)), fs=(1e4, 2e4)[r.randint(2)], people=[(int((1, 3)[r.randint(2)]), "driver", dummy, None)], structure_level=int(r.randint(4)),
                 style=Style(newline=("\n", "\r\n")[r.randint(2)], units=(SI, Style().units)[r.randint(2)]))
        for s in c.sensors:
            s.samples = s.samples * (0.7 + 0.6 * r.random_sample())
        return c
    return run


for offset in range(9101, 9109):
    random_level(offset)
