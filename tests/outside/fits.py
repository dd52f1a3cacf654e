#!/usr/bin/env python3
"""Straight lines and quantiles of `rules` (line.h) against NIST StRD and printed tables. One row each:
source, asked, got, printed.

    tests/outside/fits.py BUILD-FOLDER [spoil]

`spoil`: changes each figure of what is asked and of what is printed instead, and prints each change
that no row notices.
"""
import os
import subprocess
import sys

from spoil import changes

# x and y in turn. NIST StRD, linear regression: data and certified values as printed there.
NORRIS = (
    "0.2 0.1 337.4 338.8 118.2 118.1 884.6 888.0 10.1 9.2 226.5 228.1 666.3 668.5 996.3 998.5 "
    "448.6 449.1 777.0 778.9 558.2 559.2 0.4 0.3 0.6 0.1 775.5 778.1 666.9 668.8 338.0 339.3 "
    "447.5 448.9 11.6 10.8 556.0 557.7 228.1 228.3 995.8 998.0 887.6 888.8 120.2 119.6 0.3 0.3 "
    "0.3 0.6 556.8 557.6 339.1 339.3 887.2 888.0 999.0 998.5 779.0 778.9 11.1 10.2 118.3 117.6 "
    "229.2 228.9 669.1 668.4 448.9 449.2 0.5 0.2 ")
NOINT1 = " ".join(f"{60 + i} {130 + i}" for i in range(11))
NOINT2 = "4 3 5 4 6 4"
PONTIUS_Y = (
    ".11019 .21956 .32949 .43899 .54803 .65694 .76562 .87487 .98292 1.09146 1.20001 1.30822 "
    "1.41599 1.52399 1.63194 1.73947 1.84646 1.95392 2.06128 2.16844 .11052 .22018 .32939 .43886 "
    ".54798 .65739 .76596 .87474 .98300 1.09150 1.20004 1.30818 1.41613 1.52408 1.63159 1.73965 "
    "1.84696 1.95445 2.06177 2.16829 ")
PONTIUS = " ".join(f"{150000 * (1 + i % 20)} {y}" for i, y in enumerate(PONTIUS_Y.split()))

# Source, what is asked, what comes back in its order (- where nothing is printed), what it may be
# off by: digits that must agree, or half of the last place where it is printed short.
FITS = [
    ("NIST StRD Norris", "line " + NORRIS, "-0.262323073774029 0.232818234301152 1.00211681802045 "
     "0.000429796848199937 0.884796396144373"),
    ("NIST StRD NoInt1", "origin " + NOINT1, "- - 2.07438016528926 0.0165289256198347 "
     "3.56753034006338"),
    ("NIST StRD NoInt2", "origin " + NOINT2, "- - 0.727272727272727 0.0420827318078432 "
     "0.369274472937998"),
    ("NIST StRD Pontius, by GSL alone", "quadratic " + PONTIUS, "0.000673565789473684 "
     "0.000107938612033077 0.000000732059160401003 0.000000000157817399981659 "
     "-0.00000000000000316081871345029 0.0000000000000000486652849992036 0.000205177424076185"),
    ("NIST/SEMATECH e-Handbook 4.6.1, a line through Pontius; two more places worked out apart",
     "line " + PONTIUS, "0.00614968421 - 0.000000722102581 - 0.00217127260"),
    ("Norris at 500, worked out apart", "predict 500 " + NORRIS, "500.79608593645 1.82429188227"),
    ("Norris at 1000, worked out apart", "predict 1000 " + NORRIS, "1001.8544949467 1.89220278923"),
]
CHANCES = "0.90 0.95 0.975 0.99 0.995".split()
# Quantiles to 9 digits, worked out apart; their first three agree with NIST TN 1297, table B.1.
QUANTILES = {
    1: "3.07768354 6.31375151 12.7062047 31.8205160 63.6567412",
    2: "1.88561808 2.91998558 4.30265273 6.96455673 9.92484320",
    3: "1.63774435 2.35336343 3.18244631 4.54070286 5.84090931",
    4: "1.53320627 2.13184679 2.77644511 3.74694739 4.60409487",
    5: "1.47588405 2.01504837 2.57058184 3.36493000 4.03214298",
    9: "1.38302874 1.83311293 2.26215716 2.82143793 3.24983554",
    10: "1.37218364 1.81246112 2.22813885 2.76376946 3.16927267",
    30: "1.31041503 1.69726089 2.04227246 2.45726154 2.74999565",
    34: "1.30695159 1.69092426 2.03224451 2.44114963 2.72839437",
    100: "1.29007476 1.66023433 1.98397152 2.36421737 2.62589052",
    0: "1.28155156554 1.64485362695 1.95996398454 2.32634787404 2.57582930355",
}
DIGITS = 9


def rows():
    yield from FITS
    for freedom, figures in QUANTILES.items():
        name = f"Student t, {freedom}" if freedom else "normal"
        for chance, figure in zip(CHANCES, figures.split()):
            yield f"{name}, worked out apart", f"quantile {freedom} {chance}", figure


def answers(build, asked):
    done = subprocess.run([os.path.join(build, "tests", "outside_fits")], text=True, check=True,
                          input="".join(line + "\n" for line in asked), stdout=subprocess.PIPE)
    return [line.split() for line in done.stdout.splitlines()]


def off(got, printed):
    """Whether a figure is not what is printed, to nine digits or to half of its last place."""
    decimals = len(printed.partition(".")[2])
    room = max(abs(float(printed)) * 10.0 ** -DIGITS, 0.5000001 * 10.0 ** -decimals)
    return abs(float(got) - float(printed)) > room


def fault(got, printed):
    return len(got) != len(printed.split()) or any(
        p != "-" and off(g, p) for g, p in zip(got, printed.split()))


def check(build):
    table = list(rows())
    faults = 0
    for (source, asked, printed), got in zip(table, answers(build, [row[1] for row in table])):
        wrong = fault(got, printed)
        faults += wrong
        print(f"{'FAULT' if wrong else 'ok':5} {source:40.40} {asked:30.30} {' '.join(got)}; {printed}")
    print(f"{len(table)} rows, {faults} faults")
    return faults > 0


def spoil(build):
    """Each figure asked with its last digit changed (its first might leave a fit as it is), and each
    printed one with its first."""
    count = unnoticed = 0
    for source, asked, printed in rows():
        spoilt = [(asked, text[0]) for text in changes(printed)]
        spoilt += [(text[1], printed) for text in changes(asked)]
        count += len(spoilt)
        for (new_asked, new_printed), got in zip(
                spoilt, answers(build, [each for each, _ in spoilt])):
            if not fault(got, new_printed):
                unnoticed += 1
                print(f"{source}: {new_asked[:60]} / {new_printed} unnoticed")
    print(f"{count} figures changed, {unnoticed} unnoticed")
    return unnoticed > 0


if __name__ == "__main__":
    sys.exit((spoil if "spoil" in sys.argv else check)(sys.argv[1]))
