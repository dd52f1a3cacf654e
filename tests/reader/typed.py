"""What a person typed as one reading: a number, arithmetic, and perhaps a ± behind it."""
from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction as F

from formula import Context, Fault, evaluate, parse, scan_number, walk
from units import PURE, Unit, parse_unit

ARITHMETIC = re.compile(r"[*×÷^()+]| [-/] ")
NO_UNIT = Unit(PURE, F(1))


@dataclass
class TypedReading:
    """In base units. `grain` is one unit of the last place typed, `doubt` the U of the ± (k = 2)."""
    value: F
    grain: F
    doubt: F | None


def read_typed(text: str, unit: Unit | None) -> TypedReading | None:
    """`unit` is that of the entry, for numbers without one. None for a spelling not known here."""
    words = text.strip().replace("+/-", "±").replace("−", "-").lstrip("<> ")
    amount, sign, around = words.partition("±")
    try:
        value, grain = worked_out(amount.strip(), unit or NO_UNIT)
        return TypedReading(value, grain, doubt_of(around.strip(), unit or NO_UNIT) if sign else None)
    except (Fault, KeyError):
        return None


def doubt_of(text: str, unit: Unit) -> F:
    typed, own, _ = plain(text)
    return (own or unit).width(typed)


def plain(text: str) -> tuple[F, Unit | None, F]:
    """A number and its unit if it has one, and the place of its last digit."""
    found = scan_number(text, 0)
    if not found:
        raise Fault(f"`{text}` is no number")
    rest = text[found[1]:].strip()
    return found[0].value, parse_unit(rest) if rest else None, found[0].place


def worked_out(text: str, unit: Unit) -> tuple[F, F]:
    negative = text.startswith("-")
    if not ARITHMETIC.search(text.lstrip("+- ")):
        number, own, place = plain(text.lstrip("+- "))
        used = own or unit
        return used.base(-number if negative else number), used.width(place)
    tree = parse(text.removeprefix("+"))
    numbers = [node for node in walk(tree) if node[0] == "quantity"]
    result = evaluate(tree, Context(unknown)).places[()].value
    if any(node[5] for node in numbers):
        return result, coarsest([node for node in numbers if node[5]])
    return unit.base(result), unit.width(coarsest(numbers))


def unknown(name: str):
    raise Fault(f"`{name}`: a reading has numbers only")


def coarsest(numbers: list[tuple]) -> F:
    """The coarsest place; a whole number counts only where there are no others."""
    places = [(node[2] != 1, (node[5] or NO_UNIT).width(node[2])) for node in numbers]
    exact = [place for fine, place in places if fine]
    return max(exact or [place for _, place in places])
