"""Writes a test package in the many hands laboratories have: paddings, key orders, line ends, encodings, units."""
import json
import random
import zipfile
from dataclasses import dataclass, field

import numpy as np

from structure import DIRECTIONS, SCALE_MM

UNIT_FACTOR = {"g": 1.0, "m/(s*s)": 9.80665, "m/s2": 9.80665, "kN": 1.0, "N": 1000.0, "N·m": 1.0, "Nm": 1.0, "N*m": 1.0,
               "mm": 1.0, "cm": 0.1, "m": 0.001, "s": 1.0, "lbf": 224.809}


@dataclass
class Style:
    newline: str = "\r\n"
    encoding: str = "latin-1"        # or utf-8-sig, utf-8
    top_folder: bool = True
    lower_names: bool = False
    padding: str = "28"              # 28 | none | tight | wide
    shuffled: bool = False
    per_line: int = 1
    explicit: bool = False
    comma: bool = False
    wide_csv: bool = False
    units: dict = field(default_factory=lambda: {"g": "g", "kN": "kN", "N·m": "Nm", "mm": "mm"})


@dataclass
class Sensor:
    code: str                        # 16 characters
    kind: str                        # working unit
    samples: np.ndarray
    dt: float
    t0: float
    header: dict = field(default_factory=dict)      # overrides; value None removes the key
    lines: dict = field(default_factory=dict)       # index -> text put in place of a sample
    unit: str | None = None
    indexed: bool = True
    index_code: str | None = None


def header_line(style, key, value):
    return {"28": f"{key:<28}:{value}", "none": f"{key}:{value}", "tight": f"{key} : {value}", "wide": f"{key:<44}: {value}"}[style.padding]


def sample_texts(style, sensor, unit):
    texts = [f"{x:.7g}" for x in sensor.samples * UNIT_FACTOR[unit]]
    for i, text in sensor.lines.items():
        texts[i] = text
    return [t.replace(".", ",") for t in texts] if style.comma else texts


def channel_text(style, sensor, number, time_code):
    unit = sensor.unit or style.units.get(sensor.kind, sensor.kind)
    keys = {"Test object number": sensor.code[0], "Name of the channel": f"Kanal {number}, Meßstelle", "Laboratory channel code": f"LK{number:04d}",
            "Channel code": sensor.code, "Location": "NOVALUE", "Dimension": "NOVALUE", "Channel frequency class": "NOVALUE", "Unit": unit,
            "Sampling interval": f"{sensor.dt:.9g}", "Time of first sample": f"{sensor.t0:.9g}", "Number of samples": str(len(sensor.samples)),
            "Reference channel": "implicit", "Reference channel name": "NOVALUE", "Hall humidity remark": "kept as it is", "Comments": "made for comparison"}
    if style.explicit and sensor.kind != "s":
        keys.update({"Reference channel": "explicit", "Reference channel name": time_code})
        del keys["Sampling interval"], keys["Time of first sample"]
    keys.update(sensor.header)
    lines = [header_line(style, k, v) for k, v in keys.items() if v is not None]
    if style.shuffled:
        random.Random(number).shuffle(lines)
    texts = sample_texts(style, sensor, unit)
    lines += ["  ".join(texts[i: i + style.per_line]) for i in range(0, len(texts), style.per_line)]
    return style.newline.join(lines) + style.newline


def csv_text(style, sensors):
    units = [s.unit or style.units.get(s.kind, s.kind) for s in sensors]
    rows = [",".join(["time"] + [s.code for s in sensors]), ",".join(["s"] + units)]
    columns = [[f"{sensors[0].t0 + i * sensors[0].dt:.9g}" for i in range(len(sensors[0].samples))]]
    columns += [sample_texts(style, s, u) for s, u in zip(sensors, units)]
    return style.newline.join(rows + [",".join(row) for row in zip(*columns)]) + style.newline


