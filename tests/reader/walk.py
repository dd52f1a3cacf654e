"""One walk over a build's entries by rank: what was done, what it leaned on, what fell."""
from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction as F

from arrays import Labels
from bolts import BoltSet, Laid, Tick, Wait, covers, elapsed
from formula import Context, evaluate, scan_number
from labels import places
from ledger import Entry
from plan import Asked, Check, Plan
from tools import Shop, base, number, unit_of

Key = tuple[str, str, Labels]  # check, step that asks, place


@dataclass
class Reading:
    """A value or an answer at one place, with what it leans on."""
    entry: Entry
    value: F = F(0)
    bound: str = ""
    answer: str = ""
    grain: F = F(0)
    unsound: bool = False
    leans_on: list[tuple[Tick, bool]] = field(default_factory=list)
    fell: int = 0

    @property
    def newest(self) -> int:
        return max(self.entry.rank, self.fell)


@dataclass
class Fitted:
    entry: Entry


def grain_of(value: dict[str, str]) -> F:
    """One unit of the last place typed."""
    typed = value["typed"].lstrip("<>+-− ")
    found = scan_number(typed, 0)
    unit = unit_of(value)
    place = found[0].place if found else F(0)
    return unit.width(place) if unit else place


class Walk:
    def __init__(self, plan: Plan, entries: list[Entry]):
        self.plan, self.entries = plan, entries
        self.live = [entry for entry in entries if entry.live]
        self.shop = Shop(sorted(entries, key=lambda entry: entry.seq))
        self.sets = {name: BoltSet(group, plan.tightenings_of(name))
                     for name, group in plan.groups.items()}
        self.readings: dict[Key, list[list[Reading]]] = {}
        self.frozen: set[Key] = set()
        self.fits: dict[tuple[str, Labels], Entry] = {}
        self.signs: dict[tuple[str, int], Entry] = {}
        self.laid: dict[tuple[str, str], Laid] = {}
        self.choices: dict[tuple[str, Labels], Entry] = {}
        self.moved_since: dict[str, bool] = {}
        self.unsound_move: dict[str, bool] = {}
        self.fallen: dict[tuple[str, str], int] = {}
        self.said: dict[str, list[Entry]] = {}
        for entry in entries:
            self.take(entry)

    def take(self, entry: Entry) -> None:
        if not entry.live:
            if entry.kind == "move":
                self.unsound_move[entry.body["check"]] = True
            return
        handler = getattr(self, "on_" + entry.kind.replace(" ", "_"), None)
        if handler:
            handler(entry)
        else:
            self.said.setdefault(entry.kind, []).append(entry)

    # Readings

    def step_of(self, check: str, step: str | None) -> str:
        instances = self.plan.instances(check)
        return step if step in instances else instances[0]

    def keys(self, entry: Entry) -> list[Key]:
        check = self.plan.checks[entry.body["check"]]
        step = self.step_of(check.name, entry.text("step"))
        return [(check.name, step, place) for place in places(check.axes)
                if covers(entry.body.get("place"), place)]

    def on_read(self, entry: Entry) -> None:
        if entry.text("state") == "loose":
            return
        value = entry.body["value"]
        for key in self.keys(entry):
            self.add_reading(key, Reading(entry, base(value), number(value["value"])[0],
                                          grain=grain_of(value)))

    def on_look(self, entry: Entry) -> None:
        for key in self.keys(entry):
            self.add_reading(key, Reading(entry, answer=entry.body["answer"]))

    def add_reading(self, key: Key, reading: Reading) -> None:
        check = self.plan.checks[key[0]]
        reading.unsound = self.unsound_move.get(check.name, False)
        for words in check.held_by + check.rests_on:
            self.lean(reading, words)
        segments = self.readings.setdefault(key, [])
        if not segments or segments[-1][-1].fell:
            segments.append([])
        segments[-1].append(reading)
        self.moved_since[check.name] = False
        self.freeze(key[0], key[1])

    def lean(self, reading: Reading, words: str) -> None:
        """What stands tightened below a reading must be final when it is taken."""
        name, _ = self.plan.named(words)
        if name not in self.sets:
            return
        bolts = self.sets[name]
        reading.unsound |= not bolts.final()
        if bolts.in_force:
            reading.leans_on += bolts.in_force.snapshot()

    def freeze(self, check: str, step: str) -> None:
        """Once a check is read again, its earlier readings are judged as they stood."""
        instances = self.plan.instances(check)
        for earlier in instances[:instances.index(step)]:
            for place in places(self.plan.checks[check].axes):
                self.frozen.add((check, earlier, place))

    # What falls

    def disturb(self, name: str, entry: Entry) -> None:
        """What rests on a bolt set, a part or a setting falls."""
        for check in self.plan.checks.values():
            if any(self.plan.named(words)[0] == name for words in check.rests_on):
                self.fall(check, entry, None)

    def fall(self, check: Check, entry: Entry, place: list[str] | None) -> None:
        if check.finding:
            return
        instances = self.plan.instances(check.name)
        step = entry.text("step")
        if step in instances[1:]:
            self.freeze(check.name, step)
        for instance in instances:
            for one in places(check.axes):
                key = (check.name, instance, one)
                if key not in self.frozen and covers(place, one):
                    self.fall_at(key, entry.rank)

    def fall_at(self, key: Key, rank: int) -> None:
        for segment in self.readings.get(key, [])[-1:]:
            for reading in segment:
                reading.fell = rank

    def on_rework(self, entry: Entry) -> None:
        name = entry.body["name"]
        if name in self.plan.checks:
            self.fall(self.plan.checks[name], entry, entry.body.get("place"))
        self.disturb(name, entry)

    def on_move(self, entry: Entry) -> None:
        check = self.plan.checks[entry.body["check"]]
        self.unsound_move[check.name] = False
        if self.moved_since.get(check.name, True):
            return
        self.moved_since[check.name] = True
        self.fall(check, entry, None)
        self.disturb(check.name, entry)

    # Bolts

    def on_tick(self, entry: Entry) -> None:
        bolts = self.sets[entry.body["tightening"]]
        for turn, text in enumerate(entry.body["bolts"]):
            tick = bolts.tick(entry, text, turn)
            tick.doubts = self.tick_doubts(tick)
        stage = bolts.at(entry.text("step")).of.stages[entry.body["stage"] - 1]
        if stage.kind == "slacken":
            self.disturb(bolts.group.name, entry)

    def tick_doubts(self, tick: Tick) -> set[str]:
        doubts = {"spent"} if tick.spent else set()
        return doubts | self.laid_doubts(tick.tightening.group.name, tick.entry)

    def laid_doubts(self, name: str, entry: Entry) -> set[str]:
        doubts: set[str] = set()
        for (target, words), laid in self.laid.items():
            if target != name:
                continue
            doubts |= {"part"} if laid.expired else set()
            window = self.plan.consumables.get(words)
            if window and window.fit_within is not None:
                doubts |= self.late(laid.entry, entry, window.fit_within)
        return doubts

    def between(self, first: Entry, last: Entry) -> list[Entry]:
        return [entry for entry in self.live if first.rank <= entry.rank <= last.rank]

    def late(self, first: Entry, last: Entry, allowed: F) -> set[str]:
        seconds = elapsed(self.between(first, last))
        if seconds is None:
            return {"clock"}
        return {"window"} if seconds > allowed else set()

    def soon(self, first: Entry, last: Entry, needed: F) -> set[str]:
        seconds = elapsed(self.between(first, last))
        if seconds is None:
            return {"clock"}
        return {"window"} if seconds < needed else set()

    def on_waited(self, entry: Entry) -> None:
        state = self.sets[entry.body["tightening"]].at(entry.text("step"))
        number_ = entry.body["stage"]
        amount = state.of.stages[number_ - 1].amount
        needed = evaluate(amount, Context(dict().__getitem__))[()].value if amount else F(0)
        before = [tick for (_, stage), tick in state.ticks.items() if stage == number_ - 1]
        doubts = {"order"} if any((place, number_ - 1) not in state.ticks
                                  for place in state.places) and number_ > 1 else set()
        if before:
            doubts |= self.soon(max(before, key=lambda tick: tick.rank).entry, entry, needed)
        state.waits[number_] = Wait(entry, doubts)

    def on_slacken(self, entry: Entry) -> None:
        bolts = self.sets[entry.body["tightening"]]
        bolts.slacken(entry)
        self.disturb(bolts.group.name, entry)

    # Parts, consumables, signatures, choices

    def on_fit(self, entry: Entry) -> None:
        name = entry.body["part"]
        owner = self.plan.parts.get(name) or self.plan.groups.get(name)
        fitted = [place for place in places(owner.axes) if covers(entry.body.get("place"), place)]
        if any((name, place) in self.fits for place in fitted):
            self.disturb(name, entry)
        for place in fitted:
            self.fits[(name, place)] = entry
        if name in self.sets and entry.body["use"] == "new":
            self.sets[name].renew(fitted)

    def on_laid(self, entry: Entry) -> None:
        expires = entry.text("expires") or self.shop.consumables.get(
            entry.text("item") or "", {}).get("expires")
        expired = expires is not None and entry.day.isoformat() > expires
        name = entry.body["consumable"]
        self.laid[(entry.text("tightening") or "", name)] = Laid(entry, name, expired)

    def on_sign(self, entry: Entry) -> None:
        self.signs[(entry.body["step"], entry.body["signature"])] = entry

    def on_reopen(self, entry: Entry) -> None:
        for key in [key for key in self.signs if key[0] == entry.body["step"]]:
            del self.signs[key]

    def on_choose(self, entry: Entry) -> None:
        check = self.plan.checks[entry.body["check"]]
        for place in places(check.asked_axes()):
            if covers(entry.body.get("place"), place):
                self.choices[(check.name, place)] = entry

    # What was said of requirements

    def about(self, kind: str, asked: Asked) -> list[Entry]:
        """The live entries of this kind that name a requirement."""
        return [entry for entry in self.said.get(kind, [])
                if self.names(entry.body, asked)]

    def names(self, body: dict, asked: Asked) -> bool:
        step = body.get("step")
        sort, name = body.get("asked"), body.get("name") or body.get("check")
        if name != asked.name or sort not in (None, asked.sort):
            return False
        if asked.sort in ("read", "look") and self.step_of(name, step) != asked.step:
            return False
        if asked.sort in ("bolt", "wait") and self.sets[name].at(step).of.step != asked.step:
            return False
        stage = body.get("stage")
        return covers(body.get("place"), asked.place) and stage in (None, 0, asked.number)


def words_of(text: str) -> str:
    return re.sub(r"\s+", " ", text.strip())
