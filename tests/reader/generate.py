#!/usr/bin/env python3
"""Random plans and random, partly wrong logs of their work, for comparing two judgements.

    tests/reader/generate.py SEED FOLDER

writes FOLDER/plan.yaml, FOLDER/shop.log and FOLDER/build.log; one seed always gives the same.
A line of the log may be refused by the program (there may be nothing to strike); then the next
one counts.
"""
from __future__ import annotations

import random
import sys
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from itertools import product
from pathlib import Path

WORDS = ("alder", "birch", "cedar", "damson", "elder", "fir", "gorse", "hazel", "ivy", "juniper",
         "larch", "maple", "nutmeg", "oak", "poplar", "quince", "rowan", "sorrel", "thorn", "willow",
         "yew", "aspen", "beech", "clover", "dogwood", "fern", "heather", "iris", "laurel", "myrtle")
AXES = {"row": ("1", "2", "3"), "end": ("front", "rear"), "side": ("a", "b")}
GRADES = ("A", "B")
STAGES = ("20 > 40", "30", "20 > 30 > 40", "30 > +60°", "20 > wait 10 min > 40", "snug > 35", "8 > 30")
STATES = ("new", "new", 'reused "sound"')
FOUND = ("good", 'wrong "low"', "adjusted")
SHOP = """2024-01-08 08:00 MO person MO "Mab Orrin" role builder
person JT "Jory Tam" role builder
person EV "Edda Vail" role office
owner quill "Quill Dairy Co-op"
engine E-1 family X1 owner quill
2024-01-08 09:00 MO tool G1 "dial" kind dial range -50..50 mm step 0.01
tool G2 "caliper" kind dial range -50..50 mm step 0.02
tool G3 "no paper" kind dial range -50..50 mm step 0.01
tool G4 "old dial" kind dial range 5..50 mm step 0.01
tool W1 "click wrench" kind click wrench range 10..60 N·m
tool W2 "old click wrench" kind click wrench range 10..60 N·m
tool A1 "angle gauge" kind angle gauge range 0..360 ° step 2
calibration G4 2024-01-08 due 2025-01-08 good U 0.005 mm
calibration W2 2024-01-08 due 2025-01-08 good
2025-01-08 09:00 MO calibration G1 2025-01-08 due 2026-01-08 good U 0.01 mm repeats 0.007 mm
calibration G2 2025-01-08 due 2026-01-08 good U 0.03 mm
calibration W1 2025-01-08 due 2026-01-08 good
calibration A1 2025-01-08 good U 2 °
lot LT-1 "parts"
lot LT-2 "old parts" expires 2025-02-01
consumable sealant lot SS-1 supplier "Corran" expires 2025-11-30
consumable sealant lot SS-2 supplier "Corran" expires 2025-02-01
build B-1 engine E-1 plan "Random plan"
"""


@dataclass
class CheckMade:
    name: str
    axes: list[str]
    kind: str  # read, formula or look
    answers: tuple[str, ...] = ()
    choose: bool = False
    finding: bool = False

    def places(self) -> list[tuple[str, ...]]:
        return list(product(*(AXES[axis] for axis in self.axes)))


@dataclass
class GroupMade:
    name: str
    bolts: list[str]
    order: list[str]
    stages: list[str]
    sealed: bool
    each: bool  # one bolt at a time; done in order, for nothing says how such runs stand in order


@dataclass
class StepMade:
    name: str
    checks: list[CheckMade] = field(default_factory=list)
    tightened: list[tuple[GroupMade, list[str]]] = field(default_factory=list)
    parts: list[str] = field(default_factory=list)
    again: list[CheckMade] = field(default_factory=list)
    persons: int = 1


