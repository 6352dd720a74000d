"""Uploads the made packages to a running service and reports every disagreement with the calculator.

    python3 compare.py --url URL --token TOKEN [--packages DIR] [--expected FILE.json.gz] [--only CODE,…] [--no-upload] [--out FILE.json]

Presence must agree, numbers to a relative 1e-6 (1e-9 absolute near zero), verdicts, levels and caps exactly. Exit code 1 on any difference.
Differences whose reading the method leaves open (OPEN) are listed apart and do not fail.
"""
import argparse
import collections
import gzip
import json
import os
import re
import sys
import tempfile

import packages
from client import Client

RELATIVE, ABSOLUTE = 1e-6, 1e-9
WINDOW_S = 1e-9
CONDUCT_WORDS = {"speed": ("speed",), "speedAgreement": ("agree", "spread", "difference"), "overlap": ("overlap",), "temperature": ("temperature",), "mass": ("mass",),
                 "angle": ("angle",), "vertical": ("vertical", "alignment")}
OPEN = {("IN-1044", "risk.lowerleg.right"), ("IN-1044", "risk.joint"), ("IN-1044", "lowerleg.right"), ("IN-1044", "overall")}


def close(a, b):
    return abs(a - b) <= max(RELATIVE * max(abs(a), abs(b)), ABSOLUTE)


def word(level):
    """A level without case, blanks or the noun; None = not rated."""
    text = re.sub("[^a-z]", "", (level or "").lower()).replace("protection", "")
    return None if text in ("", "notrated", "none", "absent") else text


class Report:
    def __init__(self):
        self.rows, self.compared = [], collections.Counter()

    def note(self, test, what, kind, expected, got, why=""):
        openly = (test, what.split("@")[0]) in OPEN
        self.rows.append(dict(test=test, case=case_name(test), what=what, kind=kind, expected=expected, got=got, why=why, open=openly))

    def same(self, test, what, kind, expected, got):
        self.compared[kind] += 1
        if expected != got:
            self.note(test, what, kind, expected, got)


def case_name(test):
    return packages.CASES[int(test.split("-")[1]) - 1001].__name__


def measures(report, test, expected, rows):
    got = {r["code"] if r["position"] is None else f"{r['code']}@{r['position']}": r for r in rows}
    for key in sorted(set(expected) | set(got)):
        want, row = expected.get(key), got.get(key)
        value = row["value"] if row else None
        report.compared["presence"] += 1
        if (want is None) != (value is None):
            why = (row or {}).get("absent") or ("not listed" if row is None else "")
            report.note(test, key, "presence", want and want[0], value, str(why))
        elif want is not None:
            report.compared["value"] += 1
            if not close(want[0], value):
                report.note(test, key, "value", want[0], value, f"relative {abs(want[0] - value) / max(abs(want[0]), 1e-300):.2e}")
            window(report, test, key, want, row)
        elif row is not None and not row.get("absent"):
            report.note(test, key, "reason", "a reason", None)


def window(report, test, key, want, row):
    if not key.startswith("head.hic") or want[0] == 0:
        return
    report.compared["window"] += 1
    if row.get("from") is None or abs(row["from"] - want[1]) > WINDOW_S or abs(row["to"] - want[2]) > WINDOW_S:
        report.note(test, key, "window", want[1:], [row.get("from"), row.get("to")])


def structure(report, test, expected, got):
    alignment = (got or {}).get("alignment") or {}
    want = (expected["alignment"] or {}).get("rmsMm")
    rms = alignment.get("rmsMm")
    if (want is None) != (rms is None) or (want is not None and not close(want, rms)):
        report.note(test, "alignment.rmsMm", "structure", want, rms)
    moved = {name for name in (expected["alignment"] or {}).get("moved", [])}
    named = {r.get("point") for r in alignment.get("references", []) if isinstance(r, dict) and any(r.get(k) for k in ("moved", "suspect", "isMoved"))}
    report.same(test, "moved references", "structure", sorted(moved), sorted(named))
    points = {p["point"].lower(): p for p in (got or {}).get("points", [])}
    for p in expected["points"]:
        other = points.get(p["point"])
        for part in ("rearward", "lateral", "upward", "resultant", "uncertainty"):
            report.compared["structure"] += 1
            value = other.get(part) if other else None
            if value is None or not close(p[part], value):
                report.note(test, f"{p['point']}.{part}", "uncertainty" if part == "uncertainty" else "structure", p[part], value)


def verdict(text):
    text = re.sub("[^a-z]", "", str(text).lower())
    return {"notrecorded": "not recorded"}.get(text, text)


def conduct(report, test, expected, detail):
    report.same(test, "valid", "verdict", expected["valid"], detail.get("valid"))
    items = detail.get("conduct") or []
    items = items.get("items", []) if isinstance(items, dict) else items
    for name, want in expected["conduct"].items():
        found = [i for i in items if match(name, str(i.get("item") or i.get("code") or i.get("name") or ""))]
        got = verdict(found[0].get("verdict")) if found else None
        if got is None and want == "not recorded":
            continue
        report.same(test, f"conduct {name}", "verdict", want, got)


