-- How projections.sql is made from the lines. These views and the trigger are made anew at each
-- opening, as TEMP: a trusted part of the program, whatever somebody has put into the file.

-- What every entry says, taken apart once.
CREATE TEMP VIEW said AS
SELECT ledger, seq, json_extract(line, '$.kind') AS kind, json_extract(line, '$.body') AS body
FROM entry;

CREATE TEMP VIEW reading_made AS
SELECT ledger, seq, kind, body ->> 'check' AS name, body -> 'place' AS place, body ->> 'step',
       body ->> '$.value.value', body ->> '$.value.unit',
       coalesce(body ->> '$.value.typed', body ->> 'answer', body ->> 'label'),
       body ->> 'state', body ->> 'tool', body ->> 'calibration'
FROM said WHERE kind IN ('read', 'look', 'choose', 'claim');

CREATE TEMP VIEW tick_made AS
SELECT ledger, seq, bolt.key AS turn, body ->> 'tightening', body ->> 'step', body ->> 'stage',
       bolt.value, body ->> '$.value.value', body ->> '$.value.unit', body ->> 'tool'
FROM said, json_each(said.body, '$.bolts') AS bolt WHERE kind = 'tick';

CREATE TEMP VIEW part_made AS
SELECT ledger, seq, body ->> 'part', body -> 'place', body ->> 'step', body ->> 'use',
       body ->> 'description', body ->> 'serial', body ->> 'lot', body ->> 'label',
       coalesce(body ->> 'count', 1)
FROM said WHERE kind = 'fit';

CREATE TEMP VIEW stock_made AS
SELECT ledger, seq, kind, iif(kind = 'recall', body ->> 'lot', body ->> 'id'), body ->> 'label',
       coalesce(body ->> 'part', body ->> 'sort'), body ->> 'expires'
FROM said WHERE kind IN ('lot', 'consumable', 'recall');

CREATE TEMP VIEW tool_use_made AS
SELECT ledger, seq, kind, body ->> 'tool', body ->> 'calibration'
FROM said WHERE kind NOT IN ('take', 'news', 'calibration') AND body ->> 'tool' IS NOT NULL;

CREATE TEMP VIEW taken_made AS
SELECT ledger, seq, kind, body ->> 'what',
       coalesce(CASE body ->> 'what' WHEN 'calibration' THEN body ->> '$.body.tool'
                                     WHEN 'recall' THEN body ->> '$.body.lot'
                                     WHEN 'plan' THEN body ->> '$.body.digest'
                                     WHEN 'default' THEN body ->> '$.body.name'
                                     ELSE body ->> '$.body.id' END, ''),
       body ->> 'seq'
FROM said WHERE kind IN ('take', 'news');

CREATE TEMP VIEW word_made AS
SELECT ledger, seq,
       kind || ' ' || coalesce((SELECT group_concat(atom, ' ') FROM
                                (SELECT atom FROM json_tree(said.body)
                                 WHERE atom IS NOT NULL ORDER BY id)), '')
FROM said;

-- Plans and assessments that an entry names and the store does not hold.
CREATE TEMP VIEW kept_missing AS
SELECT ledger, seq, kind, digest FROM
    (SELECT ledger, seq, kind,
            CASE WHEN kind = 'seal' THEN body ->> 'assessment'
                 WHEN kind = 'plan' THEN body ->> 'digest'
                 WHEN kind = 'take' AND body ->> 'what' = 'plan' THEN body ->> '$.body.digest'
            END AS digest FROM said)
WHERE digest IS NOT NULL AND digest NOT IN (SELECT digest FROM kept);

CREATE TEMP TRIGGER entry_projected AFTER INSERT ON main.entry
BEGIN
    INSERT INTO reading SELECT * FROM reading_made WHERE ledger = new.ledger AND seq = new.seq;
    INSERT INTO tick SELECT * FROM tick_made WHERE ledger = new.ledger AND seq = new.seq;
    INSERT INTO part SELECT * FROM part_made WHERE ledger = new.ledger AND seq = new.seq;
    INSERT INTO stock SELECT * FROM stock_made WHERE ledger = new.ledger AND seq = new.seq;
    INSERT INTO tool_use SELECT * FROM tool_use_made WHERE ledger = new.ledger AND seq = new.seq;
    INSERT INTO taken SELECT * FROM taken_made WHERE ledger = new.ledger AND seq = new.seq;
    INSERT INTO word SELECT * FROM word_made WHERE ledger = new.ledger AND seq = new.seq;
END;
