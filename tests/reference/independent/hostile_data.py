"""Hostile channel files, points, clearances and findings. Most defects are a channel's own: the run is kept, with problems."""
import numpy as np

from hostile_base import POINTS, add, channel, files, hostile, pack, pulse, with_file

X = pulse(-40, 1)
CODE = "11HEAD0000H3ACX0"


def first(title, expectation, raw):
    add(f"channel_{title}", expectation, with_file("Channel/{code}.001", raw))


for bad in ("", "11HEAD0000H3AC", "11HEAD0000H3ACX0X", "?" * 16, "11HEAD0000H3ACX" + "\u00e9", "=1+1", "../../../etc/x01"):
    first(f"code_{bad!r}", "kept", channel(bad, X))
first("code_missing", "kept", channel(None, X, more=()).replace(b"Channel code", b"Kanal code "))
for bad in ("0", "-0.0001", "NaN", "1e-300", "1e300", "Infinity", "abc", "", "NOVALUE", "1e5000"):
    first(f"interval_{bad!r}", "kept", channel(CODE, X, dt=bad))
for bad in ("1e300", "-1e300", "NaN", "abc", "99999", "-99999", "1e18"):
    first(f"start_{bad!r}", "either" if "9" in bad or "e" in bad else "kept", channel(CODE, X, t0=bad))
for bad in ("-5", "1e18", "99999999999999999999", "abc", "3"):
    first(f"count_{bad!r}", "kept", channel(CODE, X, count=bad))
for bad in ("furlong", "", "NOVALUE", "<b>g</b>", "g" * 100_000):
    first(f"unit_{bad[:10]!r}", "flawed", channel(CODE, X, unit=bad))
for bad in ("-60", "0", "1e9", "NaN", "thousand"):
    first(f"class_{bad!r}", "either", channel(CODE, X, more=[("Channel frequency class", bad)]).replace(b"Channel frequency class     :NOVALUE\r\n", b""))
for title, values in {"all_nan": ["NaN"] * 2000, "infinity": ["Infinity"] * 2000, "hex": ["0x10"] * 2000, "overflow": ["1e5000"] * 2000, "thousands": ["1.234,5"] * 2000,
                      "text": ["<script>alert(1)</script>"] * 50, "one_sample": ["1.0"], "none": [], "flat": ["3.0"] * 2000}.items():
    first(f"samples_{title}", "kept", channel(CODE, values))
for title, factor in {"near_overflow": 4e306, "denormal": 1e-318, "huge": 1e200, "signed_huge": -1e153}.items():
    first(f"samples_{title}", "either", channel(CODE, [f"{x * factor:.9g}" for x in X]))
first("megabyte_line", "flawed", channel(CODE, ["1" * 4_000_000]))
first("megabyte_key", "either", b"K" * 4_000_000 + b":v\r\n" + channel(CODE, X))
first("many_keys", "either", b"".join(b"Unknown key %d : v\r\n" % i for i in range(200_000)) + channel(CODE, X))
first("many_equal_keys", "either", b"Comments : v\r\n" * 400_000 + channel(CODE, X))
first("samples_bad_two_million", "either", channel(CODE, [f"x{i % 10007}" for i in range(1_900_000)]))
first("one_line_of_many", "either", channel(CODE, [" ".join(f"{x:.5g}" for x in np.tile(X, 50))]))
first("empty_file", "kept", b"")
first("binary", "kept", bytes(range(256)) * 4000)
first("no_header", "kept", "\r\n".join(f"{x:.5g}" for x in X).encode())
first("header_only", "kept", channel(CODE, []))
first("utf16", "kept", channel(CODE, X).decode("latin-1").encode("utf-16"))
first("explicit_missing", "kept", channel(CODE, X, more=[("Reference channel name", "10TIRS000000TI00")]).replace(b":implicit", b":explicit"))
first("explicit_itself", "kept", channel(CODE, X, more=[("Reference channel name", CODE)]).replace(b":implicit", b":explicit"))
add("channel_number_twice", "either", lambda code: pack({**files(code), f"Channel/{code}.0001": channel(CODE, X)}))
add("channel_index_forged", "either", with_file("Channel/{code}.chn", b"Number of channels:99999999999\r\n" + b"Name of channel 001 : \r\n" * 1000))
add("channel_index_missing", "either", with_file("Channel/{code}.chn", None))
add("test_header_missing", "either", with_file("{code}.mme", None))
add("channels_2001", "refused", lambda code: pack({**files(code), **{f"Channel/{code}.{i:04d}": channel(CODE, ["1", "2"]) for i in range(1, 2002)}}))
add("no_channels_at_all", "either", lambda code: pack({n: raw for n, raw in files(code).items() if not n.startswith("Channel")}))


