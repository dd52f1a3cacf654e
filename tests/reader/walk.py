"""One walk over a build's entries by rank: what was done, what it leaned on, what fell."""
from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction as F
from typing import Iterator

from arrays import Axis, Labels
from bolts import BoltSet, Laid, Tick, Tightened, covers, elapsed, meet
from formula import names as names_in
from labels import places
from ledger import Broken, Entry
from plan import Asked, Check, Plan
from tools import Shop, base, number, unit_of
from typed import read_typed

Key = tuple[str, str, Labels]  # check, step that asks, place


@dataclass
class Reading:
    """A value or an answer at one place, with what it leans on."""
    entry: Entry
    value: F = F(0)
    bound: str = ""
    answer: str = ""
    grain: F = F(0)
    own: F | None = None  # the ± typed behind it
    unsound: bool = False
    leans_on: list[tuple[Tick, bool]] = field(default_factory=list)
    fell: int = 0
    parted: bool = False


def reading_of(entry: Entry) -> Reading:
    """The value as the reader works it out from what was typed; the ledger must say the same."""
    value = entry.body["value"]
    said, bound = base(value), number(value["value"])[0]
    typed = read_typed(value["typed"], unit_of(value))
    if not typed:
        return Reading(entry, said, bound)
    if typed.value != said:
        raise Broken(f"entry {entry.seq}: `{value['typed']}` is {typed.value}, not {said}")
    return Reading(entry, said, bound, grain=typed.grain, own=typed.doubt)


