"""Random plans: steps with groups, parts, checks and formulas that can be worked out."""
from __future__ import annotations

import random
from dataclasses import dataclass, field
from itertools import product

WORDS = ("alder", "birch", "cedar", "damson", "elder", "fir", "gorse", "hazel", "ivy", "juniper",
         "larch", "maple", "nutmeg", "oak", "poplar", "quince", "rowan", "sorrel", "thorn", "willow",
         "yew", "aspen", "beech", "clover", "dogwood", "fern", "heather", "iris", "laurel", "myrtle")
AXES = {"row": ("1", "2", "3"), "end": ("front", "rear"), "side": ("a", "b")}
GRADES = ("A", "B")
STAGES = ("20 > 40", "30", "20 > 30 > 40", "30 > +60°", "20 > wait 10 min > 40", "snug > 35", "8 > 30",
          "20 > slacken > 40", "30 > slacken 1/4 turn > 35")


@dataclass
class CheckMade:
    name: str
    axes: list[str]
    kind: str  # read, formula or look
    answers: tuple[str, ...] = ()
    choose: bool = False
    finding: bool = False
    setting: bool = False
    reads: CheckMade | None = None  # of a setting that is worked out: what is read for it
    inches: bool = False

    def places(self) -> list[tuple[str, ...]]:
        return list(product(*(AXES[axis] for axis in self.axes)))


@dataclass
class GroupMade:
    name: str
    bolts: list[str]
    order: list[str]
    stages: list[str]
    sealed: bool
    each: bool


