#!/usr/bin/env python3
"""Judgement at every boundary of the decision rule, and 10⁻¹² mm to either side: a plan, gauges and
readings are made here and told to the program; what it says of each is compared with the rule worked
out here, in fractions, from its own words:

    Both limits known and T² >= 256 u²: as read, limits included. Else, and always with one limit, d
    being the distance inside a limit: pass when every d >= 0 and d² >= (33/20)² u²; fail when some
    d < 0 and d² is as large; else in doubt, gauge. Past the service limit by the same rule: beyond
    wear. `<x` and `>x` decide where all that they allow is decided alike, x itself excluded.

One row each: regime, asked, got, must be; at the end how many, and how many of each verdict.

    tests/outside/boundaries.py BUILD-FOLDER [all]      `all`: prints every row, not the faults alone
"""
import collections
import itertools
import sys
from fractions import Fraction as F

from edges import HAIR, LOWER, UPPER, Case, ask, judged, reach, text


class Doubt:
    """A way for a reading to have exactly the u² that is asked for, or nearly."""

    def __init__(self, words, expanded, tool="", check="", typed=""):
        self.words, self.tool, self.check, self.typed = words, tool, check, typed
        self.variance = expanded


def doubts(u):
    """Ways to a standard uncertainty of about u; each knows its own exact u²."""
    full = 2 * u
    part, rest = full * F(3, 5), full * F(4, 5)     # 3, 4, 5: their squares add up
    yield Doubt("calibrated", u ** 2, f"U {text(full)} mm")
    yield Doubt("with its repeat", u ** 2, f"U {text(full)} mm repeats {text(part)} mm")
    yield Doubt("graduation alone", (F(7, 2) * u) ** 2 / 12, f"step {text(F(7, 2) * u)}")
    yield Doubt("gauge and method", u ** 2, f"U {text(part)} mm", check=f", doubt: {text(rest)} mm")
    yield Doubt("gauge and typed ±", u ** 2, f"U {text(rest)} mm", typed=f" ± {text(part)}")


def limits_text(lower, upper):
    if lower is None and upper is None:
        return "any"
    if lower is None:
        return f"at most {text(upper)}"
    return f"at least {text(lower)}" if upper is None else f"{text(lower)}..{text(upper)}"


def edges(lower, upper, wear, variance):
    """Where the verdict of a value may turn."""
    far = reach(variance)
    for limit in (lower, upper, wear):
        if limit is not None:
            yield from (limit, limit - far, limit + far)
    if lower is not None and upper is not None:
        yield (lower + upper) / 2
    if lower is None and upper is None:
        yield LOWER


def around(*points):
    """The points and a hair to either side, each once, in order."""
    return sorted({point + hair for point in points for hair in (-HAIR, F(0), HAIR)})


NAMES = (f"c{number}" for number in itertools.count(1))


def check(name, lower, upper, wear=None, more=""):
    worn = f", wear: {text(wear)}" if wear is not None else ""
    return f"{name}: {{decimals: 12, limits: {limits_text(lower, upper)}{worn}{more}}}"


def read(regime, doubt, bound, value, lower, upper, wear):
    name = next(NAMES)
    return Case(f"{regime}, {doubt.words}", name, [check(name, lower, upper, wear, doubt.check)],
                [(name, bound + text(value) + doubt.typed, doubt.tool)],
                judged(bound, value, doubt.variance, lower, upper, wear))


def made(regime, u, sides, wears, ways=(0, 1, 2, 3, 4), bounds=("", "<", ">"), limits=(LOWER, UPPER)):
    """The cases of a regime: at each edge and a hair to either side."""
    for doubt in [way for at, way in enumerate(doubts(u)) if at in ways]:
        for side, wear, bound in itertools.product(sides, wears, bounds):
            lower = limits[0] if "l" in side else None
            upper = limits[1] if "u" in side else None
            if wear is not None and (lower is None or wear > lower) and (upper is None or wear < upper):
                continue  # a service limit lies beyond the limits
            if bound and doubt.typed:
                continue  # a bound takes no ±
            for value in around(*edges(lower, upper, wear, doubt.variance)):
                yield read(regime, doubt, bound, value, lower, upper, wear)


