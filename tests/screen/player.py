"""Plays a person at a terminal: types into the real program and looks at its screen.

    with Player(build, size="80x24") as player:
        player.wait_for("The shop")
        player.type("1\\r")
        player.wait_for("Build")
        assert player.row(2).startswith("...")

It stands on the program `terminal` (terminal.c, which has the whole list of requests). The program
played has an environment of its own, a home and a store in a new folder, and the time zone UTC.

Keys come one by one, further apart than a burst is and never while the program still works on the
key before; a second Enter waits until it is no bounce of the first, and a text that begins with the
key pressed last until that is not held down any more. `burst` types at once.
"""
import glob
import json
import os
import re
import shlex
import shutil
import subprocess
import tempfile
import time

GAP = 45  # ms after a key was read; under 30 is a burst
HELD_GAP = 0.11  # s from a key to the same one; under 0.1 it is held down
ANSWER_GAP = 0.52  # s from a digit that answers to Enter; under 0.5 it ends the answer
ENTER_GAP = 0.26  # s from Enter to Enter; under 0.25 is a bounce
ASKED_GAP = 1.7  # s from Enter to a digit that answers a question that came by itself; 1.5 behind its paint
FAKETIME = "/usr/lib/*/faketime/libfaketime.so.1"
NAMES = "bold reverse underline blink italic foreground background".split()


class Fault(AssertionError):
    """What was expected and did not come, with the screen as it stood."""


def faketime():
    """The library that hands a program another clock; None if it is not installed."""
    return next(iter(glob.glob(FAKETIME)), None)


def escape(text):
    r"""As terminal.c reads it: control characters as \xHH, so that it is one line."""
    text = text.replace("\\", "\\\\")
    return re.sub(r"[\x00-\x1f\x7f]", lambda found: f"\\x{ord(found[0]):02x}", text)


