-- The store. What counts are the lines of `entry`, described in standbook-ledger(5). Nothing here is
-- ever changed or removed, except labels and person_detail.
PRAGMA application_id = 0x53744266; -- "StBf"
PRAGMA user_version = 1;

-- One ledger per build, and one for the shop.
CREATE TABLE ledger (
    id    TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    kind  TEXT NOT NULL CHECK (kind IN ('build', 'shop')),
    label TEXT NOT NULL CHECK (label <> '')       -- what the shop calls it; may be corrected
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX one_shop ON ledger (kind) WHERE kind = 'shop';
CREATE UNIQUE INDEX ledger_label ON ledger (kind, label);

-- The chain. `line` is the ledger line as text, byte for byte what was hashed; `digest` is
-- SHA-256(digest before, LF, line) in hexadecimal.
CREATE TABLE entry (
    ledger TEXT    NOT NULL REFERENCES ledger,
    seq    INTEGER NOT NULL CHECK (seq >= 1),
    line   TEXT    NOT NULL CHECK (length(CAST(line AS BLOB)) <= 4096),
    digest TEXT    NOT NULL CHECK (length(digest) = 64),
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;

-- What entries name by its SHA-256 and cannot hold: plan files, and the assessments of seals.
CREATE TABLE kept (
    digest TEXT NOT NULL PRIMARY KEY CHECK (length(digest) = 64),
    what   TEXT NOT NULL CHECK (what IN ('plan', 'assessment')),
    bytes  BLOB NOT NULL CHECK (length(bytes) <= 2097152)
) STRICT;

-- Names and addresses, outside the chain so that they can be corrected and erased.
CREATE TABLE person_detail (
    person  TEXT NOT NULL PRIMARY KEY CHECK (length(person) = 36),
    name    TEXT,
    address TEXT,
    phone   TEXT
) STRICT, WITHOUT ROWID;

-- Append-only. INSERT OR REPLACE would slip past these without recursive_triggers, which the
-- program therefore always sets.
CREATE TRIGGER entry_follows BEFORE INSERT ON entry
WHEN new.seq <> 1 + (SELECT coalesce(max(seq), 0) FROM entry WHERE ledger = new.ledger)
BEGIN SELECT raise(ABORT, 'an entry follows the last one of its ledger'); END;
CREATE TRIGGER entry_not_changed BEFORE UPDATE ON entry
BEGIN SELECT raise(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_not_removed BEFORE DELETE ON entry
BEGIN SELECT raise(ABORT, 'an entry is never removed'); END;
CREATE TRIGGER kept_not_changed BEFORE UPDATE ON kept
BEGIN SELECT raise(ABORT, 'a plan or assessment is never changed'); END;
CREATE TRIGGER kept_not_removed BEFORE DELETE ON kept
BEGIN SELECT raise(ABORT, 'a plan or assessment is never removed'); END;
CREATE TRIGGER ledger_not_changed BEFORE UPDATE OF id, kind ON ledger
BEGIN SELECT raise(ABORT, 'a ledger keeps its id and kind'); END;
CREATE TRIGGER ledger_not_removed BEFORE DELETE ON ledger
BEGIN SELECT raise(ABORT, 'a ledger is never removed'); END;