BOTH, ONE = ("lu",), ("l", "u")
BELOW, ABOVE = F(99, 10), F(1009, 100)              # service limits well beyond
WEARS = (None, BELOW, ABOVE, LOWER, UPPER)
U = F(2, 1000)                                      # T = 10 u: a guard band


def single():
    """One reading against its limits."""
    yield from made("two limits, believed", F(1, 1000), BOTH, WEARS)
    yield from made("two limits, T exactly 16 u", F(125, 100000), BOTH, (None, ABOVE), ways=(0, 1))
    yield from made("two limits, T two hairs under 16 u", F(125, 100000), BOTH, (None, BELOW),
                    ways=(0, 1), limits=(LOWER, UPPER - 2 * HAIR))
    yield from made("two limits, T two hairs over 16 u", F(125, 100000), BOTH, (None,), ways=(0, 1),
                    limits=(LOWER, UPPER + 2 * HAIR))
    yield from made("two limits, guard band", U, BOTH, WEARS)
    for words, more in (("exactly", 0), ("two hairs under", -2 * HAIR), ("two hairs over", 2 * HAIR)):
        yield from made(f"two limits, T {words} 3.3 u", F(1, 100), BOTH, (None,), ways=(0, 3),
                        bounds=("",), limits=(LOWER, LOWER + F(33, 1000) + more))
    yield from made("two limits, T under 3.3 u", F(2, 100), BOTH, (None, ABOVE), ways=(0, 2))
    yield from made("one limit", U, ONE, WEARS)
    yield from made("one limit, a fine gauge", F(1, 100000), ONE, (None,), ways=(0, 2))
    yield from made("no limit", U, ("",), (None,), ways=(0,))


FULL, REPEAT, OTHER = F(6, 1000), F(4, 1000), F(8, 1000)   # 2 u of two gauges: 6, 8, 10
CALIBRATED = f"U {text(FULL)} mm"
REPEATS = f"U {text(FULL)} mm repeats {text(REPEAT)} mm"
SECOND = f"U {text(OTHER)} mm"
# The formula over the places a and b, the gauges at them, u² of the result, and the two readings that
# make it `v`. One gauge: max((Σc)², Σc²) U²/4, or ((Σc)² (U² - r²) + Σc² r²)/4 with its repeat.
FORMULAS = [
    ("a difference, one gauge", "{}[b] - {}[a]", (CALIBRATED,) * 2, 2 * FULL ** 2 / 4,
     lambda v: (F(10), 10 + v)),
    ("a difference, one gauge that repeats", "{}[b] - {}[a]", (REPEATS,) * 2, 2 * REPEAT ** 2 / 4,
     lambda v: (F(10), 10 + v)),
    ("a difference, two gauges", "{}[b] - {}[a]", (CALIBRATED, SECOND), (FULL ** 2 + OTHER ** 2) / 4,
     lambda v: (F(10), 10 + v)),
    ("a sum, one gauge", "{}[a] + {}[b]", (CALIBRATED,) * 2, 4 * FULL ** 2 / 4,
     lambda v: (F(4), v - 4)),
    ("a mean, one gauge that repeats", "({}[a] + {}[b]) / 2", (REPEATS,) * 2,
     ((FULL ** 2 - REPEAT ** 2) + REPEAT ** 2 / 2) / 4, lambda v: (v - 1, v + 1)),
    ("a range, two gauges", "range({})", (CALIBRATED, SECOND), (FULL ** 2 + OTHER ** 2) / 4,
     lambda v: (F(10), 10 + v)),
    ("the greatest, the coarser gauge on top", "max({})", (CALIBRATED, SECOND), OTHER ** 2 / 4,
     lambda v: (v - 1, v)),
    ("a constant with its ±", "{}[a] + {}[b] - {}[b] + 1 ± 0.008 mm", (CALIBRATED,) * 2,
     (FULL ** 2 + F(8, 1000) ** 2) / 4, lambda v: (v - 1, F(3))),
]


