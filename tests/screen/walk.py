"""A walk through every screen of the front end, on the demo and on an empty logbook.

A walk is a generator: it types its way to a screen, yields the screen's name, and goes on when it
is asked to. `show` prints what stands there, `check-screens` looks at it.
"""
import os
import re
import shutil

from player import Player

HERE = os.path.dirname(os.path.abspath(__file__))
DEMO = os.path.join(HERE, "..", "..", "demo-data")
PLANS = os.path.join(HERE, "..", "plans")
NOW = "2025-03-27 09:30"  # behind the last entry of the demo


def feed_demo(build, folder, short=None):
    """Makes a store of the demo in a folder; with `short` (a build, the beginning of a line) only
    of that build, up to that line."""
    player = Player(build, folder=folder)
    player.run("store", "new")
    with open(os.path.join(DEMO, "order"), encoding="utf-8") as order:
        for what, name in map(str.split, order):
            path = os.path.join(DEMO, name)
            if what == "plan":
                player.run("plan", "add", path)
            elif what == "shop":
                player.run("log", "--dated", "--quiet", "--shop", path)
            elif not short:
                player.run("log", "--dated", "--quiet", what, path)
            elif what == short[0]:
                player.run("log", "--dated", "--quiet", what, feed=lines_up_to(path, short[1]))


def lines_up_to(path, last):
    with open(path, encoding="utf-8") as file:
        lines = file.read().splitlines(keepends=True)
    return "".join(lines[:next(i for i, line in enumerate(lines) if line.startswith(last)) + 1])


def feed_idler(build, folder):
    """The demo as it stood when its idler was about to be set."""
    feed_demo(build, folder, ("TL-0412", "2025-03-10 09:00 pick up Idler backlash"))


def feed_wrong(build, folder):
    """The demo as it stood when a wrench had been found wrong."""
    feed_demo(build, folder, ("TL-0412", "09:40 shop calibration W2"))


def go(player, keys, text):
    """Types, and waits for a text that only the screen it leads to has."""
    player.type(keys)
    player.wait_for(text)
    player.settle()


def line_of(player, number):
    """The line of a build in the list of the shop."""
    for row in player.screen():
        found = re.match(rf"[> ]*(\d+)\s+{number}\b", row)
        if found:
            return found[1]
    return player.fail(f"{number} is not in the list")


def tightening(player):
    """Where the demo was left: a bolt of the main caps of TL-0418, half way through a stage."""
    player.wait_for("2 MO")
    player.settle()
    yield "who picks up"
    go(player, "2", "which wrench is in hand?")
    yield "which wrench"
    player.ask("wait 500")  # digits that follow a pick-up closely are parked
    go(player, line_digit(player, "W3"), "[ Enter = tight ]")
    yield "tightening"
    go(player, "\r", "last  bolt 2")
    yield "tightening, a bolt ticked"
    go(player, "*", "ASK   strike")
    yield "strike"
    go(player, "3", "struck")
    yield "struck"
    go(player, ".\r", "1 gauge")
    yield "more"
    go(player, "\x7f", "[ Enter = tight ]")
    go(player, "?", "Help: ")
    yield "help"
    go(player, "x", "[ Enter = tight ]")
    go(player, "n", "note")
    yield "note"
    go(player, "thread of bolt 2 was dry", "was dry")
    yield "note, typing"
    go(player, "\r", "[ Enter = tight ]")
    go(player, "l", "or loosen a bolt?")
    yield "begin again, or loosen"
    go(player, "\x7f", "[ Enter = tight ]")
    go(player, "/", "who picks up?")
    yield "put down"
    player.ask("wait 500")
    go(player, "3", "[ Enter = tight ]")


