"""A slow rater for any scheme document, written from the scheme's schema and the text of methods edition 1; shares nothing with src/.

    python3 rate_any.py SCHEME.yaml|.json RUNS.json

RUNS.json: a list of {valid, occupants: [{position, seat, dummy}], measures: [{code, position, value}], findings: [{kind, severity, region, position}]}.
Prints, for each, {overall, structure, regions: {"position region": level}}; levels are words, null where not rated.
Needs Debian's python3-scipy and python3-yaml.
"""
import json
import math
import sys

import yaml
from scipy.special import expit
from scipy.stats import norm

WORDS = ["high", "moderate", "low", "very low"]
SEVERITY = ["note", "concern", "severe"]
# The published curves, typed in again (sources: docs/sources.md, 73fr40016 and kuppa2001).
LOGISTIC = {
    ("neck.nij", "H3"): (3.2269, 1.9688, 1), ("neck.nij", "HF"): (3.2269, 1.9688, 1), ("neck.force", "H3"): (10.9745, 2.375, 1),
    ("neck.force", "HF"): (10.958, 3.770, 1), ("chest.deflection", "H3"): (10.5456, 1.568, 0.4612), ("chest.deflection", "HF"): (10.5456, 1.7212, 0.4612),
    ("thigh.force", "H3"): (5.7949, 0.5196, 1), ("thigh.force", "HF"): (5.7949, 0.7619, 1), ("lowerleg.ankle", "H3"): (4.572, 0.670, 1),
    ("lowerleg.plateau", "H3"): (0.5204 + 0.0686 * 75, 0.8189, 1),
}


def risk(function, dummy, load):
    load = max(load, 0.0)
    if function == "head.hic15":
        return 0.0 if load == 0 else float(norm.cdf((math.log(load) - 7.45231) / 0.73998))
    if function == "lowerleg.shaft":
        return 0.0 if load == 0 else 1 - math.exp(-math.exp((math.log(load) - 0.2728) / 0.2468))
    a, b, power = LOGISTIC[(function, dummy)]
    return float(expit(b * load ** power - a))


def step(value, bounds):
    return sum(value > bounds[word] for word in WORDS[:3])


def sided(rule):
    if "{side}" not in rule["region"]:
        return [rule]
    text = json.dumps(rule)
    return [json.loads(text.replace("{side}", side)) for side in ("left", "right")]


class Run:
    def __init__(self, run):
        self.run = run
        self.values = {}
        for m in run["measures"]:
            self.values.setdefault((m["code"], m["position"]), m["value"])

    def value(self, code, position):
        return self.values[(code, position)] if (code, position) in self.values else self.values.get((code, None))

    def driver(self):
        seats = sorted(self.run["occupants"], key=lambda o: o["position"])
        return next((o for o in seats if o["seat"].strip().lower() == "driver"), seats[0])


def finding_words(rule):
    return rule.get("findings") or [rule["region"].replace("lowerleg", "lower-leg").replace(".", "-")]


def region(scheme, rule, run, occupant, driver):
    """Final level or None, excess risk or None."""
    p, dummy, excess, level = occupant["position"], occupant["dummy"], None, None
    groups = [list(g) for g in rule.get("inputs", [])]
    if "risk" in rule:
        loads = [c["load"] for c in rule["risk"]["curves"]]
        named = not set(loads) & {"shaft", "ankle", "plateau"}
        groups += [[load] for load in (loads if named else [rule["risk"]["measure"]])]
    elif not groups:
        groups = [[m["measure"]] for m in rule["measures"]]
    present = all(any(run.value(code, p) is not None for code in group) for group in groups)
    if present and "risk" in rule:
        curves = rule["risk"]["curves"]
        r = max(risk(c["function"], dummy, run.value(c["load"], p)) for c in curves) if named else run.value(rule["risk"]["measure"], p)
        zero = max(risk(c["function"], dummy, 0) for c in curves)
        excess = max(0.0, (r - zero) / (1 - zero))
        level = step(excess, rule["risk"]["bounds"])
    elif present:
        level = max(step(v, m["bounds"]) for m in rule["measures"] if (v := run.value(m["measure"], p)) is not None)
    if level is not None:
        for limit in rule.get("limits", []):
            v = run.value(limit["measure"], p)
            if v is not None and v > limit["limit"][dummy]:
                level = max(level, WORDS.index(limit["atBest"]))
        for cap in scheme["caps"]:
            for f in run.run["findings"]:
                if f["kind"].lower() != cap["finding"] or SEVERITY.index(f["severity"]) < SEVERITY.index(cap["severity"]):
                    continue
                at = driver["position"] if f.get("position") is None else f["position"]
                here = cap.get("region") == rule["region"] or (rule["region"] in cap.get("findingRegions", []) and f["region"].lower() in finding_words(rule))
                if here and at == p:
                    level = max(level, WORDS.index(cap["atBest"]))
    return level, excess


def part(rule, levels, excess):
    worst = [levels[r] for r in rule.get("worstOf", [])]
    joint = rule.get("joint")
    if joint:
        e = 1 - math.prod(1 - max(excess[r] for r in group) for group in joint["groups"])
        worst.append(step(e, joint["bounds"]))
    return max(worst)


def overall(scheme, dummy, levels, excess, structure, findings):
    if not levels or structure is None or None in levels.values():
        return None
    life = scheme["overall"]["life"]
    life = {"joint": life} if isinstance(life, dict) else next(x for x in life if dummy in x["dummies"])
    parts = [life] + [x for x in scheme["overall"].get("legs", []) if dummy in x["dummies"]]
    worst = max(levels.values())
    result = min(max(part(x, levels, excess) for x in parts), worst)
    result = max(result, worst - scheme["overall"]["stepsBetterThanWorst"])
    for hold in scheme["structure"]["holds"]:
        if WORDS[structure] == hold["when"]:
            result = max(result, WORDS.index(hold["atBest"]))
    for cap in scheme["caps"]:
        if "region" in cap or "findingRegions" in cap:
            continue
        if any(f["kind"].lower() == cap["finding"] and SEVERITY.index(f["severity"]) >= SEVERITY.index(cap["severity"]) for f in findings):
            result = max(result, WORDS.index(cap["atBest"]))
    return result


def rate(scheme, raw):
    run = Run(raw)
    driver = run.driver()
    rules = [one for rule in scheme["regions"] for one in sided(rule)]
    words, own, excesses = {}, {}, {}
    for occupant in raw["occupants"]:
        for rule in rules:
            if occupant["dummy"] not in rule["dummies"]:
                continue
            level, excess = region(scheme, rule, run, occupant, driver)
            words[f"{occupant['position']} {rule['region']}"] = None if level is None else WORDS[level]
            if occupant is driver:
                own[rule["region"]], excesses[rule["region"]] = level, excess
    s = scheme["structure"]
    needed = s.get("inputs") or [[m["measure"]] for m in s["measures"]]
    structure = None
    if all(any(run.value(code, None) is not None for code in group) for group in needed):
        structure = max(step(v, m["bounds"]) for m in s["measures"] if (v := run.value(m["measure"], None)) is not None)
    result = overall(scheme, driver["dummy"], own, excesses, structure, raw["findings"])
    return {"overall": None if result is None else WORDS[result], "structure": None if structure is None else WORDS[structure], "regions": words}


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as file:
        document = yaml.safe_load(file)
    with open(sys.argv[2], encoding="utf-8") as file:
        json.dump([rate(document, run) for run in json.load(file)], sys.stdout)
