"""An independent implementation of methods edition 1: one package in, the figures the service should serve out.

    python3 calculator.py PACKAGE.zip [PACKAGE.zip …]        JSON on stdout, keyed by test code

Written from the method's text alone, with numpy and scipy; it shares nothing with src/.
"""
import json
import sys

import conduct
import occupant
import rating
import reader
import structure
import vehicle
from occupant import Bench, Seat

NOMINAL_SPEED_KMH = 64.4
SMALLER_OCCUPANT_SHIFT_MM = 120.0


def calculate(path):
    package = reader.read(path)
    programme = package.programme
    bench = Bench()
    verdicts = conduct.items(programme["conduct"])
    vehicle.measures(bench, package.channels, programme["conduct"]["impactSpeedKmh"], NOMINAL_SPEED_KMH)
    view = structure.measures(bench, package, SMALLER_OCCUPANT_SHIFT_MM)
    for person in programme["occupants"]:
        occupant.measures(bench, package.channels, person["position"], person["dummy"])
        rating.put_risks(bench, Seat(package.channels, person["position"]), person["position"], person["dummy"])
    valid = conduct.valid(verdicts)
    return dict(test=programme["test"], valid=valid, conduct=verdicts, measures=list(bench.rows.values()), structure=view,
                rating=dict(valid=valid, **rating.rate(bench, programme["occupants"], package.findings)))


if __name__ == "__main__":
    results = (calculate(path) for path in sys.argv[1:])
    json.dump({r["test"]: r for r in results}, sys.stdout, indent=1, ensure_ascii=False, sort_keys=True)
