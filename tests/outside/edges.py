"""The decision rule in fractions, from its own words (boundaries.py), and a teller that makes a plan, a
shop and a log of cases and asks the program what it says of each. Shares no code with tests/reader.
"""
import json
import math
import os
import subprocess
import sys
import tempfile
from fractions import Fraction as F

HAIR = F(1, 10 ** 12)
LOWER, UPPER = F(10), F(10) + F(2, 100)   # mm; T = 0.020


def sure(distance, variance, plain):
    return plain or 400 * distance ** 2 >= 1089 * variance


def beyond(side, past, variance, plain, excluded):
    """What a value surely `past` a limit on this side is called; None if it is not surely past it."""
    if (past > 0 or (excluded and past == 0)) and sure(past, variance, plain):
        return side
    return None


def judged(bound, value, variance, lower, upper, wear):
    """(verdict, reason) by the rule above."""
    if lower is None and upper is None:
        return "noted", ""
    plain = lower is not None and upper is not None and (upper - lower) ** 2 >= 256 * variance
    for side, limit, sign in (("low", lower, -1), ("high", upper, 1)):
        if limit is None or bound == {"low": ">", "high": "<"}[side]:
            continue  # `>x` may lie anywhere above: it is never surely low
        if beyond(side, sign * (value - limit), variance, plain, bound):
            worn = wear is not None and sign * (wear - limit) >= 0 and \
                beyond(side, sign * (value - wear), variance, plain, bound)
            return "fail", "beyond wear" if worn else side
    if bound == "<" and lower is not None or bound == ">" and upper is not None:
        return "in doubt", "gauge"        # it may lie outside the limit it points to
    inside = [value - lower] if lower is not None else []
    inside += [upper - value] if upper is not None else []
    passes = all(d >= 0 and sure(d, variance, plain) for d in inside)
    return ("pass", "") if passes else ("in doubt", "gauge")


def reach(variance):
    """The least distance on the grid of hairs that is sure: d² >= (33/20)² u²."""
    square = F(1089, 400) * variance / HAIR ** 2
    least = math.isqrt(math.floor(square))
    return (least + (least ** 2 < square)) * HAIR


def text(number):
    """A number on the grid of hairs, as a decimal."""
    hairs = number / HAIR
    assert hairs.denominator == 1, number
    sign, digits = "-" if hairs < 0 else "", str(abs(int(hairs))).zfill(13)
    return sign + (digits[:-12] + "." + digits[-12:]).rstrip("0").rstrip(".")


class Case:
    """Checks of the plan and lines of the log, and what the program must say of one requirement.
    `told` is a list of (check, typed, gauge) or of whole log lines; `gauge` the words of a gauge."""

    def __init__(self, regime, name, checks, told, must, field="verdict"):
        self.regime, self.name, self.checks, self.told = regime, name, checks, told
        self.must, self.field = must, field

    def asked(self):
        return "; ".join(line if isinstance(line, str) else f"{line[0]} {line[1]}"
                         for line in self.told) + " of " + " and ".join(self.checks)


# WHAT THE PROGRAM SAYS --------------------------------------------------------------------------

def shop_of(gauges):
    lines = ['2001-01-08 08:00 MO person MO "Mab Orrin" role builder',
             'owner harrow "Ines Harrow"', 'engine E-1 family E owner harrow "bench engine"']
    for tool, label in gauges.items():
        step = tool if tool.startswith("step") else "step 0.001"
        lines.append(f'tool {label} "gauge" kind gauge range -1000..1000 mm {step}')
        if not tool.startswith("step"):
            lines.append(f"calibration {label} 2001-01-05 due 2002-01-05 good {tool}")
    return "\n".join(lines + ['build B-1 engine E-1 plan "Edges"', ""])


def plan_of(cases):
    checks = "".join(f"      {check}\n" for case in cases for check in case.checks)
    return f"plan: Edges\nunits: [mm]\nsteps:\n  Measure:\n    checks:\n{checks}"


def log_of(cases, gauges):
    lines = ["2001-09-10 08:00 MO pick up Measure"]
    for case in cases:
        for line in case.told:
            if isinstance(line, str):
                lines.append(line)
                continue
            check, typed, gauge = line
            label = gauges.setdefault(gauge, f"G{len(gauges)}")
            lines.append(f'read {check} "{typed}" with {label}')
    return "\n".join([*lines, ""])


def ask(build, cases):
    """What the program says of every requirement, by name."""
    gauges, program = {}, os.path.join(build, "standbook")
    log = log_of(cases, gauges)
    with tempfile.TemporaryDirectory() as folder:
        environment = {**os.environ, "STANDBOOK_STORE": os.path.join(folder, "edges.db"),
                       "LC_ALL": "C.UTF-8"}

        def call(*words, given=""):
            done = subprocess.run([program, *words], input=given, env=environment, text=True,
                                  capture_output=True, check=False)
            if done.returncode not in (0, 1) or done.stderr:
                sys.exit(f"{' '.join(words)}: {done.stderr[:2000]}")
            return done.stdout

        plan = os.path.join(folder, "edges.yaml")
        with open(plan, "w", encoding="utf-8") as file:
            file.write(plan_of(cases))
        call("store", "new")
        call("plan", "add", plan)
        call("log", "--quiet", "--shop", given=shop_of(gauges))
        call("log", "--quiet", "B-1", given=log)
        return {made["name"]: made for made in
                json.loads(call("assess", "B-1", "--json"))["requirements"]}
