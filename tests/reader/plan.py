"""A plan file as the reader needs it: an own expansion of steps, checks, groups and places."""
from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction as F
from typing import Any

import yaml

from arrays import Array, Axis, Labels, Place
from formula import Context, evaluate, give_unit, parse
from formula import names as names_in
from labels import axes_at, bolts_at, labels, order_of, places
from limits import Limits, Stage, parse_limits, parse_stage
from units import PURE, Kind, Unit, parse_unit, raised, times

NEWTON_METRE, DEGREE = parse_unit("N·m"), parse_unit("°")
ONE_BY_ONE = ", one by one"  # behind the stages of a retighten
CHECK_KEYS = {"at", "unit", "decimals", "limits", "wear", "aim", "gauge", "doubt", "source",
              "choose", "set", "with", "rests on", "settled by", "feature", "optional", "note",
              "formerly"}


@dataclass
class Check:
    name: str
    step: str
    formula: tuple | None = None
    axes: list[Axis] = field(default_factory=list)
    limits: dict[str | None, Limits] = field(default_factory=dict)
    form: str = "value"
    kind: Kind = PURE
    unit: Unit | None = None
    wear: F | None = None
    doubt: F | None = None
    choose: str | None = None
    setting: bool = False
    added: bool = False
    held_by: list[str] = field(default_factory=list)
    rests_on: list[str] = field(default_factory=list)
    settled_by: list[str] = field(default_factory=list)
    by_decision: bool = False
    optional: bool = False

    @property
    def finding(self) -> bool:
        return self.by_decision or bool(self.settled_by)

    @property
    def asked(self) -> str:
        return "read" if self.form in ("value", "any") else "look"

    def asked_axes(self) -> list[Axis]:
        """The places of its requirements: what is chosen along an axis is asked once."""
        return [axis for axis in self.axes if axis[0] != self.choose]


@dataclass
class Group:
    name: str
    step: str
    axes: list[Axis]
    order: list[Labels]
    each: list[str]
    stages: list[Stage]
    use: str
    track: str | None
    then_off: bool
    lubricants: set[str]
    lubricant: Any = None  # as written
    ceiling: F | None = None

    def lubricant_of(self, place: Labels) -> str | None:
        """What the plan asks for on that bolt."""
        if not isinstance(self.lubricant, dict):
            return self.lubricant
        named = (what for bolts, what in self.lubricant.items()
                 if set(labels(str(bolts).replace("-", "/"))) & set(place))
        return next(named, self.lubricant.get("others"))

    @property
    def fitted(self) -> bool:
        """New or tracked bolts are asked for one by one."""
        return self.use in ("new", "once") or self.track is not None


@dataclass
class Tightening:
    group: Group
    step: str
    stages: list[Stage]
    one_by_one: bool = False

    def run_of(self, place: Labels) -> Labels:
        """What `each` takes through all stages by itself: places of one run share this."""
        if self.one_by_one or "bolt" in self.group.each:
            return place
        names = [axis[0] for axis in self.group.axes]
        return tuple(label for name, label in zip(names, place) if name in self.group.each)


@dataclass
class Part:
    name: str
    step: str
    axes: list[Axis]
    use: str
    track: str | None


@dataclass
class Consumable:
    name: str
    fit_within: F | None
    fluid_after: F | None
    run_after: F | None


@dataclass
class Step:
    name: str
    index: int
    gate: str
    begins: str = ""
    persons: int = 1
    uses: list[str] = field(default_factory=list)
    read_again: list[str] = field(default_factory=list)
    checks: list[Check] = field(default_factory=list)
    tightenings: list[Tightening] = field(default_factory=list)
    parts: list[Part] = field(default_factory=list)
    added: bool = False


@dataclass(frozen=True)
class Asked:
    """A requirement: what is asked, where."""
    sort: str
    name: str
    step: str
    place: Labels = ()
    number: int = 0
    again: bool = False

    def words(self) -> str:
        where = f" in {self.step}" if self.again or self.sort in ("bolt", "wait") else ""
        place = f"[{', '.join(self.place)}]" if self.place else ""
        stage = "" if not self.number else (
            f", {self.number}" if self.sort == "sign" else f", stage {self.number}")
        return f"{self.sort} {self.name}{where}{place}{stage}"


def listed(value: Any) -> list[str]:
    if value is None:
        return []
    return [str(one) for one in value] if isinstance(value, list) else [str(value)]


