#!/usr/bin/env python3
"""Readings made from the grammar that standbook-reading(7) prints, one in five of them wrong: what the
program makes of each is compared with exact fractions worked out here, and the column of what is wrong
with the one it must be.

    tests/outside/readings.py BUILD-FOLDER SEED LINES
"""
import os
import random
import re
import subprocess
import sys
from fractions import Fraction as F

HERE = os.path.dirname(os.path.abspath(__file__))
PAGE = os.path.join(HERE, "..", "..", "man", "standbook-reading.7")


def read_page():
    """The rules of the grammar, and the units: (spelling, factor, offset) by kind."""
    page = open(PAGE, encoding="utf-8").read().replace("\\e", "\\")
    grammar = re.search(r"\.Bd -literal\n(reading  =.*?)\.Ed\n", page, re.S).group(1)
    rules = {}
    for rule in grammar.strip().split(";\n"):
        name, body = rule.rstrip(";").split("=", 1)
        rules[name.strip()] = alternatives(re.findall(r'"[^"]*"|[\[\]{}()|]|\w+', body))
    table = re.search(r"test_manual\.c\)\n\.Bd -literal\n(.*?)\.Ed\n", page, re.S).group(1)
    units = {}
    for row in table.splitlines():
        found = re.fullmatch(r"(\S+)\s+(.*?)\s+([\d./]+)((?: (?:m|kg|s|°|K)(?:\^-?\d)?)*)"
                             r"(?: from ([\d./]+))?", row)
        text, others, factor, kind, offset = found.groups()
        above, _, below = factor.partition("/")
        for spelling in [text] + (others.split() if others != "-" else []):
            units.setdefault(kind, []).append(
                (spelling, F(above) / F(below or 1), ratio(offset) if offset else F(0)))
    return rules, units


def ratio(text):
    above, _, below = text.partition("/")
    return F(above) / F(below or 1)


def alternatives(tokens):
    """EBNF tokens as a tree: ("or", […]), ("all", […]), ("maybe", x), ("many", x), name or "text"."""
    closing = {"[": "]", "{": "}", "(": ")"}

    def choice(end):
        ways = [[]]
        while tokens and tokens[0] != end:
            token = tokens.pop(0)
            if token == "|":
                ways.append([])
            elif token in closing:
                inner = choice(closing[token])
                tokens.pop(0)
                ways[-1].append({"[": ("maybe", inner), "{": ("many", inner), "(": inner}[token])
            else:
                ways[-1].append(token)
        return ("or", [("all", way) for way in ways])
    return choice(None)


class Lines:
    """Random readings of one wanted unit, with what they must come to."""

    def __init__(self, rules, units, rng):
        self.rules, self.units, self.rng = rules, units, rng

    def begin(self):
        self.kind = self.rng.choice(list(self.units))
        self.wanted = self.rng.choice(self.units[self.kind])
        self.bare = self.rng.random() < 0.6   # no number has a unit
        self.depth = 0

    def derive(self, tree):
        """One derivation of a tree of the grammar, as nested lists of (name, parts) and texts."""
        if isinstance(tree, str):
            if tree.startswith('"'):
                return tree[1:-1]
            return self.rule(tree)
        form, inner = tree
        if form == "or":
            return self.derive(self.rng.choice(inner))
        if form == "all":
            return [self.derive(one) for one in inner]
        if form == "maybe":
            return self.derive(inner) if self.rng.random() < 0.4 else []
        return [self.derive(inner) for _ in range(self.rng.choice((0, 0, 1, 1, 2)))]

    def rule(self, name):
        if name == "digit":
            return str(self.rng.randrange(4))
        if name == "digits":
            return ("digits", [self.digits()])
        if name == "unit":
            return ("unit", [self.rng.choice(self.units[self.kind])])
        if name == "sum":
            self.depth += 1
            if self.depth > 3:
                raise NotSo
            made = ("sum", [self.derive(self.rules[name])])
            self.depth -= 1
            return made
        return (name, [self.derive(self.rules[name])])

    def digits(self):
        return str(self.rng.randrange(10 ** self.rng.choice((1, 1, 2, 3, 5))))


