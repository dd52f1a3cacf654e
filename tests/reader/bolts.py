"""Bolts: what has been tightened and slackened, in which order, and what is spent."""
from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import datetime
from fractions import Fraction as F

from arrays import Labels
from labels import places
from ledger import Entry
from plan import Group, Tightening

ANGLES = ("turn", "angle")


def position(text: str, all_places: list[Labels]) -> Labels:
    """The place of a bolt written `L4`, `1, a` or `1a`."""
    parts = tuple(part for part in re.split(r"[, ]+", text) if part)
    joined = {"".join(place): place for place in all_places}
    return parts if parts in all_places else joined["".join(parts)]


def covers(named: list[str] | None, place: Labels) -> bool:
    """Whether a place as an entry names it (None: all) has this one."""
    if not named:
        return True
    return tuple(named) == place if len(named) == len(place) else set(named) <= set(place)


@dataclass
class Tick:
    """One bolt taken through one stage."""
    entry: Entry
    tightening: Tightening
    place: Labels
    stage: int
    turn: int
    again: bool
    early: bool
    spent: bool
    doubts: set[str] = field(default_factory=set)

    @property
    def rank(self) -> tuple[int, int]:
        return self.entry.rank, self.turn


def longest_run(sequence: list[int]) -> list[int]:
    """Indexes of the longest rising run; of several the one with the lowest numbers first."""
    best: list[list[int]] = []
    for index in range(len(sequence) - 1, -1, -1):
        after = [run for run in best if sequence[run[0]] > sequence[index]]
        best.append([index] + max(after, key=lambda run: rating(run, sequence), default=[]))
    return max(best, key=lambda run: rating(run, sequence), default=[])


def rating(run: list[int], sequence: list[int]) -> tuple[int, list[int]]:
    return len(run), [-sequence[index] for index in run]


def out_of_turn(order: list[Labels], ticks: list[Tick]) -> set[Labels]:
    """The bolts outside the longest run in the order asked."""
    done = sorted(ticks, key=lambda tick: tick.rank)
    kept = set(longest_run([order.index(tick.place) for tick in done]))
    return {tick.place for index, tick in enumerate(done) if index not in kept}


class Tightened:
    """One tightening as it stands: the ticks that count, by bolt and stage."""

    def __init__(self, tightening: Tightening):
        self.of = tightening
        self.places = places(tightening.group.axes)
        self.ticks: dict[tuple[Labels, int], Tick] = {}
        self.again: set[tuple[Labels, int]] = set()
        self.waits: dict[int, "Wait"] = {}
        self.taken_down: dict[tuple[Labels, int], Tick] | None = None
        self.ended = False

    def bolt_stages(self) -> list[int]:
        return [n for n, stage in enumerate(self.of.stages, 1) if stage.kind != "wait"]

    def complete(self) -> bool:
        return all((place, stage) in self.ticks for place in self.places
                   for stage in self.bolt_stages())

    def run(self, place: Labels) -> list[Labels]:
        mine = self.of.run_of(place)
        return [other for other in self.places if self.of.run_of(other) == mine]

    def lacks_before(self, place: Labels, stage: int) -> bool:
        """Whether a bolt of the same run has not had the stage before."""
        if stage == 1:
            return False
        if self.of.stages[stage - 2].kind == "wait":
            return stage - 1 not in self.waits
        needed = self.run(place)
        if (place, stage - 1) in self.again:
            needed = [other for other in needed if (other, stage - 1) in self.again]
        return any((other, stage - 1) not in self.ticks for other in needed)

    def in_doubt_of_order(self, stage: int) -> set[Labels]:
        """Out of turn, or before their time; what is done again runs by itself."""
        ticks = [tick for (_, n), tick in self.ticks.items() if n == stage]
        order = self.of.group.order
        doubtful = {tick.place for tick in ticks if tick.early}
        for again in (False, True):
            doubtful |= out_of_turn(order, [tick for tick in ticks if tick.again == again])
        return doubtful

    def remove(self, place: Labels) -> None:
        for stage in self.bolt_stages():
            if self.ticks.pop((place, stage), None):
                self.again.add((place, stage))

    def snapshot(self) -> list[tuple[Tick, bool]]:
        """The ticks a reading leans on, and whether each is out of order just now."""
        doubtful = {stage: self.in_doubt_of_order(stage) for stage in self.bolt_stages()}
        return [(tick, place in doubtful[stage]) for (place, stage), tick in self.ticks.items()]


