"""What the front end costs on the demo: its launch, a key, bytes to the terminal, memory."""
import pathlib
import statistics
import subprocess
import sys
import time

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "screen"))
from player import Player  # noqa: E402
from walk import go, line_digit, line_of  # noqa: E402

LAUNCHES, KEYS = 20, 100
WORDS = ("3 main", "clearance 3", "MB-2417-C", "W2 since 2024", "noisy cold", "cyl 4 bore top",
         "ring gap 2", "no such thing", "harrow")


def cpu(pid):
    """Milliseconds of CPU that a process has taken: clock_getcpuclockid(3) in Python."""
    return 1000 * time.clock_gettime((~pid << 3) | 2)


def program_of(player):
    """The process that is played."""
    pid = player.terminal.pid
    children = pathlib.Path(f"/proc/{pid}/task/{pid}/children").read_text(encoding="ascii")
    return int(children.split()[0])


def launch(stand, text):
    environment = dict(stand.environment, TERM="xterm-256color", LC_ALL="C.UTF-8",
                       STANDBOOK_STORE=str(stand.store))
    return statistics.median(
        float(subprocess.run([stand.folder / "launch", text, stand.program], env=environment,
                             stdout=subprocess.PIPE, check=True).stdout)
        for _ in range(LAUNCHES))


def bare_sqlite(stand):
    """The same of SQLite's own shell and a query that asks nothing."""
    report = stand.folder / "report"
    taken = []
    for _ in range(LAUNCHES):
        subprocess.run([stand.folder / "measure", report, "sqlite3", stand.store, "select 1"],
                       stdout=subprocess.DEVNULL, check=True)
        taken.append(1000 * float(report.read_text().split()[0]))
    return statistics.median(taken)


def type_digits(player):
    """CPU in ms and bytes for each digit typed into a reading."""
    pid, used, sent = program_of(player), 0, []
    for at in range(KEYS):
        player.bytes()
        before = cpu(pid)
        player.type("0.041234567"[at % 11])
        player.settle()
        used += cpu(pid) - before
        sent.append(player.bytes())
        if at % 11 == 10:
            player.type("\x7f" * 11)
    return used / KEYS, statistics.median(sent)


def rest(player, pid):
    """Until it does nothing by itself any more."""
    before = -1
    while cpu(pid) - before > 5:
        before = cpu(pid)
        player.ask("wait 500")


def type_words(player):
    """CPU in ms for each letter typed in find, once all builds are open."""
    pid, used = program_of(player), []
    rest(player, pid)
    for words in WORDS * 2:
        for letter in words:
            before = cpu(pid)
            player.type(letter)
            player.settle()
            used.append(cpu(pid) - before)
        player.type("\x7f" * len(words))
        player.settle()
    return statistics.mean(used)


def resident(pid):
    lines = pathlib.Path(f"/proc/{pid}/status").read_text(encoding="ascii").splitlines()
    return int(next(line for line in lines if line.startswith("VmHWM")).split()[1]) / 1024


def open_shop(player):
    player.wait_for("who picks up?")
    go(player, "2", "which wrench is in hand?")
    player.ask("wait 500")
    go(player, line_digit(player, "W3"), "[ Enter = tight ]")
    go(player, "h", "The shop")


def measure(stand, build, say):
    """`say` prints a figure."""
    begun, alone = launch(stand, "who picks up"), bare_sqlite(stand)
    say("front end, launch to the first screen, who works here", begun, "ms", 5 * alone)
    say("  until it says what was put down last", launch(stand, "put down"), "ms")
    say("  sqlite3 STORE 'select 1'", alone, "ms")
    with Player(build, folder=str(stand.folder), STANDBOOK_STORE=str(stand.store)) as player:
        open_shop(player)
        go(player, line_of(player, "TL-0418") + "\r", "Build")
        go(player, "4\r", "CAUTION")
        go(player, "+\r", "found crank travel")
        each, sent = type_digits(player)
        say("front end, a digit at the bench", each, "ms", 1)
        say("  bytes to the terminal, median", sent, "B", 400)
        say("  resident at most", resident(program_of(player)), "MB", 40)
        go(player, "\x7fh", "The shop")
        go(player, "f", "what was said?")
        say("front end, a letter in find", type_words(player), "ms", 1)


def measure_find(stand, build, say):
    """The same as the last of `measure`, on a store of many builds."""
    with Player(build, folder=str(stand.folder), STANDBOOK_STORE=str(stand.store)) as player:
        player.wait_for("who picks up?")
        go(player, "2", "NEXT")  # where `measure` left off
        player.ask("wait 500")
        go(player, "h", "The shop")
        go(player, "f", "what was said?")
        say("front end, a letter in find, 30 builds", type_words(player), "ms")
        say("  resident at most", resident(program_of(player)), "MB")
