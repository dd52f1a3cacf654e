#!/usr/bin/env python3
"""Readings exactly on a limit, and 10⁻¹² of the unit to either side, in every unit of
standbook-reading(7) and across units of one kind that convert exactly (NIST SP 811:2008, appendix B):
on the limit passes, beyond it fails. One row each: source, asked, got, must be.

    tests/outside/ties.py BUILD-FOLDER
"""
import sys
from fractions import Fraction as F

from edges import HAIR, Case, ask, text

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
    {"kPa": "1", "Pa": "1/1000", "MPa": "1000", "bar": "100", "mbar": "0.1", "kgf/cm²": "98.0665",
     "psi": "8896443230.521/1290320000"},
    {"inHg": "1"}, {"mmHg": "1"},
    {"%": "1", "‰": "0.1"}, {"°C": "1"}, {"°F": "1"}, {"K": "1"},
]
LOW, HIGH = F(10), F(20)


def exact(number):
    above, _, below = number.partition("/")
    return F(above) / F(below or 1)


def on_grid(number):
    return (number / HAIR).denominator == 1


def rows():
    """(limit's unit, reading's unit, the limits in the reading's unit)."""
    for kind in KINDS:
        for mine, size in kind.items():
            for other, part in kind.items():
                low, high = (limit * exact(size) / exact(part) for limit in (LOW, HIGH))
                # A reading shows at most 40 digits: what does not end within 12 places is left out.
                if on_grid(low) and on_grid(high):
                    yield mine, other, low, high


def cases():
    for unit, typed_in, low, high in rows():
        for value, must in ((low - HAIR, ("fail", "low")), (low, ("pass", "")), (low + HAIR, ("pass", "")),
                            (high - HAIR, ("pass", "")), (high, ("pass", "")),
                            (high + HAIR, ("fail", "high"))):
            name = f"t{len(made) + 1}"
            made.append(Case(f"{unit} read in {typed_in}", name, [f"{name}: 10..20 {unit}"],
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


def main():
    listed = [padded(case) for case in cases()]
    said, faults = ask(sys.argv[1], listed), 0
    for case in listed:
        found = said[f"read {case.name}"]
        got = (found["verdict"], found["reason"])
        faults += got != case.must
        if got != case.must or "all" in sys.argv[2:]:
            print(f"{'FAULT ' if got != case.must else ''}SP 811\t{case.asked()}\t{' '.join(got)}\t"
                  f"{' '.join(case.must)}")
    units = {unit for kind in KINDS for unit in kind}
    print(f"{len(units)} units, {len(listed)} rows, {faults} faults")
    sys.exit(faults > 0)


main()
