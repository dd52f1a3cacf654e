#!/usr/bin/env python3
"""Readings exactly on a limit, and 10⁻¹² of the unit to either side, in every unit of
standbook-reading(7), below zero too, and across units of one kind that convert exactly (NIST SP 811:2008,
appendix B):
on the limit passes, beyond it fails. One row each: source, asked, got, must be.

    tests/outside/ties.py BUILD-FOLDER [all | spoil]

`all` prints every row, not the faults alone; `spoil` changes each factor below instead, and prints each
change that no row notices.
"""
import sys
from fractions import Fraction as F

from edges import HAIR, Case, ask, text
from spoil import changes

# Units of one kind and what one of each is in the first of them, exactly; the offset of its 0.
KINDS = [
    {"mm": "1", "cm": "10", "m": "1000", "µm": "1/1000", "in": "25.4", "thou": "0.0254", "ft": "304.8"},
    {"cc": "1", "ml": "1", "l": "1000"},
    {"g": "1", "kg": "1000", "lb": "453.59237", "oz": "28.349523125"},
    {"s": "1", "min": "60", "h": "3600", "d": "86400"},
    {"°": "1", "arcmin": "1/60", "arcsec": "1/3600", "turn": "360"},
    {"rpm": "1"},
    {"N": "1", "kN": "1000", "kgf": "9.80665", "lbf": "4.4482216152605"},
    {"N·m": "1", "N·cm": "0.01", "kgf·m": "9.80665", "kgf·cm": "0.0980665",
     "lbf·ft": "1.3558179483314004", "lbf·in": "0.1129848290276167"},
    {"kPa": "1", "Pa": "1/1000", "MPa": "1000", "bar": "100", "mbar": "0.1", "kgf/cm²": "98.0665"},
    {"psi": "1"}, {"inHg": "1"}, {"mmHg": "1"},
    {"%": "1", "‰": "0.1"}, {"°C": "1"}, {"°F": "1"}, {"K": "1"},
]
LOW, HIGH = F(10), F(20)


def exact(number):
    above, _, below = number.partition("/")
    return F(above) / F(below or 1)


def on_grid(number):
    return (number / HAIR).denominator == 1


def limits(kind, mine, other):
    """The limits in `mine` as `other` has them."""
    return [limit * exact(kind[mine]) / exact(kind[other]) for limit in (LOW, HIGH)]


def row(kind, mine, other, wrong=None):
    """(limits, their unit, the reading's unit, the limits in it) of two units of a kind, or None; `wrong`:
    the limits by these factors."""
    # A reading shows at most 40 digits: what does not end within 12 places is left out.
    if not all(map(on_grid, limits(kind, mine, other))):
        return None
    return ("10..20", mine, other, *(HAIR * round(limit / HAIR) for limit in limits(wrong or kind, mine, other)))


def rows():
    for kind in KINDS:
        for mine in kind:
            yield from filter(None, (row(kind, mine, other) for other in kind))
    for unit in ("°C", "°F", "mm"):
        yield "-20..-10", unit, unit, -HIGH, -LOW


def spoiled():
    """For each factor of a kind of several units: what was changed, and a row with it."""
    for kind in KINDS:
        for unit, size in kind.items() if len(kind) > 1 else ():
            for ways in changes(size):
                wrong = {**kind, unit: ways[0]}
                pairs = [pair for other in kind if other != unit for pair in
                         (row(kind, unit, other, wrong), row(kind, other, unit, wrong)) if pair]
                yield f"{unit}: {size} -> {ways[0]}", pairs[0] if pairs else None


def cases(rows_of):
    for limits_text, unit, typed_in, low, high in rows_of:
        for value, must in ((low - HAIR, ("fail", "low")), (low, ("pass", "")), (low + HAIR, ("pass", "")),
                            (high - HAIR, ("pass", "")), (high, ("pass", "")),
                            (high + HAIR, ("fail", "high"))):
            name = f"t{len(made) + 1}"
            made.append(Case(f"{unit} read in {typed_in}", name, [f"{name}: {limits_text} {unit}"],
                             [f'read {name} "{text(value)} {typed_in}"'], must))
    return made


made: list[Case] = []


def padded(case):
    """With all twelve places typed, so that the last place is a hair: no gauge is named."""
    front, number, back = case.told[0].split('"')
    amount, unit = number.split(" ", 1)
    whole, _, part = amount.partition(".")
    case.told = [f'{front}"{whole}.{part.ljust(12, "0")} {unit}"{back}']
    return case


def verdict(found):
    return found["verdict"], found["reason"]


def spoil(build):
    changed = list(spoiled())
    listed = [padded(case) for case in cases([pair for _, pair in changed if pair])]
    said, unnoticed = ask(build, listed), 0
    for what, pair in changed:
        mine, listed = (listed[:6], listed[6:]) if pair else ([], listed)
        if all(verdict(said[f"read {case.name}"]) == case.must for case in mine):
            unnoticed += 1
            print(f"FAULT {what}: unnoticed")
    print(f"{len(changed)} figures changed, {unnoticed} unnoticed")
    sys.exit(unnoticed > 0)


def main():
    if "spoil" in sys.argv[2:]:
        spoil(sys.argv[1])
    listed = [padded(case) for case in cases(rows())]
    said, faults = ask(sys.argv[1], listed), 0
    for case in listed:
        got = verdict(said[f"read {case.name}"])
        faults += got != case.must
        if got != case.must or "all" in sys.argv[2:]:
            print(f"{'FAULT ' if got != case.must else ''}SP 811\t{case.asked()}\t{' '.join(got)}\t"
                  f"{' '.join(case.must)}")
    units = {unit for kind in KINDS for unit in kind}
    print(f"{len(units)} units, {len(listed)} rows, {faults} faults")
    sys.exit(faults > 0)


main()