class NotSo(Exception):
    """A derivation that the words beside the grammar rule out."""


def flat(tree):
    """The leaves of nested lists."""
    if isinstance(tree, list):
        for one in tree:
            yield from flat(one)
    else:
        yield tree


def parts(node):
    return list(flat(node[1]))


def decimal(node):
    """Text and value of a decimal."""
    text = "".join(parts(leaf)[0] if isinstance(leaf, tuple) else leaf for leaf in
                   flat([one if not isinstance(one, tuple) or one[0] == "digits" else parts(one)
                         for one in parts(node)]))
    return text, F(text.replace(",", "."))


def number(node):
    leaves, text, values = parts(node), "", []
    for leaf in leaves:
        if isinstance(leaf, str):
            text += leaf
            continue
        word, value = decimal(leaf) if leaf[0] == "decimal" else (parts(leaf)[0], None)
        values.append(F(word) if value is None else value)
        text += word
    if len(values) == 1:
        return text, values[0]
    if values[-1] == 0:
        raise NotSo
    if len(values) == 2:
        return text, values[0] / values[1]
    if values[1] >= values[2]:
        raise NotSo
    return text, values[0] + values[1] / values[2]


class Written:
    """A derivation as text and value, in base units."""

    def __init__(self, lines):
        self.lines, self.rng = lines, lines.rng

    def blank(self):
        return " " * self.rng.choice((0, 0, 1, 2))

    def quantity(self, leaves, units):
        """A number and perhaps its unit, taken off the front of leaves."""
        text, value = number(leaves.pop(0))
        unit = leaves.pop(0)[1][0] if leaves and isinstance(leaves[0], tuple) \
            and leaves[0][0] == "unit" else None
        if not units:
            return text, value, None
        unit = unit or self.rng.choice(self.lines.units[self.lines.kind])
        blank = self.blank() if text[-1].isdigit() else ""
        if unit[0] in ("2", "3"):
            raise NotSo
        return text + (blank or " ") + unit[0], value, unit

    def amount(self, node):
        leaves = parts(node)
        text, value, unit = self.quantity(leaves, not self.lines.bare)
        if leaves:
            raise NotSo  # several units in one value are tried by themselves
        used = unit or self.lines.wanted
        return text, value, used

    def factor(self, node, units):
        leaves, text, sign = parts(node), "", 1
        if leaves[0] == "-":
            leaves.pop(0)
            text, sign = "-" + self.blank(), -1
        if leaves[0] == "(":
            inner, value, pure = self.sum(leaves[1], units)
            del leaves[:3]
            text += "(" + self.blank() + inner + self.blank() + ")"
        else:
            word, value, unit = self.quantity(leaves, units)
            if unit and (unit[2] or unit[0] == '"'):
                raise NotSo
            value, text, pure = value * (unit[1] if unit else 1), text + word, unit is None
        if leaves:
            if units:
                raise NotSo
            power = int(leaves[1])
            text, value = text + "^" + str(power), value ** power
        return text, sign * value, pure

    def product(self, node, units):
        """With units only the first factor has them."""
        leaves = parts(node)
        text, value, pure = self.factor(leaves.pop(0), units)
        while leaves:
            mark, (word, other, _) = leaves[0], self.factor(leaves[1], False)
            del leaves[:2]
            blank = " " if mark == "/" else self.blank()
            text += blank + mark + (blank or self.blank()) + word
            if mark in "/÷" and other == 0:
                raise NotSo
            value = value * other if mark in "*×" else value / other
        return text, value, pure

    def sum(self, node, units):
        leaves = parts(node)
        text, value, pure = self.product(leaves.pop(0), units)
        while leaves:
            mark, (word, other, _) = leaves[0], self.product(leaves[1], units)
            del leaves[:2]
            text += f" {mark} " + word
            value = value + other if mark == "+" else value - other
        return text, value, pure

    def value(self, node):
        """Text and value in base units, and the unit that a ± without one has."""
        leaves, sign = parts(node), ""
        wanted = self.lines.wanted
        if leaves[0][0] == "sum":
            text, value, _ = self.sum(leaves[0], not self.lines.bare)
            if not re.search(r"[*×÷^()]| [-+/] ", text):
                raise NotSo  # one number is an amount
            return text, value if not self.lines.bare else value * wanted[1] + wanted[2], wanted
        if leaves[0][0] == "sign":
            sign = parts(leaves.pop(0))[0]
        text, value, unit = self.amount(leaves[0])
        value = -value if sign == "-" else value
        return sign + (self.blank() if sign else "") + text, value * unit[1] + unit[2], unit

    def reading(self, node):
        leaves, bound = parts(node), ""
        if leaves[0] in ("<", ">"):
            bound = leaves.pop(0)
        text, value, unit = self.value(leaves.pop(0))
        text = bound + (self.blank() if bound else "") + text
        if not leaves:
            return text, f"= {bound}{show(value)}"
        if bound or self.lines.wanted[2] or unit[2]:
            raise NotSo
        word, doubt = number(leaves[1])
        return (text + self.blank() + "±" + self.blank() + word,
                f"= {show(value)} ± {show(doubt * unit[1])}")


