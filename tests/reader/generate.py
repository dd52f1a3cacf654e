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
from pathlib import Path

sys.dont_write_bytecode = True
from made_after import AfterMade  # noqa: E402
from made_log import SHOP, LogMade  # noqa: E402
from made_plan import PlanMade  # noqa: E402


def write(seed: int, folder: Path) -> AfterMade:
    """The files, and what may happen to the build afterwards."""
    dice = random.Random(seed)
    plan = PlanMade(dice)
    log = LogMade(dice, plan)
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in (("plan.yaml", plan.text()), ("shop.log", SHOP), ("build.log", log.text())):
        (folder / name).write_text(text, encoding="utf-8")
    return AfterMade(log)


def main(arguments: list[str]) -> int:
    if len(arguments) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    write(int(arguments[0]), Path(arguments[1]))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
