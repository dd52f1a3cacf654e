"""Random logs of a plan's work, with slips: bolts out of turn, struck readings, things found later."""
from __future__ import annotations

import random
import re
from datetime import datetime, timedelta

from made_plan import GRADES, WORDS, CheckMade, GroupMade, PlanMade, StepMade

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
lot LT-A "graded parts" grade A
lot LT-B "graded parts" grade B
consumable sealant lot SS-1 supplier "Corran" expires 2025-11-30
consumable sealant lot SS-2 supplier "Corran" expires 2025-02-01
build B-1 engine E-1 plan "Random plan"
"""


class LogMade:
    """A story of the plan's work, with its slips."""

    def __init__(self, dice: random.Random, plan: PlanMade):
        self.dice, self.plan = dice, plan
        self.now = datetime(2025, 3, 3, 8, 0)
        self.lines: list[str] = []
        self.typing = random.Random(plan.text())  # of its own, so that it moves nothing else
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
            if step.persons > 1 and self.dice.random() < 0.8:
                self.say(f"sign {step.name}", "JT")
            if step.persons == 3 and self.dice.random() < 0.8:
                self.say(f"sign {step.name}", self.dice.choice(("JT", "EV", "EV")))
        if self.dice.random() < 0.1:
            self.say(f'reopen {step.name} "looked again"')

    def fit(self, part: str) -> None:
        use = self.dice.choice(STATES)
        where = self.dice.choice(("", "[front]"))
        lot = self.dice.choice(("", "", "lot LT-1 ", "lot LT-2 ", "lot LT-A ", "lot LT-B ",
                                "serial \"17\" "))
        if self.dice.random() < 0.1:
            self.say(f"lay sealant on {part} lot {self.dice.choice(('SS-1', 'SS-2'))}")
        self.say(f"fit {part}{where} {lot}{use}")

    def wrench(self, stage: str) -> str:
        if "°" in stage:
            return self.shown(stage) + self.dice.choice((" with A1", ""))
        if stage == "snug":
            return ""
        if stage.startswith("until"):
            return self.dice.choice((" 33", " 36", "")) + " with W1"
        return self.shown(stage) + " with " + self.dice.choice(("W1", "W1", "W1", "W2"))

    def shown(self, stage: str) -> str:
        """What was shown, one in four times: as asked, a tenth beside it, and a little more."""
        figure = re.search(r"\d+", stage)
        if not figure or self.typing.random() < 0.75:
            return ""
        parts = self.typing.choice((50, 80, 89, 90, 95, 100, 104, 109, 110, 111, 130, 1000))
        return f" {int(figure[0]) * parts / 100:g}"

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
            elif self.dice.random() < 0.6:
                self.say(f"tighten {name} stage {number} all{self.wrench(stage)}")
            else:
                self.one_by_one(group, name, number, self.wrench(stage))
        if self.dice.random() < 0.25:
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

    def typed(self, value: str) -> str:
        """The value as it is, one in four times with a ±, or worked out at the bench."""
        ways = (f"{value} ± 0.0{self.typing.randint(0, 3)}", f"{value} ± 1/64",
                f"({value} + {value}) / 2", f"{value} - 0.0{self.typing.randint(1, 4)}",
                f"{value} * 1/2 + {value} / 2 ± 0.005", f"{value} mm + 0.001 in",
                f"2 × {value} - {value}", f"{value} mm ± 0.001 in")
        return value if self.typing.random() < 0.75 else f'"{self.typing.choice(ways)}"'

    def gauge(self) -> str:
        return self.dice.choice((" with G1", " with G1", " with G2", " with G3", " with G4", ""))

    def measure(self, check: CheckMade, step: str) -> None:
        if self.dice.random() < 0.07:
            return
        if check.kind == "look":
            self.say(f"look {check.name} in {step} {self.dice.choice(check.answers)}")
        elif check.setting:
            self.trials(check, step)
        elif check.kind == "read":
            self.readings(check, step)
        elif check.choose:
            for place in check.places():
                self.say(f"choose {spot(check.name, place)} {self.dice.choice(GRADES)}")

    def trials(self, check: CheckMade, step: str) -> None:
        """Moved, read loose, perhaps struck, and read as it stands."""
        for _ in range(self.dice.randint(1, 2)):
            unit = "mm" if check.reads else "turn"
            self.say(f"move {check.name} to 0.{self.dice.randint(10, 90)} {unit}")
            if self.dice.random() < 0.3:
                self.say("strike last typo")
            read = check.reads or check
            if self.dice.random() < 0.5:
                self.say(f"read {spot(read.name, read.places()[0])} {self.value()} loose with G1")
            self.readings(read, step)

    def readings(self, check: CheckMade, step: str) -> None:
        gauge = self.gauge()
        for place in check.places():
            if self.dice.random() < 0.04:
                continue
            bound = self.dice.choice("<>") if self.dice.random() < 0.03 else ""
            value = f"0.39{self.dice.randint(1, 7)}" if check.inches else self.value()
            typed = f"{bound}{value}" if bound else self.typed(value)
            self.say(f"read {spot(check.name, place)} in {step} {typed}{gauge}", minutes=0)
            if self.dice.random() < 0.06:
                self.say(f"read {spot(check.name, place)} in {step} {self.value()}{self.gauge()}")
                if self.dice.random() < 0.6:
                    self.say("strike last typo")

    def slip(self, step: StepMade) -> None:
        group, stages = self.dice.choice(step.tightened)
        name = f"{group.name} in {step.name}"
        if self.dice.random() < 0.5:
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
                 f'decide {target} look closer "not sure yet"',
                 f'concede {target} to 10.20 "will do"', f'concede {target} to 9.80 "will do"',
                 f'uphold {check.name} "argued" second JT', f'uphold {check.name} "argued" second JT',
                 f'not needed {group.name}[{group.bolts[0]}] in {step.name} "no such hole"',
                 *self.calibrations(),
                 'shop recall lot LT-1 "letter"', f"strike #{self.dice.randint(5, 40)} typo",
                 f'add step "{self.dice.choice(WORDS)} again" "asked for" behind {step.name}',
                 f'add check "{self.dice.choice(WORDS)} face" "fretting" in {step.name}: at most 10.05 mm',
                 f'add check {check.name} "came back" in {self.dice.choice(self.plan.steps).name}: again',
                 f'reopen {step.name} "again"', f"sign {step.name}"]
        if reading:
            lines += [f'amend {target} limits 9.90..10.10 "letter"',
                      f'amend {check.name} wear 10.20 "letter"',
                      f'claim {target} 10.02 by "the shop across the road"',
                      f"read {target} in {step.name} {self.value()}{self.gauge()}",
                      f"read {target} in {step.name} {self.value()}{self.gauge()} after #{self.dice.randint(5, 30)}"]
        self.say(self.dice.choice(lines), self.dice.choice(("MO", "JT")))

    def calibrations(self) -> list[str]:
        day, found = f"{self.now:%Y-%m-%d}", self.dice.choice(FOUND)
        return [f"shop calibration W1 {day} {found}", f"shop calibration W2 {day} {found} gave 9.1 at 10, 41 at 45 lbf·ft",
                f"shop calibration G1 {day} {found} U 0.01 mm"]

    def text(self) -> str:
        return "\n".join(self.lines) + "\n"


def spot(name: str, place: tuple[str, ...]) -> str:
    return f"{name}[{', '.join(place)}]" if place else name
