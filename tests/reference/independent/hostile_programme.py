"""Hostile programme.json: wrong types, unknown words, bad codes and dates, deep JSON, text that wants to be run."""
import json

from hostile_base import add, with_file, with_programme

add("programme_missing", "refused", with_file("programme.json", None))
for title, raw in {"empty": b"", "not_json": b"{test: 'x'", "null": b"null", "array": b"[]", "number": b"12", "string": b'"x"', "truncated": b'{"test": "HX-9999", "vehicle": {',
                   "deep": b"[" * 200_000 + b"]" * 200_000, "deep_objects": b'{"a":' * 100_000 + b"1" + b"}" * 100_000, "binary": bytes(range(256)) * 20,
                   "bad_utf8": b'{"test": "\xff\xfe\xfa"}', "trailing_text": None, "utf16": None, "nan_literal": None, "huge_number": None, "comment": None}.items():
    if raw is not None:
        add(f"programme_{title}", "refused", with_programme(lambda p, raw=raw: raw))
add("programme_trailing_text", "refused", with_programme(lambda p: json.dumps(p).encode() + b" and more"))
add("programme_utf16", "either", with_programme(lambda p: json.dumps(p).encode("utf-16")))
add("programme_nan_speed", "refused", with_programme(lambda p: json.dumps(p).replace("[64.3, 64.35]", "[NaN]").encode()))
add("programme_huge_speed", "refused", with_programme(lambda p: json.dumps(p).replace("[64.3, 64.35]", "[1e400]").encode()))
add("programme_key_twice", "either", with_programme(lambda p: json.dumps(p).encode()[:-1] + b', "procedure": "nothing"}'))
add("programme_megabyte_text", "either", with_programme(lambda p: p.update(laboratory="x" * 2_000_000)))


def setting(title, expectation, *path_value):
    *path, value = path_value

    def change(p):
        for key in path[:-1]:
            p = p[key]
        if value is Ellipsis:
            del p[path[-1]]
        else:
            p[path[-1]] = value
    add(title, expectation, with_programme(change))


for bad in (None, 17, "", "in-2001", "IN2001", "IN-1", "IN-1234567", "ABCDE-1001", "../IN-2001", "IN-١٢٣٤", "IN-2001'; DROP TABLE lab.runs;--", "=IN-2001", ["IN-2001"], {"a": 1}):
    setting(f"test_{bad!r}"[:40], "refused", "test", bad)
for member in ("test", "procedure", "date", "vehicle", "conduct", "occupants"):
    setting(f"missing_{member}", "refused", member, ...)
setting("missing_vehicle_key", "refused", "vehicle", "key", ...)
setting("missing_vehicle_class", "refused", "vehicle", "class", ...)
setting("missing_speed", "refused", "conduct", "impactSpeedKmh", ...)
for bad in ("rear-moving-80", "", None, 64, "offset-frontal-64 "):
    setting(f"procedure_{bad!r}", "refused" if bad != "offset-frontal-64 " else "either", "procedure", bad)
for bad in ("hovercraft", "", None, 3, ["delivery-van"]):
    setting(f"class_{bad!r}", "refused", "vehicle", "class", bad)
for bad in ("", None, 5):
    setting(f"vehicle_key_{bad!r}", "refused", "vehicle", "key", bad)
setting("vehicle_key_climbing", "either", "vehicle", "key", "../../etc/passwd")
setting("vehicle_is_text", "refused", "vehicle", "Tarnbrook")
for bad in ("2031-02-30", "14.03.2031", "2031-3-4x", "", None, 20310314, "0000-00-00", "2031-13-01", "yesterday"):
    setting(f"date_{bad!r}", "refused", "date", bad)
for bad in ("64.3", [], None, {"a": 64}, ["64.3"], [None], [[64.3]]):
    setting(f"speed_{bad!r}", "refused" if not isinstance(bad, str) else "either", "conduct", "impactSpeedKmh", bad)
for bad in ([-64.3], [0], [1e9]):
    setting(f"speed_{bad!r}", "either", "conduct", "impactSpeedKmh", bad)
setting("overlap_text", "refused", "conduct", "overlapPercent", "forty")
setting("temperature_object", "refused", "conduct", "dummyTemperatureC", {"driver": 21})
for bad in ([], None, {}, "driver", [None], [5], [{}], [{"position": 1, "seat": "driver"}], [{"position": 1, "seat": "driver", "dummy": "T3"}],
            [{"position": 1, "seat": "driver", "dummy": 3}], [{"seat": "driver", "dummy": "H3"}], [{"position": "one", "seat": "driver", "dummy": "H3"}],
            [{"position": 1.5, "seat": "driver", "dummy": "H3"}], [{"position": -1, "seat": "driver", "dummy": "H3"}], [{"position": 99999999999, "seat": "driver", "dummy": "H3"}],
            [{"position": 1, "seat": "driver", "dummy": "H3"}] * 2):
    setting(f"occupants_{json.dumps(bad)}"[:60], "refused", "occupants", bad)
setting("occupants_many", "refused", "occupants", [{"position": 1, "seat": "driver", "dummy": "H3"}] * 5000)
setting("unit_inch", "flawed", "structure", "unit", "inch")
setting("axes_unknown", "flawed", "structure", "axes", "x", "sideways")
setting("axes_doubled", "flawed", "structure", "axes", "y", "forward")
setting("axes_missing", "flawed", "structure", "axes", "z", ...)
setting("structure_is_text", "refused", "structure", "mm")
setting("model_years_reversed", "either", "vehicle", "modelYears", [2035, 2030])
setting("model_years_text", "either", "vehicle", "modelYears", "2030-2032")
setting("kerb_mass_negative", "either", "vehicle", "kerbMassKg", -5)
setting("kerb_mass_huge", "either", "vehicle", "kerbMassKg", 1e300)
setting("unknown_member", "kept", "colourOfTheSky", {"blue": True})
add("unknown_members_100000", "either", with_programme(lambda p: p.update({f"member {i}": i for i in range(100_000)})))
add("unknown_members_deep", "either", with_programme(lambda p: p.update(more=json.loads("[" * 400 + "]" * 400))))
for title, text in {"in_blanks": " IN-2002 ", "with_line_end": "IN-2003\n"}.items():    # refused or trimmed
    setting(f"test_{title}", "either", "test", text)
setting("repeat_of_unknown", "kept", "repeatOf", "ZZ-9999")
setting("repeat_of_itself_like", "either", "repeatOf", "../x")
for title, text in {"formula": "=cmd|' /C calc'!A0", "script": "<script>alert(1)</script>", "nul": "a\u0000b", "surrogate": "\ud800", "bidi": "\u202egnp.exe", "quote": "'; DROP SCHEMA lab CASCADE; --"}.items():
    setting(f"model_{title}", "either", "vehicle", "model", text)
    setting(f"laboratory_{title}", "either", "laboratory", text)
