"""Values with named axes: at each place an exact number, or open, or not needed."""
from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction as F
from itertools import product
from math import isqrt
from typing import Callable, Hashable, Iterable

Axis = tuple[str, tuple[str, ...]]
Labels = tuple[str, ...]
ROOT = 10**40
PI = F("3.1415926535897932384626433832795028841971")  # cut: 41 digits of OEIS A000796


class Mismatch(ValueError):
    """Axes that do not fit one another."""


@dataclass
class Place:
    """`state` is `open`, `value` or `not needed`; `weights` says how each source moves the value."""
    state: str = "open"
    value: F = F(0)
    weights: dict[Hashable, F] = field(default_factory=dict)
    bound: str = ""
    doubts: frozenset[str] = frozenset()
    read: int = 0
    asked: int = 0
    since: dict[str, int] = field(default_factory=dict)  # of each doubt: the rank that brought it
    latest: int = 0


Variance = Callable[[Place], F]


def no_variance(_: Place) -> F:
    return F(0)


class Array:
    def __init__(self, axes: Iterable[Axis], places: dict[Labels, Place] | None = None):
        self.axes: list[Axis] = list(axes)
        self.places = places if places is not None else {
            labels: Place() for labels in product(*(axis[1] for axis in self.axes))}

    def names(self) -> list[str]:
        return [axis[0] for axis in self.axes]

    def __getitem__(self, labels: Labels) -> Place:
        return self.places[labels]


def constant(value: F) -> Array:
    return Array([], {(): Place("value", value)})


def mixed(members: list[Place]) -> Place:
    """What every combination of places shares: counts, doubts, the newest entry."""
    since = {doubt: max(m.since.get(doubt, 0) for m in members if doubt in m.doubts)
             for doubt in frozenset().union(*(m.doubts for m in members))}
    doubts: frozenset[str] = frozenset().union(*(m.doubts for m in members))
    return Place("open", F(0), {}, "", doubts, sum(m.read for m in members),
                 sum(m.asked for m in members), since,
                 max((m.latest for m in members), default=0))


def weighted(terms: list[tuple[F, Place]]) -> dict[Hashable, F]:
    total: dict[Hashable, F] = {}
    for factor, place in terms:
        for source, weight in place.weights.items():
            total[source] = total.get(source, F(0)) + factor * weight
    return total


def calculated(members: list[Place], value: F, slopes: list[F]) -> Place:
    """A number worked out of others; a bound may not be used, which leaves the place open."""
    result = mixed(members)
    if any(m.bound for m in members):
        return result
    result.state, result.value = "value", value
    result.weights = weighted(list(zip(slopes, members)))
    return result


def operands_state(members: list[Place]) -> str:
    """An operand not needed leaves nothing to ask; one open leaves the result open."""
    states = [m.state for m in members]
    return next((s for s in ("not needed", "open") if s in states), "value")


def apply(members: list[Place], work: Callable[[], tuple[F, list[F]]]) -> Place:
    state = operands_state(members)
    if state != "value":
        result = mixed(members)
        result.state = state
        return result
    try:
        value, slopes = work()
    except (ZeroDivisionError, ValueError):
        return mixed(members)
    return calculated(members, value, slopes)


def operate(sign: str, a: Place, b: Place) -> Place:
    x, y = a.value, b.value
    rules: dict[str, Callable[[], tuple[F, list[F]]]] = {
        "+": lambda: (x + y, [F(1), F(1)]),
        "-": lambda: (x - y, [F(1), F(-1)]),
        "*": lambda: (x * y, [y, x]),
        "/": lambda: (x / y, [1 / y, -x / y**2]),
    }
    return apply([a, b], rules[sign])


FLIP = {"<": ">", ">": "<", "": ""}


def negated(a: Place) -> Place:
    result = apply([a], lambda: (-a.value, [F(-1)]))
    return result


def absolute(a: Place) -> Place:
    return apply([a], lambda: (abs(a.value), [F(-1) if a.value < 0 else F(1)]))


