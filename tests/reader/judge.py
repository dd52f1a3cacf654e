"""The verdict of every requirement, from what every place comes to."""
from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction as F
from typing import Any

import yaml

import decision
from arrays import Axis, Labels, Place, at
from bolts import Tick, meet
from decision import first_reason
from formula import Context, evaluate
from labels import places
from ledger import Entry
from limits import Limits, parse_limits
from plan import Asked, Check, Part, Plan, Step
from values import Values, in_base
from walk import Walk

FAULTY = ("fail", "in doubt")
ENDED = ("pass", "conceded", "noted", "not needed")
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
    latest: int = 0
    side_of: tuple[str, str] = ("", "")  # what the value is by itself, without doubtful evidence
    apart: dict[str, str] = field(default_factory=dict)  # and with the low, or high, limit left out
    withdrawn: bool = False


def extend(plan: Plan, entries: list[Entry]) -> int:
    """Adds what the build adds; the number of requirements added."""
    before = len(plan.asked())
    for entry in entries:
        if entry.live and entry.kind == "add":
            add(plan, entry.body)
    return len(plan.asked()) - before


def add(plan: Plan, body: dict[str, Any]) -> None:
    before = set(plan.checks)
    graft(plan, body)
    for name in set(plan.checks) - before:
        plan.checks[name].added = True


def is_places(plan: Plan, name: str, step: Step, value: Any) -> bool:
    """Whether it is more places for a check that the build added."""
    check = plan.checks.get(name)
    return bool(check and check.added and check.step == step.name and isinstance(value, dict)
                and "at" in value and set(value) <= {"at", "limits"})


def graft(plan: Plan, body: dict[str, Any]) -> None:
    text = body.get("definition")
    value = yaml.load(text, Loader=yaml.BaseLoader) if text and text.startswith("{") else text
    if body["what"] == "step":
        gate = plan.steps[body["step"]].gate if body.get("step") in plan.steps else plan.gates[0]
        plan.add_step(body["name"], {**(value or {}), "gate": gate}, added=True)
        return
    step = plan.steps.get(body["step"])
    if not step:
        return  # what stands on an addition that was struck is left out with it
    if body["what"] == "check" and is_places(plan, body["name"], step, value):
        plan.add_places(plan.checks[body["name"]], value)
    elif body["what"] == "check" and value == "again":
        check = plan.checks.get(body["name"])
        if check and check.step != step.name and check.name not in step.read_again:
            step.read_again.append(check.name)
    elif body["what"] == "check":
        plan.add_check(step, body["name"], value, {})
    elif body["what"] == "part":
        plan.add_part(step, body["name"], value or {})
    else:
        plan.add_group(step, body["name"], value)


