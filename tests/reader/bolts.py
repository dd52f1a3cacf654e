"""Bolts: what has been tightened and slackened, in which order, and what is spent."""
from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction as F

from arrays import Axis, Labels
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
    round: tuple[int, int]  # which slackening it follows, how often it was ticked since
    early: bool
    spent: bool
    doubts: dict[str, int] = field(default_factory=dict)  # with the rank of what brought them

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
        self.ticked: set[tuple[Labels, int]] = set()
        self.laps: dict[tuple[Labels, int], int] = {}
        self.made: dict[tuple[Labels, int], list[Tick]] = {}
        self.waited: dict[int, Entry] = {}
        self.left_out: set[tuple[Labels, int]] = set()

    def bolt_stages(self) -> list[int]:
        return [n for n, stage in enumerate(self.of.stages, 1) if stage.kind != "wait"]

    def later(self, tick: Tick) -> int | None:
        """When this bolt was taken through the same stage once more."""
        return next((other.entry.rank for other in self.made[(tick.place, tick.stage)]
                     if other.rank > tick.rank), None)

    def through(self, place: Labels) -> bool:
        """Whether this bolt has had all its stages."""
        return not any(self.lacks(place, stage) for stage in self.bolt_stages())

    def lacks(self, place: Labels, stage: int) -> bool:
        return (place, stage) not in self.ticks and (place, stage) not in self.left_out

    def run(self, place: Labels) -> list[Labels]:
        mine = self.of.run_of(place)
        return [other for other in self.places if self.of.run_of(other) == mine]

    def lacks_before(self, place: Labels, stage: int) -> bool:
        """Whether a bolt of the same run has not had the stage before."""
        before = [n for n in self.bolt_stages() if n < stage]
        return bool(before) and any(self.lacks(other, before[-1]) for other in self.run(place))

    def behind_turn(self, place: Labels, stage: int) -> bool:
        """Whether it was turned at this stage already, or by an angle at a later one."""
        return any((place, n) in self.ticks and
                   (kind == "turn" if n == stage else n > stage and kind in ANGLES)
                   for n, kind in enumerate((one.kind for one in self.of.stages), 1))

    def ticks_at(self, stage: int) -> list[Tick]:
        return [tick for (_, n), tick in self.ticks.items() if n == stage]

    def out_of_turn(self, stage: int) -> set[Labels]:
        """What is done again runs by itself."""
        ticks, doubtful = self.ticks_at(stage), set()
        for round_ in {tick.round for tick in ticks}:
            doubtful |= out_of_turn(self.of.group.order,
                                    [tick for tick in ticks if tick.round == round_])
        return doubtful

    def in_doubt_of_order(self, stage: int) -> set[Labels]:
        """Out of turn, or before their time."""
        return self.out_of_turn(stage) | {tick.place for tick in self.ticks_at(stage) if tick.early}

    def stood(self, place: Labels, stages: list[int]) -> list[tuple[str, int]]:
        """The step and rank of each tick that counts at these stages of a bolt."""
        return [(self.of.step, self.ticks[(place, stage)].entry.rank) for stage in stages
                if (place, stage) in self.ticks]

    def remove(self, place: Labels) -> None:
        for stage in self.bolt_stages():
            self.ticks.pop((place, stage), None)
            self.laps.pop((place, stage), None)

    def snapshot(self, place: Labels) -> list[tuple[Tick, bool]]:
        """The ticks of a bolt, and whether each is out of order just now."""
        return [(self.ticks[(place, stage)], place in self.in_doubt_of_order(stage))
                for stage in self.bolt_stages() if (place, stage) in self.ticks]


@dataclass
class Laid:
    entry: Entry
    target: str
    consumable: str
    expired: bool