def bench(player):
    go(player, "h", "waits for")
    go(player, line_of(player, "TL-0418") + "\r", "Build")
    yield "build, half way"
    go(player, "4\r", "CAUTION")
    yield "caution"
    go(player, "+\r", "mm")
    yield "bench"
    go(player, "0.04", "=     0.04 mm")
    yield "bench, typing"
    go(player, "\r", "last  found crank travel back")
    yield "bench, taken"
    go(player, "+", "Enter: ")
    yield "bench, a sign alone"
    go(player, "\x7f1..2\r", "!   ")
    yield "bench, refused"
    player.type("\x7f" * 4)
    go(player, "g", "ASK ")
    yield "which gauge"
    player.type("\x7f")


def failing(player):
    """A ring gap outside its limits, why, and its concession."""
    go(player, "h", "waits for")
    go(player, line_of(player, "TL-0418") + "\r", "Build")
    go(player, "19\r", "ring sets 1")
    yield "bench, a part"
    go(player, "\r" * 4, "NEXT  top ring gap 1")
    go(player, "0.9", "FAIL")
    yield "bench, typing what fails"
    go(player, "\r", "last  top ring gap 1")
    yield "bench, failed"
    go(player, "w", "Why: ")
    yield "why"
    go(player, "\x7f-\r", "NEXT  top ring gap 1")
    go(player, "c", "Concession: ")
    yield "concession"
    go(player, "The rings are what there is.\r", "NEXT  2 instead")
    yield "concession, a line written"
    go(player, "\x7f", "NEXT  1 why")
    go(player, "\x7f", "top ring gap 1")


def questions(player):
    """What is asked of the book: any words, and one check over the engines."""
    go(player, "\x7f", "Build")
    go(player, "h", "waits for")
    go(player, "f", "what was said?")
    yield "find"
    go(player, "main 3", "main clearance 3")
    yield "find, typing"
    go(player, "\r", "Find: main 3")
    yield "find, kept"
    player.key("Down")
    player.settle()
    yield "find, a line chosen"
    go(player, "r", "written to find-main-3.txt")
    go(player, "0\r", "which one?")
    yield "find, more lines"
    go(player, "1\r", "Why: ")
    go(player, "x", "which one?")
    go(player, "\x7f", "what was said?")
    go(player, "\x7f", "waits for")
    go(player, "o", "which engine?")
    yield "one check over the engines"
    go(player, "+\r", "which engine?")
    player.key("Down")
    player.settle()
    yield "one check, the next, a line chosen"


def shop(player):
    go(player, "h", "waits for")
    yield "shop"
    go(player, "a", "1 or 2?")
    yield "another engine"
    go(player, "2\r", "engine number")
    go(player, "F-77\r", "whose")
    yield "another engine, whose it is"
    go(player, "\x7f", "engine number")
    go(player, "\x7f", "1 or 2?")
    go(player, "\x7f", "waits for")
    player.burst("141.72\r")
    player.wait_for("UNPLACED")
    yield "shop, a burst unplaced"
    go(player, line_of(player, "TL-0412") + "\r", "Build")
    yield "build, all but done"
    go(player, "w", "Proof: ")
    yield "proof of a gate"
    go(player, "q", "Build")
    go(player, "42\r", "S42")
    yield "closing, signed"
    go(player, "\x7f", "Build")
    go(player, "43\r", "S43")
    yield "caution of the last step"


def setting_over(player):
    """The tries of a setting that is done, looked at."""
    go(player, "\x7f", "Build")
    go(player, "26\r", "S26")
    yield "closing, a setting done"
    go(player, "w", "any key goes back")
    yield "why, the tries of a setting"
    go(player, "x", "S26  Idler backlash: ")


def closing_before(player):
    """What a step closes, in front of its first bolt."""
    go(player, "h", "waits for")
    go(player, line_of(player, "TL-0418") + "\r", "Build")
    go(player, "30\r", "S30  Sump")
    for place in ("pick-up depth", "rod bolt paint", "pick-up flange 1", "pick-up flange 2",
                  "settle them"):
        player.ask("wait 300")
        go(player, "+\r", place)
    yield "closing, before it goes on"
    player.ask("wait 300")
    go(player, "2", "why?")
    yield "closing, a reason to go on"


