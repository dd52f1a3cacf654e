#!/usr/bin/env python3
"""Every unit of standbook-reading(7) against GNU units, and figures of NIST SP 811:2008, appendix B,
against what the program makes of a reading. One row each: source, asked, got, allowed.

    tests/outside/units.py BUILD-FOLDER [spoil]

`spoil`: changes each of those figures instead, and prints each change that no row notices.
"""
import os
import re
import subprocess
import sys
from fractions import Fraction as F

from spoil import changes

HERE = os.path.dirname(os.path.abspath(__file__))
PAGE = os.path.join(HERE, "..", "..", "man", "standbook-reading.7")
ALLOWED = F(1, 10 ** 13)  # relative: GNU units prints 15 digits

# Ours as GNU units writes it, and the base it is asked in. `thou` is a mil there.
GNU = {
    "mm": "mm", "cm": "cm", "m": "m", "µm": "um", "in": "inch", "thou": "mil", "ft": "foot",
    "cc": "cc", "ml": "ml", "l": "l", "g": "g", "kg": "kg", "lb": "lb", "oz": "oz", "s": "s",
    "min": "min", "h": "hour", "d": "day", "°": "degree", "arcmin": "arcmin", "arcsec": "arcsec",
    "turn": "turn", "rpm": "rpm", "K": "K", "°C": "tempC", "°F": "tempF", "N": "N", "kN": "kN",
    "kgf": "kgf", "lbf": "lbf", "N·m": "N m", "N·cm": "N cm", "kgf·m": "kgf m",
    "kgf·cm": "kgf cm", "lbf·ft": "lbf ft", "lbf·in": "lbf inch", "Pa": "Pa", "kPa": "kPa",
    "MPa": "MPa", "bar": "bar", "mbar": "mbar", "psi": "psi", "kgf/cm²": "kgf/cm^2",
    "inHg": "inHg", "mmHg": "mmHg", "‰": "0.001", ":1": "1", "%": "percent",
}
# Source, what is typed, the unit it is read in, what it must be in that unit's base.
FIGURES = [
    ("SP 811 B.8 inch", "1 in", "mm", "0.0254"),
    ("SP 811 B.8 foot", "1 ft", "mm", "0.3048"),
    ("SP 811 B.8 mil", "1 mil", "mm", "0.0000254"),
    ("SP 811 B.8 pound (avoirdupois)", "1 lb", "kg", "0.45359237"),
    ("SP 811 B.8 kilogram-force", "1 kgf", "N", "9.80665"),
    ("SP 811 B.8 kilogram-force metre", "1 kgf·m", "N·m", "9.80665"),
    ("SP 811 B.8 kgf per square centimetre", "1 kgf/cm²", "bar", "98066.5"),
    ("SP 811 B.8 bar", "1 bar", "kPa", "100000"),
    ("SP 811 B.8 degree Fahrenheit", "68 °F", "°C", "293.15"),
    ("SP 811 B.8 degree Fahrenheit", "-40 °F", "°C", "233.15"),
    ("SP 811 4.2.1.1 degree Celsius", "20 °C", "°C", "293.15"),
    ("ISO 1:2022 reference temperature", "68 °F", "°C", "293.15"),
]


def table():
    """(shown, other spellings, is a temperature with an offset) of every unit of the page."""
    page = open(PAGE, encoding="utf-8").read().replace("\\e", "\\")
    rows = re.search(r"test_manual\.c\)\n\.Bd -literal\n(.*?)\.Ed\n", page, re.S).group(1)
    for row in rows.splitlines():
        shown, others, _ = re.fullmatch(r"(\S+)\s+(.*?)\s+([\d./]+.*)", row).groups()
        yield shown, others.split() if others != "-" else [], " from " in row


def ours(build, lines):
    """What the program makes of (unit, text): exact values in base units."""
    feed = "".join(f"{unit}\t{text}\n" for unit, text in lines)
    done = subprocess.run([os.path.join(build, "tests", "outside_lines")], input=feed, text=True,
                          capture_output=True, check=True)
    answers = done.stdout.splitlines()
    for (unit, text), answer in zip(lines, answers, strict=True):
        if not answer.startswith("= "):
            sys.exit(f"{text} in {unit}: {answer}")
    return [F(answer[2:]) for answer in answers]


def gnu(unit, offset):
    """One of a unit in SI by GNU units, of a temperature 20 of it; angles in degrees."""
    words = GNU[unit]
    base = {"tempC": "K", "tempF": "K"}.get(words)
    asked = f"{words}(20)" if offset else f"1 {words}" if not words[0].isdigit() else words
    into = base or {"°": "degree", "arcmin": "degree", "arcsec": "degree", "turn": "degree",
                    "rpm": "degree/s"}.get(unit)
    command = ["units", "-t", "-d", "15", asked] + ([into] if into else [])
    said = subprocess.run(command, text=True, capture_output=True, check=True).stdout.strip()
    return F(re.match(r"[-+.\de]+", said).group(0))


def check(source, asked, got, wanted):
    allowed = abs(wanted) * ALLOWED
    fault = abs(got - wanted) > allowed
    print(f"{'FAULT ' if fault else ''}{source}\t{asked}\t{float(got)!r}\t"
          f"{float(wanted)!r} ± {float(allowed):.1e}")
    return fault


def figures(build, rows):
    """How many of these rows of FIGURES are not so."""
    got = ours(build, [(unit, text) for _, text, unit, _ in rows])
    return sum(check(source, text, value, F(wanted))
               for (source, text, _, wanted), value in zip(rows, got))


def spoil(build):
    """FIGURES with one figure changed, each of what is typed and of what it must be."""
    changed = [(source, ways[0], unit, wanted) for source, text, unit, wanted in FIGURES
               for ways in changes(text)]
    changed += [(source, text, unit, ways[0]) for source, text, unit, wanted in FIGURES
                for ways in changes(wanted)]
    unnoticed = len(changed) - figures(build, changed)
    print(f"{len(changed)} figures changed, {unnoticed} unnoticed")
    sys.exit(unnoticed > 0)


def main():
    build, faults, rows = sys.argv[1], 0, 0
    if sys.argv[2:] == ["spoil"]:
        spoil(build)
    for shown, others, offset in table():
        wanted = gnu(shown, offset)
        number = "20" if offset else "1"
        lines = [(shown, f"{number} {spelling}".replace(" :1", ":1"))
                 for spelling in [shown] + others if spelling not in ("'", '"')]
        for (_, text), got in zip(lines, ours(build, lines)):
            faults += check("GNU units", text, got, wanted)
            rows += 1
    faults += figures(build, FIGURES)
    print(f"{rows + len(FIGURES)} rows, {faults} faults")
    sys.exit(faults > 0)


main()