def match(name, text):
    text = text.lower()
    agree = any(w in text for w in CONDUCT_WORDS["speedAgreement"])
    return agree if name == "speedAgreement" else any(w in text for w in CONDUCT_WORDS[name]) and not agree


def rating(report, test, expected, got):
    report.same(test, "rating valid", "level", expected["valid"], got.get("valid"))
    report.same(test, "overall", "level", word(expected["overall"]), word(got.get("overall")))
    level = got.get("structure")
    report.same(test, "structure", "level", word(expected["structure"]), word(level.get("level") if isinstance(level, dict) else level))
    regions = {(r["region"], r["position"]): r for r in got.get("regions", []) if r["region"] != "structure"}
    for r in expected["regions"]:
        other = regions.pop((r["region"], r["position"]), None)
        report.same(test, f"{r['region']}@{r['position']}", "level", word(r["level"]), word(other["level"]) if other else None)
    for key, other in regions.items():
        report.note(test, f"{key[0]}@{key[1]}", "level", None, other["level"], "a region of nobody")
    caps(report, test, expected, got)


def caps(report, test, expected, got):
    """Kinds of findings that capped, and measures over a limit, as they are named in caps and explanation."""
    text = json.dumps(got.get("caps", [])).lower()
    want = set(expected["overallCaps"]) | {k for r in expected["regions"] for k in r["caps"]}
    from rating import LEG_CAPS, OVERALL_CAPS, REGION_CAPS
    kinds = {*OVERALL_CAPS, *REGION_CAPS, *LEG_CAPS}
    named = {k for k in kinds if re.search(rf"(?<![a-z-]){k}(?![a-z-])", text)}
    report.same(test, "caps by findings", "cap", sorted(want), sorted(named))
    whole = text + json.dumps(got.get("explanation", []))
    for r in expected["regions"]:
        for code in r["overLimits"]:
            report.compared["cap"] += 1
            if code not in whole:
                report.note(test, f"{r['region']}@{r['position']}", "cap", f"limit of {code} named", None)


def compare(client, report, test, expected):
    detail = client.test(test)
    conduct(report, test, expected, detail)
    measures(report, test, expected["measures"], client.test(test, "/measures"))
    structure(report, test, expected["structure"], client.test(test, "/structure"))
    rating(report, test, expected["rating"], client.test(test, "/rating"))


def upload(client, report, folder, test):
    with open(os.path.join(folder, f"{test}.zip"), "rb") as package:
        status, body = client.upload(package.read())
    if status not in (200, 201):
        report.note(test, "upload", "upload", 201, status, json.dumps(body, ensure_ascii=False)[:400])
    return status in (200, 201)


def summary(report, tests):
    hard = [r for r in report.rows if not r["open"]]
    for r in report.rows:
        print(f"{'open ' if r['open'] else ''}{r['test']} {r['case']}: {r['what']} [{r['kind']}] expected {r['expected']}, got {r['got']} {r['why']}")
    print("compared:", ", ".join(f"{n} {k}" for k, n in sorted(report.compared.items())))
    print(f"{len(tests)} packages, {len(hard)} disagreements in {len({r['test'] for r in hard})} packages, {len(report.rows) - len(hard)} open readings")
    print("by kind:", dict(collections.Counter(r["kind"] for r in hard)))
    return hard


def main():
    options = argparse.ArgumentParser()
    here = os.path.dirname(os.path.abspath(__file__))
    for name, default in (("--url", None), ("--token", None), ("--packages", None), ("--expected", os.path.join(here, "expected.json.gz")), ("--only", ""), ("--out", None)):
        options.add_argument(name, default=default)
    options.add_argument("--no-upload", action="store_true")
    o = options.parse_args()
    folder = o.packages or tempfile.mkdtemp(prefix="packages-")
    wanted = set(filter(None, o.only.split(",")))
    if not o.packages:
        packages.main(folder, wanted)
    with gzip.open(o.expected) as file:
        everything = json.load(file)
    client, report = Client(o.url, o.token), Report()
    tests = [t for t in sorted(everything) if not wanted or t in wanted]
    for test in tests:
        try:
            if o.no_upload or upload(client, report, folder, test):
                compare(client, report, test, everything[test])
        except (RuntimeError, KeyError, TypeError, AttributeError) as error:
            report.note(test, "answer", "answer", "the contract's JSON", repr(error)[:300])
    hard = summary(report, tests)
    if o.out:
        with open(o.out, "w") as out:
            json.dump(dict(packages=len(tests), compared=report.compared, disagreements=report.rows), out, indent=1, ensure_ascii=False)
    return 1 if hard else 0


if __name__ == "__main__":
    sys.exit(main())