def timed(title, times, expectation="kept"):
    def make(code):
        f = files(code)
        f[f"Channel/{code}.001"] = channel(CODE, X, dt=None, t0=None, more=[("Reference channel name", "10TIRS000000TI00")]).replace(b":implicit", b":explicit")
        f[f"Channel/{code}.004"] = channel("10TIRS000000TI00", [f"{t:.9g}" for t in times], unit="s")
        return pack(f)
    add(f"time_channel_{title}", expectation, make)


T = -0.02 + np.arange(2000) * 1e-4
timed("backwards", T[::-1])
timed("constant", np.zeros(2000))
timed("shuffled", np.random.RandomState(3).permutation(T))
timed("uneven", T + 3e-5 * np.random.RandomState(4).random_sample(2000))
timed("too_short", T[:7])


@hostile("either")
def fast_sampling_of_the_head(code):
    """1 MHz over 0.3 s: an obvious HIC loop would run 10^10 steps."""
    f = files(code)
    for n, axis in enumerate("XYZ", 1):
        f[f"Channel/{code}.{n:03d}"] = channel(f"11HEAD0000H3AC{axis}0", pulse(40, n, 330_000, 1e-6), dt="0.000001")
    return pack(f)


@hostile("either")
def fast_sampling_of_everything(code):
    """1 MHz for six accelerometer triples: still one package, still 10 s."""
    f, n = files(code), 0
    for p in "13":
        for place in ("HEAD0000", "CHST0000", "PELV0000"):
            for axis in "XYZ":
                n += 1
                f[f"Channel/{code}.{n:03d}"] = channel(f"1{p}{place}H3AC{axis}0", pulse(40, n, 330_000, 1e-6), dt="0.000001")
    f["programme.json"] = f["programme.json"].replace(b'"dummy": "H3"}', b'"dummy": "H3"}, {"position": 3, "seat": "passenger", "dummy": "H3"}')
    return pack(f)


@hostile("either")
def gigahertz_sampling(code):
    f = files(code)
    for n, axis in enumerate("XYZ", 1):
        f[f"Channel/{code}.{n:03d}"] = channel(f"11HEAD0000H3AC{axis}0", pulse(40, n, 100_000, 1e-9, -1e-5), dt="1e-9", t0="-0.00001")
    return pack(f)


@hostile("refused")
def samples_over_two_million(code):
    f = files(code)
    f[f"Channel/{code}.001"] = channel(CODE, [f"{i % 97}" for i in range(2_000_001)])
    return pack(f)


def table(path, title, expectation, raw):
    add(f"{path.split('/')[-1][:-4]}_{title}", expectation, with_file(path, raw))


HEADER = POINTS[0].encode()
for title, raw in {"empty": b"", "header_only": HEADER, "no_header": "\n".join(POINTS[1:]).encode(), "columns_missing": b"point,role,pre_x\nref-a,reference,1", "binary": bytes(range(256)) * 100,
                   "text_for_number": "\n".join(POINTS).replace("480,-899", "high,-899").encode(), "infinite": "\n".join(POINTS).replace("480,-899", "1e999,-899").encode(),
                   "huge": "\n".join(POINTS).replace("900,-560,250", "1e308,-1e308,1e308").encode(), "role_unknown": "\n".join(POINTS).replace("ref-a,reference", "ref-a,president").encode(),
                   "ragged": "\n".join(POINTS + ["wheel-rim,measured,1,2"]).encode(), "open_quote": ("\n".join(POINTS) + '\n"open,measured,1,2,3,4,5,6').encode(),
                   "same_point_references": "\n".join([POINTS[0]] + [f"r{i},reference,1,1,1,1,1,1" for i in range(6)] + POINTS[5:]).encode(),
                   "collinear": "\n".join([POINTS[0]] + [f"r{i},reference,{i},{2 * i},{3 * i},{i},{2 * i},{3 * i}" for i in range(6)] + POINTS[5:]).encode(),
                   "formula_name": "\n".join(POINTS + ["=1+1,measured,1,2,3,4,5,6"]).encode(), "megabyte_name": "\n".join(POINTS + ["n" * 2_000_000 + ",measured,1,2,3,4,5,6"]).encode(),
                   "nul_name": "\n".join(POINTS + ["a\0b,measured,1,2,3,4,5,6"]).encode(), "references_100000": "\n".join(POINTS + [f"r{i},reference,{i % 91},{i % 77},{i},{i % 91},{i % 77},{i}" for i in range(100_000)]).encode()}.items():
    table("Static/points.csv", title, "either" if title in ("formula_name", "megabyte_name", "nul_name", "huge", "references_100000", "header_only") else "flawed", raw)
