#!/usr/bin/env python3
"""Published figures against what the program's formulas come to, one table a source. One row each:
source, asked, got, printed and what it may differ by.

    tests/outside/tables.py BUILD-FOLDER
"""
import os
import subprocess
import sys
from fractions import Fraction as F

# Each table: source, how far a row may be off (absolute), rows of (unit, formula, printed). Where
# the source prints rounded figures, half of its last place.
TABLES = [
    ("ISO 1:2022, length at 20 °C, worked out apart from the program; coefficients from memory", F(1, 10 ** 7), [
        ("mm", "500.035 mm / (1 + 0.0000117 * (23.7 - 20))", "500.0133544"),
        ("mm", "86.012 mm / (1 + 0.000023 * (28 - 20))", "85.9961767"),
        ("mm", "62.000 mm / (1 + 0.0000115 * (12 - 20))", "62.0057045"),
        ("mm", "101.60 mm / (1 + 0.0000105 * (26 - 20))", "101.5935996"),
        ("mm", "86.012 mm * (1 + 0.0000115 * 4) / (1 + 0.000023 * 8)", "86.0001325"),
        ("mm", "at20(62.000 mm, 12 °C, steel)", "62.0057045"),
        ("mm", "at20(86.012 mm, 28 °C, aluminium)", "85.9961767"),
        ("mm", "at20(101.60 mm, 26 °C, iron)", "101.5935996"),
        ("mm", "at20(86.012 mm, 28 °C, aluminium, 24 °C, steel)", "86.0001325"),
        ("mm", "at20(62.000 mm, 68 °F, steel)", "62"),
    ]),
    ("Heywood, Internal Combustion Engine Fundamentals, ch. 2: its formulas, worked out apart", F(1, 10 ** 6), [
        ("cc", "swept volume(86 mm, 86 mm)", "499.557214"),
        ("cc", "swept volume(4.030 in, 3.480 in)", "727.411843"),
        ("cc", "swept volume(96 mm, 77 mm)", "557.343669"),
        ("cc", "clearance volume(45.0 cc, 87 mm, 0.70 mm, 86 mm, 0.20 mm, 3.0 cc)", "53.323036"),
        ("cc", "clearance volume(64.0 cc, 4.100 in, 0.041 in, 4.030 in, 0.025 in, 5.0 cc)",
         "83.096047"),
        ("cc", "clearance volume(62.0 cc, 97 mm, 1.20 mm, 96 mm, -0.10 mm, -12.0 cc)", "58.143951"),
    ]),
    ("Heywood, ch. 2, compression ratio: its formula, worked out apart", F(1, 10 ** 6), [
        ("-", "compression ratio(499.557214 cc, 53.323036 cc)", "10.368507"),
        ("-", "compression ratio(727.411843 cc, 83.096047 cc)", "9.753868"),
        ("-", "compression ratio(557.343669 cc, 58.143951 cc)", "10.585583"),
        ("-", "compression ratio(500 cc, 50 cc)", "11"),
    ]),
    ("displacement of bore, stroke and cylinders: the formula of a cylinder, worked out apart", F(1, 10 ** 4), [
        ("cc", "4 * swept volume(86 mm, 86 mm)", "1998.2289"),
        ("cc", "4 * swept volume(87 mm, 84 mm)", "1997.4120"),
        ("cc", "6 * swept volume(86 mm, 86 mm)", "2997.3433"),
        ("cc", "8 * swept volume(4.00 in, 3.48 in)", "5732.9776"),
        ("cc", "8 * swept volume(4.065 in, 3.622 in)", "6162.4096"),
    ]),
    ("ISO 898-1:2013, stress areas of ISO metric threads", F(1, 1000), [
        ("mm²", "stress area(6 mm, 1 mm)", "20.123"), ("mm²", "stress area(8 mm, 1.25 mm)", "36.609"),
        ("mm²", "stress area(8 mm, 1 mm)", "39.167"), ("mm²", "stress area(10 mm, 1.5 mm)", "57.990"),
        ("mm²", "stress area(10 mm, 1.25 mm)", "61.199"),
        ("mm²", "stress area(12 mm, 1.75 mm)", "84.267"),
        ("mm²", "stress area(12 mm, 1.5 mm)", "88.126"),
        ("mm²", "stress area(12 mm, 1.25 mm)", "92.072"),
        ("mm²", "stress area(14 mm, 1.5 mm)", "124.546"), ("mm²", "stress area(16 mm, 2 mm)", "156.668"),
    ]),
    ("NIST SP 811:2008, appendix B", F(1, 10 ** 9), [
        ("N·m", "65 lbf·ft", "88.128166642"), ("lbf·ft", "100 N·m", "73.756214928"),
        ("lbf·in", "100 N·m", "885.074579132718"), ("kgf·m", "100 N·m", "10.197162130"),
        ("lbf·in", "20 lbf·ft", "240"), ("N·m", "20 lbf·ft", "27.116358967"),
        ("lbf·ft", "133 N·m", "98.095765854"), ("kPa", "150 psi", "1034.213593975"),
        ("psi", "4 bar", "58.015095092"), ("g", "22 oz", "623.68950875"),
        ("mm", "15/64 in", "5.953125"), ("mm", "3/8 in", "9.525"),
        ("N·m", "1 lbf·ft", "1.355817948"), ("kPa", "1 psi", "6.894757293"),
    ]),
]


def main():
    rows = [(source, allowed, *row) for source, allowed, table in TABLES for row in table]
    feed = "".join(f"{unit}\t{formula}\n" for _, _, unit, formula, _ in rows)
    said = subprocess.run([os.path.join(sys.argv[1], "tests", "outside_formula")], input=feed,
                          text=True, capture_output=True, check=True).stdout.splitlines()
    faults = 0
    for (source, allowed, unit, formula, printed), answer in zip(rows, said, strict=True):
        got = F(answer[2:]) if answer.startswith("= ") else None
        fault = got is None or abs(got - F(printed)) > allowed
        faults += fault
        shown = answer if got is None else f"{float(got):.10g}"
        print(f"{'FAULT ' if fault else ''}{source}\t{formula}\t{shown} {unit}\t"
              f"{printed} ± {float(allowed):.0e}")
    print(f"{len(TABLES)} tables, {len(rows)} rows, {faults} faults")
    sys.exit(faults > 0)


main()
