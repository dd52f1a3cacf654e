"""Formulas of a plan: an own parser by the grammar, and exact evaluation.

A parsed formula is a tree of tuples; its first member names the node.
"""
from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction as F
from typing import Callable, Hashable

import trade
from arrays import (PI, Array, Mismatch, Place, Variance, absolute, combine, constant, each,
                    fold_axes, fold_several, negated, neighbour, no_variance, pick, powered, rooted)
from units import PURE, Unit, parse_unit

FUNCTIONS = ("min", "max", "mean", "range", "sum", "abs", "sqrt")
NUMBER = re.compile(r"(?P<whole>\d+)(?P<join>[- ])(?P<above>\d+)/(?P<below>\d+)"
                    r"|(?P<decimal>\d+(?:\.\d+)?|\.\d+)(?:/(?P<under>\d+))?")
LETTERS = r"[^\W\d_²³]+"
UNIT = re.compile(rf'{LETTERS}[²³]?(?:[·/\-]{LETTERS}[²³]?)*|°[CF]?(?!\w)|"|%')
WORD = re.compile(r"[^\W\d_](?:[^\W_]|')*(?:-[^\W_](?:[^\W_]|')*)*")
DIGITS = re.compile(r"\d+")


class Fault(ValueError):
    """A text that is no formula."""


@dataclass
class Typed:
    value: F
    place: F


def scan_number(text: str, position: int) -> tuple[Typed, int] | None:
    """A number as typed (`59.790`, `17/32`, `2-5/8`, `2 5/8`) and where it ends."""
    match = NUMBER.match(text, position)
    if not match:
        return None
    if match["whole"]:
        above, below = int(match["above"]), int(match["below"])
        if not 0 < above < below:
            raise Fault(f"{match[0]} is no whole number with a proper fraction")
        return Typed(int(match["whole"]) + F(above, below), F(1, below)), match.end()
    end = match.end()
    decimal = match["decimal"]
    places = len(decimal.partition(".")[2])
    if match["under"]:
        if not int(match["under"]):
            raise Fault("divided by 0")
        return Typed(F(decimal) / int(match["under"]), F(1, int(match["under"]) * 10**places)), end
    if re.match(r"-\d", text[end:]):
        raise Fault(f"`{match[0]}-…` is no number; a minus has a space")
    return Typed(F(decimal), F(1, 10**places)), end


class Parser:
    def __init__(self, text: str):
        self.text, self.position, self.doubts = text, 0, 0

    def blanks(self) -> None:
        while self.position < len(self.text) and self.text[self.position].isspace():
            self.position += 1

    def peek(self) -> str:
        self.blanks()
        return self.text[self.position:self.position + 1]

    def take(self, sign: str) -> bool:
        if self.peek() in sign and self.peek():
            self.position += 1
            return True
        return False

    def need(self, sign: str) -> None:
        if not self.take(sign):
            raise Fault(f"`{sign}` is missing at {self.position} of `{self.text}`")

    def whole(self) -> tuple:
        tree = self.formula()
        if self.peek():
            raise Fault(f"too much at {self.position} of `{self.text}`")
        return tree

    def formula(self) -> tuple:
        tree = self.product()
        while self.peek() and self.peek() in "+-−":
            sign = "+" if self.text[self.position] == "+" else "-"
            self.position += 1
            tree = (sign, tree, self.product())
        return tree

    def product(self) -> tuple:
        tree = self.unary()
        while self.peek() and self.peek() in "*/×÷":
            sign = "*" if self.text[self.position] in "*×" else "/"
            self.position += 1
            tree = (sign, tree, self.unary())
        return tree

    def unary(self) -> tuple:
        if self.take("-−"):
            tree = self.power()
            if tree[0] == "quantity":  # -5 °C is five below zero
                return ("quantity", -tree[1], *tree[2:])
            return ("negative", tree)
        return self.power()

    def power(self) -> tuple:
        tree = self.postfix()
        if self.take("^"):
            sign = -1 if self.take("-−") else 1
            digit = self.peek()
            if not digit.isdigit():
                raise Fault("`^` wants a digit")
            self.position += 1
            return ("power", tree, sign * int(digit))
        if self.peek() and self.peek() in "²³":
            exponent = {"²": 2, "³": 3}[self.peek()]
            self.position += 1
            return ("power", tree, exponent)
        return tree

    def postfix(self) -> tuple:
        tree = self.primary()
        while self.take("["):
            closing = self.text.index("]", self.position)
            for words in self.text[self.position:closing].split(","):
                tree = ("pick", tree, " ".join(words.split()))
            self.position = closing + 1
        return tree

    def primary(self) -> tuple:
        if self.take("("):
            tree = self.formula()
            self.need(")")
            return tree
        self.blanks()
        found = scan_number(self.text, self.position)
        if found:
            return self.quantity(*found)
        return self.name_or_call()

    def quantity(self, typed: Typed, end: int) -> tuple:
        self.position = end
        doubt, index = None, None
        if self.take("±"):
            self.blanks()
            found = scan_number(self.text, self.position)
            if not found:
                raise Fault("`±` wants a number")
            doubt, self.position = found[0].value, found[1]
            index, self.doubts = self.doubts, self.doubts + 1
        return ("quantity", typed.value, typed.place, doubt, index, self.unit())

    def unit(self) -> Unit | None:
        self.blanks()
        match = UNIT.match(self.text, self.position)
        if not match:
            return None
        try:
            unit = parse_unit(match[0])
        except KeyError as error:
            raise Fault(f"`{match[0]}` is no unit") from error
        self.position = match.end()
        return unit

    def words(self) -> str:
        found: list[str] = []
        while True:
            self.blanks()
            match = WORD.match(self.text, self.position)
            if not match or match[0] == "over":
                return " ".join(found)
            found.append(match[0])
            self.position = match.end()

    def name_or_call(self) -> tuple:
        name = self.words()
        if not name:
            raise Fault(f"nothing to read at {self.position} of `{self.text}`")
        if name in FUNCTIONS and self.take("("):
            return self.call(name)
        if name in trade.FUNCTIONS and self.take("("):
            return self.trade(name)
        return ("name", name)

    def call(self, name: str) -> tuple:
        arguments, over = [self.formula()], []
        while self.take(","):
            arguments.append(self.formula())
        if self.text.startswith("over", self.position) and self.peek():
            self.position += len("over")
            end = self.text.index(")", self.position)
            over = [" ".join(axis.split()) for axis in self.text[self.position:end].split(",")]
            self.position = end
        self.need(")")
        return ("call", name, arguments, over)

    def trade(self, name: str) -> tuple:
        """What a function of the trade comes to of its arguments, as a whole."""
        arguments = [self.formula()]
        while self.take(","):
            arguments.append(self.formula())
        self.need(")")
        form = trade.function(name, len(arguments))
        if not form:
            raise Fault(f"`{name}` takes no {len(arguments)} arguments")
        given = {parameter: trade.material(tree) if trade.is_material(parameter) else tree
                 for parameter, tree in zip(form[0], arguments)}
        return ("trade", trade.filled(parse(form[1]), given))