def worked_out():
    """A formula's value against its limits: what its readings' doubts come to."""
    lower, upper, wear = F(10), F(1005, 100), ABOVE
    for words, formula, gauges, variance, readings in FORMULAS:
        for low, high in ((lower, upper), (None, upper), (lower, None)):
            worn = wear if high is not None else None
            for value in around(*edges(low, high, worn, variance)):
                name = next(NAMES)
                source = f"r{name}"
                asked = check("=", low, high, worn).replace("=: ", "", 1)
                a, b = readings(value)
                yield Case(words, name,
                           [f"{source}: {{at: a/b, decimals: 12}}",
                            f"{name} = {formula.replace('{}', source)}: {asked}"],
                           [(f"{source}[a]", text(a), gauges[0]), (f"{source}[b]", text(b), gauges[1])],
                           judged("", value, variance, low, high, worn))


def two_readings():
    """Two readings of one place: in doubt when d² > 4 (u_a² + u_b²), and the finer one counts."""
    apart = 2 * F(5, 1000)                          # u 0.003 and 0.004: 2 · 0.005
    for far in around(apart, -apart):
        name = next(NAMES)
        must = ("in doubt", "disagree") if far ** 2 > apart ** 2 else ("pass", "")
        yield Case("two readings", name, [check(name, F(9), F(11))],
                   [(name, "10", CALIBRATED), (name, text(10 + far), SECOND)], must)


def decided():
    """What people decide has boundaries too: a concession's bound, an amended limit, a finding."""
    fine, bound = f"U {text(F(2, 1000))} mm", F(1004, 100)      # T = 20 u: as read
    for value in around(LOWER, UPPER, bound):
        inside = LOWER <= value <= UPPER
        low = value < LOWER
        name = next(NAMES)
        must = ("pass", "") if inside else ("fail", "low") if low else \
            ("conceded", "high") if value <= bound else ("fail", "high")
        yield Case("conceded to a bound", name, [check(name, LOWER, UPPER)],
                   [(name, "10.03", fine), f'concede {name} to {text(bound)} "runs cool" customer present',
                    f'rework {name} "ground"', (name, text(value), fine)], must)
        name = next(NAMES)
        must = ("pass", "") if inside else ("conceded", "high") if UPPER < value <= bound else \
            ("fail", "low" if low else "high")
        yield Case("limits amended afterwards", name, [check(name, LOWER, UPPER)],
                   [(name, text(value), fine),
                    f'amend {name} limits {text(LOWER)}..{text(bound)} "later sheet"'], must)
        name = next(NAMES)
        yield Case("a finding's own verdict", name,
                   [check(name, LOWER, UPPER, more=", settled by: decision")],
                   [(name, text(value), fine)],
                   ("pass", "") if inside else ("fail", "low" if low else "high"), "own verdict")
        name = next(NAMES)
        yield Case("a finding decided", name,
                   [check(name, LOWER, UPPER, more=", settled by: decision")],
                   [(name, text(value), fine), f'decide {name} keep "as it ran"'],
                   ("pass", "") if inside else ("noted", ""))


def main():
    cases = [*single(), *worked_out(), *two_readings(), *decided()]
    said = ask(sys.argv[1], cases)
    faults, seen, regimes = 0, collections.Counter(), set()
    for case in cases:
        found = said[f"read {case.name}"]
        got = (found[case.field], found[case.field.replace("verdict", "reason")])
        fault = got != case.must
        faults += fault
        seen[" ".join(case.must).strip()] += 1
        regimes.add(case.regime)
        if fault or "all" in sys.argv[2:]:
            print(f"{'FAULT ' if fault else ''}{case.regime}\t{case.asked()}\t"
                  f"{' '.join(got).strip()}\t{' '.join(case.must).strip()}")
    print(", ".join(f"{seen[words]} {words}" for words in sorted(seen)))
    print(f"{len(regimes)} regimes, {len(cases)} rows, {faults} faults")
    sys.exit(faults > 0)


main()
