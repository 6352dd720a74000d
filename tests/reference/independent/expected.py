"""The calculator's results in short form: `python3 expected.py PACKAGES_DIR OUT.json.gz`. Same packages, same bytes."""
import gzip
import json
import os
import sys

from calculator import calculate


def short(result):
    """measures as {"code" or "code@position": [value, from, to] | null}; the rest as calculated, without prose."""
    def key(m):
        return m["code"] if m["position"] is None else f"{m['code']}@{m['position']}"
    measures = {key(m): None if m["value"] is None else [m["value"], m["from"], m["to"]] for m in result["measures"]}
    return dict(valid=result["valid"], conduct=result["conduct"], measures=measures, structure=result["structure"], rating=result["rating"])


def expected(folder):
    names = sorted(n for n in os.listdir(folder) if n.endswith(".zip"))
    return {n[:-4]: short(calculate(os.path.join(folder, n))) for n in names}


def plain(value):
    if isinstance(value, dict):
        return {k: plain(v) for k, v in value.items()}
    if isinstance(value, list):
        return [plain(v) for v in value]
    return float(f"{value:.11e}") if isinstance(value, float) else value


if __name__ == "__main__":
    text = json.dumps(plain(expected(sys.argv[1])), sort_keys=True, separators=(",", ":")).encode()
    with open(sys.argv[2], "wb") as out, gzip.GzipFile(filename="", mode="wb", fileobj=out, mtime=0) as packed:
        packed.write(text)
