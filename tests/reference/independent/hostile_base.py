"""A small sound package as a dict of files, and the register of hostile cases.

An expectation is "refused" (400, 413 or 422, nothing stored), "kept" (201 with at least one problem),
"flawed" (refused, or kept with a problem) or "either" (refused or 201; never anything else).
"""
import io
import json
import warnings
import zipfile

import numpy as np

warnings.filterwarnings("ignore", "Duplicate name", UserWarning)     # that is the point of one case
CASES = []      # (name, expectation, maker(code) -> bytes)


def hostile(expectation):
    def register(make):
        CASES.append((make.__name__, expectation, make))
        return make
    return register


def add(name, expectation, make):
    CASES.append((name, expectation, make))


def programme(code):
    return {"test": code, "procedure": "offset-frontal-64", "date": "2031-03-14", "laboratory": "Hall 2", "repeatOf": None,
            "vehicle": {"key": f"quillon-{code.lower()}", "make": "Quillon", "model": "Hostile", "modelYears": [2030, 2032], "class": "delivery-van", "kerbMassKg": 1690},
            "conduct": {"impactSpeedKmh": [64.3, 64.35], "overlapPercent": 40.3, "testMassKg": 1834.5, "declaredTestMassKg": 1840, "dummyTemperatureC": [21.3]},
            "occupants": [{"position": 1, "seat": "driver", "dummy": "H3"}],
            "structure": {"unit": "mm", "axes": {"x": "forward", "y": "right", "z": "down"}}}


def pulse(amplitude, seed, count=2000, dt=1e-4, t0=-0.02):
    t = t0 + np.arange(count) * dt
    return amplitude * np.exp(-((t - 0.07) / 0.015) ** 2) + 0.1 * np.random.RandomState(seed).standard_normal(count)


def channel(code, samples, unit="g", dt="0.0001", t0="-0.02", count=None, more=()):
    keys = [("Channel code", code), ("Channel frequency class", "NOVALUE"), ("Unit", unit), ("Sampling interval", dt), ("Time of first sample", t0),
            ("Number of samples", len(samples) if count is None else count), ("Reference channel", "implicit"), *more]
    lines = [f"{k:<28}:{v}" for k, v in keys if v is not None]
    return ("\r\n".join(lines + [x if isinstance(x, str) else f"{x:.6g}" for x in samples]) + "\r\n").encode("latin-1")


HEAD = [("11HEAD0000H3ACX0", -40), ("11HEAD0000H3ACY0", 12), ("11HEAD0000H3ACZ0", 22)]
POINTS = ["point,role,pre_x,pre_y,pre_z,post_x,post_y,post_z", "ref-a,reference,-900,-500,480,-899,-500,480", "ref-b,reference,-905,505,478,-905,505.5,478",
          "ref-c,reference,-1150,-720,250,-1150,-720,250.4", "ref-d,reference,-1700,310,330,-1700,310,330", "footwell-upper-outer,measured,900,-560,250,850,-560,240",
          "wheel-hub,measured,480,-370,-60,450,-370,-80"]


def files(code):
    out = {"programme.json": json.dumps(programme(code)).encode(), f"{code}.mme": b"Data format edition number  :1.6\r\n"}
    index = [f"{'Number of channels':<28}:3"]
    for n, (name, amplitude) in enumerate(HEAD, 1):
        out[f"Channel/{code}.{n:03d}"] = channel(name, pulse(amplitude, n))
        index.append(f"{f'Name of channel {n:03d}':<28}:{name} / head")
    out[f"Channel/{code}.chn"] = "\r\n".join(index).encode()
    out["Static/points.csv"] = "\r\n".join(POINTS).encode()
    return out


def pack(entries, compression=zipfile.ZIP_DEFLATED):
    """entries: dict or list of (name | ZipInfo, bytes)."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", compression) as archive:
        for name, raw in entries.items() if isinstance(entries, dict) else entries:
            info = name if isinstance(name, zipfile.ZipInfo) else zipfile.ZipInfo(name, (2031, 3, 14, 9, 26, 52))
            info.compress_type = compression
            archive.writestr(info, raw, compresslevel=1)
    return buffer.getvalue()


def with_file(name, raw):
    """maker: the sound package with one file put in ({code} in the name stands for the test code; None removes)."""
    def make(code):
        f, key = files(code), name.replace("{code}", code)
        if raw is None:
            f.pop(key)
        else:
            f[key] = raw(code) if callable(raw) else raw
        return pack(f)
    return make


def with_programme(change):
    """maker: programme.json changed in place, or replaced by the bytes / object that `change` returns."""
    def make(code):
        p = programme(code)
        result = change(p)
        raw = result if isinstance(result, bytes) else json.dumps(p if result is None else result).encode()
        f = files(code)
        f["programme.json"] = raw
        return pack(f)
    return make