for title, row in {"negative": "gap,wheel-hub,-50", "text": "gap,wheel-hub,wide", "unknown_point": "gap,nowhere,50", "ragged": "gap", "formula": "=1+1,wheel-hub,5", "huge": "gap,wheel-hub,1e308", "nul": "g\0p,wheel-hub,1"}.items():
    table("Static/clearances.csv", title, "flawed" if title in ("text", "unknown_point", "ragged") else "either", f"clearance,opposing_point,distance\n{row}\n".encode())
for title, row in {"unknown_kind": "5,K1,meteor,head,severe,x", "unknown_severity": "5,K1,fire,vehicle,terrible,x", "unknown_region": "5,K1,head-strike,tail,severe,x", "time_text": "soon,K1,fire,vehicle,note,x",
                   "time_huge": "1e308,K1,fire,vehicle,note,x", "ragged": "5,K1", "script": "5,K1,fire,vehicle,note,<script>alert(1)</script>", "formula": "5,K1,fire,vehicle,note,=1+1",
                   "nul": "5,K1,fire,vehicle,note,a\0b", "megabyte_note": "5,K1,fire,vehicle,note," + "n" * 2_000_000}.items():
    table("Movie/findings.csv", title, "flawed" if title.startswith(("unknown", "ragged", "time_text")) else "either", f"time_ms,camera,kind,region,severity,note\n{row}\n".encode())
table("Movie/findings.csv", "position_unknown", "either", b"time_ms,camera,kind,region,severity,note,position\n5,K1,head-strike,head,severe,x,9\n5,K1,head-strike,head,severe,x,two\n")
table("Movie/findings.csv", "many", "either", ("time_ms,camera,kind,region,severity,note\n" + "5,K1,floor-buckled,structure,note,x\n" * 100_000).encode())


def wide(title, text, expectation="either"):
    add(f"wide_csv_{title}", expectation, with_file("Channel/wide.csv", text.encode()))


ROWS = "\n".join(f"{t:.6g},{x:.6g}" for t, x in zip(T, X))
wide("ragged", "time,11CHST0000H3ACX0\ns,g\n" + ROWS + "\n0.5\n0.6,1,2,3")
wide("no_time", "11CHST0000H3ACX0,11CHST0000H3ACY0\ng,g\n" + ROWS)
wide("no_units", "time,11CHST0000H3ACX0\n" + ROWS)
wide("header_only", "time,11CHST0000H3ACX0")
wide("empty", "")
wide("open_quote", 'time,"11CHST0000H3ACX0\ns,g\n' + ROWS)
wide("same_code_twice", "time,11CHST0000H3ACX0,11CHST0000H3ACX0\ns,g,g\n" + "\n".join(f"{t:.6g},1,{i}" for i, t in enumerate(T)))
wide("rows_million", "time,11CHST0000H3ACX0\ns,g\n" + "\n".join(f"{i / 1e6:.6f},{i % 977}" for i in range(1_000_000)))
wide("columns_5000", "time," + ",".join(["11CHST0000H3ACX0"] * 5000) + "\ns," + ",".join(["g"] * 5000) + "\n" + "\n".join("0.0001," + ",".join(["1"] * 5000) for _ in range(4)), "refused")
