-- Tables that answer questions over all ledgers. Each is made from the lines of `entry` by the view
-- NAME_made (made.sql), line by line as they come in, and can be thrown away and made again at any
-- time. Nothing is decided by them; whether an entry was struck is not seen here. `place` is the
-- JSON list of the labels, as in the line.
DROP TABLE IF EXISTS reading;
DROP TABLE IF EXISTS tick;
DROP TABLE IF EXISTS part;
DROP TABLE IF EXISTS stock;
DROP TABLE IF EXISTS tool_use;
DROP TABLE IF EXISTS taken;
DROP TABLE IF EXISTS word;

-- Values, answers and claims by check and place.
CREATE TABLE reading (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL,
    kind TEXT NOT NULL, name TEXT NOT NULL, place TEXT, step TEXT,
    value TEXT,          -- exact, as in the line; NULL for an answer in words
    unit TEXT,
    typed TEXT NOT NULL, -- the digits, or the answer
    state TEXT, tool TEXT, calibration TEXT,
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX reading_name ON reading (name, place);

-- One row for each bolt of each stage, `turn` counting from 0 within the entry.
CREATE TABLE tick (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL, turn INTEGER NOT NULL,
    tightening TEXT NOT NULL, step TEXT, stage INTEGER NOT NULL, bolt TEXT NOT NULL,
    value TEXT, unit TEXT, tool TEXT,
    PRIMARY KEY (ledger, seq, turn)
) STRICT, WITHOUT ROWID;

-- What was fitted where.
CREATE TABLE part (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL,
    name TEXT NOT NULL, place TEXT, step TEXT, used TEXT NOT NULL, description TEXT,
    serial TEXT, lot TEXT, label TEXT, number INTEGER NOT NULL,
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX part_lot ON part (lot);
CREATE INDEX part_serial ON part (serial);

-- The shop's lots and consumables, and what was recalled.
CREATE TABLE stock (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL,
    kind TEXT NOT NULL, id TEXT NOT NULL, label TEXT, name TEXT, expires TEXT,
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX stock_id ON stock (id);

-- Each use of a tool.
CREATE TABLE tool_use (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL,
    kind TEXT NOT NULL, tool TEXT NOT NULL, calibration TEXT,
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX tool_use_tool ON tool_use (tool);

-- What each build relies on: `id` is that of the engine, tool, lot, …, for a calibration that of
-- its tool, for a plan its digest, for a default its name. Who must hear news of something stands
-- here.
CREATE TABLE taken (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL,
    kind TEXT NOT NULL, what TEXT NOT NULL, id TEXT NOT NULL, shop_seq INTEGER NOT NULL,
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX taken_id ON taken (id);

-- All words of an entry, for searching.
CREATE TABLE word (
    ledger TEXT NOT NULL, seq INTEGER NOT NULL, text TEXT NOT NULL,
    PRIMARY KEY (ledger, seq)
) STRICT, WITHOUT ROWID;
