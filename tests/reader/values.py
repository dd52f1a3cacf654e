"""What every place of a check comes to: which reading counts, what is worked out, what is in doubt."""
from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F
from typing import Any, Callable, Hashable

import decision
from arrays import Array, Labels, Place, at
from bolts import Tick, covers
from formula import Context, evaluate
from labels import places
from plan import DEGREE, NEWTON_METRE, Asked, Check, Plan
from tools import Gauge, base, gauge_of, unit_of, variance
from walk import Reading, Walk

SHOWN = {"torque": NEWTON_METRE, "check": NEWTON_METRE, "turn": DEGREE}


class Values:
    def __init__(self, plan: Plan, walk: Walk):
        self.plan, self.walk = plan, walk
        self.gauges: dict[Hashable, Gauge] = {}
        self.doubts: dict[Hashable, F] = dict(plan.doubts)
        self.ranks = {entry.seq: entry.rank for entry in walk.entries}
        self.entries = {entry.seq: entry for entry in walk.entries}
        self.arrays: dict[tuple[str, str, bool], Array] = {}

    def spread(self, place: Place) -> F:
        return variance(place, self.gauges, self.doubts)

    def upheld(self, asked: Asked, doubt: str, newest: int, until: int | None = None) -> bool:
        """Argued away, and nothing has disturbed it since; `until`: before that rank."""
        return any(entry.body["doubt"] == doubt and entry.rank > newest
                   and (until is None or entry.rank < until)
                   for entry in self.walk.about("uphold", asked))

    def argue(self, asked: Asked, doubts: dict[str, int], until: int | None = None) -> frozenset[str]:
        """What is left of doubts, each with the rank that an uphold must stand behind."""
        newest = max(doubts.values(), default=0)
        return frozenset(d for d in doubts if not self.upheld(asked, d, newest, until))

    def argue_each(self, asked: Asked, place: Place) -> frozenset[str]:
        return frozenset(doubt for doubt in place.doubts
                         if not self.upheld(asked, doubt, place.since[doubt]))

    def needless(self, asked: Asked) -> bool:
        return self.walk.needless(asked)

    def asked_at(self, check: Check, step: str, place: Labels) -> Asked:
        names = [axis[0] for axis in check.axes]
        kept = tuple(label for name, label in zip(names, place) if name != check.choose)
        return Asked(check.asked, check.name, step, kept, 0, step != check.step)

    def seen_from(self, step: str, found: bool = False) -> Callable[[str], Array]:
        """What a name of a formula means in a step."""
        return lambda name: self.array(name, step, found)

    def array(self, name: str, step: str, found: bool = False) -> Array:
        """Per place the reading that counts, as it was last asked for up to a step.

        For a finding nothing has fallen: later work never unsettles it."""
        if name in self.plan.given:
            return self.plan.given[name]
        check, index = self.plan.checks[name], self.plan.steps[step].index
        up_to = [one for one in self.plan.instances(name) if self.plan.steps[one].index <= index]
        key = (name, (up_to or [check.step])[-1], found or check.finding)
        if key not in self.arrays:
            self.arrays[key] = (self.worked_out(check, key[2]) if check.formula
                                else self.measured(check, key[1], key[2]))
        return self.arrays[key]

    def measured(self, check: Check, step: str, found: bool) -> Array:
        array = Array(check.axes)
        for place in places(check.axes):
            array.places[place] = self.counting(check, step, place, found)
        return array

    def worked_out(self, check: Check, found: bool) -> Array:
        context = Context(self.seen_from(check.step, found), self.spread, check.name, self.doubts)
        array = evaluate(check.formula, context)
        for labels, place in list(array.places.items()):
            fell = 0 if found else self.fell(check, labels, place)
            if fell:
                doubts = place.doubts | {"basis"}  # whatever was argued away before: that ended it
                since = {doubt: max(fell, place.since.get(doubt, 0)) for doubt in doubts}
                place = replace(place, doubts=doubts, since=since)
            array.places[labels] = self.finished(check, check.step, labels, place)
        return array

    def fell(self, check: Check, labels: Labels, place: Place) -> int:
        """When what a formula itself rests on was last disturbed, behind the oldest it uses."""
        anew = {one.name for one in self.plan.read_for(check)} if check.setting else set()
        seqs = [source[1] for source in place.weights if source[0] == "reading"]
        oldest = min((self.ranks[seq] for seq in seqs
                      if not anew or self.entries[seq].body["check"] in anew), default=None)
        fallen = self.walk.fallen.get((check.name, check.step, labels), [])
        return 0 if oldest is None else max((rank for rank in fallen if rank > oldest), default=0)

    def finished(self, check: Check, step: str, labels: Labels, place: Place) -> Place:
        """A value with the doubt of its method, and what was said of it."""
        asked = self.asked_at(check, step, labels)
        result = Place(place.state, place.value, dict(place.weights), place.bound, place.doubts,
                       place.read, place.asked, dict(place.since), place.latest)
        if self.needless(asked) or self.withdrawn(asked):
            result.state = "not needed"
        if check.doubt and result.state == "value":
            source = ("method", check.name, step, labels)
            self.doubts[source] = check.doubt
            result.weights[source] = F(1)
        result.doubts = self.argue_each(asked, place)
        return result

    def counting(self, check: Check, step: str, labels: Labels, found: bool = False) -> Place:
        segments = self.walk.readings.get((check.name, step, labels), [])
        if not segments:
            return self.finished(check, step, labels, Place("open", asked=1))
        readings = as_found(segments) if found else segments[-1]
        candidates = [(self.single(check, reading), reading)
                      for reading in self.not_redone(check, readings)]
        place, reading = self.least(candidates)
        doubts = self.reading_doubts(check, reading)
        doubts |= {"basis": reading.fell} if reading.fell and not found else {}
        if reading.entry.text("tool") is None:
            doubts |= self.of_a_gauge_before(check, readings)
        for other, competitor in candidates:
            method = check.doubt**2 / 2 if check.doubt else F(0)
            if apart(other, place, self.spread(other) + self.spread(place) + method):
                doubts["disagree"] = max(doubts.get("disagree", 0), competitor.entry.rank)
        place.doubts, place.read, place.asked = frozenset(doubts), 1, 1
        place.since = dict.fromkeys(doubts, max([reading.entry.rank, *doubts.values()]))
        place.latest = reading.entry.rank
        return self.finished(check, step, labels, place)

    def not_redone(self, check: Check, readings: list[Reading]) -> list[Reading]:
        """Without those read in doubt and read again since with nothing to doubt."""
        clean = [i for i, reading in enumerate(readings) if not self.reading_doubts(check, reading)]
        last = clean[-1] if clean else -1
        return [reading for i, reading in enumerate(readings) if i in clean or i > last]

    def of_a_gauge_before(self, check: Check, readings: list[Reading]) -> dict[str, int]:
        """A reading that names no gauge does not answer for one in doubt; the next named one does."""
        for reading in reversed([one for one in readings if one.entry.text("tool") is not None]):
            tool = self.walk.shop.doubtful(reading.entry.text("tool"), reading.entry, reading.value,
                                           check.kind)
            if tool:
                return {"tool": max(tool, reading.entry.rank)}
            if not self.reading_doubts(check, reading):
                return {}
        return {}

    def single(self, check: Check, reading: Reading) -> Place:
        source = ("reading", reading.entry.seq)
        self.gauges[source] = gauge_of(self.walk.shop, reading.entry, reading.grain)
        weights = {source: F(1)}
        if reading.own is not None:
            own = ("typed", reading.entry.seq)
            self.doubts[own] = reading.own
            weights[own] = F(1)
        return Place("value", reading.value, weights, reading.bound)

    def least(self, candidates: list[tuple[Place, Reading]]) -> tuple[Place, Reading]:
        """The least u counts, of equals the later."""
        best = candidates[0]
        for candidate in candidates[1:]:
            if self.spread(candidate[0]) <= self.spread(best[0]):
                best = candidate
        return best

    def reading_doubts(self, check: Check, reading: Reading) -> dict[str, int]:
        """Of itself, each with the rank of what brought it."""
        rank = reading.entry.rank
        doubts = {"basis": rank} if reading.unsound else {}
        tool = self.walk.shop.doubtful(reading.entry.text("tool"), reading.entry, reading.value,
                                       check.kind)
        doubts |= {"tool": max(tool, rank)} if tool else {}
        for tick, out_of_order in reading.leans_on:
            if self.accepted(tick, out_of_order):
                continue
            if self.as_shown(tick)[0] == "fail":  # it holds nothing
                doubts.setdefault("basis", rank)
            if self.tick_doubts(tick, out_of_order):
                since = max(self.all_doubts(tick, out_of_order).values())
                doubts["basis"] = max(doubts.get("basis", rank), since)
        return doubts

    def withdrawn(self, asked: Asked) -> bool:
        return self.walk.withdrawn(asked)

    # Bolts

    def tick_doubts(self, tick: Tick, out_of_order: bool) -> frozenset[str]:
        asked = Asked("bolt", tick.tightening.group.name, tick.tightening.step, tick.place, tick.stage)
        later = self.walk.sets[asked.name].at(asked.step).later(tick)
        return self.argue(asked, self.all_doubts(tick, out_of_order), later)

    def accepted(self, tick: Tick, out_of_order: bool) -> bool:
        """Whether somebody conceded all for which the bolt may hold nothing."""
        asked = Asked("bolt", tick.tightening.group.name, tick.tightening.step, tick.place, tick.stage)
        faults = self.tick_doubts(tick, out_of_order) | ({self.as_shown(tick)[1]} - {""})
        return any(faults <= set(entry.body["reasons"])
                   for entry in self.walk.about("concede", asked))

    def all_doubts(self, tick: Tick, out_of_order: bool) -> dict[str, int]:
        doubts = dict(tick.doubts) | ({"order": tick.entry.rank} if out_of_order else {})
        torque = tick.tightening.stages[tick.stage - 1].kind in ("torque", "check")
        used, kind = self.used_at(tick) if torque else (None, None)
        tool = self.walk.shop.doubtful(tick.entry.text("tool"), tick.entry, used, kind, torque,
                                        tick.turn)
        return doubts | ({"tool": tool} if tool else {})

    def used_at(self, tick: Tick) -> tuple[F | None, Any]:
        """Where a wrench was used: its setting, or what the stage asks."""
        setting = tick.entry.body.get("setting")
        if setting:
            return in_base(setting)
        amount = tick.tightening.stages[tick.stage - 1].amount
        array = evaluate(amount, Context(self.seen_from(tick.tightening.step), self.spread))
        names = tick.tightening.group.axes
        place = at(array, names, tick.place)
        return (place.value if place.state == "value" else None), self.plan.kind_of(amount)

    def as_shown(self, tick: Tick) -> tuple[str, str]:
        """A torque or turn shown that is off by more than a tenth of what was to be shown."""
        if self.above_ceiling(tick):
            return "fail", "high"
        body, unit = tick.entry.body, SHOWN.get(tick.tightening.stages[tick.stage - 1].kind)
        if not unit or not body.get("value") or (body.get("adapter") and not body.get("setting")):
            return "pass", ""
        (shown, kind), (meant, _) = in_base(body["value"]), self.used_at(tick)
        if kind != unit.kind or meant is None or meant <= 0 or 10 * abs(shown - meant) <= meant:
            return "pass", ""
        side = "low" if shown < meant else "high"
        return ("pass", "") if bounds(body["value"], side) else ("fail", side)

    def above_ceiling(self, tick: Tick) -> bool:
        """Until a check passes, but not beyond this torque."""
        group, value = tick.tightening.group, tick.entry.body.get("value")
        if group.ceiling is None or not value or bounds(value, "high"):
            return False
        reached, kind = in_base(value)
        return (tick.tightening.stages[tick.stage - 1].kind == "until" and kind == NEWTON_METRE.kind
                and reached > group.ceiling)


def as_found(segments: list[list[Reading]]) -> list[Reading]:
    """Those that counted when later work first disturbed them."""
    return next((segment for segment in segments if segment[-1].fell), segments[-1])


def in_base(value: dict[str, str]) -> tuple[F, Any]:
    """A ledger's value in base units and its kind."""
    unit = unit_of(value)
    return base(value), unit.kind if unit else None


def bounds(value: dict[str, str], side: str) -> bool:
    """Whether a value is only a bound that leaves this side open: `<40` is not too high."""
    return value["value"][0] == {"low": ">", "high": "<"}[side]


def apart(one: Place, other: Place, variance_: F) -> bool:
    """Whether two readings of one place disagree; bounds only where they contradict."""
    if one.bound == other.bound:
        return not one.bound and decision.disagree(one.value, other.value, variance_)
    low, high = (one, other) if one.value < other.value else (other, one)
    if low.bound != "<" and high.bound != ">":
        return False
    return decision.disagree(one.value, other.value, variance_)