def show(value):
    return f"{value.numerator}/{value.denominator}" if value.denominator > 1 else str(value.numerator)


def right(lines):
    """A right line: (unit, text, answer)."""
    while True:
        lines.begin()
        try:
            text, answer = Written(lines).reading(lines.rule("reading"))
        except NotSo:
            continue
        if len(text) <= 200 and len(answer) < 2000 and max(map(len, re.findall(r"\d+", text))) < 30:
            return lines.wanted[0], text, answer


def wrong(lines, rng):
    """A wrong line: (unit, text, column)."""
    unit, front, _ = right(lines)
    a, b, c = (str(rng.randrange(1, 999)) for _ in range(3))
    marks = "".join((a, rng.choice(".,"), b, ",", c))
    ways = [
        ("mm", marks, marks.rindex(",")),
        ("mm", f"{a} zz", len(a) + 1),
        ("mm", f"{a}-{b}", len(a)),
        ("mm", f"{a}-{int(b) + int(c)}/{c}", len(a) + 1),
        ("mm", f"{a}/{b}/{c}", len(f"{a}/{b}")),
        ("mm", f"{a} +", len(a) + 2),
        ("mm", f"({a} + {b}", len(f"({a} + {b}")),
        ("mm", f"{a} + bore", len(a) + 3),
        ("mm", f"{a} bar", len(a) + 1),
        ("mm", f"{a}/0", len(a) + 1),
        ("mm", f"{a} {b}", len(a) + 1),
        ("mm", f"{a} ± {b} ± {c}", len(f"{a} ± {b} ")),
        ("mm", f"<{a} ± {b}", len(f"<{a} ±")),
        ("N·m", f"{a} Nm + {b} in", len(f"{a} Nm + ")),
        ("mm", f"{a}e{b}", len(a)),
        (unit, front + " ?", len(front) + 1),
    ]
    return rng.choice(ways)


def main():
    build, seed, count = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    rng = random.Random(seed)
    rules, units = read_page()
    lines = Lines(rules, units, rng)
    made = []
    for _ in range(count):
        if rng.random() < 0.2:
            unit, text, column = wrong(lines, rng)
            made.append((unit, text, f"! {column}"))
        else:
            made.append(right(lines))
    feed = "".join(f"{unit}\t{text}\n" for unit, text, _ in made)
    got = subprocess.run([os.path.join(build, "tests", "outside_lines")], input=feed, text=True,
                         capture_output=True, check=True).stdout.splitlines()
    if len(got) != count:
        sys.exit(f"{len(got)} answers to {count} lines")
    faults = 0
    for (unit, text, wanted), answer in zip(made, got):
        same = answer == wanted or (wanted[0] == "!" and answer.startswith(wanted + " "))
        if not same:
            faults += 1
            if faults <= 10:
                print(f"seed {seed}: {unit}: {text}\n  wanted {wanted}\n  got    {answer}")
    refused = sum(wanted[0] == "!" for _, _, wanted in made)
    print(f"seed {seed}: {count} readings, {refused} of them wrong: {faults} differ")
    sys.exit(faults > 0)


main()