class Walk:
    def __init__(self, plan: Plan, entries: list[Entry]):
        self.plan, self.entries = plan, entries
        self.live = [entry for entry in entries if entry.live]
        self.rests_on = plan.names_rested_on()
        self.shop = Shop(sorted(entries, key=lambda entry: entry.seq))
        self.sets = {name: BoltSet(group, plan.tightenings_of(name))
                     for name, group in plan.groups.items()}
        self.readings: dict[Key, list[list[Reading]]] = {}
        self.fallen: dict[Key, list[int]] = {}
        self.fallen_here: dict[Key, list[int]] = {}  # by work in the step that asks
        self.fits: dict[tuple[str, Labels], Entry] = {}
        self.signs: dict[tuple[str, int], Entry] = {}
        self.undone: dict[tuple[str, int], int] = {}
        self.laid: list[Laid] = []
        self.choices: dict[tuple[str, Labels], Entry] = {}
        self.unsound_until: dict[Key, int] = {}
        self.said: dict[str, list[Entry]] = {}
        self.out = [entry for entry in self.live if entry.kind in ("not needed", "withdraw")]
        for bolts in self.sets.values():
            for state in bolts.tightened:
                state.left_out = {(place, stage) for place in state.places
                                  for stage in state.bolt_stages()
                                  if self.left_out(Asked("bolt", bolts.group.name, state.of.step,
                                                         place, stage))}
        for entry in entries:
            self.take(entry)

    def take(self, entry: Entry) -> None:
        if not entry.live:
            if entry.kind == "move":
                check = self.plan.checks[entry.body["check"]]
                self.mean(check, entry, self.struck_at(entry))
            return
        if not self.planned(entry):
            return
        handler = getattr(self, "on_" + entry.kind.replace(" ", "_"), None)
        if handler:
            handler(entry)
        else:
            self.said.setdefault(entry.kind, []).append(entry)

    def planned(self, entry: Entry) -> bool:
        """What was done to an addition that was struck since is about nothing."""
        fitted = {**self.plan.parts, **self.plan.groups}  # sealant is laid on parts too
        named = {"check": self.plan.checks, "tightening": fitted, "part": fitted}
        return all(entry.body[field] in names for field, names in named.items()
                   if isinstance(entry.body.get(field), str))

    def struck_at(self, entry: Entry) -> int:
        return max((strike.rank for strike in self.live
                    if strike.kind == "strike" and strike.body["entry"] == entry.seq), default=0)

    # What is not asked for here

    def left_out(self, asked: Asked) -> bool:
        return self.needless(asked) or self.withdrawn(asked)

    def needless(self, asked: Asked) -> bool:
        return any(self.names(entry.body, asked, False) or self.whole_step(entry.body, asked)
                   for entry in self.out if entry.kind == "not needed")

    def whole_step(self, body: dict, asked: Asked) -> bool:
        """`sign` of a step without saying which signature."""
        return body["asked"] == "sign" and not body.get("stage") and body["name"] == asked.step

    def withdrawn(self, asked: Asked) -> bool:
        return any(self.takes_out(entry.body, asked) for entry in self.out
                   if entry.kind == "withdraw")

    def takes_out(self, body: dict, asked: Asked) -> bool:
        if body["what"] == "step":
            return asked.step == body["name"]
        owners = {"check": self.plan.checks, "tightening": self.plan.groups, "part": self.plan.parts}
        return (asked.name == body["name"] and asked.sort != "sign"
                and asked.name in owners[body["what"]] and covers(body.get("place"), asked.place))

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
        for key in self.keys(entry):
            self.add_reading(key, reading_of(entry))

    def on_look(self, entry: Entry) -> None:
        for key in self.keys(entry):
            self.add_reading(key, Reading(entry, answer=entry.body["answer"]))

    def add_reading(self, key: Key, reading: Reading) -> None:
        check = self.plan.checks[key[0]]
        reading.unsound = reading.entry.rank < self.unsound_until.get(key, 0)
        for words in check.held_by:
            self.lean(reading, check, key[2], words)
        segments = self.readings.setdefault(key, [])
        if not segments or segments[-1][-1].fell or segments[-1][-1].parted:
            segments.append([])
        segments[-1].append(reading)

    def lean(self, reading: Reading, check: Check, place: Labels, words: str) -> None:
        """What a reading is taken with must be final then."""
        name, step = self.plan.named(words)
        if name not in self.sets:
            reading.unsound |= name in self.plan.parts and not self.fitted(name, check.axes, place)
            return
        bolts = self.sets[name]
        for bolt in bolts.aligned(check.axes, place):
            if bolts.is_left_out(bolt):
                continue
            reading.unsound |= not bolts.final(bolt, step)
            if bolt in bolts.in_force:
                reading.leans_on += bolts.in_force[bolt].snapshot(bolt)

    def fitted(self, name: str, axes: list[Axis], place: Labels) -> bool:
        """Whether a part is in, wherever it meets a place and is asked for."""
        part = self.plan.parts[name]
        return all((name, one) in self.fits or self.left_out(Asked("fit", name, part.step, one))
                   for one in places(part.axes) if meet(part.axes, one, axes, place))

    # What falls

    def disturb(self, name: str, entry: Entry, axes: list[Axis], disturbed: list[Labels]) -> None:
        """What rests on a bolt set, a part or a setting falls, where the places meet."""
        for check in self.plan.checks.values():
            meeting = [one for one in places(check.axes)
                       if any(meet(axes, place, check.axes, one) for place in disturbed)]
            if name in self.rests_on[check.name]:
                self.fall(check, entry, meeting)
            if any(self.plan.named(words)[0] == name for words in check.held_by):
                self.part(check, entry, meeting)

    def part(self, check: Check, entry: Entry, parted: list[Labels]) -> None:
        """Read with what is slackened now: it keeps its value, but what comes does not compete."""
        for key in self.concerned(check, entry, parted):
            for segment in self.readings.get(key, [])[-1:]:
                segment[-1].parted = True

    def fall(self, check: Check, entry: Entry, fallen: list[Labels]) -> None:
        for key in self.concerned(check, entry, fallen):
            self.fall_at(key, entry.rank)
            if entry.text("step") == key[1]:
                self.fallen_here.setdefault(key, []).append(entry.rank)

    def concerned(self, check: Check, entry: Entry, disturbed: list[Labels]) -> Iterator[Key]:
        """Where it is asked for, but for what a later step reads again by then: that is judged as it
        stood before this step."""
        instances = self.plan.instances(check.name)
        step = self.plan.steps.get(entry.text("step") or "")
        for number, instance in enumerate(instances):
            for one in disturbed:
                later = self.read_again(check, instances[number + 1:], one)
                if not later or not step or step.index < self.plan.steps[later].index:
                    yield check.name, instance, one

    def read_again(self, check: Check, later: list[str], place: Labels) -> str | None:
        """The step that asks for it once more, if anybody still asks it there."""
        return next((step for step in later if not self.left_out(
            Asked(check.asked, check.name, step, place, 0, True))), None)

    def fall_at(self, key: Key, rank: int) -> None:
        self.fallen.setdefault(key, []).append(rank)
        for segment in self.readings.get(key, [])[-1:]:
            for reading in segment:
                reading.fell = rank

    def on_rework(self, entry: Entry) -> None:
        name = entry.body["name"]
        if name in self.plan.parts:
            axes = self.plan.parts[name].axes
            self.disturb(name, entry, axes, self.covered(axes, entry))
        elif name in self.plan.checks:
            axes = self.plan.checks[name].asked_axes()
            self.rework(self.plan.checks[name], entry, axes, self.covered(axes, entry))

    def rework(self, check: Check, entry: Entry, axes: list[Axis], worked: list[Labels]) -> None:
        """What was read there falls; behind a formula stand the checks it uses."""
        self.fall(check, entry, [one for one in places(check.axes)
                                 if any(meet(axes, place, check.axes, one) for place in worked)])
        self.disturb(check.name, entry, axes, worked)
        for name in names_in(check.formula) if check.formula else []:
            if name in self.plan.checks:
                self.rework(self.plan.checks[name], entry, axes, worked)

    def covered(self, axes: list[Axis], entry: Entry) -> list[Labels]:
        return [place for place in places(axes) if covers(entry.body.get("place"), place)]

    def on_move(self, entry: Entry) -> None:
        """A move of one place is that place's own; without one it is the whole setting's."""
        check = self.plan.checks[entry.body["check"]]
        self.mean(check, entry, 0)
        for read in self.plan.read_for(check) or [check]:
            self.fall(read, entry, self.moved_of(read, check, entry))
        self.disturb(check.name, entry, check.axes, self.covered(check.axes, entry))

    def moved_of(self, read: Check, setting: Check, entry: Entry) -> list[Labels]:
        """Where what is read for a setting is met by its move: everywhere if that names no place."""
        if not entry.body.get("place"):
            return places(read.axes)
        moved = self.covered(setting.axes, entry)
        return [one for one in places(read.axes)
                if any(meet(setting.axes, place, read.axes, one) for place in moved)]

    def mean(self, setting: Check, entry: Entry, until: int) -> None:
        """Up to which rank readings in the step were meant for a trial that never was."""
        for read in self.plan.read_for(setting) or [setting]:
            step = self.step_of(read.name, entry.text("step"))
            self.unsound_until.update({(read.name, step, place): until
                                       for place in self.moved_of(read, setting, entry)})

    # Bolts

    def on_tick(self, entry: Entry) -> None:
        bolts = self.sets[entry.body["tightening"]]
        for turn, text in enumerate(entry.body["bolts"]):
            loose = bolts.place_of(text) in bolts.slack
            stood = bolts.stood(bolts.at(entry.text("step")), bolts.place_of(text),
                                entry.body["stage"])
            tick = bolts.tick(entry, text, turn)
            self.undo(stood, entry)
            tick.doubts = self.tick_doubts(tick, loose)
        stage = bolts.at(entry.text("step")).of.stages[entry.body["stage"] - 1]
        if stage.kind == "slacken":
            self.disturb_bolts(bolts, entry)

    def disturb_bolts(self, bolts: BoltSet, entry: Entry) -> None:
        self.disturb(bolts.group.name, entry, bolts.group.axes,
                     [bolts.place_of(text) for text in entry.body["bolts"]])

    def tick_doubts(self, tick: Tick, loose: bool) -> dict[str, int]:
        group, rank = tick.tightening.group, tick.entry.rank
        doubts = {"spent": rank} if tick.spent else {}
        doubts |= self.fit_doubts(self.fits.get((group.name, tick.place)), group.use)
        if tick.stage == 1 and loose:
            doubts |= self.laid_doubts(group.name, tick.entry)
            doubts |= self.broken(group, tick)
        return {doubt: max(since, rank) for doubt, since in doubts.items()}

    def fit_doubts(self, entry: Entry | None, use: str) -> dict[str, int]:
        """Expired, recalled, or used again where new is asked."""
        if entry is None:
            return {}
        lot = entry.text("lot") or ""
        expires = self.shop.lots.get(lot, {}).get("expires")
        bad = (use in ("new", "once") and entry.body["use"] != "new"
               or expires is not None and entry.day.isoformat() > expires)
        since = max(self.shop.recalls.get(lot, 0), entry.rank if bad else 0)
        return {"part": since} if since else {}

    def laid_doubts(self, name: str, entry: Entry) -> dict[str, int]:
        """Too old, or too late after it was laid."""
        mine = [laid for laid in self.laid if laid.target == name and laid.entry.rank < entry.rank]
        if not mine:
            return {}
        laid = mine[-1]
        doubts = {"part": entry.rank} if laid.expired else {}
        window = self.plan.consumables.get(laid.consumable)
        if window and window.fit_within is not None:
            doubts |= dict.fromkeys(self.late(laid.entry, entry, window.fit_within), entry.rank)
        return doubts

    def broken(self, group: Group, tick: Tick) -> dict[str, int]:
        """Laid before the bolt was slackened, and it sets."""
        mine = [laid for laid in self.laid
                if laid.target == group.name and laid.entry.rank < tick.entry.rank]
        loosened = self.sets[group.name].slackened.get(tick.place, 0)
        made = self.plan.consumables.get(mine[-1].consumable) if mine else None
        if made is None or mine[-1].entry.rank > loosened:
            return {}
        hardens = (made.fit_within, made.fluid_after, made.run_after) != (None, None, None)
        asked = group.lubricant_of(tick.place) == made.name
        return {"part": tick.entry.rank} if hardens and asked else {}

    def late(self, first: Entry, last: Entry, allowed: F) -> set[str]:
        seconds = elapsed(self.entries, first, last)
        if seconds is None:
            return {"clock"}
        return {"window"} if seconds > allowed else set()

    def soon(self, first: Entry, last: Entry, needed: F) -> set[str]:
        seconds = elapsed(self.entries, first, last)
        if seconds is None:
            return {"clock"}
        return {"window"} if seconds < needed else set()

    def on_waited(self, entry: Entry) -> None:
        state = self.sets[entry.body["tightening"]].at(entry.text("step"))
        state.waited[entry.body["stage"]] = entry

    def wait_of(self, state: Tightened, stage: int) -> list[tuple[Entry, Entry]] | None:
        """From where to where each run waited; None while one has not yet."""
        found = []
        for run in {tuple(state.run(place)) for place in state.places}:
            if all((place, n) in state.left_out for place in run for n in state.bolt_stages()):
                continue
            done = [state.ticks.get((place, stage - 1)) for place in run]
            if not any(done) or any(state.lacks(place, stage - 1) for place in run):
                return None
            last = max((tick for tick in done if tick), key=lambda tick: tick.rank).entry
            ends = [tick.entry for (place, n), tick in state.ticks.items()
                    if n == stage + 1 and place in run] + [state.waited.get(stage)]
            after = [end for end in ends if end and end.rank > last.rank]
            if not after:
                return None
            found.append((last, min(after, key=lambda end: end.rank)))
        return found

    def on_slacken(self, entry: Entry) -> None:
        bolts = self.sets[entry.body["tightening"]]
        self.undo(bolts.slacken(entry), entry)
        self.disturb_bolts(bolts, entry)

    # Parts, consumables, signatures, choices

    def on_fit(self, entry: Entry) -> None:
        name = entry.body["part"]
        owner = self.plan.parts.get(name) or self.plan.groups.get(name)
        fitted = self.covered(owner.axes, entry)
        replaced = [place for place in fitted if (name, place) in self.fits]
        if name in self.sets:
            replaced = [place for place in replaced if place not in self.sets[name].slack]
            for place in replaced:
                self.undo(self.sets[name].loosen(place, entry.text("step"), entry.rank), entry)
        elif name in self.plan.parts:
            self.undo([(owner.step, self.fits[(name, place)].rank) for place in replaced], entry)
        self.disturb(name, entry, owner.axes, replaced)
        for place in fitted:
            self.fits[(name, place)] = entry
        if name in self.sets and entry.body["use"] == "new":
            self.sets[name].renew(fitted)

    def on_laid(self, entry: Entry) -> None:
        expires = entry.text("expires") or self.shop.consumables.get(
            entry.text("item") or "", {}).get("expires")
        expired = expires is not None and entry.day.isoformat() > expires
        name = entry.body["consumable"]
        self.laid.append(Laid(entry, entry.text("tightening") or "", name, expired))

    def on_sign(self, entry: Entry) -> None:
        key = entry.body["step"], entry.body["signature"]
        self.signs[key] = entry
        self.undone.pop(key, None)

    def on_reopen(self, entry: Entry) -> None:
        for key in [key for key in self.signs if key[0] == entry.body["step"]]:
            del self.signs[key]
            self.undone.pop(key, None)

    def undo(self, stood: list[tuple[str, int]], entry: Entry) -> None:
        """What stood in a step, by the rank it was done at, does no longer: what was signed over it
        since then is in doubt."""
        for step, rank in stood:
            self.undone |= {key: entry.rank for key, sign in self.signs.items()
                            if key[0] == step and sign.rank > rank}

    def undone_since(self, step: str, sign: Entry, number: int) -> int:
        """When what was signed was last undone, done again or, if it was read,
        fell by work in this step; 0 if never."""
        newest = self.undone.get((step, number), 0)
        for key, segments in self.readings.items():
            if (key[1] == step and not self.plan.checks[key[0]].finding
                    and segments[0][0].entry.rank < sign.rank):
                newest = max([newest, *(rank for rank in self.fallen_here.get(key, [])
                                        if rank > sign.rank)])
        return newest

    def on_choose(self, entry: Entry) -> None:
        check = self.plan.checks[entry.body["check"]]
        for place in places(check.asked_axes()):
            if covers(entry.body.get("place"), place):
                self.choices[(check.name, place)] = entry

    # What was said of requirements

    def about(self, kind: str, asked: Asked) -> list[Entry]:
        """The live entries of this kind that name a requirement."""
        return [entry for entry in self.said.get(kind, [])
                if self.names(entry.body, asked, kind == "amend")]

    def names(self, body: dict, asked: Asked, whole: bool) -> bool:
        """`whole`: a check in all the steps that ask for it, as an amendment means it."""
        step = body.get("step")
        sort, name = body.get("asked"), body.get("name") or body.get("check")
        if name != asked.name or sort not in (None, asked.sort):
            return False
        if asked.sort in ("read", "look") and not whole and self.step_of(name, step) != asked.step:
            return False
        if asked.sort in ("bolt", "wait") and self.sets[name].at(step).of.step != asked.step:
            return False
        stage = body.get("stage")
        return covers(body.get("place"), asked.place) and stage in (None, 0, asked.number)