def walk_demo(player):
    for part in (tightening, bench, failing, shop, setting_over, questions, closing_before):
        yield from part(player)


def lay_plan(_, folder):
    """The demo's plan where it lies in the tree that the program is started in."""
    os.mkdir(os.path.join(folder, "demo-data"))
    shutil.copy(os.path.join(DEMO, "hathersey-h23.yaml"), os.path.join(folder, "demo-data"))


def walk_empty(player):
    """An empty logbook, with one plan below the folder it is started in."""
    player.wait_for("An empty logbook")
    player.settle()
    yield "first run"
    go(player, "2\r", "which plan?")
    yield "first run, which plan"
    go(player, "1\r", "initials")
    yield "first run, who"
    go(player, "TB Tess Bell\r", "engine number")
    yield "first run, which engine"
    go(player, "H23-4/01555\r", "whose")
    go(player, "bell\r", "job number")
    yield "first run, which job"
    go(player, "B-1\r", "shop's name")
    yield "first run, which shop"
    go(player, "Bell Engines\r", "S01")
    yield "a build begun"


def walk_newcomer(player):
    """Somebody the shop does not know yet looks around, opens a step, and is entered there."""
    player.wait_for("2 MO")
    player.settle()
    go(player, "\x7f", "waits for")
    yield "shop, nobody yet"
    go(player, line_of(player, "TL-0412") + "\r", "Build")
    go(player, "43\r", "who picks up?")
    yield "who opens a step"
    go(player, "0", "TB Tess Bell")
    yield "a newcomer"
    go(player, "KP Karl Prior\r", "4 KP")
    player.ask("wait 500")
    go(player, "4", "CAUTION")  # of the step that was asked for


def walk_second(player):
    """An engine in inches and lbf·ft, begun and begun wrong."""
    player.wait_for("An empty logbook")
    player.settle()
    go(player, "2\r", "which plan?")
    go(player, "7\r", "no line 7")
    yield "first run, no such plan"
    go(player, "\x7f1\r", "initials")
    go(player, "TB Tess Bell\r", "engine number")
    go(player, "\x7f", "NEXT  initials")  # one question back, not all of them
    yield "first run, a question back"
    go(player, "KP Karl Prior\r", "engine number")
    go(player, "W-101\r", "whose")
    go(player, "Hill\r", "job number")
    go(player, "J-7\r", "shop's name")
    go(player, "\r", "S01")  # nobody need say it
    go(player, "+\r", "CAUTION")
    go(player, "+\r", "fins broken L, 1")
    go(player, "two broken at the root\r", "L two br")  # beside its label, not over it
    yield "bench, words in a table"
    go(player, "\x7f", "Build")
    go(player, "2\r", "lay joint compound, lot")
    yield "what is laid on the bolts, its lot"
    go(player, "\r", "which wrench")
    go(player, "0", "its number?")
    yield "a new wrench"
    go(player, "TW1\r", "what is it?")
    go(player, "torque wrench\r", "its range?")
    go(player, "5 to 40 Nm\r", "its reach?")
    go(player, "\r", "calibrated when?")
    yield "a new wrench, calibrated when"
    go(player, "2025-01-08\r", "next due?")
    go(player, "2026-01-08\r", "doubt (U) in")
    go(player, "\r", "all 10")
    if not player.screen()[-4].startswith(("NEXT  all 10 · 6 lbf·ft", "NEXT  all 10 . 6 lbf.ft")):
        player.fail("the bolts are not in the plan's unit of torque")
    yield "tightening, in lbf·ft"
    go(player, "\r", "last  all 10")
    go(player, "16.5", "16.5 N")
    yield "tightening, typing"
    go(player, "\r", "shown 16.5 N")
    yield "tightening, a wrench read"
    go(player, "\r", "NEXT  main bush 1, v")
    go(player, "*", "ASK   strike")
    player.ask("wait 500")
    go(player, "3", "[ Enter = all 10 ]")  # back where the struck bolts are
    yield "tightening, struck behind its end"
    go(player, ".\r", "1 gauge")
    player.ask("wait 500")
    go(player, "8", "Build")
    go(player, "r", "which sheet?")
    go(player, "1\r", "sheet written")
    go(player, "*", "ASK   strike all 10 ")  # the entry, not the sheet
    player.ask("wait 500")
    go(player, "0", "taken back")