class Player:
    """`command` is what to play, the front end itself if it is not given.

    size    COLUMNSxROWS
    ascii   a locale without UTF-8
    mono    NO_COLOR is set
    now     "2025-03-13 10:42": the clock stands still there (set_clock moves it). Only where
            libfaketime is installed; look at `clock_is_set`, or skip the test if faketime() is None
    folder  the home of the program, where it is started, kept; otherwise a new one that goes with
            the player
    more    further variables of its environment
    """

    def __init__(self, build, *command, size="80x24", term="xterm-256color", ascii=False,
                 mono=False, now=None, folder=None, **more):
        self.build = os.path.abspath(build)
        self.command = command or (os.path.join(self.build, "standbook"),)
        self.size = size
        self._own = None if folder else tempfile.mkdtemp(prefix="player")
        self.folder = folder or self._own
        self.store = os.path.join(self.folder, "standbook.db")
        self.gap = GAP  # more where the program played is a child of another
        self._entered = self._read = 0  # when Enter was pressed last, as far as it counts
        self._typed = ("", 0)  # the last key, and when
        self._clock = os.path.join(self.folder, "clock")
        self.clock_is_set = bool(now and faketime())
        self.environment = {
            "TERM": term, "TZ": "UTC", "LC_ALL": "C" if ascii else "C.UTF-8",
            "HOME": self.folder, "STANDBOOK_STORE": self.store,
            **({"NO_COLOR": "1"} if mono else {}), **self._clock_variables(now), **more}

    def _clock_variables(self, now):
        if not self.clock_is_set:
            return {}
        self.set_clock(now)
        return {"LD_PRELOAD": faketime(), "FAKETIME_TIMESTAMP_FILE": self._clock,
                "FAKETIME_NO_CACHE": "1", "FAKETIME_DONT_FAKE_MONOTONIC": "1",
                # The library is put before that of a sanitized build.
                "ASAN_OPTIONS": "verify_asan_link_order=0:detect_leaks=0"}

    def set_clock(self, now):
        """Moves the clock of a program that was given one: "2025-03-13 10:42", or with seconds."""
        fresh = self._clock + ".new"
        with open(fresh, "w", encoding="ascii") as file:
            file.write(now if now.count(":") == 2 else now + ":00")
        os.replace(fresh, self._clock)

    # BEGIN AND END

    def run(self, *arguments, feed=None):
        """A subcommand of the program on the same store, before or while it is played; its output.
        Ends the test if the program finds something wrong."""
        environment = {"PATH": os.environ["PATH"], **self.environment}
        done = subprocess.run([os.path.join(self.build, "standbook"), *arguments], text=True,
                              input=feed, capture_output=True, env=environment, check=False)
        if done.returncode not in (0, 1):
            raise Fault(f"{shlex.join(arguments)}: ended with {done.returncode}: {done.stderr}")
        return done.stdout

    def __enter__(self):
        variables = [f"{name}={value}" for name, value in self.environment.items()]
        self.terminal = subprocess.Popen(
            [os.path.join(self.build, "tests", "terminal"), self.size, *variables, *self.command],
            cwd=self.folder, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
            encoding="utf-8", bufsize=1)
        return self

    def __exit__(self, kind, *_):
        try:
            self.terminal.stdin.close()
        except BrokenPipeError:
            pass
        ended = self.terminal.wait(timeout=20)
        self.terminal.stdout.close()
        if self._own:
            shutil.rmtree(self._own, ignore_errors=True)
        if ended and kind is None:
            raise Fault(f"the terminal itself ended with {ended}")

    def ask(self, request):
        """One request of terminal.c and its answer; a Fault if it could not be done."""
        try:
            self.terminal.stdin.write(request + "\n")
            answer = self.terminal.stdout.readline()
        except BrokenPipeError:
            answer = ""
        if not answer:
            raise Fault(f"the terminal itself is gone at `{request}`")
        answer = json.loads(answer)
        if "error" in answer:
            raise Fault(f"`{request}`: {answer['error']}; the program: {self._status_words()}")
        return answer

    # KEYS

    def _enter_gap(self):
        time.sleep(max(0, self._entered + ENTER_GAP - time.monotonic()))

    def _see_question(self):
        """A question that came by itself behind a reading takes no digit at once."""
        since = time.monotonic() - self._read
        if since < ASKED_GAP:
            self.settle()
            if self.row(-4).startswith("ASK"):
                time.sleep(max(0, self._read + ASKED_GAP - time.monotonic()))

    def type(self, text):
        """Key by key, as a finger does; `\\r` is Enter."""
        last, then = self._typed
        if text[:1].isdigit() and len(text) == 1:
            self._see_question()
        if text[:1] == last:
            time.sleep(max(0, then + HELD_GAP - time.monotonic()))
        for part in re.findall(r"[\r\n]|[^\r\n]+", text):
            if part in "\r\n":
                self._enter_gap()
            self.ask(f"slow {self.gap} {escape(part)}")
            if part in "\r\n":
                self._entered = self._read = time.monotonic()
        self._typed = (text[-1:], time.monotonic())
        if len(text) == 1 and text.isdigit():  # Enter right behind an answer is none
            self._entered = time.monotonic() + ANSWER_GAP - ENTER_GAP

    def key(self, *names):
        """Keys by their names: Enter, Tab, Backspace, Up, PageDown, Pad0, Pad+ (see terminal.c)."""
        for name in names:
            if name.endswith("Enter"):
                self._enter_gap()
            self.ask(f"press {self.gap} {name}")
            if name.endswith("Enter"):
                self._entered = self._read = time.monotonic()

    def burst(self, text):
        """All at once, as a gauge with a cable or a paste does."""
        self.ask(f"keys {escape(text)}")
        self._entered = self._read = time.monotonic()
        self.settle()

    # THE SCREEN

    def settle(self, milliseconds=GAP, limit=5000):
        """Until it has read its keys, printed nothing for a while, and sleeps."""
        if not self.ask(f"settle {milliseconds} {limit}")["settled"]:
            self.fail(f"it does not come to rest within {limit} ms")

    def screen(self):
        """All rows, without the blanks at their ends."""
        return self.ask("screen")["rows"]

    def row(self, number):
        """A row from 1, from below if negative: -1 is the foot line."""
        rows = self.screen()
        return rows[number if number < 0 else number - 1]

    def cells(self, number):
        """The cells of a row (as `row` counts): dicts with text, bold, reverse, foreground…"""
        if number < 0:
            number += int(self.size.split("x")[1]) + 1
        return self.ask(f"cells {number - 1}")["cells"]

    def runs(self, number):
        """The attributes of a row: [("text", {"bold": True}), …], plain runs left out."""
        made = []
        for column, cell in enumerate(self.cells(number)):
            style = {name: cell[name] for name in NAMES if name in cell}
            if made and made[-1][1] == style and made[-1][2] == column:
                made[-1] = (made[-1][0] + cell["text"], style, column + 1)
            elif style:
                made.append((cell["text"], style, column + 1))
        return [(text, style) for text, style, _ in made]

    def cursor(self):
        """(row, column), both from 1; None if it is not shown."""
        answer = self.ask("cursor")
        return (answer["row"] + 1, answer["column"] + 1) if answer["visible"] else None

    def bytes(self):
        """Bytes printed since it was asked last."""
        return self.ask("bytes")["bytes"]

    def bells(self):
        """Bells rung since it was asked last."""
        return self.ask("bells")["bells"]

    def _wait(self, is_there, what, seconds):
        until = time.monotonic() + seconds
        while True:
            ended = "running" not in self.ask("status")
            rows = self.screen()
            if is_there(rows):
                return rows
            if ended or time.monotonic() > until:
                self.fail(f"{what} within {seconds} s")
            self.ask("wait 5")

    def wait_for(self, text, seconds=10):
        """Until some row holds the text; the rows then."""
        return self._wait(lambda rows: any(text in row for row in rows),
                          f"`{text}` does not come", seconds)

    def wait_gone(self, text, seconds=10):
        """Until no row holds the text; the rows then."""
        return self._wait(lambda rows: not any(text in row for row in rows),
                          f"`{text}` does not go", seconds)

    def expect(self, *texts):
        """Each of the texts stands in some row now."""
        rows = self.screen()
        for text in texts:
            if not any(text in row for row in rows):
                self.fail(f"`{text}` is not there")

    # THE WORLD

    def resize(self, size):
        self.ask(f"resize {size}")
        self.size = size

    def signal(self, name):
        self.ask(f"signal {name}")

    def hangup(self):
        self.ask("hangup")

    def status(self):
        """{"running": True}, {"exit": n} or {"signal": n}"""
        return self.ask("status")

    def wait_end(self, seconds=10):
        """Until it has ended; its status then."""
        until = time.monotonic() + seconds
        while True:
            status = self.status()
            if "running" not in status:
                return status
            if time.monotonic() > until:
                self.fail(f"it does not end within {seconds} s")
            self.ask("wait 5")

    # FAULTS

    def _status_words(self):
        if self.terminal.poll() is not None:
            return "not known"
        self.terminal.stdin.write("status\n")
        return self.terminal.stdout.readline().strip()

    def picture(self):
        """The whole screen in a frame, then where it is not plain."""
        columns = int(self.size.split("x")[0])
        rows = self.screen()
        lines = [f"+{'-' * columns}+ {self.size} {shlex.join(self.command)}"]
        lines += [f"|{row.ljust(columns)}| {number}" for number, row in enumerate(rows, 1)]
        lines += [f"+{'-' * columns}+ cursor {self.cursor()}, {self._status_words()}"]
        for number in range(1, len(rows) + 1):
            lines += [f"  row {number}: {self._style_words(style)}: `{text}`"
                      for text, style in self.runs(number)]
        return "\n".join(lines)

    @staticmethod
    def _style_words(style):
        return " ".join(name if value is True else f"{name} {value}"
                        for name, value in style.items())

    def fail(self, words):
        raise Fault(f"{words}\n{self.picture()}")
