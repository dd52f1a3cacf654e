"""What the tests that hurt the program share: a folder of their own, runs of the built program and
what a store holds."""
import json
import os
import pathlib
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile

SOURCE = pathlib.Path(__file__).resolve().parents[2]
DEMO = SOURCE / "demo-data"
PLAN = DEMO / "hathersey-h23.yaml"
LONG = os.environ.get("STANDBOOK_LONG") == "1"
UUID = re.compile(r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}")

faults = 0


def fault(*words):
    """Says what is wrong; the test goes on and fails in the end."""
    global faults
    faults += 1
    print("FAULT:", *words, flush=True)
    if faults >= 20:
        sys.exit("too many faults; the rest is not tried")


def expect(good, *words):
    if not good:
        fault(*words)
    return good


def end(words):
    """Ends the test with what was tried."""
    print(words)
    sys.exit(1 if faults else 0)


class Answer:
    def __init__(self, status, out, err):
        self.status, self.out, self.err = status, out, err

    def __str__(self):
        return f"status {self.status}, said {self.out[-400:]!r} {self.err[-400:]!r}"


class Stand:
    """A folder that is gone at the end; in memory where that is possible, since a killed process
    loses nothing that the system already has."""

    def __init__(self, build, in_memory=True):
        memory = "/dev/shm" if in_memory and os.access("/dev/shm", os.W_OK) else None
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="standbook-", dir=memory))
        self.folder.chmod(0o755)
        self.program = pathlib.Path(build).resolve() / "standbook"
        self.store = self.folder / "stand.db"
        self.environment = dict(os.environ, XDG_DATA_HOME=str(self.folder / "data"))
        self.environment.pop("STANDBOOK_STORE", None)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        shutil.rmtree(self.folder, ignore_errors=True)

    def run(self, *arguments, store=None, typed=b"", more=None, timeout=60, **options):
        """Runs the program on the store with `typed` on its standard input."""
        command = [self.program, "--store", store or self.store, *arguments]
        done = subprocess.run(command, input=typed, capture_output=True, timeout=timeout,
                              env=dict(self.environment, **(more or {})), check=False, **options)
        return Answer(done.returncode, done.stdout, done.stderr)

    def must(self, *arguments, **options):
        """A run that the test stands on: it must end well."""
        answer = self.run(*arguments, **options)
        if answer.status != 0:
            sys.exit(f"FAULT: {' '.join(map(str, arguments))}: {answer}")
        return answer

    def is_sanitized(self):
        """Such a program is several times slower."""
        return b"__asan_init" in self.program.read_bytes()

    def begin(self, *builds):
        """A store with the demo's plan, its shop and these builds."""
        self.must("store", "new")
        self.must("plan", "add", PLAN)
        self.must("log", "--quiet", "--dated", "--shop", DEMO / "shop.log")
        for build in builds:
            self.must("log", "--quiet", "--dated", build, DEMO / f"{build.lower()}.log")


def files_of(store):
    """The files of a store, the lock left out."""
    return [path for path in (store, pathlib.Path(f"{store}-wal"), pathlib.Path(f"{store}-shm"))
            if path.exists()]


def remove(store):
    for path in store.parent.glob(store.name + "*"):
        path.unlink()


def copy(store, target):
    remove(target)
    for path in files_of(store):
        shutil.copyfile(path, str(target) + str(path)[len(str(store)):])


def connect(store):
    """The store for this test, past the program."""
    db = sqlite3.connect(store, isolation_level=None)
    db.text_factory = lambda data: data.decode("utf-8", "surrogateescape")
    return db


def held(store):
    """All that a store holds and nobody may lose: ledgers, lines and digests, what is kept."""
    db = connect(store)
    rows = [db.execute(f"SELECT * FROM {table} ORDER BY 1, 2").fetchall()
            for table in ("ledger", "entry", "kept", "person_detail")]
    db.close()
    return rows


LINES = ("SELECT label, seq, line FROM entry JOIN ledger ON id = ledger"
         " ORDER BY kind, label, seq")


class Base:
    """What a store holds before something is done to a copy of it."""

    def __init__(self, store):
        db = connect(store)
        self.lines = set(db.execute(LINES))
        self.ids = set(UUID.findall(" ".join(line for _, _, line in self.lines) +
                                    str(db.execute("SELECT id FROM ledger").fetchall())))
        db.close()

    def told(self, store):
        """What a copy holds beyond it, without when it was typed and without ids and digests made
        anew each time. What the copy has lost is in it too."""
        def old(id):
            return id.group() if id.group() in self.ids else "new"

        db = connect(store)
        lines = db.execute(LINES).fetchall()
        kept = db.execute("SELECT what, count(*) FROM kept GROUP BY what").fetchall()
        names = db.execute("SELECT coalesce(name, '') FROM person_detail ORDER BY 1").fetchall()
        db.close()
        said = [f"lost: {line}" for line in self.lines - set(lines)]
        for label, seq, line in lines:
            if (label, seq, line) not in self.lines:
                entry = json.loads(line)
                entry.pop("at")
                entry["body"].pop("assessment", None)
                said.append(UUID.sub(old, json.dumps([label, seq, entry])))
        return said + [str(kept), str(names)]


def is_clean(data):
    """Whether bytes can go to a terminal: valid UTF-8, no control character but the line feed, and
    none that hides or turns text."""
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return not re.search("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]",
                         text)