def walk_setting(player):
    """The idler of TL-0412: moved, read, tightened, struck."""
    player.wait_for("2 MO")
    player.settle()
    go(player, "2", "move the jackscrew")
    yield "setting"
    player.ask("wait 500")
    go(player, ".5", "stands at .5 turn")
    yield "setting, typing a move"
    go(player, "\r", "loose at 1")
    go(player, ".13\r", "which wrench is in hand?")
    yield "setting, tightened"
    player.ask("wait 300")
    go(player, line_digit(player, "W4"), "[ Enter = tight ]")
    go(player, "*", "ASK   strike")
    player.ask("wait 500")
    go(player, "1", "struck: misread")
    yield "setting, struck"
    go(player, "w", "Why: the next move")
    yield "setting, why"
    go(player, "w", "Why: read")
    go(player, "x", "NEXT  loose at 1")
    go(player, ".31\r", "[ Enter = tight ]")
    go(player, "q", "Enter = go on")
    yield "setting, not yet tightened"
    go(player, "+\r", "tight at 1")
    go(player, "b", "try 1 ")
    yield "setting, far"
    go(player, ".35", "? DOUBT, basis, 0.17")  # read before it is held
    yield "setting, far, typing"
    go(player, "\r", "[ Enter = tight ]")  # that first, and then once more
    go(player, "q", "NEXT  tighten idler carrier")
    go(player, "b", "Try 1 ")
    yield "setting, failed"


def walk_doubt(player):
    """Readings in doubt for a wrench, upheld."""
    player.wait_for("2 MO")
    player.settle()
    go(player, "2", "Build")
    player.ask("wait 500")
    yield "build, in doubt"
    go(player, "18\r", "CAUTION")
    go(player, "+\r", "S18  Crank")
    go(player, "n", "NEXT  note")
    go(player, "the caps again\r", "last  note")
    go(player, "d", "settle them, or close")
    player.ask("wait 300")
    go(player, "c", "concede it, or uphold it?")
    yield "concede or uphold"
    go(player, "\x7f", "settle them, or close")
    player.ask("wait 300")
    go(player, "w", "u or 1 upholds it")
    yield "why, in doubt"
    go(player, "u", "uphold which?")
    yield "uphold which"
    player.ask("wait 500")
    go(player, "2", "why does it stand?")
    yield "uphold, the reason"
    go(player, "Under 0.002 against 0.011.\r", "who else says so?")
    player.ask("wait 500")
    yield "who else upholds it"
    go(player, line_digit(player, "JT"), "last  upheld")
    yield "why, upheld"


def line_digit(player, label):
    """The digit behind which a label stands in the line of answers."""
    return re.search(rf"(\d+) {label}\b", player.row(-3))[1]


# What the folder of the player holds (None: the store of the demo; what makes it), and the walk.
WALKS = [(None, walk_demo), (None, walk_newcomer), (feed_idler, walk_setting),
         (feed_wrong, walk_doubt),
         (lay_plan, walk_empty),
         (os.path.join(PLANS, "second.yaml"), walk_second)]


def stations(build, demo, **options):
    """(name of the screen, player) for all screens; `demo` is a folder that feed_demo filled."""
    for file, walk in WALKS:
        player = Player(build, now=NOW, **options)
        if callable(file):
            file(build, player.folder)
        else:
            shutil.copy(file or os.path.join(demo, "standbook.db"), player.folder)
        with player:
            for station in walk(player):
                yield station, player