@dataclass
class Wait:
    entry: Entry
    doubts: set[str]


@dataclass
class Laid:
    entry: Entry
    consumable: str
    expired: bool


class BoltSet:
    """The physical bolts of a group, over all its tightenings."""

    def __init__(self, group: Group, tightenings: list[Tightening]):
        self.group = group
        self.tightened = [Tightened(tightening) for tightening in tightenings]
        self.in_force: Tightened | None = None
        self.slack: set[Labels] = set()
        self.used: set[Labels] = set()
        self.spent: set[Labels] = set()

    def at(self, step: str | None) -> Tightened:
        return next((t for t in self.tightened if t.of.step == step), self.tightened[0])

    def place_of(self, text: str) -> Labels:
        return position(text, self.tightened[0].places)

    def final(self) -> bool:
        """Whether the tightening in force is done on every bolt, and none is slack."""
        return self.in_force is not None and self.in_force.complete() and not self.slack

    def tick(self, entry: Entry, text: str, turn: int) -> Tick:
        state, stage, place = self.at(entry.text("step")), entry.body["stage"], self.place_of(text)
        self.resume(state)
        tick = Tick(entry, state.of, place, stage, turn, (place, stage) in state.again,
                    state.lacks_before(place, stage), place in self.spent)
        state.ticks[(place, stage)] = tick
        self.in_force = state
        self.slack.discard(place)
        if self.uses_up(state.of, stage):
            self.used.add(place)
        return tick

    def resume(self, state: Tightened) -> None:
        """A tick after a take-down begins the tightening anew."""
        state.taken_down = None
        if state.ended:
            state.ended = False
            for place in state.places:
                if place in self.slack:
                    state.remove(place)

    def uses_up(self, tightening: Tightening, stage: int) -> bool:
        """By default the first angle stage uses a bolt up, else the last."""
        angles = [n for n, one in enumerate(tightening.stages, 1) if one.kind in ANGLES]
        last = [n for n, one in enumerate(tightening.stages, 1) if one.kind != "wait"][-1]
        return self.group.use == "once" and stage == (angles[0] if angles else last)

    def slacken(self, entry: Entry) -> None:
        loosened = [self.place_of(text) for text in entry.body["bolts"]]
        self.loosen(loosened)
        later = self.at(entry.text("step"))
        if self.in_force is None or self.in_force.ended:
            return
        if self.tightened.index(later) > self.tightened.index(self.in_force):
            self.in_force.ended = True
            self.in_force = later
            return
        self.open_again(self.in_force, loosened)

    def loosen(self, loosened: list[Labels]) -> None:
        self.slack |= set(loosened)
        self.spent |= self.used & set(loosened)

    def open_again(self, state: Tightened, loosened: list[Labels]) -> None:
        """Stages go back to open, unless a mock-up is taken down as a whole."""
        if state.of.group.then_off and state.taken_down is None and state.complete():
            state.taken_down = dict(state.ticks)
        again = set(state.again)
        for place in loosened:
            state.remove(place)
        if state.taken_down and self.slack >= set(state.places):
            state.ticks, state.taken_down, state.ended = state.taken_down, None, True
            state.again = again

    def renew(self, places_fitted: list[Labels]) -> None:
        self.spent -= set(places_fitted)
        self.used -= set(places_fitted)


def elapsed(entries: list[Entry]) -> F | None:
    """Seconds from the first to the last; None if the clock went back on the way."""
    moments: list[datetime] = [entry.when for entry in entries]
    if any(later < earlier for earlier, later in zip(moments, moments[1:])):
        return None
    return F(int((moments[-1] - moments[0]).total_seconds()))