class BoltSet:
    """The physical bolts of a group, over all its tightenings."""

    def __init__(self, group: Group, tightenings: list[Tightening]):
        self.group = group
        self.tightened = [Tightened(tightening) for tightening in tightenings]
        self.in_force: dict[Labels, Tightened] = {}
        self.slack: set[Labels] = set(self.tightened[0].places)
        self.used: set[Labels] = set()
        self.spent: set[Labels] = set()
        self.batches = 0
        self.batch: dict[Labels, int] = {}
        self.slackened: dict[Labels, int] = {}

    def at(self, step: str | None) -> Tightened:
        return next((t for t in self.tightened if t.of.step == step), self.tightened[0])

    def place_of(self, text: str) -> Labels:
        return position(text, self.tightened[0].places)

    def final(self, place: Labels, step: str | None) -> bool:
        """Whether the tightening in force (in that step, if one is named) is done on a bolt."""
        state = self.in_force.get(place)
        if state is None or place in self.slack:
            return False
        return state.through(place) and step in (None, state.of.step)

    def is_left_out(self, place: Labels) -> bool:
        """Not there at all: no stage of the tightening in force asks for it."""
        state = self.in_force.get(place, self.tightened[0])
        return all((place, stage) in state.left_out for stage in state.bolt_stages())

    def aligned(self, axes: list[Axis], place: Labels) -> list[Labels]:
        """The bolts that agree with a place on every axis they share."""
        return [bolt for bolt in self.tightened[0].places
                if meet(self.group.axes, bolt, axes, place)]

    def stood(self, state: Tightened, place: Labels, stage: int) -> list[tuple[str, int]]:
        """What a tick at this stage undoes or does again."""
        return state.stood(place, state.bolt_stages() if place in self.slack else [stage])

    def tick(self, entry: Entry, text: str, turn: int) -> Tick:
        state, stage, place = self.at(entry.text("step")), entry.body["stage"], self.place_of(text)
        if place in self.slack:
            self.begin_anew(state, place)
        early = state.lacks_before(place, stage) or state.behind_turn(place, stage)
        tick = Tick(entry, state.of, place, stage, turn, self.round_of(state, place, stage), early,
                    place in self.spent)
        state.ticks[(place, stage)] = tick
        state.ticked.add((place, stage))
        state.made.setdefault((place, stage), []).append(tick)
        self.in_force[place] = state
        self.slack.discard(place)
        if self.uses_up(state.of, stage):
            self.used.add(place)
        return tick

    def round_of(self, state: Tightened, place: Labels, stage: int) -> tuple[int, int]:
        """Which time it is done there; twice in a row is one time, unless it was out of turn."""
        before = state.ticks.get((place, stage))
        if (before and before.rank == max(tick.rank for tick in state.ticks.values())
                and place not in state.out_of_turn(stage)):
            return before.round
        lap = state.laps.get((place, stage), 0)
        state.laps[(place, stage)] = lap + 1
        return (self.batch.get(place, 0) if (place, stage) in state.ticked else 0, lap)

    def begin_anew(self, state: Tightened, place: Labels) -> None:
        """A bolt that a foreseen take-down left done is taken up again: what was done to those
        beside it since, beyond their first stage, was done without it."""
        if state.through(place) and not self.is_left_out(place):
            for (other, stage), tick in state.ticks.items():
                if (other != place and other in state.run(place) and stage > 1
                        and self.batch.get(other) == self.batch.get(place)
                        and tick.entry.rank > self.slackened.get(place, 0)):
                    tick.doubts["order"] = tick.entry.rank
        state.remove(place)

    def uses_up(self, tightening: Tightening, stage: int) -> bool:
        """By default the first angle stage uses a bolt up, else the last."""
        angles = [n for n, one in enumerate(tightening.stages, 1) if one.kind in ANGLES]
        last = [n for n, one in enumerate(tightening.stages, 1) if one.kind != "wait"][-1]
        return self.group.use == "once" and stage == (angles[0] if angles else last)

    def slacken(self, entry: Entry) -> list[tuple[str, int]]:
        """What that undoes."""
        return [one for text in entry.body["bolts"]
                for one in self.loosen(self.place_of(text), entry.text("step"), entry.rank)]

    def loosen(self, place: Labels, step: str | None, rank: int) -> list[tuple[str, int]]:
        if place not in self.slack:
            self.batch[place] = self.batch_now()
            self.slackened[place] = rank
        undone: list[tuple[str, int]] = []
        if not self.foreseen(place, step):
            state = self.in_force.get(place, self.tightened[0])
            undone = state.stood(place, state.bolt_stages())
            state.remove(place)
        self.slack.add(place)
        self.spent |= self.used & {place}
        return undone

    def batch_now(self) -> int:
        """Bolts slackened together are done again among themselves, until all are through."""
        latest = [place for place, batch in self.batch.items() if batch == self.batches]
        if not self.batches or all(self.final(place, None) for place in latest):
            self.batches += 1
        return self.batches

    def foreseen(self, place: Labels, step: str | None) -> bool:
        """A mock-up that was done comes off again; a later tightening may begin by slackening."""
        state = self.in_force.get(place)
        if state is None:
            return False
        index = self.tightened.index(state)
        if self.group.then_off and index == 0 and state.through(place):
            return True
        return any(later.of.step == step for later in self.tightened[index + 1:])

    def renew(self, places_fitted: list[Labels]) -> None:
        self.spent -= set(places_fitted)
        self.used -= set(places_fitted)


def meet(axes: list[Axis], place: Labels, others: list[Axis], other: Labels) -> bool:
    """Whether two places agree on every axis they share."""
    named = dict(zip((axis[0] for axis in others), other))
    return all(named.get(axis[0], label) == label for axis, label in zip(axes, place))


def elapsed(entries: list[Entry], first: Entry, last: Entry) -> F | None:
    """Seconds between what was done; None if the clock went back over what was typed between."""
    low, high = sorted((first.seq, last.seq))
    typed = [entry.at for entry in sorted(entries, key=lambda entry: entry.seq)
             if low <= entry.seq <= high]
    seconds = F(int((last.when - first.when).total_seconds()))
    if seconds < 0 or any(later < earlier for earlier, later in zip(typed, typed[1:])):
        return None
    return seconds
