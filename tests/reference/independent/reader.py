"""Reads a test package: zip, ISO/TS 13499 text, wide CSV, side files. Written from the format's description alone.

Nothing here judges a channel; it only says what stands in the file. `Channel.defect` is a reason the samples cannot be used at all.
"""
import csv
import io
import json
import math
import re
import zipfile
from dataclasses import dataclass, field

import numpy as np

UNITS = {  # unit text without blanks, lower case -> (working unit, factor)
    "g": ("g", 1.0), "m/(s*s)": ("g", 1 / 9.80665), "m/s2": ("g", 1 / 9.80665),
    "n": ("kN", 1e-3), "kn": ("kN", 1.0),
    "nm": ("N·m", 1.0), "n*m": ("N·m", 1.0),
    "m": ("mm", 1000.0), "cm": ("mm", 10.0), "mm": ("mm", 1.0),
    "s": ("s", 1.0), "deg": ("deg", 1.0), "rad/s": ("rad/s", 1.0),
}


@dataclass
class Channel:
    code: str
    number: int
    samples: np.ndarray            # working unit
    unit: str
    dt: float | None
    t0: float | None
    header_class: float | None
    defect: str | None = None


@dataclass
class Package:
    programme: dict
    channels: list = field(default_factory=list)
    points: list = field(default_factory=list)      # dicts of text
    clearances: list = field(default_factory=list)
    findings: list = field(default_factory=list)


def decode(raw: bytes) -> str:
    if raw.startswith(b"\xef\xbb\xbf"):
        return raw[3:].decode("utf-8")
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError:
        return raw.decode("latin-1")


def number(text: str) -> float:
    """A decimal number with point or comma; nan where it is not one."""
    text = text.strip()
    if not re.fullmatch(r"[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?", text):
        return math.nan
    return float(text.replace(",", "."))


def header_number(header: dict, key: str):
    value = number(header.get(key, "NOVALUE"))
    return None if math.isnan(value) else value


def split_header(text: str):
    """Header lines 'key : value' until the first line without a colon; the rest are samples."""
    header, lines, at = {}, text.splitlines(), 0
    for at, line in enumerate(lines):
        if not line.strip():
            continue
        if ":" not in line:
            break
        key, value = line.split(":", 1)
        header.setdefault(" ".join(key.split()).lower(), value.strip())
    else:
        at = len(lines)
    return header, lines[at:]


def to_working(values: np.ndarray, unit_text: str):
    unit = UNITS.get(unit_text.replace(" ", "").lower())
    if unit is None:
        return values, unit_text, f"unknown unit {unit_text!r}"
    return values * unit[1], unit[0], None


def read_channel(raw: bytes, file_number: int) -> Channel:
    header, lines = split_header(decode(raw))
    values = np.array([number(word) for line in lines for word in line.split()])
    values, unit, defect = to_working(values, header.get("unit", "NOVALUE"))
    channel = Channel(header.get("channel code", "").strip().upper(), file_number, values, unit,
                      header_number(header, "sampling interval"), header_number(header, "time of first sample"),
                      header_number(header, "channel frequency class"), defect)
    if header.get("reference channel", "").lower() == "explicit":
        channel.reference = header.get("reference channel name", "").strip().upper()
    return channel


def resolve_explicit_time(channels: list) -> None:
    by_code = {c.code: c for c in channels}
    for channel in channels:
        reference = getattr(channel, "reference", None)
        if reference is None:
            continue
        times = by_code.get(reference)
        if times is None or len(times.samples) < 2:
            channel.defect = channel.defect or "its time channel is missing"
            continue
        set_time(channel, times.samples)


def set_time(channel: Channel, times: np.ndarray) -> None:
    channel.t0 = float(times[0])
    channel.dt = float((times[-1] - times[0]) / (len(times) - 1))


def read_wide_csv(raw: bytes) -> list:
    rows = [row for row in csv.reader(io.StringIO(decode(raw))) if row]
    codes, units = rows[0], rows[1]
    table = np.array([[number(cell) for cell in row] for row in rows[2:]])
    channels = []
    for column in range(1, len(codes)):
        values, unit, defect = to_working(table[:, column], units[column])
        channel = Channel(codes[column].strip().upper(), 100_000 + column, values, unit, None, None, None, defect)
        set_time(channel, table[:, 0])
        channels.append(channel)
    return channels


def read_table(raw: bytes | None) -> list:
    if raw is None:
        return []
    rows = list(csv.reader(io.StringIO(decode(raw))))
    names = [name.strip().lower() for name in rows[0]]
    return [dict(zip(names, (cell.strip() for cell in row))) for row in rows[1:] if any(cell.strip() for cell in row)]


def read(path) -> Package:
    with zipfile.ZipFile(path) as archive:
        files = {info.filename.lower(): archive.read(info) for info in archive.infolist() if not info.is_dir()}
    main = next(name for name in files if name == "programme.json" or re.fullmatch(r"[^/]+/programme\.json", name))
    top = main[: -len("programme.json")]
    files = {name[len(top):]: raw for name, raw in files.items() if name.startswith(top)}
    package = Package(json.loads(decode(files["programme.json"])))
    for name in sorted(files):
        match = re.fullmatch(r"channel/.*\.(\d{3,})", name)
        if match:
            package.channels.append(read_channel(files[name], int(match.group(1))))
        elif re.fullmatch(r"channel/.*\.csv", name):
            package.channels.extend(read_wide_csv(files[name]))
    resolve_explicit_time(package.channels)
    package.points = read_table(files.get("static/points.csv"))
    package.clearances = read_table(files.get("static/clearances.csv"))
    package.findings = read_table(files.get("movie/findings.csv"))
    return package
