"""Cases about how a package is written: rates, units, line ends, encodings, folders, headers, time channels, CSV."""
import sys

import numpy as np

packages = sys.modules.get("packages") or sys.modules["__main__"]
Case, Style, case, SI = packages.Case, packages.Style, packages.case, packages.SI
PAIR = [(1, "driver", "H3", None), (3, "passenger", "HF", None)]


@case
def plain(n):
    return Case(n)


@case
def twenty_khz_small_dummy_si_units(n):
    return Case(n, level=1, fs=2e4, people=[(1, "driver", "HF", None)], style=Style(units=SI))


@case
def two_occupants(n):
    return Case(n, level=1, people=[(1, "driver", "H3", 1), (3, "passenger", "HF", 2)], style=Style(newline="\n"))


@case
def no_folder_lower_names_bom(n):
    return Case(n, level=2, style=Style(newline="\n", encoding="utf-8-sig", top_folder=False, lower_names=True, units={"g": "m/s2", "kN": "kN", "N·m": "N*m", "mm": "cm"}))


@case
def twelve_and_a_half_khz(n):
    return Case(n, level=2, fs=12.5e3, t0=-0.056)


@case
def hundred_khz_short(n):
    c = Case(n, level=1, fs=1e5, t0=-0.03, end=0.16)
    c.sensors = [s for s in c.sensors if any(k in s.code for k in ("HEAD", "NECK", "CHST0003", "VEHC", "FEMR"))]
    return c


@case
def several_samples_a_line_shuffled_keys(n):
    return Case(n, level=3, style=Style(per_line=7, shuffled=True, padding="none"))


@case
def explicit_time_channels(n):
    return Case(n, level=1, style=Style(explicit=True, padding="tight"))


@case
def index_incomplete_and_wrong(n):
    c = Case(n, level=2, style=Style(padding="wide", newline="\n", encoding="utf-8"))
    for part in ("HEAD0000H3ACX", "FEMRLE", "10BPILLE"):
        c.sensor(part).indexed = False
    c.sensor("NECKUP00H3FOZ").index_code = "11NECKLO00H3FOZ0"
    return c


@case
def wide_csv(n):
    return Case(n, level=1, style=Style(wide_csv=True, newline="\n"))


@case
def wide_csv_twenty_khz_si(n):
    return Case(n, level=2, fs=2e4, people=[(3, "driver", "H3", None)], style=Style(wide_csv=True, encoding="utf-8-sig", units=SI, top_folder=False))


@case
def decimal_comma(n):
    return Case(n, level=1, style=Style(comma=True, units=SI))


@case
def lower_case_codes_and_header_noise(n):
    c = Case(n, level=0, style=Style(newline="\n", lower_names=True))
    for s in c.sensors:
        s.header["Unit"] = None
        s.header["Unit "] = {"g": "g", "kN": "kN", "N·m": "Nm", "mm": "mm"}[s.kind]
        s.header["Comments"] = "=HYPERLINK(1) <b>Größe</b> : mit Doppelpunkt"
    return c


@case
def sample_count_disagrees(n):
    c = Case(n, level=1)
    c.sensor("CHST0003").header["Number of samples"] = "9999"
    c.sensor("FEMRLE").header["Number of samples"] = "12"
    c.sensor("10VEHC").header["Number of samples"] = "NOVALUE"
    return c


@case
def unknown_units(n):
    c = Case(n, level=1)
    c.sensor("FEMRRI").unit = "lbf"
    c.sensor("CHST0000H3ACY").header["Unit"] = "NOVALUE"
    c.sensor("TIBILELOH3MOX").header["Unit"] = "furlong"
    return c


@case
def start_between_samples(n):
    return Case(n, level=2, t0=-0.06003)


@case
def no_contact_data_before(n):
    return Case(n, level=1, t0=0.0)


@case
def short_contact_data_before(n):
    return Case(n, level=1, t0=-0.012)


@case
def exactly_ten_ms_before(n):
    return Case(n, level=1, t0=-0.0149)


@case
def just_under_ten_ms_before(n):
    return Case(n, level=1, t0=-0.0148)


@case
def record_starts_after_contact(n):
    return Case(n, level=1, t0=0.00213, fs=2e4)


@case
def ends_early(n):
    c = Case(n, level=1, end=0.22)
    for part in ("HEAD0000H3ACX", "HEAD0000H3ACY", "HEAD0000H3ACZ"):
        s = c.sensor(part)
        s.samples = s.samples[: int(0.20 / s.dt)]
    s = c.sensor("CHST0003")
    s.samples = s.samples[: int(0.19 / s.dt)]
    return c


@case
def eight_khz(n):
    return Case(n, level=1, fs=8e3)


@case
def components_of_other_rate_start_and_length(n):
    c = Case(n, level=1)
    s = c.sensor("HEAD0000H3ACY")
    s.samples, s.dt = np.repeat(s.samples, 2)[:-1] + 0.01 * c.maker.r.standard_normal(2 * len(s.samples) - 1), s.dt / 2
    c.sensor("PELV0000H3ACZ").t0 += 2e-4
    s = c.sensor("CHST0000H3ACX")
    s.samples = s.samples[:2500]
    s = c.sensor("NECKUP00H3MOY")
    s.samples = s.samples[:1700]
    return c