def root(value: F) -> F:
    """Exact for perfect squares, else cut to 40 decimal places."""
    if value < 0:
        raise ValueError("root of a negative number")
    above, below = isqrt(value.numerator), isqrt(value.denominator)
    if above**2 == value.numerator and below**2 == value.denominator:
        return F(above, below)
    return F(isqrt(value.numerator * ROOT**2 // value.denominator), ROOT)


def rooted(a: Place) -> Place:
    def work() -> tuple[F, list[F]]:
        value = root(a.value)
        if not value:
            return value, [F(0)] if not a.weights else [1 / F(0)]
        return value, [1 / (2 * value)]
    return apply([a], work)


def powered(a: Place, exponent: int) -> Place:
    def work() -> tuple[F, list[F]]:
        value = a.value**exponent
        return value, [exponent * a.value**(exponent - 1) if exponent else F(0)]
    return apply([a], work)


def each(array: Array, work: Callable[[Place], Place]) -> Array:
    return Array(array.axes, {labels: work(place) for labels, place in array.places.items()})


def lined_up(arrays: list[Array]) -> list[Axis]:
    """Axes by name in order of first appearance, with the labels that all have."""
    axes: list[Axis] = []
    for array in arrays:
        for name, labels in array.axes:
            index = next((i for i, axis in enumerate(axes) if axis[0] == name), None)
            if index is None:
                axes.append((name, labels))
                continue
            common = tuple(label for label in axes[index][1] if label in labels)
            if not common:
                raise Mismatch(f"nothing in common on {name}")
            axes[index] = (name, common)
    return axes


def at(array: Array, axes: list[Axis], labels: Labels) -> Place:
    named = dict(zip((axis[0] for axis in axes), labels))
    return array[tuple(named[name] for name in array.names())]


def combine(sign: str, one: Array, other: Array) -> Array:
    axes = lined_up([one, other])
    result = Array(axes)
    for labels in result.places:
        result.places[labels] = operate(sign, at(one, axes, labels), at(other, axes, labels))
    return result


def extreme(members: list[Place], greatest: bool, variance: Variance) -> Place:
    """The member that decides; of equal ones a value before a bound, then that of the largest doubt."""
    def rating(member: Place) -> tuple[F, bool, F]:
        return (member.value if greatest else -member.value), not member.bound, variance(member)
    return max(members, key=rating)


def extreme_bound(members: list[Place], greatest: bool, chosen: Place) -> str | None:
    """The bound of a minimum or maximum; None where nothing can be said of it.

    The greatest of `>9` and 10 is at least 10; that of `<11` and 10 lies anywhere between."""
    outward, inward = (">", "<") if greatest else ("<", ">")
    apart = any(m.bound == inward and m.value != chosen.value for m in members
                if (m.value > chosen.value if greatest else m.value < chosen.value))
    if any(m.bound == outward for m in members):
        return None if apart or chosen.bound == inward else outward
    return None if apart else chosen.bound


def fold_extreme(members: list[Place], greatest: bool, variance: Variance) -> Place:
    result = mixed(members)
    chosen = extreme(members, greatest, variance)
    bound = extreme_bound(members, greatest, chosen)
    if bound is None:
        return result
    result.state, result.value, result.bound = "value", chosen.value, bound
    result.weights = dict(chosen.weights)
    return result


def fold(name: str, members: list[Place], variance: Variance) -> Place:
    """Not needed: left out. One open: open."""
    needed = [m for m in members if m.state != "not needed"]
    if not needed:
        result = mixed(members)
        result.state = "not needed"
        return result
    if any(m.state == "open" for m in needed):
        return mixed(needed)
    if name in ("min", "max"):
        return fold_extreme(needed, name == "max", variance)
    if name == "range":
        high, low = extreme(needed, True, variance), extreme(needed, False, variance)
        result = calculated(needed, high.value - low.value, [F(0)] * len(needed))
        result.weights = weighted([(F(1), high), (F(-1), low)]) if result.state == "value" else {}
        return result
    share = F(1, len(needed)) if name == "mean" else F(1)
    return calculated(needed, share * sum(m.value for m in needed), [share] * len(needed))


def fold_axes(name: str, array: Array, over: list[str], variance: Variance) -> Array:
    for axis in over:
        if axis not in array.names():
            raise Mismatch(f"there is no axis {axis} to fold")
    kept = [axis for axis in array.axes if over and axis[0] not in over]
    groups: dict[Labels, list[Place]] = {}
    for labels, place in array.places.items():
        named = dict(zip(array.names(), labels))
        groups.setdefault(tuple(named[axis[0]] for axis in kept), []).append(place)
    return Array(kept, {labels: fold(name, group, variance) for labels, group in groups.items()})


def fold_several(name: str, arrays: list[Array], variance: Variance) -> Array:
    axes = lined_up(arrays)
    result = Array(axes)
    for labels in result.places:
        result.places[labels] = fold(name, [at(a, axes, labels) for a in arrays], variance)
    return result


def find_pick(axes: list[Axis], words: str) -> tuple[int, str]:
    """The axis and label that `mid` or `cylinder 4` mean."""
    having = [i for i, axis in enumerate(axes) if words in axis[1]]
    if len(having) == 1:
        return having[0], words
    head, _, label = words.rpartition(" ")
    for index, (name, labels) in enumerate(axes):
        if name == head.strip() and label in labels:
            return index, label
    raise Mismatch(f"`{words}` is no place here")


def pick(array: Array, words: str) -> Array:
    index, label = find_pick(array.axes, words)
    axes = array.axes[:index] + array.axes[index + 1:]
    return Array(axes, {labels[:index] + labels[index + 1:]: place
                        for labels, place in array.places.items() if labels[index] == label})


def neighbour(array: Array, axis: str, step: int) -> Array:
    """Place n holds what n + step held; places without a neighbour fall away."""
    index = array.names().index(axis)
    name, labels = array.axes[index]
    source = {label: labels[i + step] for i, label in enumerate(labels)
              if 0 <= i + step < len(labels)}
    axes = array.axes[:index] + [(name, tuple(source))] + array.axes[index + 1:]
    result = Array(axes)
    for place in result.places:
        result.places[place] = array[place[:index] + (source[place[index]],) + place[index + 1:]]
    return result
