"""Makes the varied test packages, the same bytes each time.

    python3 packages.py OUT_DIR [CODE …]

Each case is a function that starts from an ordinary run (`Case`) and changes what its name says. All names are invented.
"""
import os
import sys
from dataclasses import dataclass, field

import numpy as np

import pulses
import writer
from writer import Sensor, Style

CLASSES = ("delivery-van", "compact-electric", "crew-cab-pickup")
MAKES = ("Tarnbrook", "Velsey", "Quillon", "Dunmere", "Askervold")
SI = {"g": "m/(s*s)", "kN": "N", "N·m": "N*m", "mm": "m"}
CASES = []


@dataclass
class Case:
    number: int
    level: int = 0
    fs: float = 1e4
    t0: float = -0.06
    end: float = 0.32
    people: list = field(default_factory=lambda: [(1, "driver", "H3", None)])
    style: Style = field(default_factory=Style)
    structure_level: int | None = None

    def __post_init__(self):
        self.code = f"IN-{self.number}"
        self.maker = pulses.Maker(self.number, self.fs, self.t0, self.end)
        self.sensors = []
        for position, _, dummy, level in self.people:
            for code, kind, x in pulses.occupant(self.maker, position, dummy, self.level if level is None else level):
                self.add(code + "0", kind, x)
        for code in ("10VEHC000000ACX0", "10BPILLE0000ACX0", "10BPILRI0000ACX0", "10SILLLE0000ACX0", "10SILLRI0000ACX0"):
            self.add(code, "g", self.maker.vehicle())
        self.points = pulses.survey(self.maker, self.level if self.structure_level is None else self.structure_level)
        self.clearances = [("knee-gap-outer", "knee-panel-outer", 131.5), ("pedal-gap", "pedal-brake", 162)]
        self.findings = [("41.5", "K1", "floor-buckled", "structure", "note", "Boden gewölbt, links"), ("", "", "column-detached", "vehicle", "note", "=1+1")]
        self.programme = self.identity()

    def identity(self):
        r, make = self.maker.r, MAKES[self.number % 5]
        return {"test": self.code, "procedure": "offset-frontal-64", "date": "2031-03-14", "laboratory": "Prüfhalle 2", "repeatOf": None,
                "vehicle": {"key": f"{make.lower()}-probe-{self.number}", "make": make, "model": f"Probe {self.number}", "modelYears": [2030, 2032],
                            "class": CLASSES[self.number % 3], "kerbMassKg": 1690},
                "conduct": {"impactSpeedKmh": [round(64.2 + 0.3 * r.random_sample(), 2), round(64.25 + 0.3 * r.random_sample(), 2)], "overlapPercent": 40.3,
                            "testMassKg": 1834.5, "declaredTestMassKg": 1840, "dummyTemperatureC": [21.3, 21.4], "impactAngleDeg": 0.2, "verticalAlignmentMm": 6},
                "occupants": [{"position": p, "seat": seat, "dummy": d} for p, seat, d, _ in self.people],
                "structure": {"unit": "mm", "axes": {"x": "forward", "y": "right", "z": "down"}}}

    @property
    def conduct(self):
        return self.programme["conduct"]

    def add(self, code, kind, x, **more):
        self.sensors.append(Sensor(code, kind, np.asarray(x, float), self.maker.dt, self.t0, **more))
        return self.sensors[-1]

    def sensor(self, part):
        """The one channel whose code holds `part`."""
        found = [s for s in self.sensors if part in s.code]
        assert len(found) == 1, (part, [s.code for s in found])
        return found[0]

    def drop(self, *parts):
        for part in parts:
            self.sensors.remove(self.sensor(part))

    def letter(self, part, letter, header=None):
        """Filter letter (and header class) of every channel whose code holds `part`."""
        found = [s for s in self.sensors if part in s.code]
        assert found, part
        for s in found:
            s.code = s.code[:15] + letter
            if header is not None:
                s.header["Channel frequency class"] = header

    def copy(self, part, code, factor, **header):
        s = self.sensor(part)
        return self.add(code, s.kind, s.samples * factor, header=header)

    def point(self, name):
        return next(row for row in self.points if row[0] == name)

    def write(self, folder):
        writer.write(os.path.join(folder, f"{self.code}.zip"), self.style, self.programme, self.sensors, self.points, self.clearances, self.findings)


def case(make):
    CASES.append(make)
    return make


def build(number):
    make = CASES[number - 1001]
    return make(number)


def main(folder, wanted):
    os.makedirs(folder, exist_ok=True)
    for i in range(len(CASES)):
        if not wanted or f"IN-{1001 + i}" in wanted:
            build(1001 + i).write(folder)


import cases_format  # noqa: E402,F401  (each module registers its cases, in this order)
import cases_channels  # noqa: E402,F401
import cases_run  # noqa: E402,F401

if __name__ == "__main__":
    main(sys.argv[1], set(sys.argv[2:]))