class Judge(Values):
    """`extended`: the plan has been given what the build adds."""

    def __init__(self, plan: Plan, entries: list[Entry], extended: bool = False):
        self.planned = len(plan.asked())
        self.added = 0 if extended else extend(plan, entries)
        super().__init__(plan, Walk(plan, entries))
        self.verdicts: dict[Asked, Verdict] = {}
        self.earlier: dict[int, dict[Asked, Verdict]] = {}

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

    # Bolts, parts and signatures

    def own_bolt(self, asked: Asked) -> Verdict:
        state = self.walk.sets[asked.name].at(asked.step)
        tick = state.ticks.get((asked.place, asked.number))
        if tick is None:
            return Verdict(asked, "open")
        doubts = self.tick_doubts(tick, asked.place in state.in_doubt_of_order(asked.number))
        return doubted(asked, doubts, self.as_shown(tick))

    def own_wait(self, asked: Asked) -> Verdict:
        state = self.walk.sets[asked.name].at(asked.step)
        stage, doubts = state.of.stages[asked.number - 1], {}
        spans = self.walk.wait_of(state, asked.number)
        if not spans:
            return Verdict(asked, "open")
        needed = evaluate(stage.amount, Context(dict().__getitem__))[()].value
        for first, last in spans:
            doubts |= dict.fromkeys(self.walk.soon(first, last, needed), last.rank)
        return doubted(asked, self.argue(asked, doubts))

    def own_fit(self, asked: Asked) -> Verdict:
        entry = self.walk.fits.get((asked.name, asked.place))
        owner = self.plan.parts.get(asked.name) or self.plan.groups[asked.name]
        if entry is None or not tracked(entry, owner.track):
            return Verdict(asked, "open")
        doubts = self.walk.fit_doubts(entry, owner.use)
        if asked.name in self.plan.parts:
            doubts |= self.walk.laid_doubts(asked.name, entry) | self.grade_doubts(asked, owner, entry)
        return doubted(asked, self.argue(asked, {d: max(r, entry.rank) for d, r in doubts.items()}))

    def grade_doubts(self, asked: Asked, part: Part, entry: Entry) -> dict[str, int]:
        """Of another grade than was chosen where it goes."""
        grade = self.walk.shop.lots.get(entry.text("lot") or "", {}).get("grade")
        for (name, place), choice in self.walk.choices.items():
            check = self.plan.checks[name]
            if (grade in self.plan.axes.get(check.choose, ()) and part.axes and place
                    and meet(part.axes, asked.place, check.asked_axes(), place)):
                return {"part": choice.rank} if choice.body["label"] != grade else {}
        return {}

    def own_sign(self, asked: Asked) -> Verdict:
        entry = self.walk.signs.get((asked.step, asked.number))
        others = [self.walk.signs.get((asked.step, n)) for n in range(1, asked.number)]
        if entry is None or any(other and other.by == entry.by for other in others):
            return Verdict(asked, "open")
        undone = self.walk.undone_since(asked.step, entry, asked.number)
        doubts = {"basis"} if undone else set()
        for laid in self.walk.laid if asked.number == 1 else ():
            needed = self.no_before(asked.step, laid.consumable)
            if needed is not None and laid.entry.rank < entry.rank:
                doubts |= self.walk.soon(laid.entry, entry, needed)
        return doubted(asked, self.argue(asked, dict.fromkeys(doubts, max(entry.rank, undone))))

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
        own = self.reading_doubts(check, reading) | (
            {"basis": reading.fell} if reading.fell and not check.finding else {})
        doubts = self.argue(asked, own)
        planned = answered(limits_at(check.limits, asked.place), reading.answer)
        limits, _ = self.amended(check, asked, limits_at(check.limits, asked.place), None)
        if limits is None or limits.form != check.form:
            limits = limits_at(check.limits, asked.place)
        alone = answered(limits, reading.answer)
        if alone[0] == "pass" and planned[0] == "fail" and not doubts and self.was_faulty(asked):
            alone = ("conceded", "look")
        return doubted(asked, doubts, alone)

    def own_read(self, asked: Asked) -> Verdict:
        check = self.plan.checks[asked.name]
        labels = self.full_place(check, asked.place)
        if labels is None:
            return Verdict(asked, "open")
        place = (self.array(check.name, asked.step)[labels] if check.formula
                 else self.counting(check, asked.step, labels))
        if place.state != "value":
            return Verdict(asked, place.state)
        planned = self.against(check, asked, labels, place, False)
        amended = self.against(check, asked, labels, place, True)
        if amended.verdict == "pass" and planned.verdict in FAULTY and self.was_faulty(asked):
            amended.verdict, amended.reason = "conceded", planned.reason
        amended.latest = place.latest
        return amended

    def was_faulty(self, asked: Asked) -> bool:
        """Whether the newest amendment of its limits found a fail or a doubt there."""
        rank = max(entry.rank for entry in self.walk.about("amend", asked))
        if rank not in self.earlier:
            before = [entry for entry in self.walk.entries if entry.rank < rank]
            then = Judge(self.plan, before, extended=True)
            then.all()
            self.earlier[rank] = then.verdicts
        found = self.earlier[rank][asked]
        finding = self.plan.checks[asked.name].finding
        return (found.own if finding else found.verdict) in (*FAULTY, "conceded")

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
        sides = self.sides(check, asked.step, limits, labels)
        doubts = place.doubts | self.limit_doubts(asked, sides)
        if any(side is not None and side.state != "value" for side in sides):
            return Verdict(asked, "open", value=place.value, bound=place.bound)
        low, high = (None if side is None else side.value for side in sides)
        known = (place.bound, place.value, self.spread(place))
        verdict = Verdict(asked, *decision.decide(*known, low, high, wear), place.value, place.bound,
                          doubts)
        verdict.side_of = (verdict.verdict, verdict.reason)
        verdict.apart = {"low": decision.decide(*known, None, high, wear)[0],
                         "high": decision.decide(*known, low, None, wear)[0]}
        if doubts:
            verdict.verdict, verdict.reason = "in doubt", first_reason(doubts)
        return verdict

    def limit_doubts(self, asked: Asked, sides: list[Place | None]) -> frozenset[str]:
        """Limits that use a reading in doubt are in doubt themselves."""
        return frozenset().union(*(self.argue_each(asked, side) for side in sides if side))

    def sides(self, check: Check, step: str, limits: Limits | None,
              labels: Labels) -> list[Place | None]:
        """Lower and upper limit; those of a finding are of what was found, too."""
        if limits is None:
            return [None, None]
        context = Context(self.seen_from(step, check.finding), self.spread)
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
        if not check.finding or verdict.own not in ("fail", "in doubt"):
            return
        answered = self.decided(asked, verdict) or self.settled(check, asked)
        verdict.verdict, verdict.reason = "noted" if answered else "open", ""

    def decided(self, asked: Asked, verdict: Verdict) -> bool:
        """The last decision counts; to look closer answers nothing yet."""
        decisions = [entry.body["decision"] for entry in self.walk.about("decide", asked)
                     if entry.rank > verdict.latest]
        return bool(decisions) and decisions[-1] != "look closer"

    def settled(self, check: Check, asked: Asked) -> bool:
        """Whether all checks that settle it have ended well, where the places meet."""
        return bool(check.settled_by) and all(
            self.ended(words, check.asked_axes(), asked.place) for words in check.settled_by)

    def ended(self, words: str, axes: list[Axis], place: Labels) -> bool:
        name, step = self.plan.named(words)
        other = self.plan.checks[name]
        those = [v for v in self.verdicts.values()
                 if v.asked.name == name and v.asked.step == (step or other.step)
                 and v.asked.sort in ("read", "look") and not self.withdrawn(v.asked)
                 and meet(other.asked_axes(), v.asked.place, axes, place)]
        return bool(those) and all(v.verdict in ENDED for v in those)

    def concede(self, verdict: Verdict) -> None:
        if verdict.verdict not in ("fail", "in doubt"):
            return
        for entry in self.walk.about("concede", verdict.asked):
            if (verdict.doubts <= set(entry.body["reasons"]) and self.accepts(entry, verdict)
                    and self.same_answer(entry, verdict)):
                verdict.verdict = "conceded"
                return

    def same_answer(self, concession: Entry, verdict: Verdict) -> bool:
        """A look is conceded as it was answered then."""
        if verdict.asked.sort != "look" or verdict.side_of[0] != "fail":
            return True
        said = [entry for entry in self.walk.live if entry.kind == "look"
                and self.walk.names(entry.body, verdict.asked, False)]
        then = [entry.body["answer"] for entry in said if entry.rank < concession.rank]
        return bool(then) and then[-1] == said[-1].body["answer"]

    def accepts(self, entry: Entry, verdict: Verdict) -> bool:
        """Whether the value by itself passes or is conceded; who accepts more accepts less."""
        reasons, (alone, reason) = set(entry.body["reasons"]), verdict.side_of
        if alone in ("pass", "noted", ""):
            return verdict.reason in reasons
        if verdict.value is None:
            return reason in reasons
        if not self.within(entry, verdict):
            return False
        side = entry.body.get("side", "high")
        if reason in reasons:
            return True
        worse = {"gauge": {side, "beyond wear"}, "low": {"beyond wear"}, "high": {"beyond wear"}}
        up_to = entry.body.get("bound") is not None and reason != "beyond wear"
        return ((up_to or bool(worse.get(reason, set()) & reasons))
                and verdict.apart[side] in ("pass", "noted"))

    def within(self, entry: Entry, verdict: Verdict) -> bool:
        bound, side = entry.body.get("bound"), entry.body.get("side")
        if bound is None or verdict.value is None:
            return True
        if verdict.bound == ("<" if side == "low" else ">"):
            return False
        value = in_base(bound)[0]
        return verdict.value >= value if side == "low" else verdict.value <= value


