"""The verdict of every requirement, by record.md and language.md."""
from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as F
from typing import Any, Hashable

import yaml

import decision
from arrays import Array, Labels, Place, at
from bolts import Tick, covers
from decision import first_reason
from formula import Context, evaluate
from labels import places
from ledger import Entry
from limits import Limits, parse_limits
from plan import Asked, Check, Plan
from tools import Gauge, gauge_of, variance
from walk import Key, Reading, Walk

VERDICTS = ("open", "pass", "fail", "in doubt", "conceded", "noted", "not needed")


@dataclass
class Verdict:
    asked: Asked
    verdict: str
    reason: str = ""
    value: F | None = None
    bound: str = ""
    doubts: frozenset[str] = frozenset()
    own: str = ""
    withdrawn: bool = False


def extend(plan: Plan, entries: list[Entry]) -> int:
    """Adds what the build adds; the number of requirements added."""
    before = len(plan.asked())
    for entry in entries:
        if entry.live and entry.kind == "add":
            add(plan, entry.body)
    return len(plan.asked()) - before


def add(plan: Plan, body: dict[str, Any]) -> None:
    text = body.get("definition")
    value = yaml.load(text, Loader=yaml.BaseLoader) if text and text.startswith("{") else text
    if body["what"] == "step":
        gate = plan.steps[body["step"]].gate if body.get("step") in plan.steps else plan.gates[0]
        plan.add_step(body["name"], {**(value or {}), "gate": gate}, added=True)
        return
    step = plan.steps[body["step"]]
    if body["what"] == "check":
        plan.add_check(step, body["name"], value, {})
    elif body["what"] == "part":
        plan.add_part(step, body["name"], value or {})
    else:
        plan.add_group(step, body["name"], value)