class PlanMade:
    def __init__(self, dice: random.Random):
        self.dice = dice
        self.words = [f"{word} {what}" for word in WORDS for what in ("gap", "play")]
        dice.shuffle(self.words)
        self.steps: list[StepMade] = []
        self.inputs: list[CheckMade] = []
        self.groups: list[GroupMade] = []
        self.lines = ["plan: Random plan", "units: [mm, N·m, °]", "family: X1",
                      "axes: {row: 1..3, end: front/rear, side: a/b, grade: A/B}",
                      "given: {wall: {A: 0, B: 0.02}, shim: 1.0 ± 0.02, nominal: 10}",
                      "consumables: {sealant: {kind: silicone, fit within: 30 min, "
                      "fluid after: 2 h, run after: 24 h}}", "steps:"]
        for number in range(dice.randint(2, 4)):
            self.step(number)

    def word(self) -> str:
        return self.words.pop()

    def some_axes(self) -> list[str]:
        return self.dice.sample(list(AXES), self.dice.choice((0, 1, 1, 2)))

    def step(self, number: int) -> None:
        step = StepMade(f"Step {'ABCDEF'[number]}")
        self.steps.append(step)
        self.lines.append(f"  {step.name}:")
        if number:
            self.lines.append(f"    begins: {self.dice.choice(('fluid', 'run'))}")
        self.lines.append("    fasteners:")
        for _ in range(self.dice.randint(1, 2)):
            self.group(step)
        self.retighten(step, number)
        self.parts(step)
        self.lines.append("    checks:")
        self.read_checks(step)
        for _ in range(self.dice.randint(1, 3)):
            self.formula(step)
        self.look(step)
        self.read_again(step, number)
        if self.dice.random() < 0.4:
            step.persons = 2
            self.lines.append("    hold: {seen: second person}")

    def group(self, step: StepMade) -> None:
        count = self.dice.randint(2, 5)
        bolts = [str(n + 1) for n in range(count)]
        order = self.dice.sample(bolts, count)
        stages = self.dice.choice(STAGES)
        sealed = self.dice.random() < 0.4
        each = self.dice.random() < 0.1
        group = GroupMade(f"{self.word()} bolts", bolts, order, stages.split(" > "), sealed, each)
        use = self.dice.choice(("new", "once", "may be reused", "may be reused"))
        extra = ", then off: yes" if self.dice.random() < 0.2 else ""
        extra += ", track: lot" if self.dice.random() < 0.2 else ""
        extra += ", lubricant: sealant" if sealed else ""
        extra += ", each: bolt" if each else ""
        self.lines.append(f"      {group.name}: {{bolts: 1..{count}, order: {'-'.join(order)}, "
                          f"stages: {stages}, use: {use}{extra}}}")
        step.tightened.append((group, group.stages))
        self.groups.append(group)

    def retighten(self, step: StepMade, number: int) -> None:
        earlier = [group for group in self.groups if group not in [g for g, _ in step.tightened]]
        if not number or not earlier or self.dice.random() < 0.4:
            return
        group = self.dice.choice(earlier)
        stages = self.dice.choice(("as before", "45"))
        self.lines.append(f"    retighten: {{{group.name}: {stages}}}")
        step.tightened.append((group, group.stages if stages == "as before" else [stages]))

    def parts(self, step: StepMade) -> None:
        if self.dice.random() < 0.6:
            part = self.word()
            use = self.dice.choice(("new", "may be reused"))
            self.lines.append(f"    fit: {{{part}: {{at: end, use: {use}}}}}")
            step.parts.append(part)

    def base(self) -> str:
        """What a check stands on."""
        draw = self.dice.random()
        if draw < 0.5 or not self.groups:
            return ""
        name = self.dice.choice(self.groups).name
        return f", {'rests on' if draw < 0.8 else 'with'}: {name}"

    def limits(self, middle: str) -> str:
        lower, upper = {"10": ("9.95", "10.05"), "0": ("-0.04", "0.06"), "1": ("0.99", "1.01"),
                        "11": ("10.9", "11.1")}[middle]
        wear = f", wear: {float(upper) + 0.05:.2f}" if self.dice.random() < 0.4 else ""
        kind = self.dice.choice(("both", "both", "at least", "at most"))
        if kind == "at least":
            return f"limits: at least {lower}"
        return (f"limits: {lower}..{upper}" if kind == "both" else f"limits: at most {upper}") + wear

    def read_checks(self, step: StepMade) -> None:
        for _ in range(self.dice.randint(2, 3)):
            check = CheckMade(self.word(), self.some_axes(), "read")
            doubt = ", doubt: 0.01" if self.dice.random() < 0.2 else ""
            at = f"at: [{', '.join(check.axes)}], " if check.axes else ""
            limits = self.limits("10") if self.dice.random() < 0.7 else "limits: any"
            self.lines.append(f"      {check.name}: {{{at}decimals: 2, gauge: dial, "
                              f"{limits}{doubt}{self.base()}}}")
            step.checks.append(check)
            self.inputs.append(check)

    def formula(self, step: StepMade) -> None:
        one, other = self.dice.choice(self.inputs), self.dice.choice(self.inputs)
        text, middle, axes = self.formula_of(one, other)
        choose = middle != "1" and self.dice.random() < 0.2
        if choose:
            text += " - wall"
        check = CheckMade(self.word(), axes, "formula", choose=choose)
        settled = ""
        if self.dice.random() < 0.2 and len(step.checks) > 1:
            settled = f", settled by: {self.settling(step, one, other)}"
            check.finding = True
        chosen = ", choose: grade" if choose else ""
        self.lines.append(f"      {check.name} = {text}: {{{self.limits(middle)}{chosen}{settled}}}")
        step.checks.append(check)

    def settling(self, step: StepMade, one: CheckMade, other: CheckMade) -> str:
        others = [c for c in step.checks if c.kind == "read" and c not in (one, other)]
        return f"[{self.dice.choice(others).name}]" if others else "decision"

    def formula_of(self, one: CheckMade, other: CheckMade) -> tuple[str, str, list[str]]:
        joined = one.axes + [axis for axis in other.axes if axis not in one.axes]
        first = one.axes[0] if one.axes else None
        rest = one.axes[1:]
        forms = [(f"max({one.name})", "10", []), (f"min({one.name})", "10", []),
                 (f"mean({one.name})", "10", []), (f"range({one.name})", "0", []),
                 (f"{one.name} - {other.name}", "0", joined),
                 (f"{one.name} / {other.name}", "1", joined),
                 (f"min({one.name}) / max({other.name})", "1", []),
                 (f"max({one.name}, {other.name}) - nominal", "0", joined),
                 (f"{one.name} + shim", "11", one.axes),
                 (f"abs({one.name} - nominal)", "0", one.axes),
                 (f"sqrt({one.name} * {other.name})", "10", joined),
                 (f"2 * {one.name} - {one.name} + shim - 1 mm", "10", one.axes)]
        if first:
            label = AXES[first][0]
            forms += [(f"max({one.name} over {first})", "10", rest),
                      (f"range({one.name} over {first})", "0", rest),
                      (f"{one.name}[{label}] - {one.name}[{AXES[first][1]}]", "0", rest)]
        if first == "row":
            forms.append((f"max({one.name} - {one.name}[row - 1])", "0", []))
        return self.dice.choice(forms)

    def look(self, step: StepMade) -> None:
        words, answers = self.dice.choice((("yes", ("yes", "no")), ("text", ('"seen"',)),
                                           ("exactly 4", ("4", "3")),
                                           ("dry of dry/damp/wet", ("dry", "wet"))))
        check = CheckMade(self.word(), [], "look", answers)
        self.lines.append(f"      {check.name}: {words}")
        step.checks.append(check)

    def read_again(self, step: StepMade, number: int) -> None:
        earlier = [c for s in self.steps[:number] for c in s.checks if c.kind == "read"]
        if earlier and self.dice.random() < 0.5:
            check = self.dice.choice(earlier)
            self.lines.append(f"    read again: [{check.name}]")
            step.again.append(check)

    def text(self) -> str:
        return "\n".join(self.lines) + "\n"