class Plan:
    def __init__(self, tree: dict[str, Any]):
        self.tree = tree
        self.units = [parse_unit(text) for text in listed(tree.get("units"))]
        self.axes = {name: labels(text) for name, text in (tree.get("axes") or {}).items()}
        self.checks: dict[str, Check] = {}
        self.groups: dict[str, Group] = {}
        self.parts: dict[str, Part] = {}
        self.steps: dict[str, Step] = {}
        self.doubts: dict[Any, F] = {}
        self.given: dict[str, Array] = {}
        self.given_kinds: dict[str, Kind] = {}
        for name, value in (tree.get("given") or {}).items():
            self.read_given(name, value)
        self.consumables = {name: self.consumable(name, value or {})
                            for name, value in (tree.get("consumables") or {}).items()}
        self.gates = listed(tree.get("gates")) or ["first start", "hand over", "follow-up"]
        steps = tree["steps"]
        named = any("gate" in (value or {}) for value in steps.values())
        self.gate = self.gates[0] if named else "hand over"
        for name, value in steps.items():
            self.add_step(name, value or {})

    # Numbers and units

    def first_unit(self) -> Unit | None:
        return self.units[0] if self.units else None

    def unit_of(self, kind: Kind) -> Unit | None:
        return next((unit for unit in self.units if unit.kind == kind), None)

    def number(self, text: str, unit: Unit | None, width: bool = False) -> F:
        tree = give_unit(parse(text), unit)
        if width and tree[0] == "quantity":
            return tree[5].width(tree[1]) if tree[5] else tree[1]
        return evaluate(tree, Context(self.given.__getitem__))[()].value

    def seconds(self, text: str | None) -> F | None:
        return None if text is None else self.number(text, None)

    def consumable(self, name: str, value: dict[str, Any]) -> Consumable:
        return Consumable(name, self.seconds(value.get("fit within")),
                          self.seconds(value.get("fluid after")),
                          self.seconds(value.get("run after")))

    def read_given(self, name: str, value: Any) -> None:
        texts = value if isinstance(value, dict) else {"": str(value)}
        arrays: dict[str, Place] = {}
        for label, text in texts.items():
            tree = give_unit(parse(str(text)), self.first_unit())
            self.given_kinds[name] = self.kind_of(tree)
            context = Context(self.given.__getitem__, source=("given", name, label),
                              doubts=self.doubts)
            arrays[label] = evaluate(tree, context)[()]
        if not isinstance(value, dict):
            self.given[name] = Array([], {(): arrays[""]})
            return
        axis = next((axis, all_labels) for axis, all_labels in self.axes.items()
                    if set(arrays) <= set(all_labels))
        kept = tuple(label for label in axis[1] if label in arrays)
        self.given[name] = Array([(axis[0], kept)], {(label,): arrays[label] for label in kept})

    def kind_of(self, tree: tuple) -> Kind:
        node = tree[0]
        if node == "quantity":
            return tree[5].kind if tree[5] else PURE
        if node == "name":
            return self.kind_of_name(tree[1])
        if node in ("*", "/"):
            return times(self.kind_of(tree[1]), self.kind_of(tree[2]), 1 if node == "*" else -1)
        if node == "power":
            return raised(self.kind_of(tree[1]), tree[2])
        if node == "call":
            kind = self.kind_of(tree[2][0])
            return tuple(e // 2 for e in kind) if tree[1] == "sqrt" else kind  # type: ignore
        return self.kind_of(tree[1])

    def kind_of_name(self, name: str) -> Kind:
        if name in self.given_kinds:
            return self.given_kinds[name]
        return self.checks[name].kind if name in self.checks else PURE

    # Steps and what stands in them

    def add_step(self, name: str, value: dict[str, Any], added: bool = False) -> Step:
        self.gate = str(value.get("gate", self.gate))
        hold = value.get("hold")
        holds = hold.values() if isinstance(hold, dict) else listed(hold)
        step = Step(name, len(self.steps), self.gate, str(value.get("begins", "")),
                    1 + sum(2 if str(words) == "two persons" else 1 for words in holds),
                    listed(value.get("uses")), listed(value.get("read again")), added=added)
        self.steps[name] = step
        self.add_contents(step, value)
        return step

    def add_contents(self, step: Step, value: dict[str, Any]) -> None:
        fits = value.get("fit") or {}
        fits = fits if isinstance(fits, dict) else {part: None for part in listed(fits)}
        for name, part in fits.items():
            self.add_part(step, name, part or {})
        for name, group in (value.get("fasteners") or {}).items():
            self.add_group(step, name, group)
        for key, check in (value.get("checks") or {}).items():
            self.add_check(step, key, check, value)
        for name, stages in (value.get("retighten") or {}).items():
            group = self.groups[name]
            alone = str(stages).endswith(ONE_BY_ONE)
            said = str(stages).removesuffix(ONE_BY_ONE)
            again = group.stages if said == "as before" else self.stages(said)
            step.tightenings.append(Tightening(group, step.name, again, alone))

    def add_part(self, step: Step, name: str, value: dict[str, Any]) -> Part:
        part = Part(name, step.name, axes_at(value.get("at"), self.axes),
                    str(value.get("use", "may be reused")), value.get("track"))
        self.parts[name] = part
        step.parts.append(part)
        return part

    def stages(self, text: str) -> list[Stage]:
        torque = self.unit_of(NEWTON_METRE.kind) or NEWTON_METRE
        return [parse_stage(part, torque, DEGREE) for part in str(text).split(">")]

    def add_group(self, step: Step, name: str, value: dict[str, Any]) -> Group:
        axes = bolts_at(value["bolts"], self.axes)
        lubricant = value.get("lubricant")
        words = lubricant.values() if isinstance(lubricant, dict) else listed(lubricant)
        each = listed(value.get("each"))
        order = order_of(value.get("order"), value.get("layout"), axes, each)
        group = Group(name, step.name, axes, order, each, self.stages(value["stages"]),
                      str(value.get("use", "may be reused")), value.get("track"),
                      value.get("then off") == "yes", set(words), lubricant)
        if "ceiling" in value:
            torque = self.unit_of(NEWTON_METRE.kind) or NEWTON_METRE
            group.ceiling = self.number(str(value["ceiling"]), torque)
        self.groups[name] = group
        step.tightenings.append(Tightening(group, step.name, group.stages))
        return group

    def add_check(self, step: Step, key: str, value: Any, outer: dict[str, Any]) -> Check:
        name, _, formula = (part.strip() for part in key.partition("="))
        if not isinstance(value, dict):
            value = {"limits": value} if value not in (None, "") else {}
        elif not set(value) & CHECK_KEYS and value:
            value = {"limits": value}
        check = Check(name, step.name)
        if formula:
            check.formula = parse(formula)
            check.kind = self.kind_of(check.formula)
        self.measure(check, value, outer)
        self.relate(check, value)
        self.checks[name] = check
        self.place(check, value)
        step.checks.append(check)
        return check

    def add_places(self, check: Check, value: dict[str, Any]) -> None:
        """More of them behind its own, with limits of their own or with its."""
        (name, before), = check.axes
        (_, more), = axes_at(value["at"], self.axes)
        check.axes = [(name, (*before, *more))]
        if "limits" in value:
            all_of_it = check.limits.pop(None, None)
            if all_of_it:
                check.limits |= {label: all_of_it for label in before}
            check.limits |= {label: parse_limits(str(value["limits"]), check.unit) for label in more}

    def measure(self, check: Check, value: dict[str, Any], outer: dict[str, Any]) -> None:
        """Limits, unit, service limit and doubt."""
        given = value.get("limits")
        texts = given if isinstance(given, dict) else {None: given} if given is not None else {}
        own = parse_unit(value["unit"]) if "unit" in value else None
        written = next((limits.unit for limits in
                        (parse_limits(str(text), None) for text in texts.values())
                        if limits.unit), None)
        check.unit = own or written or self.inherited_unit(check, outer)
        check.limits = {label: parse_limits(str(text), check.unit)
                        for label, text in texts.items()}
        if check.limits:
            check.form = next(iter(check.limits.values())).form
        if not check.formula:
            check.kind = check.unit.kind if check.unit else PURE
        if "wear" in value:
            check.wear = self.number(str(value["wear"]), check.unit)
        doubt = value.get("doubt") if check.formula else self.inherited("doubt", value, outer)
        if doubt is not None:
            check.doubt = self.number(str(doubt), check.unit, width=True)

    def inherited(self, key: str, *inner: dict[str, Any]) -> Any:
        return next((level[key] for level in (*inner, self.tree) if key in level), None)

    def inherited_unit(self, check: Check, outer: dict[str, Any]) -> Unit | None:
        text = self.inherited("unit", outer)
        unit = parse_unit(text) if text else None
        if check.formula:
            return unit if unit and unit.kind == check.kind else self.unit_of(check.kind)
        return unit or self.first_unit()

    def relate(self, check: Check, value: dict[str, Any]) -> None:
        check.choose = value.get("choose")
        check.setting = "set" in value
        check.held_by = listed(value.get("with"))
        check.rests_on = listed(value.get("rests on"))
        settled = listed(value.get("settled by"))
        check.by_decision = settled == ["decision"]
        check.settled_by = [] if check.by_decision else settled
        check.optional = value.get("optional") == "yes"

    def place(self, check: Check, value: dict[str, Any]) -> None:
        if not check.formula:
            texts = listed(value.get("at"))
            check.axes = [axis for text in texts for axis in
                          (self.groups[text].axes if text in self.groups and text not in self.axes
                           else axes_at(text, self.axes))]
            return
        check.axes = evaluate(check.formula, Context(self.shape)).axes

    def read_for(self, setting: Check) -> list[Check]:
        """What each trial of a setting reads: itself, or the checks that its formula uses, also
        over other formulas, in its own step; no settings of their own and no findings."""
        if not setting.formula:
            return [setting]
        return self.read_by(setting, setting, [])

    def read_by(self, setting: Check, check: Check, found: list[Check]) -> list[Check]:
        for name in [] if setting.choose else names_in(check.formula):
            used = self.checks.get(name)
            if (not used or used in found or used.step != setting.step or used.setting
                    or used.finding or used.asked != "read"):
                continue
            if used.formula:
                self.read_by(setting, used, found)
            else:
                found.append(used)
        return found

    def shape(self, name: str) -> Array:
        return self.given[name] if name in self.given else Array(self.checks[name].axes)

    def names_rested_on(self) -> dict[str, set[str]]:
        """By check what it rests on: what is said; and of a setting what it is read with, if that
        is of its own step and stays, and nothing is said to rest on it."""
        said = {check.name: {self.named(words)[0] for words in check.rests_on}
                for check in self.checks.values()}
        anywhere = set().union(*said.values())
        return {check.name: said[check.name] | (self.holds(check) - anywhere)
                for check in self.checks.values()}

    def holds(self, check: Check) -> set[str]:
        """What a setting is read with that is tightened first in its step, to stay."""
        named = [self.named(words) for words in check.held_by if check.setting]
        return {name for name, step in named
                if name in self.groups and self.groups[name].step == check.step
                and not self.groups[name].then_off and step in (None, check.step)}

    # Names

    def instances(self, check: str) -> list[str]:
        """The steps that ask for a check: its own, then those that read it again."""
        return [self.checks[check].step] + [step.name for step in self.steps.values()
                                            if check in step.read_again]

    def tightening(self, group: str, step: str | None) -> Tightening | None:
        """The tightening of a set in that step, else its first."""
        having = self.tightenings_of(group)
        return next((t for t in having if t.step == step), having[0] if having else None)

    def tightenings_of(self, group: str) -> list[Tightening]:
        return [t for step in self.steps.values() for t in step.tightenings if t.group.name == group]

    def named(self, words: str) -> tuple[str, str | None]:
        """`main caps in Crank` as the name and its step; the longest name that is there."""
        if words in self.checks or words in self.groups or words in self.parts:
            return words, None
        pieces = words.split(" in ")
        for cut in range(len(pieces) - 1, 0, -1):
            name, step = " in ".join(pieces[:cut]), " in ".join(pieces[cut:])
            if step in self.steps and (name in self.checks or name in self.groups
                                       or name in self.parts):
                return name, step
        raise KeyError(words)

    # Requirements

    def asked(self) -> list[Asked]:
        return [one for step in self.steps.values() for one in self.asked_in(step)]

    def asked_in(self, step: Step) -> list[Asked]:
        found = [Asked("fit", part.name, step.name, place)
                 for part in step.parts for place in places(part.axes)]
        for check in step.checks:
            found += self.asked_of(check, step.name, False)
        for name in step.read_again:
            found += self.asked_of(self.checks[name], step.name, True)
        for tightening in step.tightenings:
            found += self.asked_bolts(tightening)
        return found + [Asked("sign", step.name, step.name, (), n + 1) for n in range(step.persons)]

    def asked_of(self, check: Check, step: str, again: bool) -> list[Asked]:
        return [Asked(check.asked, check.name, step, place, 0, again)
                for place in places(check.asked_axes())]

    def asked_bolts(self, tightening: Tightening) -> list[Asked]:
        group, found = tightening.group, []
        all_places = places(group.axes)
        if group.fitted and tightening.step == group.step:
            found += [Asked("fit", group.name, group.step, place) for place in all_places]
        for number, stage in enumerate(tightening.stages, 1):
            if stage.kind == "wait":
                found.append(Asked("wait", group.name, tightening.step, (), number))
                continue
            found += [Asked("bolt", group.name, tightening.step, place, number)
                      for place in all_places]
        return found


def load(path: str) -> Plan:
    """All scalars are text; the plan alone decides what `1/2` or `yes` is."""
    with open(path, encoding="utf-8") as file:
        return Plan(yaml.load(file, Loader=yaml.BaseLoader))
