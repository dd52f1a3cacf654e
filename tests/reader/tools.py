"""Tools, calibrations and what a use of one is worth; u² of a value."""
from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction as F
from typing import Any, Hashable

from arrays import Place
from ledger import Entry
from units import Unit, parse_unit


USES_MOST = 5000  # of a torque tool on one calibration (ISO 6789-1:2017)


def number(text: str) -> tuple[str, F]:
    """A ledger's value: its bound and the number."""
    bound = text[0] if text[0] in "<>" else ""
    return bound, F(text[len(bound):])


def unit_of(value: dict[str, str]) -> Unit | None:
    return parse_unit(value["unit"]) if value.get("unit") else None


def base(value: dict[str, str]) -> F:
    unit, exact = unit_of(value), number(value["value"])[1]
    return unit.base(exact) if unit else exact


def width(value: dict[str, str] | None) -> F | None:
    if value is None:
        return None
    unit, exact = unit_of(value), number(value["value"])[1]
    return unit.width(exact) if unit else exact


@dataclass
class Calibration:
    id: str
    tool: str
    day: date
    due: date | None
    found: str
    expanded: F | None
    repeat: F | None
    seq: int
    rank: int


class Shop:
    """What a build took from the shop, and heard of later."""

    def __init__(self, entries: list[Entry]):
        self.tools: dict[str, dict[str, Any]] = {}
        self.calibrations: dict[str, Calibration] = {}
        self.lots: dict[str, dict[str, Any]] = {}
        self.consumables: dict[str, dict[str, Any]] = {}
        self.recalls: dict[str, int] = {}
        for entry in entries:
            if entry.live and entry.kind in ("take", "news"):
                self.learn(entry)

    def learn(self, entry: Entry) -> None:
        body = entry.body["body"]
        what = entry.body["what"]
        if what == "calibration":
            self.calibrations[body["id"]] = Calibration(
                body["id"], body["tool"], date.fromisoformat(body["date"]),
                date.fromisoformat(body["due"]) if "due" in body else None, body["found"],
                width(body.get("uncertainty")), width(body.get("repeat")), entry.seq, entry.rank)
        elif what == "recall":
            self.recalls[body["lot"]] = entry.rank
        elif what in ("tool", "lot", "consumable"):
            {"tool": self.tools, "lot": self.lots,
             "consumable": self.consumables}[what][body["id"]] = body

    def of_tool(self, tool: str) -> list[Calibration]:
        return sorted((c for c in self.calibrations.values() if c.tool == tool),
                      key=lambda c: (c.day, c.seq))

    def around(self, tool: str, entry: Entry) -> tuple[Calibration | None, Calibration | None]:
        """The calibrations before and after a use."""
        before = after = None
        for calibration in self.of_tool(tool):
            if (calibration.day, calibration.seq) < (entry.day, entry.seq):
                before = calibration
            elif after is None:
                after = calibration
        return before, after

    def stated(self, tool: str, entry: Entry) -> Calibration | None:
        """The last that says how good the gauge is; an adjustment may say nothing of it."""
        said = [c for c in self.of_tool(tool)
                if c.expanded is not None and (c.day, c.seq) < (entry.day, entry.seq)]
        return said[-1] if said else None

    def out_of_range(self, tool: str, used: F | None, kind: Any, torque: bool) -> bool:
        body = self.tools.get(tool, {})
        ends = [body.get("least"), body.get("greatest")]
        units = [unit_of(end) for end in ends if end]
        if used is None or any((unit.kind if unit else None) != kind for unit in units):
            return False
        least, greatest = (base(end) if end else None for end in ends)
        if least is None and greatest is not None and torque:
            least = greatest / 5
        return (least is not None and used < least) or (greatest is not None and used > greatest)

    def doubtful(self, tool: str | None, entry: Entry, used: F | None, kind: Any,
                 torque: bool = False, turn: int = 0) -> int:
        """Whether this use, of its entry the one at `turn`, is in doubt (out of range, found wrong,
        overdue or unknown): 0, or the rank of what put it there."""
        if tool is None:
            return entry.rank if torque else 0
        before, after = self.around(tool, entry)
        wrong_before = before is not None and before.found == "wrong"
        if after and after.found == "wrong" or wrong_before and after:
            return max(entry.rank, after.rank)
        if (tool not in self.tools or self.out_of_range(tool, used, kind, torque) or wrong_before):
            return entry.rank
        if after and after.found == "good":
            return 0
        late = torque if before is None else overdue(before, entry.day, torque)
        late = late or torque and entry.body.get("uses", 0) + turn >= USES_MOST
        return entry.rank if late else 0


def overdue(calibration: Calibration, day: date, torque: bool) -> bool:
    due = calibration.due
    if due is None and torque:
        due = year_later(calibration.day)
    return due is not None and day > due


def year_later(day: date) -> date:
    """Twelve months (ISO 6789-1:2017)."""
    try:
        return day.replace(year=day.year + 1)
    except ValueError:
        return date(day.year + 1, 2, 28)


@dataclass
class Gauge:
    """What is known of the gauge that took a reading; without a calibration its grain counts."""
    key: Hashable
    expanded: F | None
    repeat: F | None
    grain: F


def gauge_of(shop: Shop, entry: Entry, typed_grain: F) -> Gauge:
    tool = entry.text("tool")
    if tool is None:
        return Gauge(("none", entry.seq), None, None, typed_grain)
    stated, (before, _) = shop.stated(tool, entry), shop.around(tool, entry)
    if stated and before:
        return Gauge((tool, before.id), stated.expanded, stated.repeat, F(0))
    grain = width(shop.tools.get(tool, {}).get("graduation"))
    return Gauge((tool, ""), None, None, typed_grain if grain is None else grain)


def variance(place: Place, gauges: dict[Hashable, Gauge], doubts: dict[Hashable, F]) -> F:
    """u² by language.md §3: a sum over gauges, and each independent ± by itself."""
    total, sums = F(0), {}
    for source, weight in place.weights.items():
        if source in doubts:
            total += weight**2 * doubts[source]**2 / 4
            continue
        gauge = gauges[source]
        one, squares, _ = sums.get(gauge.key, (F(0), F(0), gauge))
        sums[gauge.key] = (one + weight, squares + weight**2, gauge)
    return total + sum((part(one, squares, gauge) for one, squares, gauge in sums.values()), F(0))


def part(one: F, squares: F, gauge: Gauge) -> F:
    if gauge.expanded is None:
        return squares * gauge.grain**2 / 12
    if gauge.repeat is not None:
        fixed = gauge.expanded**2 - gauge.repeat**2
        return (one**2 * fixed + squares * gauge.repeat**2) / 4
    return max(one**2, squares) * gauge.expanded**2 / 4
