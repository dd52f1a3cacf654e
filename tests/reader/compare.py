"""Two judgements of one build side by side: the program's `assess --json` and the reader's."""
from __future__ import annotations

import json
from fractions import Fraction as F
from typing import Any

from judge import Judge, Verdict, counts
import ledger
import plan as plans


def base_value(requirement: dict[str, Any]) -> str:
    """The program's value as an exact fraction in base units."""
    return "" if requirement["value"] is None else str(F(requirement["value"]))


Said = tuple[str, str, str, str]  # verdict, reason, value, all doubts


def said_by_program(requirement: dict[str, Any]) -> Said:
    if requirement["withdrawn"]:
        return "withdrawn", "", "", ""
    return (requirement["verdict"], requirement["reason"], base_value(requirement),
            " ".join(sorted(requirement["doubts"])))


def said_by_reader(verdict: Verdict) -> Said:
    if verdict.withdrawn:
        return "withdrawn", "", "", ""
    value = "" if verdict.value is None else str(verdict.value)
    return verdict.verdict, verdict.reason, value, " ".join(sorted(verdict.doubts))


def shown(said: Said | None) -> str:
    return "nothing" if said is None else " ".join(part for part in said if part)


def differences(plan: str, export: str, answer: str, upto: int | None = None) -> list[str]:
    """One line for each requirement on which the two do not agree, and for the counts."""
    judge = Judge(plans.load(plan), ledger.load(export, upto))
    verdicts = judge.all()
    mine = {verdict.asked.words(): said_by_reader(verdict) for verdict in verdicts}
    assessment = json.loads(answer)
    theirs = {one["name"]: said_by_program(one) for one in assessment["requirements"]}
    found = [f"{name}: program {shown(theirs.get(name))}, reader {shown(mine.get(name))}"
             for name in sorted(set(mine) | set(theirs)) if mine.get(name) != theirs.get(name)]
    for key, number in (("planned", judge.planned), ("added", judge.added),
                        ("withdrawn", sum(v.withdrawn for v in verdicts)),
                        ("counts", counts(verdicts))):
        if assessment[key] != number:
            found.append(f"{key}: program {assessment[key]}, reader {number}")
    return found
