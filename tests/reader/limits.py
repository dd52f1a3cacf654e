"""Limits as a plan writes them, and stages."""
from __future__ import annotations

import re
from dataclasses import dataclass

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


SIDES = ((r"(?:at least|min(?! *\()) (.+)", "lower"), (r"(?:≥|>=) ?(.+)", "lower"),
         (r"(?:at most|max(?! *\()) (.+)", "upper"), (r"(?:≤|<=) ?(.+)", "upper"))
NUMBER = r"-?[0-9.]+ ?[^-–+*/()0-9. ]*"
SPAN = re.compile(rf"({NUMBER}) ?[-–] ?({NUMBER})")


def plain_limits(text: str) -> Limits | None:
    if text == "any":
        return Limits("any", text)
    if text == "text":
        return Limits("text", text)
    if text in ANSWERS:
        return Limits("answer", text, wanted=text, choices=ANSWERS)
    match = re.fullmatch(r"exactly (\d+)", text)
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
    for pattern, side in SIDES:
        match = re.fullmatch(pattern, text)
        if match:
            tree = parse(match[1])
            return value_limits(text, tree if side == "lower" else None,
                                tree if side == "upper" else None, unit)
    span = SPAN.fullmatch(text)
    low, between, high = text.partition(".." if ".." in text else " to ")
    if between or span:
        low, high = (low, high) if between else (span[1], span[2])
        return value_limits(text, parse(low), parse(high), unit)
    middle, sign, around = re.sub(r"\+/?-", "±", text).partition("±")
    if not sign:
        raise ValueError(f"`{text}` is no limits")
    one, other = parse(middle), parse(around)
    return value_limits(text, ("-", one, other), ("+", one, other), unit)


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
    match = re.fullmatch(r"until (.+)", text)
    if match:
        return Stage("until", text, until=match[1])
    return Stage("torque", text, give_unit(parse(text), torque))
