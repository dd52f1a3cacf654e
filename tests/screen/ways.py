"""Ways to every main screen of the front end on a store of the demo, and what the store holds then;
for tests that hurt the program while somebody types.
"""
import json
import os
import shutil
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

from player import Fault, Player
from walk import feed_demo, go, line_digit, line_of

BUILD = os.path.abspath(sys.argv[1])
PROGRAM = os.path.join(BUILD, "standbook")
NUMBER = "TL-0418"  # where the demo was left: in the middle of a tightening
made = {}  # "demo": a folder with the demo's store


def same(what, got, wanted):
    if got != wanted:
        raise Fault(f"{what}: {got!r} instead of {wanted!r}")


def demo_store():
    return os.path.join(made["demo"], "standbook.db")


def demo(*command, **options):
    """A player on a store of the demo; in the folder if one is named and has a store already."""
    player = Player(BUILD, *command, **options)
    if not os.path.exists(player.store):
        shutil.copy(demo_store(), player.folder)
    return player


def entries(player, number=NUMBER):
    return player.run("export", number).splitlines()


def bodies(player, kind, number=NUMBER):
    """What the entries of a kind say, the oldest first."""
    lines = [json.loads(line.split(" ", 1)[1]) for line in entries(player, number)
             if not line.startswith("#") and " {" in line]
    return [line["body"] for line in lines if line["kind"] == kind]


def values(player):
    """The readings of a build as they were typed."""
    return [body["value"].get("typed") for body in bodies(player, "read") if body.get("value")]


# WAYS TO EVERY SCREEN

def who(player):
    player.wait_for("who picks up?")
    player.settle()


def tightening(player):
    who(player)
    go(player, "2", "which wrench is in hand?")
    player.ask("wait 500")  # digits that follow a pick-up closely are parked
    go(player, line_digit(player, "W3"), "[ Enter = tight ]")


def shop(player):
    tightening(player)
    go(player, "h", "waits for")


def steps(player):
    shop(player)
    go(player, line_of(player, NUMBER) + "\r", "Build")


def bench(player):
    steps(player)
    go(player, "4\r", "CAUTION")
    go(player, "+\r", "found crank travel")


def text(player):
    bench(player)
    go(player, "n", "NEXT  note")


def closing(player):
    shop(player)
    go(player, line_of(player, "TL-0412") + "\r", "Build")
    go(player, "42\r", "S42")


def find(player):
    shop(player)
    go(player, "f", "what was said?")


def help_page(player):
    bench(player)
    go(player, "?", "Help: ")


def caution(player):
    steps(player)
    go(player, "4\r", "CAUTION")


def strike(player):
    tightening(player)
    go(player, "\r", "last  bolt 2")
    go(player, "*", "ASK   strike")


def more(player):
    bench(player)
    go(player, ".\r", "1 gauge")


def gauge(player):
    bench(player)
    go(player, "g", "ASK ")


def new_tool(player):
    gauge(player)
    player.ask("wait 300")
    go(player, "0", "its number?")


def another(player):
    shop(player)
    go(player, "a", "Another engine")


def naming(player):
    bench(player)
    go(player, "a", "add to this build")
    player.ask("wait 300")
    go(player, "1", "what is measured?")


def why(player):
    bench(player)
    go(player, "0.041\r", "last  found crank travel")
    go(player, "w", "Why: ")


def sheets(player):
    bench(player)
    go(player, "r", "which sheet?")


def first_run(player):
    player.wait_for("An empty logbook")
    player.settle()


SCREENS = {"first run": first_run, "the shop": shop, "a build": steps, "bench, a number": bench,
           "bench, text": text, "tightening": tightening, "who, a question": who,
           "closing": closing, "find": find, "help": help_page, "caution": caution,
           "strike": strike, "more": more, "which gauge": gauge, "why": why, "print": sheets,
           "a new tool": new_tool, "another engine": another, "a check is named": naming}


def on_screen(name, **options):
    """A player, and the way to that screen."""
    return (Player(BUILD, **options) if name == "first run" else demo(**options)), SCREENS[name]


SHELL = """
set -m
before=$(stty -g)
sh -c 'echo $$ > pid; exec "$0"' "$1"
echo "left with $?"
[ "$(stty -g)" = "$before" ] && echo "modes as before"
read answer
[ "$answer" = go ] && fg
echo "ended with $?"
[ "$(stty -g)" = "$before" ] && echo "modes as before"
sleep 30
"""


def in_shell(**options):
    player = demo("sh", "-c", SHELL, "sh", PROGRAM, **options)
    player.gap = 150  # nobody knows whether it has read its key
    return player


def tried(name, test):
    """What is wrong, or None."""
    try:
        test()
    except Exception as fault:  # whatever it is, the others are tried as well
        return f"FAULT: {name}: {type(fault).__name__ if not isinstance(fault, Fault) else ''} {fault}"
    return None


def run_tests(tests):
    """Those named on the command line, else all; says what is wrong. The exit status."""
    tests = {name: test for name, test in tests.items()
             if not sys.argv[2:] or name in sys.argv[2:]}
    with tempfile.TemporaryDirectory() as made["demo"], ThreadPoolExecutor(4) as pool:
        feed_demo(BUILD, made["demo"])
        found = list(pool.map(lambda name: tried(name, tests[name]), tests))
    faults = [fault for fault in found if fault]
    print(*faults, f"{len(tests)} tests, {len(faults)} faults", sep="\n")
    return 1 if faults or not tests else 0