class LogMade:
    """A story of the plan's work, with its slips."""

    def __init__(self, dice: random.Random, plan: PlanMade):
        self.dice, self.plan = dice, plan
        self.now = datetime(2025, 3, 3, 8, 0)
        self.lines: list[str] = []
        for step in plan.steps:
            if dice.random() < 0.95:
                self.work(step)
        for _ in range(dice.randint(0, 6)):
            self.afterwards()

    def say(self, text: str, who: str = "MO", minutes: int | None = None) -> None:
        self.now += timedelta(minutes=self.dice.randint(0, 4) if minutes is None else minutes)
        self.lines.append(f"{self.now:%Y-%m-%d %H:%M} {who} {text}")

    def work(self, step: StepMade) -> None:
        self.now += timedelta(hours=self.dice.choice((0, 1, 3, 30)))
        self.say(f"pick up {step.name}")
        if self.dice.random() < 0.03:
            self.now -= timedelta(minutes=20)
        for part in step.parts:
            self.fit(part)
        for group, stages in step.tightened:
            if self.dice.random() < 0.9:
                self.tighten(group, stages, step.name)
        for check in step.checks + step.again:
            self.measure(check, step.name)
        if self.dice.random() < 0.3:
            self.slip(step)
        if self.dice.random() < 0.8:
            self.say(f"sign {step.name}")
            if step.persons == 2 and self.dice.random() < 0.8:
                self.say(f"sign {step.name}", "JT")
        if self.dice.random() < 0.1:
            self.say(f'reopen {step.name} "looked again"')

    def fit(self, part: str) -> None:
        use = self.dice.choice(STATES)
        where = self.dice.choice(("", "[front]"))
        lot = self.dice.choice(("", "", "lot LT-1 ", "lot LT-2 "))
        self.say(f"fit {part}{where} {lot}{use}")

    def wrench(self, stage: str) -> str:
        if "°" in stage:
            return self.dice.choice((" with A1", ""))
        if stage == "snug":
            return ""
        return " with " + self.dice.choice(("W1", "W1", "W1", "W2"))

    def tighten(self, group: GroupMade, stages: list[str], step: str) -> None:
        name = f"{group.name} in {step}"
        if self.dice.random() < 0.5:
            lot = self.dice.choice(("", "lot LT-1 ", "lot LT-2 "))
            self.say(f"fit {group.name} {lot}{self.dice.choice(STATES)}")
        if group.sealed and self.dice.random() < 0.8:
            self.say(f"lay sealant on {group.name} lot {self.dice.choice(('SS-1', 'SS-1', 'SS-2'))}")
        for number, stage in enumerate(stages, 1):
            if stage.startswith("wait"):
                self.say(f"waited {name} stage {number}", minutes=self.dice.choice((5, 10, 12)))
            elif group.each or self.dice.random() < 0.6:
                self.say(f"tighten {name} stage {number} all{self.wrench(stage)}")
            else:
                self.one_by_one(group, name, number, self.wrench(stage))
        if self.dice.random() < 0.25 and not group.each:
            self.again(group, name, stages)

    def one_by_one(self, group: GroupMade, name: str, number: int, wrench: str) -> None:
        bolts = list(group.order)
        slip = self.dice.random()
        if slip < 0.2:
            bolts.pop(self.dice.randrange(len(bolts)))
        elif slip < 0.4:
            index = self.dice.randrange(len(bolts) - 1)
            bolts[index:index + 2] = reversed(bolts[index:index + 2])
        elif slip < 0.45:
            self.dice.shuffle(bolts)
        for bolt in bolts:
            place = name.replace(" in ", f"[{bolt}] in ")
            self.say(f"tighten {place} stage {number}{wrench}", minutes=self.dice.choice((0, 0, 1)))

    def again(self, group: GroupMade, name: str, stages: list[str]) -> None:
        """Some bolts are slackened, and perhaps done again."""
        bolts = self.dice.choice((group.order, self.dice.sample(group.bolts, 1), group.order[:2]))
        for bolt in bolts:
            self.say(f'slacken {name.replace(" in ", f"[{bolt}] in ")} "looked under"')
        if self.dice.random() < 0.3:
            self.say(f"fit {group.name}[{bolts[0]}] new")
        if self.dice.random() < 0.7:
            for number, stage in enumerate(stages, 1):
                if stage.startswith("wait"):
                    continue
                for bolt in bolts:
                    self.say(f"tighten {name.replace(' in ', f'[{bolt}] in ')} stage {number}"
                             f"{self.wrench(stage)}")

    def value(self) -> str:
        number = 10 + self.dice.choice((0, 1, 2, 3, 4, 5, 6, 8, 11)) * self.dice.choice((-1, 1)) / 100
        return f"{number:.2f}"

    def gauge(self) -> str:
        return self.dice.choice((" with G1", " with G1", " with G2", " with G3", " with G4", ""))

    def measure(self, check: CheckMade, step: str) -> None:
        if self.dice.random() < 0.07:
            return
        if check.kind == "look":
            self.say(f"look {check.name} in {step} {self.dice.choice(check.answers)}")
        elif check.kind == "read":
            self.readings(check, step)
        elif check.choose:
            for place in check.places():
                self.say(f"choose {spot(check.name, place)} {self.dice.choice(GRADES)}")

    def readings(self, check: CheckMade, step: str) -> None:
        gauge = self.gauge()
        for place in check.places():
            if self.dice.random() < 0.04:
                continue
            bound = self.dice.choice("<>") if self.dice.random() < 0.03 else ""
            self.say(f"read {spot(check.name, place)} in {step} {bound}{self.value()}{gauge}",
                     minutes=0)
            if self.dice.random() < 0.06:
                self.say(f"read {spot(check.name, place)} in {step} {self.value()}{self.gauge()}")
                if self.dice.random() < 0.6:
                    self.say("strike last typo")

    def slip(self, step: StepMade) -> None:
        group, stages = self.dice.choice(step.tightened)
        name = f"{group.name} in {step.name}"
        if self.dice.random() < 0.5 and not group.each:
            self.say(f'slacken {name} all "look beneath"')
            if self.dice.random() < 0.5:
                self.tighten(group, stages, step.name)
        else:
            check = self.dice.choice(step.checks)
            if check.kind == "read":
                self.say(f'rework {check.name} "filed"')

    def afterwards(self) -> None:
        step = self.dice.choice(self.plan.steps)
        check = self.dice.choice(step.checks)
        place = self.dice.choice(check.places())
        target = spot(check.name, place)
        group, _ = self.dice.choice(step.tightened)
        reading = check.kind == "read"
        lines = [f'uphold {target} "argued" second JT',
                 f'uphold {group.name} in {step.name} "argued" second JT',
                 f'concede {target} "will do" customer telephone',
                 f'concede {group.name}[{group.bolts[0]}] in {step.name} "will do"',
                 f'not needed {target} "not on this one"', f'withdraw {check.name} "not asked"',
                 f'withdraw {target} "not asked"',
                 f'decide {check.name} keep "fair" customer letter',
                 *self.calibrations(),
                 'shop recall lot LT-1 "letter"', f"strike #{self.dice.randint(5, 40)} typo",
                 f'add check "{self.dice.choice(WORDS)} face" "fretting" in {step.name}: at most 0.05 mm',
                 f'reopen {step.name} "again"', f"sign {step.name}"]
        if reading:
            lines += [f'amend {target} limits 9.90..10.10 "letter"',
                      f"read {target} in {step.name} {self.value()}{self.gauge()}",
                      f"read {target} in {step.name} {self.value()}{self.gauge()} after #{self.dice.randint(5, 30)}"]
        self.say(self.dice.choice(lines), self.dice.choice(("MO", "JT")))

    def calibrations(self) -> list[str]:
        day, found = f"{self.now:%Y-%m-%d}", self.dice.choice(FOUND)
        return [f"shop calibration W1 {day} {found}", f"shop calibration W2 {day} {found}",
                f"shop calibration G1 {day} {found} U 0.01 mm"]

    def text(self) -> str:
        return "\n".join(self.lines) + "\n"


def spot(name: str, place: tuple[str, ...]) -> str:
    return f"{name}[{', '.join(place)}]" if place else name


def main(arguments: list[str]) -> int:
    if len(arguments) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    dice, folder = random.Random(int(arguments[0])), Path(arguments[1])
    plan = PlanMade(dice)
    log = LogMade(dice, plan)
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in (("plan.yaml", plan.text()), ("shop.log", SHOP), ("build.log", log.text())):
        (folder / name).write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