def points_text(style, structure, rows):
    axes = structure.get("axes", {"x": "forward", "y": "right", "z": "down"})
    matrix = np.array([DIRECTIONS[axes[a]] for a in "xyz"], float)
    scale = SCALE_MM[structure.get("unit", "mm")]

    def cells(xyz):
        return [text if isinstance(text, str) else f"{text:.9g}" for text in (matrix @ xyz / scale if not isinstance(xyz, list) else xyz)]
    lines = ["point,role,pre_x,pre_y,pre_z,post_x,post_y,post_z"]
    lines += [",".join([name, role] + cells(pre) + cells(post)) for name, role, pre, post in rows]
    return style.newline.join(lines) + style.newline


def table_text(style, names, rows):
    def quoted(cell):
        cell = str(cell)
        return '"' + cell.replace('"', '""') + '"' if any(c in cell for c in ',"\n') else cell
    return style.newline.join([",".join(names)] + [",".join(map(quoted, row)) for row in rows]) + style.newline


def time_sensor(sensor, index):
    count = len(sensor.samples)
    return Sensor(f"10TIRS{index:04d}00TI00", "s", sensor.t0 + np.arange(count) * sensor.dt, sensor.dt, sensor.t0)


def channel_files(style, code, sensors):
    """(name, text) of the index and the channel files; explicit style adds one time channel a time base."""
    sensors, clocks = list(sensors), {}
    if style.explicit:
        for s in list(sensors):
            key = (s.dt, s.t0, len(s.samples))
            if key not in clocks:
                clocks[key] = time_sensor(s, len(clocks) + 1)
        sensors += clocks.values()
    index = [header_line(style, "Instrumentation standard", "ISO 6487 (2015) / SAE J211"), header_line(style, "Number of channels", len(sensors))]
    for n, s in enumerate(sensors, 1):
        if s.indexed:
            index.append(header_line(style, f"Name of channel {n:03d}", f"{s.index_code or s.code} / Größe {n}"))
        clock = clocks.get((s.dt, s.t0, len(s.samples)))
        yield f"Channel/{code}.{n:03d}", channel_text(style, s, n, clock.code if clock else "NOVALUE")
    yield f"Channel/{code}.chn", style.newline.join(index) + style.newline


def write(path, style, programme, sensors, points, clearances, findings):
    code, files = programme["test"], []
    if style.wide_csv:
        files.append((f"Channel/{code}.csv", csv_text(style, sensors)))
    else:
        files += channel_files(style, code, sensors)
    header = {"Data format edition number": "1.6", "Laboratory name": "Prüfhalle Zwei", "Title": f"Überdeckung 40 %, {code}", "Date of the test": programme["date"],
              "Timestamp": "NOVALUE", "Type of the test": "frontal offset", "Number of media": "0", "Unknown remark": "kept"}
    files.append((f"{code}.mme", style.newline.join(header_line(style, k, v) for k, v in header.items()) + style.newline))
    if points is not None:
        files.append(("Static/points.csv", points_text(style, programme.get("structure") or {}, points)))
    if clearances:
        files.append(("Static/clearances.csv", table_text(style, ["clearance", "opposing_point", "distance"], clearances)))
    if findings:
        names = ["time_ms", "camera", "kind", "region", "severity", "note", "position"][: len(findings[0])]
        files.append(("Movie/findings.csv", table_text(style, names, findings)))
    files.append(("Document/lab-note.txt", "Begleitzettel, geprüft\r\n"))
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        def put(name, raw):
            name = (f"{code}/" if style.top_folder else "") + name
            info = zipfile.ZipInfo(name.lower() if style.lower_names else name, (2031, 3, 14, 9, 26, 52))
            info.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(info, raw, compresslevel=6)
        put("programme.json", json.dumps(programme, ensure_ascii=False, indent=1).encode("utf-8-sig" if style.encoding == "utf-8-sig" else "utf-8"))
        for name, text in files:
            put(name, text.encode(style.encoding))