def parse(text: str) -> tuple:
    return Parser(text).whole()


def names(tree: tuple) -> list[str]:
    """The names used, each once, in order of appearance; `pi` is none."""
    found: list[str] = []
    for node in walk(tree):
        if node[0] == "name" and node[1] != "pi" and node[1] not in found:
            found.append(node[1])
    return found


def walk(tree: tuple) -> list[tuple]:
    nodes = [tree]
    for part in tree[1:]:
        for child in part if isinstance(part, list) else [part]:
            if isinstance(child, tuple) and child and isinstance(child[0], str):
                nodes += walk(child)
    return nodes


def terms(tree: tuple) -> list[tuple]:
    """The quantities that stand as a whole term of the result: not the factors."""
    if tree[0] == "quantity":
        return [tree]
    if tree[0] in "+-" or tree[0] == "negative":
        return [term for part in tree[1:] for term in terms(part)]
    if tree[0] == "call" and tree[1] not in ("sqrt",):
        return [term for part in tree[2] for term in terms(part)]
    return []


def give_unit(tree: tuple, unit: Unit | None) -> tuple:
    """The tree with a unit at every bare number that stands as a whole term."""
    if unit is None:
        return tree
    if tree[0] == "quantity":
        return tree[:5] + (tree[5] or unit,)
    if tree[0] in "+-" or tree[0] == "negative":
        return (tree[0],) + tuple(give_unit(part, unit) for part in tree[1:])
    if tree[0] == "call" and tree[1] not in ("sqrt",):
        return (tree[0], tree[1], [give_unit(part, unit) for part in tree[2]], tree[3])
    return tree


@dataclass
class Context:
    """What a formula is worked out with. `source` names this formula's own ±."""
    value: Callable[[str], Array]
    variance: Variance = no_variance
    source: Hashable = None
    doubts: dict[Hashable, F] | None = None


def quantity(node: tuple, context: Context) -> Array:
    _, value, _, doubt, index, unit = node
    base = unit.base(value) if unit else value
    place = Place("value", base)
    if doubt is not None and context.doubts is not None:
        source = ("±", context.source, index)
        context.doubts[source] = unit.width(doubt) if unit else doubt
        place.weights = {source: F(1)}
    return Array([], {(): place})


def evaluate(tree: tuple, context: Context) -> Array:
    kind = tree[0]
    if kind == "quantity":
        return quantity(tree, context)
    if kind == "name":
        return constant(PI) if tree[1] == "pi" else context.value(tree[1])
    if kind in ("+", "-", "*", "/"):
        return combine(kind, evaluate(tree[1], context), evaluate(tree[2], context))
    if kind == "trade":
        return evaluate(tree[1], context)
    if kind == "negative":
        return each(evaluate(tree[1], context), negated)
    if kind == "power":
        return each(evaluate(tree[1], context), lambda place: powered(place, tree[2]))
    if kind == "pick":
        return picked(evaluate(tree[1], context), tree[2])
    return called(tree, context)


def picked(array: Array, words: str) -> Array:
    shift = re.fullmatch(r"(.+?) ?([+\-−]) ?(\d+)", words)
    if shift and shift[1] in array.names():
        return neighbour(array, shift[1], int(shift[3]) * (1 if shift[2] == "+" else -1))
    return pick(array, words)


def called(tree: tuple, context: Context) -> Array:
    _, name, arguments, over = tree
    values = [evaluate(argument, context) for argument in arguments]
    if name in ("abs", "sqrt"):
        return each(values[0], absolute if name == "abs" else rooted)
    if len(values) == 1:
        return fold_axes(name, values[0], over, context.variance)
    if over:
        raise Mismatch("`over` goes with one value")
    return fold_several(name, values, context.variance)


__all__ = ["Context", "Fault", "PURE", "Typed", "evaluate", "give_unit", "names", "parse",
           "scan_number", "terms", "walk"]
