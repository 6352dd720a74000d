"""Rigid fit of the post-crash frame, displacements with their uncertainty, clearances."""
import math

import numpy as np

import signals as s
from reader import number

DIRECTIONS = {"forward": (1, 0, 0), "rearward": (-1, 0, 0), "right": (0, 1, 0), "left": (0, -1, 0), "down": (0, 0, 1), "up": (0, 0, -1)}
SCALE_MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0}
DEFAULT = {"unit": "mm", "axes": {"x": "forward", "y": "right", "z": "down"}}
GRID = [f"footwell-{row}-{column}" for row in ("upper", "middle", "lower") for column in ("outer", "centre", "inner")]
EXTERIOR = [f"exterior-front-{side}" for side in ("left", "centre", "right")]


def turn(structure):
    """3 x 3: raw coordinates (column) -> x forward, y right, z down, in mm."""
    axes = structure.get("axes", DEFAULT["axes"])
    return np.array([DIRECTIONS[axes[a]] for a in "xyz"], float).T * SCALE_MM[structure.get("unit", "mm")]


def coordinates(row, when):
    xyz = np.array([number(row.get(f"{when}_{a}", "")) for a in "xyz"])
    return xyz if np.all(np.isfinite(xyz)) else None


def split_points(rows, matrix):
    """name -> (pre, post) for references and measured points; the first of a doubled name; blanks left out."""
    seen, references, measured = set(), {}, {}
    for row in rows:
        name = row["point"].strip().lower()
        if name in seen:
            continue
        seen.add(name)
        pre, post = coordinates(row, "pre"), coordinates(row, "post")
        if pre is None or post is None:
            continue
        target = references if row["role"].strip().lower() == "reference" else measured
        target[name] = (matrix @ pre, matrix @ post)
    return references, measured


def collinear(points):
    sv = np.linalg.svd(points - points.mean(axis=0), compute_uv=False)
    return sv[0] == 0 or sv[1] < 0.01 * sv[0]


def rigid(p, q):
    """Rotation and shift with q ~ R p + t, least squares, proper rotation (Arun 1987 with Umeyama's sign)."""
    pm, qm = p.mean(axis=0), q.mean(axis=0)
    u, _, vt = np.linalg.svd((p - pm).T @ (q - qm))
    fix = np.diag([1, 1, np.sign(np.linalg.det(vt.T @ u.T))])
    r = vt.T @ fix @ u.T
    return r, qm - r @ pm


def residuals(p, q):
    r, t = rigid(p, q)
    return q - (p @ r.T + t)


def rms(rows):
    return math.sqrt(float(np.mean(np.sum(rows * rows, axis=1))))


def moved_references(names, p, q):
    own = np.linalg.norm(residuals(p, q), axis=1)
    moved = []
    for i, name in enumerate(names):
        keep = [j for j in range(len(names)) if j != i]
        if len(keep) < 3 or collinear(p[keep]) or collinear(q[keep]):
            continue
        without = rms(residuals(p[keep], q[keep]))
        if own[i] > 3 * without and own[i] > 3.0:
            moved.append(name)
    return moved


class Fit:
    def __init__(self, references):
        names = list(references)
        if len(names) < 3:
            raise s.Unfit("fewer than 3 reference points")
        self.q = np.array([references[n][0] for n in names])
        self.p = np.array([references[n][1] for n in names])
        if collinear(self.q) or collinear(self.p):
            raise s.Unfit("the reference points are collinear")
        self.r, self.t = rigid(self.p, self.q)
        left = residuals(self.p, self.q)
        self.rms, self.n = rms(left), len(names)
        self.residual = dict(zip(names, np.linalg.norm(left, axis=1).tolist()))
        self.s = math.sqrt(float(np.sum(left * left)) / (3 * self.n - 6))
        self.moved = moved_references(names, self.p, self.q)

    def displacement(self, pre, post):
        return self.r @ post + self.t - pre

    def uncertainty(self, post):
        """s sqrt(1/n + leverage), the largest of the three components. The fit turns and shifts the post point, so the lever arm is
        that of the fitted post point about the fitted references: leverage = diagonal of [d]x J^-1 [d]x', J their inertia."""
        centre = self.p.mean(axis=0)
        centred, (x, y, z) = (self.p - centre) @ self.r.T, self.r @ (post - centre)
        inertia = np.sum(centred * centred) * np.eye(3) - centred.T @ centred
        cross = np.array([[0, z, -y], [-z, 0, x], [y, -x, 0]])
        return self.s * math.sqrt(1 / self.n + float(np.max(np.diag(cross @ np.linalg.inv(inertia) @ cross.T))))


