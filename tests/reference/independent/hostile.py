"""Uploads every hostile package and holds the service to its promises.

    python3 hostile.py --url URL --token TOKEN [--pid PID] [--only TEXT] [--without TEXT] [--out FILE.json]
    python3 hostile.py --list

Each must answer within 10 s as its case expects, /health must answer 200 after it, a refused one must leave nothing behind, a kept one must
be readable again. With --pid the resident memory of that process is watched.
"""
import argparse
import json
import sys
import time

import hostile_archive  # noqa: F401  (each registers its cases, in this order)
import hostile_data  # noqa: F401
import hostile_programme  # noqa: F401
from client import Client
from hostile_base import CASES

REFUSED = (400, 413, 422)
LONGEST_S = 10.0


def memory_mb(pid):
    if pid is None:
        return None
    with open(f"/proc/{pid}/status") as status:
        return int(next(line for line in status if line.startswith("VmRSS")).split()[1]) / 1024


def refusal_faults(client, code, status, body):
    faults = []
    if client.call("GET", f"/api/v1/tests/{code}")[0] != 404:
        faults.append("refused, yet the test exists")
    if status == 422:
        problems = body.get("problems") if isinstance(body, dict) else None
        if not problems:
            faults.append("422 without problems")
        elif any(not {"severity", "file", "line", "message"} <= set(p) for p in problems):
            faults.append("a problem lacks severity, file, line or message")
    return faults


def kept_faults(client, code, expectation, body):
    faults = []
    if expectation in ("kept", "flawed") and not body.get("problems"):
        faults.append("kept without a problem")
    for part in ("", "/measures", "/structure", "/findings", "/rating", "/channels"):
        status, answer = client.call("GET", f"/api/v1/tests/{code}{part}")
        if status != 200 or answer is None or isinstance(answer, str):
            faults.append(f"GET {part or '/'} answered {status}")
    return faults


def judge(client, code, expectation, status, body, seconds):
    allowed = {"refused": REFUSED, "kept": (201,), "flawed": REFUSED + (201,), "either": REFUSED + (201,)}[expectation]
    faults = [] if status in allowed else [f"answered {status}, expected {expectation}: {json.dumps(body, ensure_ascii=False)[:200]}"]
    if seconds > LONGEST_S:
        faults.append(f"took {seconds:.1f} s")
    if client.call("GET", "/health")[0] != 200:
        faults.append("not healthy afterwards")
    if status in REFUSED:
        faults += refusal_faults(client, code, status, body)
    elif status == 201:
        faults += kept_faults(client, body["test"], expectation, body)
    return faults


def run(client, code, case, pid):
    name, expectation, make = case
    raw, before = make(code), memory_mb(pid)
    start = time.monotonic()
    try:
        status, body = client.upload(raw)
        seconds = time.monotonic() - start
        faults = judge(client, code, expectation, status, body, seconds)
    except OSError as error:
        status, seconds, body, faults = None, time.monotonic() - start, None, [f"no answer: {error!r}"]
    after = memory_mb(pid)
    problems = body.get("problems") if isinstance(body, dict) else None
    return dict(case=name, code=code, bytes=len(raw), expectation=expectation, status=status, seconds=round(seconds, 2), faults=faults,
                problems=(problems or [])[:3], memoryMb=after and round(after), grewMb=after and round(after - before))


def main():
    options = argparse.ArgumentParser()
    for name in ("--url", "--token", "--pid", "--only", "--without", "--out"):
        options.add_argument(name)
    options.add_argument("--list", action="store_true")
    options.add_argument("--prefix", default="HX", help="letters of the test codes, to run twice against one database")
    o = options.parse_args()
    if o.list:
        print("\n".join(f"{expectation:8} {name}" for name, expectation, _ in CASES), f"\n{len(CASES)} cases")
        return 0
    client, results = Client(o.url, o.token), []
    for number, case in enumerate(CASES, 2001):
        if (o.only and o.only not in case[0]) or (o.without and o.without in case[0]):
            continue
        result = run(client, f"{o.prefix}-{number}", case, o.pid)
        results.append(result)
        mark = "ok  " if not result["faults"] else "FAIL"
        print(f"{mark} {result['status']} {result['seconds']:6.2f} s {result['case']}" + "".join(f"\n       {f}" for f in result["faults"]), flush=True)
    bad = [r for r in results if r["faults"]]
    print(f"{len(results)} hostile packages, {len(bad)} with faults")
    if o.out:
        with open(o.out, "w") as out:
            json.dump(results, out, indent=1, ensure_ascii=False)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
