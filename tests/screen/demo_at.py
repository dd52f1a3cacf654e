"""The demo as it stood at a moment of its story, somebody who picks it up, and the keys counted."""
import json
import os
import re
import shutil
import sys
import tempfile
import threading
import traceback
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager

from player import Fault, Player
from walk import feed_demo, go

BUILD = os.path.abspath(sys.argv[1])
NUMBER = "TL-0412"
PARKED = "wait 520"  # digits that follow a pick-up closely are parked
_stores, _lock = {}, threading.Lock()
_root = tempfile.TemporaryDirectory()

# The last line of the story, and the clock right behind it.
BORES = ("09:05 read bore[3]", "2025-02-25 09:06")
SKIRTS = ("09:25 read skirt", "2025-02-25 09:30")
RINGS = ("read top ring gap[2]", "2025-03-05 08:50")
SHELLS = ("09:30 pick up Fit pistons", "2025-03-06 09:31")
NUTS = ("09:11 fit head gasket", "2025-03-17 09:15")
RULE = ("read pick-up depth 136", "2025-03-13 09:05")  # in doubt by a steel rule
SUMP = ("11:36 tighten sump stage 1", "2025-03-13 11:42")
ANGLE = ("15:08 put down", "2025-03-13 15:31")
TENDER = (None, "2025-03-27 09:30")  # the whole demo: in mid-tightening


def _story(cut):
    with _lock:
        if cut not in _stores:
            folder = os.path.join(_root.name, str(len(_stores)))
            os.mkdir(folder)
            feed_demo(BUILD, folder, cut and (NUMBER, cut))
            _stores[cut] = os.path.join(folder, "standbook.db")
        return _stores[cut]


class Stand(Player):
    """A player that counts the keys a person presses."""

    keys = 0

    def set_ahead(self, seconds):
        """All clocks, also the one that nobody sets, ahead of the machine's by so much."""
        with open(self._clock + ".new", "w", encoding="ascii") as file:
            file.write(f"+{seconds}")
        os.replace(self._clock + ".new", self._clock)

    def type(self, text):
        self.keys += len(text)
        super().type(text)

    def key(self, *names):
        self.keys += len(names)
        super().key(*names)

    def press(self, text):
        """Types, and waits until it stands there; nothing may be refused."""
        self.type(text)
        self.settle()
        if self.row(-2).startswith("!"):
            self.fail(f"`{text}` is not taken")

    def counted(self, part):
        """The keys that a part costs."""
        before = self.keys
        part()
        return self.keys - before

    def next_is(self, words):
        if not self.row(-4).startswith(f"NEXT  {words}"):
            self.fail(f"NEXT is not `{words}`")

    def next_sort(self, backspace):
        """What is added to a card is asked, and what Backspace does then."""
        self.has("^ASK   add to this card\\?", -4)
        self.has(f"^one digit answers   Backspace {backspace}   a letter names a check$", -1)
        self.ask("wait 300")

    def has(self, pattern, row=None):
        """The match of a pattern in a row, or in any."""
        rows = self.screen() if row is None else [self.row(row)]
        found = next(filter(None, (re.search(pattern, text) for text in rows)), None)
        return found or self.fail(f"`{pattern}` is not there" + (f" in row {row}" if row else ""))

    def lacks(self, pattern):
        if any(re.search(pattern, text) for text in self.screen()):
            self.fail(f"`{pattern}` is there")

    def answer(self, label):
        """The digit of a line of answers behind which the label stands."""
        self.ask("wait 300")
        self.press(self.has(rf"(\d+) {label}\b", -3)[1])

    def pick_up(self, who):
        self.wait_for("who picks up?")
        self.settle()
        self.answer(who)
        self.ask(PARKED)
        self.settle()

    def leave(self, text):
        """Erases a text and leaves the page it was asked on."""
        self.type("\x7f" * len(text))
        self.type("\x7f")
        self.settle()

    def strike(self, digit):
        self.press("*")
        self.ask(PARKED)
        self.type(digit)
        self.settle()

    def entries(self, number=NUMBER):
        """Entries of the build, the oldest first, as another process reads them from the disk."""
        return [json.loads(line.split(" ", 1)[1])
                for line in self.run("export", number).splitlines()
                if not line.startswith("#") and " {" in line]

    def bodies(self, kind, number=NUMBER):
        return [entry["body"] for entry in self.entries(number) if entry["kind"] == kind]

    def typed(self, number=NUMBER):
        """All readings as they were typed."""
        return [body["value"]["typed"] for body in self.bodies("read", number) if body.get("value")]

    def restarted(self, how="KILL"):
        """Ends it (pulls the plug), and starts it again on the same store."""
        self.signal(how)
        self.wait_end()
        self.__exit__(Fault, None)  # however it ended
        self.__enter__()
        self.wait_for("NEXT" if self.quiet_start else "who picks up?")
        self.settle()

    quiet_start = False


@contextmanager
def at(story, who="MO", ahead=None, **options):
    """A stand at that moment of the demo, picked up by somebody, or not yet."""
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(_story(story[0]), os.path.join(folder, "standbook.db"))
        stand = Stand(BUILD, folder=folder, now=story[1], **options)
        if ahead is not None:
            stand.set_ahead(ahead)
        with stand:
            stand.wait_for("who picks up?")
            stand.settle()
            if who:
                stand.pick_up(who)
            yield stand


def same(what, got, wanted):
    if got != wanted:
        raise Fault(f"{what}: {got!r} instead of {wanted!r}")


# RUNNING

def _tried(test):
    try:
        return test(), None
    except Exception as fault:  # whatever it is, the others are tried as well
        lines = [frame.lineno for frame in traceback.extract_tb(fault.__traceback__)]
        return None, f"line {lines[1]}: {type(fault).__name__}: {fault}"


def run_tests(tests, not_yet):
    """Tests in their order, a line each: name and what was measured. Those of `not_yet` (name, why)
    are counted as open and left out; with --all they are run too, and count. Names select."""
    whole, names = "--all" in sys.argv, [word for word in sys.argv[2:] if word != "--all"]
    chosen = {name: test for name, test in tests.items()
              if (not names or any(part in name for part in names))}
    run = {name: test for name, test in chosen.items() if whole or names or name not in not_yet}
    faults = 0
    with ThreadPoolExecutor(3) as pool:
        results = dict(zip(run, pool.map(_tried, run.values())))
    for name in chosen:
        if name not in run:
            print(f"OPEN   {name}: {not_yet[name]}")
            continue
        measured, fault = results[name]
        faults += bool(fault)
        print(f"FAULT  {name}: {fault}" if fault else f"passes {name}: {measured}")
    print(f"{len(chosen)} tests: {len(run) - faults} pass, {faults} fail, "
          f"{len(chosen) - len(run)} open")
    _root.cleanup()
    return 1 if faults or not run else 0
