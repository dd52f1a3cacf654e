"""How many of each verdict, reason and kind of event some builds gave."""
from __future__ import annotations

from collections import Counter
from typing import Any, Iterator

from decision import REASONS
from judge import VERDICTS
from typed import ARITHMETIC

Row = dict[str, Any]
FAULTS = ("fail low", "fail high", "fail beyond wear", "fail look", "in doubt gauge",
          *(f"in doubt {reason}" for reason in REASONS[REASONS.index("tool"):]))
EVENTS = ("strike", "strike of a strike", "after", "clock set back", "bound <", "bound >", "loose",
          "typed with a ±", "typed as arithmetic",
          "move", "move struck", "slacken", "slacken at a stage", "replaced", "reworked", "amended",
          "withdrawn", "added", "not needed", "calibration wrong", "calibration good", "recall",
          "upheld", "uphold ended", "conceded", "conceded within a bound", "concession passed by",
          "two persons", "decided", "look closer", "read again", "finding settled", "reopened",
          "standing on a slackened set")


def events_of(requirements: list[Row], entries: list[Row]) -> Iterator[str]:
    kinds = {entry["seq"]: entry["kind"] for entry in entries}
    signed: dict[tuple[str, int], str] = {}
    fitted: set[str] = set()
    latest = ""
    for entry in entries:
        kind, body = entry["kind"], entry["body"]
        yield from kind_events(kind, body, kinds)
        if entry["after"]:
            yield "after"
        if entry["at"] < latest:
            yield "clock set back"
        latest = entry["at"]
        if kind == "fit":
            where = body["part"] + str(body.get("place"))
            if where in fitted:
                yield "replaced"
            fitted.add(where)
        if kind == "sign":
            others = [by for (step, _), by in signed.items() if step == body["step"]]
            if any(by != entry["by"] for by in others):
                yield "two persons"
            signed[(body["step"], body["signature"])] = entry["by"]
    for row in requirements:
        yield from row_events(row, entries)


def kind_events(kind: str, body: Row, kinds: dict[int, str]) -> Iterator[str]:
    plain = {"strike": "strike", "move": "move", "slacken": "slacken", "rework": "reworked",
             "withdraw": "withdrawn", "add": "added", "not needed": "not needed",
             "reopen": "reopened"}
    if kind in plain:
        yield plain[kind]
    if kind == "strike" and kinds[body["entry"]] in ("strike", "move"):
        yield {"strike": "strike of a strike", "move": "move struck"}[kinds[body["entry"]]]
    if kind == "read":
        if body["value"]["value"][0] in "<>":
            yield f"bound {body['value']['value'][0]}"
        if "±" in body["value"]["typed"]:
            yield "typed with a ±"
        if ARITHMETIC.search(body["value"]["typed"]):
            yield "typed as arithmetic"
        if body.get("state") == "loose":
            yield "loose"
    if kind == "news" and body["what"] == "calibration":
        yield f"calibration {body['body']['found']}"
    if kind == "news" and body["what"] == "recall":
        yield "recall"
    if kind == "decide" and body["decision"] == "look closer":
        yield "look closer"


def row_events(row: Row, entries: list[Row]) -> Iterator[str]:
    for said in ("conceded", "upheld", "amended", "decided"):
        if row[said]:
            yield said
    if row["verdict"] == "conceded" and entries[row["conceded"] - 1]["body"].get("bound"):
        yield "conceded within a bound"
    about = [entry for entry in entries if entry["body"].get("name") == row["of"] and
             ", ".join(entry["body"].get("place") or ()) == row["place"] and
             entry["body"].get("step") == row["step"]]
    if row["verdict"] in ("fail", "in doubt") and not row["conceded"]:
        if any(entry["kind"] == "concede" for entry in about):
            yield "concession passed by"
        if row["doubts"] and any(entry["kind"] == "uphold" for entry in about):
            yield "uphold ended"
    if row["asked"] in ("read", "look") and row["verdict"] == "noted":
        if row["finding"] and not row["decided"] and row["own verdict"] in ("fail", "in doubt"):
            yield "finding settled"
        if not row["finding"] and row["own verdict"] not in ("noted", "open"):
            yield "read again"
    if row["asked"] == "read" and "basis" in row["doubts"]:
        yield "standing on a slackened set"
    if row["asked"] == "bolt" and str(row["answer"]).startswith("slacken"):
        yield "slacken at a stage"


class Coverage:
    def __init__(self) -> None:
        self.found: Counter[str] = Counter()

    def add(self, requirements: list[Row], entries: list[Row]) -> None:
        for row in requirements:
            if row["withdrawn"]:
                continue
            self.found[row["verdict"]] += 1
            if row["verdict"] in ("fail", "in doubt"):
                self.found[f"{row['verdict']} {row['reason']}"] += 1
        self.found.update(events_of(requirements, entries))

    def rows(self) -> Iterator[str]:
        for title, names in (("verdicts", VERDICTS), ("reasons", FAULTS), ("events", EVENTS)):
            yield f"{title}: " + ", ".join(f"{name} {self.found[name]}" for name in names)

    def missing(self) -> list[str]:
        return [name for name in (*VERDICTS, *FAULTS, *EVENTS) if not self.found[name]]
