"""Labels, places and orders of bolts as a plan writes them."""
from __future__ import annotations

import re
from itertools import product

from arrays import Axis, Labels

RANGE = re.compile(r"([^\W\d_]*)(\d+)\.\.([^\W\d_]*)(\d+)")
LETTERS = re.compile(r"([^\W\d_])\.\.([^\W\d_])")


def expand(part: str) -> list[str]:
    match = RANGE.fullmatch(part)
    if match and match[1] == match[3]:
        first, last = int(match[2]), int(match[4])
        step = 1 if first <= last else -1
        return [f"{match[1]}{number}" for number in range(first, last + step, step)]
    match = LETTERS.fullmatch(part)
    if match:
        first, last = ord(match[1]), ord(match[2])
        step = 1 if first <= last else -1
        return [chr(code) for code in range(first, last + step, step)]
    return [part]


def labels(text: str) -> tuple[str, ...]:
    """`1..4`, `L1..L3/R1..R3`, `top/mid/bottom`."""
    return tuple(label for part in text.split("/") for label in expand(part.strip()))


def axis_at(text: str, axes: dict[str, tuple[str, ...]]) -> Axis:
    """What stands in an `at:`: an axis, a pair in its place, or an axis with one label kept."""
    if text in axes:
        return text, axes[text]
    head, _, label = text.rpartition(" ")
    if head in axes and label in axes[head]:
        return head, (label,)
    return text, labels(text)


def axes_at(value: object, axes: dict[str, tuple[str, ...]]) -> list[Axis]:
    if value is None:
        return []
    texts = value if isinstance(value, list) else [value]
    return [axis_at(str(text), axes) for text in texts]


def places(axes: list[Axis]) -> list[Labels]:
    """All places, the last axis running fastest; one without axes."""
    return list(product(*(axis[1] for axis in axes)))


def bolts_at(value: object, axes: dict[str, tuple[str, ...]]) -> list[Axis]:
    """Positions of bolts: axes of the plan, or plain labels on an axis named `bolt`."""
    texts = value if isinstance(value, list) else [value]
    return [(str(text), axes[text]) if text in axes else ("bolt", labels(str(text)))
            for text in texts]


def layout_rows(layout: str) -> list[list[str]]:
    return [row.split() for row in layout.split("/")]


def in_row(count: int) -> list[int]:
    """From the middle to both ends; of two equally far the lower number first."""
    return sorted(range(count), key=lambda i: (abs(2 * i - (count - 1)), i))


def criss_cross(count: int) -> list[int]:
    if count % 2:
        return [i * (count // 2) % count for i in range(count)]
    if count % 4:
        return [(2 * i + half * count // 2) % count for i in range(count // 2) for half in (0, 1)]
    quarter, offsets = count // 4, [0]
    while len(offsets) < quarter:
        left = [o for o in range(quarter) if o not in offsets]
        offsets.append(max(left, key=lambda o: (round_distance(o, offsets[-1], quarter), -o)))
    return [offset + turn * quarter for offset in offsets for turn in (0, 2, 1, 3)]


def round_distance(one: int, other: int, count: int) -> int:
    apart = abs(one - other)
    return min(apart, count - apart)


def spiral(rows: list[list[str]]) -> list[str]:
    """From the centre outwards, each followed by the one opposite through the centre.

    Coordinates are doubled, so that they are whole numbers about the centre."""
    spots = {}
    for y, row in enumerate(rows):
        for x, label in enumerate(row):
            spots[(2 * x - (len(row) - 1), 2 * y - (len(rows) - 1))] = label
    ordered = sorted(spots, key=lambda s: (s[0]**2 + s[1]**2, s[1], -s[0]))
    taken: list[tuple[int, int]] = []
    for spot in ordered:
        for one in (spot, (-spot[0], -spot[1])):
            if one in spots and one not in taken:
                taken.append(one)
    return [spots[spot] for spot in taken]


def order_of(words: str | None, layout: str | None, axes: list[Axis],
             each: list[str]) -> list[Labels]:
    """The places of a group in the order asked."""
    all_places = places(axes)
    if not words or words == "as numbered":
        return all_places
    if words in ("row", "criss-cross"):
        rule = in_row if words == "row" else criss_cross
        return [run[i] for run in runs_of(axes, each) for i in rule(len(run))]
    by_words = {"".join(place): place for place in all_places}
    if words == "spiral":
        return [by_words[label] for label in spiral(layout_rows(layout or ""))]
    return [by_words[label] for label in re.split(r"[-, ]+", words)]


def runs_of(axes: list[Axis], each: list[str]) -> list[list[Labels]]:
    """The places one after another; of bolts along several axes those of one label of `each`."""
    kept = [i for i, axis in enumerate(axes) if len(axes) > 1 and axis[0] in each]
    runs: dict[Labels, list[Labels]] = {}
    for place in places(axes):
        runs.setdefault(tuple(place[i] for i in kept), []).append(place)
    return list(runs.values())
