"""An exported ledger: its chain, which entries are live, and their rank."""
from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any, Iterable


class Broken(ValueError):
    """A ledger that does not hold together."""


@dataclass
class Entry:
    ledger: str
    seq: int
    kind: str
    format: int
    by: str
    at: str
    done: str | None
    after: int | None
    body: dict[str, Any] = field(default_factory=dict)
    rank: int = 0
    live: bool = True

    @property
    def when(self) -> datetime:
        return datetime.fromisoformat(self.done or self.at)

    @property
    def day(self) -> date:
        return self.when.date()

    def text(self, key: str) -> str | None:
        return self.body.get(key)


def chain(previous: str, line: str) -> str:
    return hashlib.sha256(f"{previous}\n{line}".encode()).hexdigest()


def read_rows(rows: Iterable[str]) -> list[Entry]:
    """Rows `DIGEST LINE`; the digests must follow from one another."""
    previous, entries = "0" * 64, []
    for number, row in enumerate(rows, 1):
        digest, _, line = row.rstrip("\n").partition(" ")
        if chain(previous, line) != digest:
            raise Broken(f"row {number}: the digest differs")
        previous = digest
        entries.append(Entry(**json.loads(line)))
        if entries[-1].seq != number:
            raise Broken(f"row {number}: it is entry {entries[-1].seq}")
    return entries


def settle_strikes(entries: list[Entry]) -> None:
    """A strike is newer than what it takes back: one pass, newest to oldest."""
    struck: set[int] = set()
    for entry in reversed(entries):
        entry.live = entry.seq not in struck
        if entry.live and entry.kind == "strike":
            struck.add(entry.body["entry"])


def ranked(entries: list[Entry]) -> list[Entry]:
    """Each entry stands behind its `after` and what was placed there before."""
    behind: dict[int | None, list[Entry]] = {}
    for entry in entries:
        behind.setdefault(entry.after, []).append(entry)
    ordered: list[Entry] = []
    waiting = list(reversed(behind.get(None, [])))
    while waiting:
        entry = waiting.pop()
        entry.rank = len(ordered) + 1
        ordered.append(entry)
        waiting += reversed(behind.get(entry.seq, []))
    return ordered


def load(path: str, upto: int | None = None) -> list[Entry]:
    """The entries in order of rank, struck ones among them."""
    with open(path, encoding="utf-8", newline="\n") as file:
        entries = read_rows(file)[:upto]
    settle_strikes(entries)
    return ranked(entries)