class Judge:
    def __init__(self, plan: Plan, entries: list[Entry]):
        self.plan = plan
        self.planned = len(plan.asked())
        self.added = extend(plan, entries)
        self.walk = Walk(plan, entries)
        self.gauges: dict[Hashable, Gauge] = {}
        self.doubts: dict[Hashable, F] = dict(plan.doubts)
        self.arrays: dict[str, Array] = {}
        self.verdicts: dict[Asked, Verdict] = {}

    def all(self) -> list[Verdict]:
        asked = self.plan.asked()
        for one in asked:
            self.verdicts[one] = self.own(one)
        for one in asked:
            self.answer(one)
        for one in asked:
            self.concede(self.verdicts[one])
        for one in asked:
            self.answer_finding(one)
            self.verdicts[one].withdrawn = self.withdrawn(one)
        return [self.verdicts[one] for one in asked]

    # Values

    def spread(self, place: Place) -> F:
        return variance(place, self.gauges, self.doubts)

    def upheld(self, asked: Asked, doubt: str, newest: int) -> bool:
        """Argued away, and nothing has disturbed it since."""
        return any(entry.body["doubt"] == doubt and entry.rank > newest
                   for entry in self.walk.about("uphold", asked))

    def argue(self, asked: Asked, doubts: set[str], newest: int) -> frozenset[str]:
        return frozenset(d for d in doubts if not self.upheld(asked, d, newest))

    def needless(self, asked: Asked) -> bool:
        return bool(self.walk.about("not needed", asked))

    def asked_at(self, check: Check, step: str, place: Labels) -> Asked:
        names = [axis[0] for axis in check.axes]
        kept = tuple(label for name, label in zip(names, place) if name != check.choose)
        return Asked(check.asked, check.name, step, kept, 0, step != check.step)

    def array(self, name: str) -> Array:
        """A name of a formula: per place the reading that counts."""
        if name in self.plan.given:
            return self.plan.given[name]
        if name not in self.arrays:
            check = self.plan.checks[name]
            self.arrays[name] = (self.worked_out(check) if check.formula
                                 else self.measured(check))
        return self.arrays[name]

    def measured(self, check: Check) -> Array:
        array = Array(check.axes)
        for place in places(check.axes):
            steps = self.plan.instances(check.name)
            read = [step for step in steps if (check.name, step, place) in self.walk.readings]
            array.places[place] = self.counting(check, (read or steps[:1])[-1], place)
        return array

    def worked_out(self, check: Check) -> Array:
        context = Context(self.array, self.spread, check.name, self.doubts)
        array = evaluate(check.formula, context)
        for labels, place in list(array.places.items()):
            array.places[labels] = self.finished(check, check.step, labels, place)
        return array

    def finished(self, check: Check, step: str, labels: Labels, place: Place) -> Place:
        """A value with the doubt of its method, and what was said of it."""
        asked = self.asked_at(check, step, labels)
        result = Place(place.state, place.value, dict(place.weights), place.bound, place.doubts,
                       place.read, place.asked, place.newest)
        if self.needless(asked):
            result.state = "not needed"
        if check.doubt and result.state == "value":
            source = ("method", check.name, step, labels)
            self.doubts[source] = check.doubt
            result.weights[source] = F(1)
        result.doubts = self.argue(asked, set(place.doubts), place.newest)
        return result

    def counting(self, check: Check, step: str, labels: Labels) -> Place:
        segments = self.walk.readings.get((check.name, step, labels), [])
        if not segments:
            return self.finished(check, step, labels, Place("open", asked=1))
        candidates = [(self.single(check, reading), reading) for reading in segments[-1]]
        place, reading = self.least(candidates)
        doubts = self.reading_doubts(check, reading)
        newest = reading.newest
        if self.disagreeing(candidates, place):
            doubts.add("disagree")
            newest = max(r.newest for _, r in candidates)
        place.doubts, place.newest, place.read, place.asked = frozenset(doubts), newest, 1, 1
        return self.finished(check, step, labels, place)

    def single(self, check: Check, reading: Reading) -> Place:
        source = ("reading", reading.entry.seq)
        self.gauges[source] = gauge_of(self.walk.shop, reading.entry, reading.grain)
        return Place("value", reading.value, {source: F(1)}, reading.bound)

    def least(self, candidates: list[tuple[Place, Reading]]) -> tuple[Place, Reading]:
        """The least u counts, of equals the later."""
        best = candidates[0]
        for candidate in candidates[1:]:
            if self.spread(candidate[0]) <= self.spread(best[0]):
                best = candidate
        return best

    def disagreeing(self, candidates: list[tuple[Place, Reading]], counting: Place) -> bool:
        return any(apart(other, counting, self.spread(other) + self.spread(counting))
                   for other, _ in candidates)

    def reading_doubts(self, check: Check, reading: Reading) -> set[str]:
        doubts = {"basis"} if reading.fell or reading.unsound else set()
        tool = reading.entry.text("tool")
        if tool and self.walk.shop.doubtful(tool, reading.entry, reading.value, check.kind):
            doubts.add("tool")
        for tick, out_of_order in reading.leans_on:
            doubts |= self.tick_doubts(tick, out_of_order)
        return doubts

    # Bolts

    def tick_doubts(self, tick: Tick, out_of_order: bool) -> frozenset[str]:
        doubts = set(tick.doubts) | ({"order"} if out_of_order else set())
        if self.tool_doubtful(tick):
            doubts.add("tool")
        asked = Asked("bolt", tick.tightening.group.name, tick.tightening.step, tick.place, tick.stage)
        return self.argue(asked, doubts, tick.entry.rank)

    def tool_doubtful(self, tick: Tick) -> bool:
        tool = tick.entry.text("tool")
        if tool is None:
            return False
        used, kind = self.used_at(tick)
        return self.walk.shop.doubtful(tool, tick.entry, used, kind)

    def used_at(self, tick: Tick) -> tuple[F | None, Any]:
        """Where the tool was used: its setting, the value reached, or what the stage asks."""
        body = tick.entry.body
        value = body.get("setting") or body.get("value")
        if value:
            unit = decision_unit(value)
            return unit[0], unit[1]
        amount = tick.tightening.stages[tick.stage - 1].amount
        if amount is None:
            return None, None
        array = evaluate(amount, Context(self.array, self.spread))
        names = tick.tightening.group.axes
        place = at(array, names, tick.place)
        return (place.value if place.state == "value" else None), self.plan.kind_of(amount)

    def own_bolt(self, asked: Asked) -> Verdict:
        state = self.walk.sets[asked.name].at(asked.step)
        tick = state.ticks.get((asked.place, asked.number))
        if tick is None:
            return Verdict(asked, "open")
        doubts = self.tick_doubts(tick, asked.place in state.in_doubt_of_order(asked.number))
        return doubted(asked, doubts)

    def own_wait(self, asked: Asked) -> Verdict:
        wait = self.walk.sets[asked.name].at(asked.step).waits.get(asked.number)
        if wait is None:
            return Verdict(asked, "open")
        return doubted(asked, self.argue(asked, wait.doubts, wait.entry.rank))

    # Parts and signatures

    def own_fit(self, asked: Asked) -> Verdict:
        entry = self.walk.fits.get((asked.name, asked.place))
        if entry is None:
            return Verdict(asked, "open")
        owner = self.plan.parts.get(asked.name) or self.plan.groups[asked.name]
        lot = entry.text("lot")
        expires = self.walk.shop.lots.get(lot or "", {}).get("expires")
        bad = (owner.use in ("new", "once") and entry.body["use"] != "new"
               or lot in self.walk.shop.recalled
               or expires is not None and entry.day.isoformat() > expires)
        return doubted(asked, self.argue(asked, {"part"} if bad else set(), entry.rank))

    def own_sign(self, asked: Asked) -> Verdict:
        entry = self.walk.signs.get((asked.step, asked.number))
        others = [self.walk.signs.get((asked.step, n)) for n in range(1, asked.number)]
        if entry is None or any(other and other.by == entry.by for other in others):
            return Verdict(asked, "open")
        doubts: set[str] = set()
        for laid in self.walk.laid.values():
            needed = self.no_before(asked.step, laid.consumable)
            if needed is not None and laid.entry.rank < entry.rank:
                doubts |= self.walk.soon(laid.entry, entry, needed)
        return doubted(asked, self.argue(asked, doubts, entry.rank))

    def no_before(self, step: str, consumable: str) -> F | None:
        clocks, begins = self.plan.consumables.get(consumable), self.plan.steps[step].begins
        if clocks is None or not begins:
            return None
        return clocks.fluid_after if begins == "fluid" else clocks.run_after

    # Verdicts

    def own(self, asked: Asked) -> Verdict:
        if self.needless(asked):
            return Verdict(asked, "not needed")
        rules = {"read": self.own_read, "look": self.own_look, "bolt": self.own_bolt,
                 "wait": self.own_wait, "fit": self.own_fit, "sign": self.own_sign}
        verdict = rules[asked.sort](asked)
        verdict.own = verdict.verdict
        return verdict

    def own_look(self, asked: Asked) -> Verdict:
        check = self.plan.checks[asked.name]
        segments = self.walk.readings.get((asked.name, asked.step, asked.place), [])
        if not segments:
            return Verdict(asked, "open")
        reading = segments[-1][-1]
        doubts = self.argue(asked, self.reading_doubts(check, reading), reading.newest)
        if doubts:
            return doubted(asked, doubts)
        limits = limits_at(check.limits, asked.place)
        if limits is None or limits.form == "text":
            return Verdict(asked, "noted")
        right = reading.answer == limits.wanted
        return Verdict(asked, "pass") if right else Verdict(asked, "fail", "look")

    def own_read(self, asked: Asked) -> Verdict:
        check = self.plan.checks[asked.name]
        labels = self.full_place(check, asked.place)
        if labels is None:
            return Verdict(asked, "open")
        place = (self.array(check.name)[labels] if check.formula
                 else self.counting(check, asked.step, labels))
        if place.state != "value":
            return Verdict(asked, place.state)
        planned = self.against(check, asked, labels, place, False)
        amended = self.against(check, asked, labels, place, True)
        if amended.verdict == "pass" and planned.verdict in ("fail", "in doubt"):
            amended.verdict, amended.reason = "conceded", planned.reason
        return amended

    def full_place(self, check: Check, place: Labels) -> Labels | None:
        """With the label chosen, where one is to be chosen."""
        if check.choose is None:
            return place
        chosen = self.walk.choices.get((check.name, place))
        if chosen is None:
            return None
        named = dict(zip((axis[0] for axis in check.asked_axes()), place))
        named[check.choose] = chosen.body["label"]
        return tuple(named[axis[0]] for axis in check.axes)

    def against(self, check: Check, asked: Asked, labels: Labels, place: Place,
                amended: bool) -> Verdict:
        limits, wear = limits_at(check.limits, labels), check.wear
        if amended:
            limits, wear = self.amended(check, asked, limits, wear)
        sides = self.sides(check, limits, labels)
        if any(side is not None and side.state != "value" for side in sides):
            return Verdict(asked, "open", value=place.value, bound=place.bound)
        doubts = place.doubts
        if doubts:
            return Verdict(asked, "in doubt", first_reason(doubts), place.value, place.bound, doubts)
        low, high = (None if side is None else side.value for side in sides)
        verdict, reason = decision.decide(place.bound, place.value, self.spread(place), low, high, wear)
        return Verdict(asked, verdict, reason, place.value, place.bound)

    def sides(self, check: Check, limits: Limits | None, labels: Labels) -> list[Place | None]:
        if limits is None:
            return [None, None]
        context = Context(self.array, self.spread)
        return [tree and at(evaluate(tree, context), check.axes, labels)
                for tree in (limits.lower, limits.upper)]

    def amended(self, check: Check, asked: Asked, limits: Limits | None,
                wear: F | None) -> tuple[Limits | None, F | None]:
        for entry in self.walk.about("amend", asked):
            if "limits" in entry.body:
                limits = parse_limits(entry.body["limits"], check.unit)
            if "wear" in entry.body:
                wear = self.plan.number(entry.body["wear"], check.unit)
        return limits, wear

    # What answers a verdict

    def answer(self, asked: Asked) -> None:
        """Noted once a later step has read it again and passed."""
        if asked.sort not in ("read", "look"):
            return
        verdict = self.verdicts[asked]
        instances = self.plan.instances(asked.name)
        later = instances[instances.index(asked.step) + 1:]
        again = [self.verdicts[Asked(asked.sort, asked.name, step, asked.place, 0, True)]
                 for step in later]
        if verdict.verdict not in ("open", "not needed") and any(v.own == "pass" for v in again):
            verdict.verdict, verdict.reason = "noted", ""

    def answer_finding(self, asked: Asked) -> None:
        if asked.sort not in ("read", "look"):
            return
        check, verdict = self.plan.checks[asked.name], self.verdicts[asked]
        if not check.finding or verdict.own in ("open", "not needed"):
            return
        if self.walk.about("decide", asked) or self.settled(check):
            verdict.verdict, verdict.reason = "noted", ""
        elif verdict.verdict == "fail":
            verdict.verdict, verdict.reason = "open", ""

    def settled(self, check: Check) -> bool:
        """Whether all checks that settle it have ended pass or conceded."""
        if not check.settled_by:
            return False
        return all(self.ended(words) for words in check.settled_by)

    def ended(self, words: str) -> bool:
        name, step = self.plan.named(words)
        step = step or self.plan.checks[name].step
        those = [v for asked, v in self.verdicts.items()
                 if asked.name == name and asked.step == step and asked.sort in ("read", "look")]
        needed = [v for v in those if v.own != "not needed"]
        return bool(needed) and all(v.verdict == "conceded" or v.own == "pass" for v in needed)

    def concede(self, verdict: Verdict) -> None:
        if verdict.verdict not in ("fail", "in doubt"):
            return
        reasons = set(verdict.doubts) or {verdict.reason}
        for entry in self.walk.about("concede", verdict.asked):
            if reasons <= set(entry.body["reasons"]) and self.within(entry, verdict):
                verdict.verdict = "conceded"
                return

    def within(self, entry: Entry, verdict: Verdict) -> bool:
        bound, side = entry.body.get("bound"), entry.body.get("side")
        if bound is None or verdict.value is None:
            return True
        value = decision_unit(bound)[0]
        return verdict.value >= value if side == "low" else verdict.value <= value

    def withdrawn(self, asked: Asked) -> bool:
        return any(self.takes_out(entry.body, asked) for entry in self.walk.said.get("withdraw", []))

    def takes_out(self, body: dict[str, Any], asked: Asked) -> bool:
        if body["what"] == "step":
            return asked.step == body["name"]
        sorts = {"check": ("read", "look"), "tightening": ("bolt", "wait"), "part": ("fit",)}
        return (asked.sort in sorts[body["what"]] and asked.name == body["name"]
                and covers(body.get("place"), asked.place))


def decision_unit(value: dict[str, str]) -> tuple[F, Any]:
    """A ledger's value in base units and its kind."""
    from tools import base, unit_of
    unit = unit_of(value)
    return base(value), unit.kind if unit else None


def doubted(asked: Asked, doubts: frozenset[str]) -> Verdict:
    """Pass, unless a doubt about the evidence stands."""
    if doubts:
        return Verdict(asked, "in doubt", first_reason(doubts), doubts=doubts)
    return Verdict(asked, "pass")


def limits_at(limits: dict[str | None, Limits], place: Labels) -> Limits | None:
    return next((one for label, one in limits.items() if label is None or label in place), None)


def apart(one: Place, other: Place, variance_: F) -> bool:
    """Whether two readings of one place disagree; bounds only where they contradict."""
    if one.bound == other.bound:
        return not one.bound and decision.disagree(one.value, other.value, variance_)
    low, high = (one, other) if one.value < other.value else (other, one)
    if low.bound != "<" and high.bound != ">":
        return False
    return decision.disagree(one.value, other.value, variance_)


def counts(verdicts: list[Verdict]) -> dict[str, int]:
    return {name: sum(1 for v in verdicts if not v.withdrawn and v.verdict == name)
            for name in VERDICTS}
