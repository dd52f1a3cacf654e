"""What happens to a random build afterwards, aimed at how it stands: at what fails or is in doubt,
and at the entries it has."""
from __future__ import annotations

from fractions import Fraction
from typing import Any

from made_log import LogMade, spot
from made_plan import WORDS

Row = dict[str, Any]
STRUCK = ("read", "look", "tick", "move", "fit", "slacken", "rework", "laid", "amend", "concede",
          "uphold", "decide", "not needed", "withdraw", "add", "sign", "reopen", "choose", "waited",
          "news")


class AfterMade:
    """A few lines at a time, the log going on behind them."""

    def __init__(self, log: LogMade):
        self.log, self.dice = log, log.dice

    def lines(self, requirements: list[Row], entries: list[Row]) -> str:
        self.log.lines.clear()
        for _ in range(self.dice.randint(2, 7)):
            self.one(requirements, entries)
        return self.log.text()

    def one(self, requirements: list[Row], entries: list[Row]) -> None:
        draw = self.dice.random()
        if draw < 0.2:
            self.strike(entries)
        elif draw < 0.4:
            self.work()
        elif draw < 0.5:
            self.say(self.dice.choice(self.log.calibrations() + ['shop recall lot LT-1 "letter"',
                                                                 'shop recall lot LT-A "letter"']))
        else:
            self.about(requirements, entries)

    def say(self, text: str) -> None:
        if self.dice.random() < 0.04:
            self.log.say("note \"the clock was set back\"", minutes=-15)
        self.log.say(text, self.dice.choice(("MO", "MO", "JT", "EV")))

    def strike(self, entries: list[Row]) -> None:
        kinds = ("strike",) if self.dice.random() < 0.3 else STRUCK
        kind = self.dice.choice(kinds)
        there = [entry for entry in entries if entry["kind"] == kind]
        if there:
            self.say(f"strike #{self.dice.choice(there)['seq']} typo")

    def work(self) -> None:
        """Taken up once more: bolts, parts, settings."""
        step = self.dice.choice(self.log.plan.steps)
        group, stages = self.dice.choice(step.tightened)
        moved = [check for check in step.checks if check.setting]
        draw = self.dice.random()
        if draw < 0.25:
            self.log.again(group, f"{group.name} in {step.name}", stages)
        elif draw < 0.45:
            self.log.tighten(group, stages, step.name)
        elif draw < 0.6 and step.parts:
            self.log.fit(self.dice.choice(step.parts))
        elif draw < 0.75 and step.parts:
            self.say(f'rework {self.dice.choice(step.parts)}{self.dice.choice(("", "[front]"))} "filed"')
        elif moved:
            where = self.dice.choice(("", "", "[front]")) if moved[0].axes else ""
            unit = "mm" if moved[0].reads else "turn"
            self.say(f"move {moved[0].name}{where} by {self.dice.choice(('1/48', '-1/24'))} {unit}")
        else:
            self.say(f'slacken {group.name}[{self.dice.choice(group.bolts)}] in {step.name} "beneath"')

    def about(self, requirements: list[Row], entries: list[Row]) -> None:
        """Something is said of a requirement, or it is done again."""
        verdict = self.dice.choice(("fail", "in doubt", "in doubt", "conceded", "pass", "open", "noted"))
        there = [row for row in requirements if row["verdict"] == verdict] or requirements
        row = self.dice.choice(there)
        found = [row for row in requirements
                 if row["finding"] and row["own verdict"] in ("fail", "in doubt")]
        if found and self.dice.random() < 0.15:
            what = self.dice.choice(("keep", "rework", "replace", "look closer"))
            self.say(f'decide {self.dice.choice(found)["name"]} {what} "seen" customer letter')
            return
        sayings = {"read": self.of_reading, "look": self.of_look, "sign": self.of_sign}
        texts = sayings.get(row["asked"], self.of_rest)(row)
        if verdict in ("fail", "in doubt", "conceded") and self.dice.random() < 0.5:
            texts = self.decisions(row)
        behind = f" after #{self.dice.choice(entries)['seq']}" if self.dice.random() < 0.15 else ""
        self.say(self.dice.choice(texts) + behind)

    def decisions(self, row: Row) -> list[str]:
        name = row["name"]
        found = [f'concede {name} "will do" customer telephone', f'uphold {name} "argued" second JT',
                 f'uphold {name} "argued" second EV']
        if row["value"] is not None:
            found += [f'concede {name} to {self.near(row, 0.08)} "will do"',
                      f'amend {name} limits {self.near(row, -0.1)}..{self.near(row, 0.1)} "letter"']
        return found

    def near(self, row: Row, by: float) -> str:
        scale = 0.04 if row["unit"] == "in" else 1.0
        value = float(Fraction(row["value"])) * (1000 if row["unit"] == "mm" else 1)
        value = value / 0.0254 if row["unit"] == "in" else value
        by = by * self.dice.choice((0.2, 1, -1 if by == 0.08 else 1))
        return f"{value + by * scale:.3f}"

    def rest(self, row: Row) -> list[str]:
        return [f'not needed {row["name"]} "not on this one"',
                f'withdraw {self.place_of(row)} "not asked"',
                f'add check "{self.dice.choice(WORDS)} rim" "fretting" in {row["step"]}: at most 10.05 mm',
                f'add step "{self.dice.choice(WORDS)} anew" "asked for" behind {row["step"]}']

    def place_of(self, row: Row) -> str:
        return spot(row["of"], tuple(row["place"].split(", ")) if row["place"] else ())

    def of_reading(self, row: Row) -> list[str]:
        at = f"{self.place_of(row)} in {row['step']}"
        inches = row["unit"] == "in"
        value = f"0.39{self.dice.randint(1, 7)}" if inches else self.log.value()
        bound = self.dice.choice(("", "", "", "<", ">"))
        readings = [f"read {at} {bound}{value}{self.log.gauge()}", f"read {at} {value} with G1",
                    f"read {at} {value}{self.log.gauge()}", f"read {at} {value} with G2",
                    f'rework {self.place_of(row)} "filed"', f'amend {row["of"]} wear 10.15 "letter"']
        return readings * 2 + self.rest(row)

    def of_look(self, row: Row) -> list[str]:
        looks = [f"look {row['of']} in {row['step']} {answer}"
                 for answer in ("yes", "no", "3", "4", "dry", "wet", '"seen"')]
        return looks + [f'amend {row["of"]} limits {limits} "letter"' for limits in
                        ("no", "exactly 3", "wet of dry/damp/wet")] + self.rest(row)

    def of_sign(self, row: Row) -> list[str]:
        return [f"sign {row['step']}", f"sign {row['step']}", f'reopen {row["step"]} "again"',
                f'withdraw {row["step"]} "not asked"', f'not needed {row["step"]} "not on this one"']

    def of_rest(self, row: Row) -> list[str]:
        """Bolts, waits and parts."""
        if row["asked"] == "fit":
            lot = self.dice.choice(("", "lot LT-1 ", "lot LT-A ", "lot LT-B ", "serial \"12\" "))
            done = [f"fit {self.place_of(row)} {lot}new", f'fit {self.place_of(row)} {lot}reused "sound"',
                    f'fit {self.place_of(row)} {lot}reworked "trued"',
                    f"lay sealant on {row['of']} lot SS-1"]
        elif row["asked"] == "wait":
            done = [f"waited {row['name']}"] * 3
        else:
            done = [f"tighten {row['name']} with W1", f"tighten {row['name']}{self.log.wrench('20')}",
                    f'slacken {self.place_of(row)} in {row["step"]} "beneath"']
        return done * 2 + self.rest(row)
