"""Limits as a plan writes them, and stages."""
from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction as F

from formula import give_unit, parse, terms
from units import Unit

ANSWERS = ("yes", "no")


@dataclass
class Limits:
    """`form` is value, any, count, answer or text; the sides are trees of formulas."""
    form: str
    text: str
    lower: tuple | None = None
    upper: tuple | None = None
    unit: Unit | None = None
    wanted: str = ""
    choices: tuple[str, ...] = ()


def last_unit(trees: list[tuple]) -> Unit | None:
    """The last unit written at a whole term."""
    units = [term[5] for tree in trees for term in terms(tree) if term[5]]
    return units[-1] if units else None


def value_limits(text: str, lower: tuple | None, upper: tuple | None, unit: Unit | None) -> Limits:
    written = last_unit([side for side in (lower, upper) if side])
    used = written or unit
    return Limits("value", text, lower and give_unit(lower, used), upper and give_unit(upper, used),
                  written)


LOWER, UPPER = r"(?:at least |min(?:\.|imum)? (?! *\())", r"(?:at most |max(?:\.|imum)? (?! *\()|up to )"
SIDES = ((rf"(?:{LOWER}|≥|>=?)(.+)", "lower"), (rf"(?:{UPPER}|≤|<=?)(.+)", "upper"))
PLAIN = r"[-+−]?[0-9.,]+(?:[ -]?[0-9]*/[0-9]+)?"
TAILS = ((rf"({PLAIN} ?[^-–+*/()0-9. ][^–+()0-9. ]*) min(?:\.|imum)?|({PLAIN}) minimum", "lower"),
         (rf"({PLAIN}(?: ?[^-–+*/()0-9. ][^–+()0-9. ]*)?) max(?:\.|imum)?", "upper"))
NUMBER = r"-?[0-9.,]+ ?[^-–+*/()0-9. ]*"
SPAN = re.compile(rf"({NUMBER}) ?[-–] ?({NUMBER})")
BETWEEN = re.compile(r"(?i:between (.+?) and |from (.+?) to )(.+)")
DEVIATION = r"(?:[-+−][0-9.,]+(?:/[1-9][0-9]*)?|0[0.,]*)(?: ?[^-−+*/()0-9. ]+)?"
DEVIATIONS = re.compile(rf"({PLAIN}(?: ?[^-−+*/()0-9. ]+)?)(?: +)({DEVIATION})[ /]+({DEVIATION})")
DOTS = re.compile(r"…|\.\.\.(?=[0-9]*[.,]|[^0-9])|\.\.")
COMMA = re.compile(r"(?<![0-9.,])([0-9]*),([0-9]+)(?![.,]?[0-9])")


def points(text: str) -> str:
    """With decimal commas as points, outside of brackets."""
    parts = re.split(r"([(\[].*[)\]])", text)
    return "".join(part if i % 2 else COMMA.sub(r"\1.\2", part) for i, part in enumerate(parts))


def side(text: str) -> tuple:
    return parse(points(text).strip())


def deviation(text: str) -> tuple:
    return side(text.strip().removeprefix("+"))


def deviated(text: str, middle: str, one: str, other: str, unit: Unit | None) -> Limits:
    """A number and its two deviations, of which either may stand first."""
    trees = [deviation(one), deviation(other)]
    used = last_unit([side(middle), *trees]) or unit

    def width(tree: tuple) -> F:
        own = tree[5] or used
        return own.width(tree[1]) if own else tree[1]

    low, high = (("+", side(middle), tree) for tree in sorted(trees, key=width))
    return value_limits(text, low, high, unit)


def plain_limits(text: str) -> Limits | None:
    if text == "any":
        return Limits("any", text)
    if text == "text":
        return Limits("text", text)
    if text in ANSWERS:
        return Limits("answer", text, wanted=text, choices=ANSWERS)
    match = re.fullmatch(r"(?:exactly |= ?)(\d+)", text)
    if match:
        return Limits("count", text, wanted=match[1])
    match = re.fullmatch(r"(.+?) of (.+/.+)", text)
    if match:
        choices = tuple(choice.strip() for choice in match[2].split("/"))
        return Limits("answer", text, wanted=match[1].strip(), choices=choices)
    return None


def parse_limits(text: str, unit: Unit | None) -> Limits:
    """`unit` is the check's, for bare numbers."""
    text = text.strip()
    plain = plain_limits(text)
    if plain:
        return plain
    for pattern, end in SIDES + TAILS:
        match = re.fullmatch(pattern, text, re.IGNORECASE)
        if match:
            tree = side(next(group for group in match.groups() if group))
            return value_limits(text, tree if end == "lower" else None,
                                tree if end == "upper" else None, unit)
    return parse_two(text, unit)


def parse_two(text: str, unit: Unit | None) -> Limits:
    """Limits of two ends."""
    dots, words = DOTS.search(text), BETWEEN.fullmatch(text)
    if dots:
        return value_limits(text, side(text[:dots.start()]), side(text[dots.end():]), unit)
    middle, sign, around = re.sub(r"\+/?-", "±", text).partition("±")
    if sign:
        one, other = side(middle), side(around)
        return value_limits(text, ("-", one, other), ("+", one, other), unit)
    low, between, high = text.partition(" to ")
    if words or between:
        low, high = (words[1] or words[2], words[3]) if words else (low, high)
        return value_limits(text, side(low), side(high), unit)
    match = DEVIATIONS.fullmatch(text)
    if match and re.search("[-+−]", match[2] + match[3]):
        return deviated(text, *match.groups(), unit)
    match = SPAN.fullmatch(text)
    if match:
        return value_limits(text, side(match[1]), side(match[2]), unit)
    raise ValueError(f"`{text}` is no limits")


@dataclass
class Stage:
    """`kind` is torque, snug, turn, angle, slacken, draw, until or wait."""
    kind: str
    text: str
    amount: tuple | None = None
    until: str = ""


def parse_stage(text: str, torque: Unit, angle: Unit) -> Stage:
    text = text.strip()
    if text == "snug":
        return Stage("snug", text)
    if text.startswith("+"):
        return Stage("turn", text, give_unit(parse(text[1:]), angle))
    match = re.fullmatch(r"(.+) from snug", text)
    if match:
        return Stage("angle", text, give_unit(parse(match[1]), angle))
    match = re.fullmatch(r"(slacken|draw|wait)(?: (.+))?", text)
    if match:
        return Stage(match[1], text, parse(match[2]) if match[2] else None)
    match = re.fullmatch(r"to slot(?: within (.+))?", text)
    if match:
        return Stage("slot", text, parse(match[1]) if match[1] else None)
    match = re.fullmatch(r"check (.+)", text)
    if match:
        return Stage("check", text, give_unit(parse(match[1]), torque))
    match = re.fullmatch(r"until (.+)", text)
    if match:
        return Stage("until", text, until=match[1])
    return Stage("torque", text, give_unit(parse(text), torque))