def closure(moved, level):
    front, rear = f"door-opening-front-{level}", f"door-opening-rear-{level}"
    if front not in moved or rear not in moved:
        return None
    (f0, f1), (r0, r1) = moved[front], moved[rear]
    return abs(f0[0] - r0[0]) - abs(f1[0] - r1[0])


def largest(values, reason):
    values = [v for v in values if v is not None]
    if not values:
        raise s.Unfit(reason)
    return max(values)


def measures(bench, package, shift_mm):
    """Puts the structure's measures; the view for GET …/structure."""
    declared = package.programme.get("structure") or DEFAULT
    matrix = turn(declared)
    references, measured = split_points(package.points, matrix)
    try:
        fit, reason = Fit(references), None
    except s.Unfit as why:
        fit, reason = None, str(why)
    delta = {n: fit.displacement(*pair) for n, pair in measured.items()} if fit else {}
    aligned = {n: (measured[n][0], measured[n][0] + d) for n, d in delta.items()}

    def guarded(compute):
        def run():
            if fit is None:
                raise s.Unfit(reason)
            return compute()
        return run

    points = []
    for name in measured:
        parts = dict(rearward=lambda d: -d[0], lateral=lambda d: d[1], upward=lambda d: -d[2], resultant=np.linalg.norm)
        for part, rule in parts.items():
            bench.put(f"structure.{name}.{part}", None, guarded(lambda n=name, f=rule: float(f(delta[n]))), "mm")
        if fit:
            points.append(dict(point=name, **{k: float(f(delta[name])) for k, f in parts.items()}, uncertainty=fit.uncertainty(measured[name][1])))
    rear = {n: float(-d[0]) for n, d in delta.items()}
    bench.put("structure.footwell.rearward", None, guarded(lambda: largest([rear.get(n) for n in GRID], "no footwell point")), "mm")
    bench.put("structure.opening.closure", None, guarded(lambda: largest([closure(aligned, lv) for lv in ("upper", "lower")], "no door opening level")), "mm")
    bench.put("structure.alignment.rms", None, guarded(lambda: fit.rms), "mm")
    bench.put("vehicle.crush.static", None, guarded(lambda: largest([rear.get(n) for n in EXTERIOR], "no exterior front point")), "mm")
    clearances(bench, package, SCALE_MM[declared.get("unit", "mm")], rear, guarded, shift_mm)
    if fit is None:
        return dict(alignment=None, points=[])
    return dict(alignment=dict(rmsMm=fit.rms, residualsMm=fit.residual, moved=fit.moved), points=points)


def clearances(bench, package, scale, rear, guarded, shift_mm):
    seen = set()
    for row in package.clearances:
        name, opposing = row["clearance"], row["opposing_point"].strip().lower()
        if name in seen:
            continue
        seen.add(name)
        distance = number(row["distance"]) * scale

        def residual(forward, distance=distance, opposing=opposing):
            if math.isnan(distance):
                raise s.Unfit("no distance")
            if opposing not in rear:
                raise s.Unfit(f"{opposing} was not measured")
            return distance - forward - rear[opposing]
        bench.put(f"clearance.{name}.residual", None, guarded(lambda r=residual: r(0.0)), "mm")
        bench.put(f"clearance.{name}.residual.smaller", None, guarded(lambda r=residual: r(shift_mm)), "mm")
