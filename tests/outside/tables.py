#!/usr/bin/env python3
"""Published figures (published.py) against what the program makes of their formulas and readings, one
table a source. One row each: source, asked, got, printed and what it may differ by.

    tests/outside/tables.py BUILD-FOLDER [spoil]

`spoil`: changes every single figure of every row instead, of what is asked and of what is printed, one
at a time, and prints each change that no row notices.
"""
import copy
import math
import sys
from fractions import Fraction as F
from statistics import NormalDist

from edges import Case, ask
from published import DECISIONS, FORMULAS, ROUNDINGS
from spoil import changes


class Row:
    """`parts` are what figures stand in; `told` makes a check of it, `fault` says whether what was found
    is another than printed and leaves the three columns in `row`."""

    def is_sound(self):
        return True


class Formula(Row):
    """A formula is a check of its own; what it comes to is asked in its unit."""

    def __init__(self, source, allowed, unit, formula, printed):
        self.source, self.allowed, self.unit = source, allowed, unit
        self.parts = [formula, printed]

    def told(self, name):
        one = "" if self.unit == "-" else f" / 1 {self.unit}" if self.unit != "%" else " * 100"
        return Case("", name, [f"{name} = ({self.parts[0]}){one}: any"], [], "")

    def fault(self, found):
        got, printed = F(found["value"]), F(self.parts[1])
        share = self.allowed.removesuffix(" %")
        room = abs(printed) * F(share) / 100 if share != self.allowed else F(self.allowed)
        self.row = (self.parts[0], f"{float(got):.10g} {self.unit}", f"{self.parts[1]} ± {self.allowed}")
        return abs(got - printed) > room


class Rounding(Row):
    """A value as it is shown."""

    def __init__(self, source, formula, unit, decimals, shown):
        self.source, self.unit = source, unit
        self.parts = [formula, str(decimals), shown]

    def told(self, name):
        check = f"{name} = {self.parts[0]}: {{unit: {self.unit}, decimals: {self.parts[1]}, limits: any}}"
        return Case("", name, [check], [], "")

    def fault(self, found):
        self.row = (f"{self.parts[0]} in {self.unit}", found["shown"], self.parts[2])
        return found["shown"] != self.parts[2]


class Decision(Row):
    """A reading with its gauge's U; beside the verdict its acceptance limit and probability."""

    def __init__(self, source, *parts):
        self.source, self.parts, self.verdict = source, list(parts[:-1]), parts[-1]

    def is_sound(self):
        lower, upper = self.parts[:2]
        return lower is None or upper is None or F(lower) < F(upper)

    def told(self, name):
        lower, upper, expanded, reading, *_ = self.parts
        limits = (f"at most {upper}" if lower is None else f"at least {lower}" if upper is None
                  else f"{lower}..{upper}")
        return Case("", name, [f"{name}: {{decimals: 6, limits: {limits}}}"],
                    [(name, reading, f"U {expanded} mm")], "")

    def fault(self, found):
        lower, upper, expanded, reading = (None if part is None else F(part)
                                           for part in self.parts[:4])
        u = expanded / 2
        drawn_in = [limit + sign * F(33, 20) * u for limit, sign in ((lower, 1), (upper, -1))
                    if limit is not None]
        spread = NormalDist(float(reading), float(u))
        chance = (1 if upper is None else spread.cdf(float(upper))) - (
            0 if lower is None else spread.cdf(float(lower)))
        digits = len(self.parts[5].partition(".")[2])
        asked = f"{self.parts[3]}, U {self.parts[2]}, within {self.parts[0]}..{self.parts[1]}"
        shown = " ".join(f"{float(limit):.8g}" for limit in drawn_in)
        self.row = (asked, f"{found['verdict']}, {shown}, {chance:.6f}",
                    f"{self.verdict}, {self.parts[4]}, {self.parts[5]}")
        return (found["verdict"] != self.verdict or
                drawn_in != [F(limit) for limit in self.parts[4].split()] or
                math.floor(chance * 10 ** digits + 0.5) != F(self.parts[5]) * 10 ** digits)


def rows():
    for source, allowed, table in FORMULAS:
        yield [Formula(source, allowed, *row) for row in table]
    for source, table in ROUNDINGS:
        yield [Rounding(source, *row) for row in table]
    for source, table in DECISIONS:
        yield [Decision(source, *row) for row in table]


def spoiled(row):
    """The row with one figure changed, for each of its figures: in its first digit, or in its last where
    limits would be upside down."""
    for index, part in enumerate(row.parts):
        for ways in changes(part or ""):
            others = [copy.copy(row) for _ in ways]
            for other, changed in zip(others, ways):
                other.parts = row.parts[:index] + [changed] + row.parts[index + 1:]
                other.was = f"{part} -> {changed}"
            yield next(other for other in others if other.is_sound())


def main():
    tables = list(rows())
    spoil = sys.argv[2:] == ["spoil"]
    listed = [row for table in tables for row in table]
    if spoil:
        listed = [other for row in listed for other in spoiled(row)]
    cases = [row.told(f"t{index}") for index, row in enumerate(listed, 1)]
    said, faults = ask(sys.argv[1], cases), 0
    for case, row in zip(cases, listed):
        wrong = row.fault(said[f"read {case.name}"]) != spoil
        faults += wrong
        if wrong or not spoil:
            print("\t".join([f"{'FAULT ' if wrong else ''}{row.source}", *row.row,
                             *([row.was] if spoil else [])]))
    what = "figures changed" if spoil else "rows"
    print(f"{len(tables)} tables, {len(listed)} {what}, {faults} {'unnoticed' if spoil else 'faults'}")
    sys.exit(faults > 0)


if __name__ == "__main__":
    main()