@dataclass
class StepMade:
    name: str
    checks: list[CheckMade] = field(default_factory=list)
    tightened: list[tuple[GroupMade, list[str]]] = field(default_factory=list)
    parts: list[str] = field(default_factory=list)
    again: list[CheckMade] = field(default_factory=list)
    persons: int = 1
    until: list[str] = field(default_factory=list)


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
        if self.dice.random() < 0.25:
            self.pairs(step)
        self.retighten(step, number)
        self.parts(step)
        self.lines.append("    checks:")
        self.read_checks(step)
        if self.dice.random() < 0.3:
            self.setting(step)
        if self.dice.random() < 0.3:
            self.inches(step)
        if self.dice.random() < 0.3:
            self.setting_by_formula(step)
        for _ in range(self.dice.randint(1, 3)):
            self.formula(step)
        self.look(step)
        self.read_again(step, number)
        if self.dice.random() < 0.4:
            step.persons = self.dice.choice((2, 2, 3))
            persons = "second person" if step.persons == 2 else "two persons"
            self.lines.append(f"    hold: {{seen: {persons}}}")

    def group(self, step: StepMade) -> None:
        count = self.dice.randint(2, 5)
        bolts = [str(n + 1) for n in range(count)]
        order = self.dice.sample(bolts, count)
        stages = self.dice.choice(STAGES)
        extra = ""
        if self.dice.random() < 0.15:
            step.until.append(self.word())
            stages, extra = f"20 > until {step.until[-1]}", ", ceiling: 35"
        sealed = self.dice.random() < 0.4
        each = self.dice.random() < 0.1
        group = GroupMade(f"{self.word()} bolts", bolts, order, stages.split(" > "), sealed, each)
        use = self.dice.choice(("new", "once", "may be reused", "may be reused"))
        extra += ", then off: yes" if self.dice.random() < 0.2 else ""
        extra += ", track: lot" if self.dice.random() < 0.2 else ""
        extra += ", lubricant: sealant" if sealed else ""
        extra += ", each: bolt" if each else ""
        self.lines.append(f"      {group.name}: {{bolts: 1..{count}, order: {'-'.join(order)}, "
                          f"stages: {stages}, use: {use}{extra}}}")
        step.tightened.append((group, group.stages))
        self.groups.append(group)

    def pairs(self, step: StepMade) -> None:
        """Bolts along two axes, perhaps taken row by row."""
        bolts = [f"{row}, {side}" for row in AXES["row"] for side in AXES["side"]]
        each = self.dice.random() < 0.5
        stages = self.dice.choice(("20 > 40", "30"))
        group = GroupMade(f"{self.word()} bolts", bolts, bolts, stages.split(" > "), False, each)
        extra = ", each: row" if each else ""
        self.lines.append(f"      {group.name}: {{bolts: [row, side], stages: {stages}{extra}}}")
        step.tightened.append((group, group.stages))
        self.groups.append(group)

    def setting(self, step: StepMade) -> None:
        check = CheckMade(self.word(), self.dice.choice(([], ["end"])), "read", setting=True)
        held = self.dice.choice(step.tightened)[0].name
        at = "at: [end], " if check.axes else ""
        holds = self.dice.choice(("rests on", "with"))
        self.lines.append(f"      {check.name}: {{{at}decimals: 2, gauge: dial, limits: 9.95..10.05, "
                          "set: {move: screw, unit: turn, range: 0..3, step: 1/48 turn, "
                          f"gives: 0.5 mm, zero: mesh, loose: yes}}, {holds}: {held}}}")
        step.checks.append(check)
        self.inputs.append(check)

    def setting_by_formula(self, step: StepMade) -> None:
        """Worked out of a check of the same step, perhaps over another formula, perhaps with one
        of an earlier step or a constant."""
        read = CheckMade(self.word(), self.dice.choice((["row"], ["end", "row"])), "read")
        rest = read.axes[:-1]
        by = self.dice.choice([group.name for group, _ in step.tightened])
        own, of_it = self.dice.choice((("", f", rests on: {by}"), (f", rests on: {by}", "")))
        self.lines.append(f"      {read.name}: {{at: [{', '.join(read.axes)}], decimals: 2, "
                          f"gauge: dial{own}}}")
        inputs = [check.name for check in self.inputs if not check.axes and not check.inches]
        other = self.dice.choice(inputs + ["nominal", "shim"])
        forms = [(f"{read.name}[3] - {read.name}[1]", "-0.05..0.05", rest),
                 (f"max({read.name} over row) - {other}", "-0.05..0.05", rest),
                 (f"{read.name} - {read.name}[row - 1]", "-0.05..0.05", None)]
        text, limits, axes = self.dice.choice(forms)
        if self.dice.random() < 0.3:
            between = self.word()
            self.lines.append(f"      {between} = {read.name} + 0 mm: any")
            text = text.replace(read.name, between)
        check = CheckMade(self.word(), axes or [], "formula", setting=True, reads=read)
        self.lines.append(f"      {check.name} = {text}: {{limits: {limits}{of_it}, set: "
                          "{move: bracket, unit: mm, range: 0..3, stock: 0..3 in 0.5}}")
        step.checks += [read, check]
        self.inputs.append(read)

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
            use += self.dice.choice(("", "", "", ", track: lot", ", track: serial"))
            self.lines.append(f"    fit: {{{part}: {{at: end, use: {use}}}}}")
            step.parts.append(part)

    def base(self) -> str:
        """What a check stands on."""
        draw = self.dice.random()
        if draw < 0.5 or not self.groups:
            return ""
        name = self.dice.choice(self.groups).name
        if draw < 0.8:
            parts = [part for step in self.steps for part in step.parts]
            settings = [check.name for check in self.inputs if check.setting]
            also = self.dice.choice(parts + settings) if (parts or settings) else name
            return f", rests on: {name if also == name else f'[{name}, {also}]'}"
        last = [step.name for step in self.steps if name in [g.name for g, _ in step.tightened]][-1]
        held = name + (f" in {last}" if self.dice.random() < 0.3 else "")
        parts = [part for step in self.steps for part in step.parts]
        also = f", {self.dice.choice(parts)}" if parts and self.dice.random() < 0.3 else ""
        return f", with: [{held}{also}]"

    def limits(self, middle: str) -> str:
        lower, upper = {"10": ("9.95", "10.05"), "0": ("-0.04", "0.06"), "1": ("0.99", "1.01"),
                        "11": ("10.9", "11.1")}[middle]
        wear = f", wear: {float(upper) + 0.05:.2f}" if self.dice.random() < 0.4 else ""
        kind = self.dice.choice(("both", "both", "at least", "at most"))
        if kind == "at least":
            below = f", wear: {float(lower) - 0.05:.2f}" if wear else ""
            return f"limits: at least {lower}{below}"
        if middle == "10" and self.dice.random() < 0.15:
            return self.formula_limits()  # a service limit needs figures beside it
        return (f"limits: {lower}..{upper}" if kind == "both" else f"limits: at most {upper}") + wear

    def formula_limits(self) -> str:
        """Limits that are worked out, of a constant or of another check."""
        single = [check.name for check in self.inputs if not check.axes and not check.inches]
        of = self.dice.choice(single + ["nominal"])
        return self.dice.choice((f"limits: 99.5 % * {of} .. 100.5 % * {of}",
                                 f"limits: at most {of} + 0.05"))

    def inches(self, step: StepMade) -> None:
        check = CheckMade(self.word(), ["end"], "read", inches=True)
        limits = self.dice.choice(("0.392..0.396", "{front: 0.392..0.396, rear: at most 0.395}"))
        self.lines.append(f"      {check.name}: {{at: end, unit: in, decimals: 3, gauge: dial, "
                          f"limits: {limits}}}")
        step.checks.append(check)
        self.inputs.append(check)

    def read_checks(self, step: StepMade) -> None:
        for name in step.until + [self.word() for _ in range(self.dice.randint(2, 3))]:
            check = CheckMade(name, self.some_axes(), "read")
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
        if self.dice.random() < 0.15:
            chosen += f", rests on: {self.dice.choice(self.groups).name}"
        if self.dice.random() < 0.15 and middle in ("10", "11"):
            chosen += ", doubt: 0.01"
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
        return self.dice.choice(forms if self.dice.random() < 0.6
                                else self.trade_of(one.name, other.name, one.axes, joined))

    def trade_of(self, one: str, other: str, axes: list[str],
                 joined: list[str]) -> list[tuple[str, str, list[str]]]:
        """Functions of the trade of two lengths of about 10 mm."""
        ratios = ("compression ratio(swept volume({0}, 10 mm), swept volume({1}, 10 mm)) - 1",
                  "clearance volume(swept volume({0}, 9 mm), {1}, 0.5 mm, {0}, 0.5 mm, 0 cc)"
                  " / swept volume({1}, 10 mm)",
                  "stress area({0}, 1.5 mm) / stress area({1}, 1.5 mm)",
                  "elastic stretch(10 kN, {0}, 50 mm², 200000 MPa) / elastic stretch(10 kN, {1}, "
                  "0.5 cm², 200 kN/mm²)",
                  "spring rate(700 N, 250 N, {0}, 2 * {1}) / 45 N/mm",
                  "midpoint(350 °, 370 ° * {0} / {1}) / 360 °")
        differences = ("clearance({0}, {1})", "hole wear({0}, {1})", "shaft wear({0}, {1})",
                       "bolt stretch({0}, {1})", "bind margin(2 * {0}, {1}, nominal)",
                       "at20({0}, 30 °C, steel) - at20({1}, 50 °F, steel)",
                       "at20({0}, 21 ± 2 °C, brass) - at20({1}, 21 ± 2 °C, bronze)")
        alone = ("at20({0}, 26 °C, iron)", "at20({0}, 30 °C, aluminium, 10 ± 1 °C, steel)",
                 "at20({0}, 12 °C, magnesium)", "at20({0}, 12 °C, titanium)")
        return ([(form.format(one, other), "1", joined) for form in ratios] +
                [(form.format(one, other), "0", joined) for form in differences] +
                [("shim wanted({0}, {1}, nominal)".format(one, other), "10", joined)] +
                [(form.format(one), "10", axes) for form in alone])

    def look(self, step: StepMade) -> None:
        words, answers = self.dice.choice((("yes", ("yes", "no")), ("text", ('"seen"',)),
                                           ("exactly 4", ("4", "3")),
                                           ("dry of dry/damp/wet", ("dry", "wet"))))
        check = CheckMade(self.word(), [], "look", answers)
        base = self.base()
        self.lines.append(f"      {check.name}: {{limits: {words}{base}}}" if base
                          else f"      {check.name}: {words}")
        step.checks.append(check)

    def read_again(self, step: StepMade, number: int) -> None:
        earlier = [c for s in self.steps[:number] for c in s.checks if c.kind == "read"]
        if earlier and self.dice.random() < 0.5:
            check = self.dice.choice(earlier)
            self.lines.append(f"    read again: [{check.name}]")
            step.again.append(check)

    def text(self) -> str:
        return "\n".join(self.lines) + "\n"