def tracked(entry: Entry, track: str | None) -> bool:
    """Whether the lot, or the serial, that the plan asks for is said; a lot may be none of the shop's,
    and only what is new has one."""
    if track == "serial":
        return entry.text("serial") is not None
    return track is None or entry.text("use") != "new" or bool(entry.text("lot") or entry.text("label"))


def answered(limits: Limits | None, answer: str) -> tuple[str, str]:
    """What an answer is by itself."""
    if limits is None or limits.form == "text":
        return "noted", ""
    return ("pass", "") if answer == limits.wanted else ("fail", "look")


def doubted(asked: Asked, doubts: frozenset[str],
            alone: tuple[str, str] = ("pass", "")) -> Verdict:
    """What it is by itself, unless a doubt about the evidence stands."""
    verdict, reason = ("in doubt", first_reason(doubts)) if doubts else alone
    return Verdict(asked, verdict, reason, doubts=doubts, side_of=alone)


def limits_at(limits: dict[str | None, Limits], place: Labels) -> Limits | None:
    return next((one for label, one in limits.items() if label is None or stands_in(label, place)),
                None)


def stands_in(label: str, place: Labels) -> bool:
    """Whether its labels are among those of the place, in their order."""
    left = iter(place)
    return all(each in left for each in label.split(", "))


def counts(verdicts: list[Verdict]) -> dict[str, int]:
    return {name: sum(1 for v in verdicts if not v.withdrawn and v.verdict == name)
            for name in VERDICTS}
