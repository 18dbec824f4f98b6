-- Version 2. Entries without an index by hash, so that where a row lies in the file hangs on nothing
-- but its place in its chain; a table for lists of sessions, derived from entries and not part of
-- the record.

DROP VIEW sessions

DROP VIEW laps

DROP VIEW scores

DROP VIEW voids

DROP TRIGGER entry_is_not_changed

DROP TRIGGER entry_is_not_deleted

ALTER TABLE entry RENAME TO entry_1

CREATE TABLE entry (
  arrived INTEGER PRIMARY KEY,
  session TEXT NOT NULL,
  notebook TEXT NOT NULL,
  number INTEGER NOT NULL CHECK (number >= 1),
  previous TEXT NOT NULL,
  hash TEXT NOT NULL,
  kind TEXT NOT NULL,
  at TEXT NOT NULL,
  text TEXT NOT NULL,
  UNIQUE (session, notebook, number)
) STRICT

INSERT INTO entry SELECT arrived, session, notebook, number, previous, hash, kind, at, text
FROM entry_1 ORDER BY arrived

DROP TABLE entry_1

CREATE INDEX entry_commit ON entry (session) WHERE kind = 'PlanCommitted'

CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END

CREATE TRIGGER entry_is_not_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END

CREATE TRIGGER entry_is_not_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE arrived = NEW.arrived
  OR (session = NEW.session AND notebook = NEW.notebook AND number = NEW.number))
BEGIN SELECT RAISE(ABORT, 'entries are never replaced'); END

CREATE TABLE summary (
  session TEXT PRIMARY KEY,
  first INTEGER NOT NULL,
  committed_at TEXT NOT NULL,
  kind TEXT NOT NULL,
  question TEXT NOT NULL,
  rider TEXT NOT NULL,
  trail TEXT NOT NULL,
  day TEXT NOT NULL,
  setups TEXT NOT NULL,
  series TEXT,
  step TEXT NOT NULL,
  verdict TEXT NOT NULL,
  words TEXT NOT NULL
) STRICT

CREATE TABLE summary_form (
  only INTEGER PRIMARY KEY CHECK (only = 1),
  form TEXT NOT NULL
) STRICT

CREATE VIEW sessions AS
SELECT session, at AS committed_at,
  json_extract(json_extract(text, '$.body.plan'), '$.rider') AS rider,
  json_extract(json_extract(text, '$.body.plan'), '$.trail') AS trail,
  json_extract(json_extract(text, '$.body.plan'), '$.question') AS question
FROM entry WHERE kind = 'PlanCommitted'

CREATE VIEW laps AS
SELECT session,
  CAST(json_extract(text, '$.body.stint') AS INTEGER) AS stint,
  CAST(json_extract(text, '$.body.lap') AS INTEGER) AS lap,
  at AS recorded_at
FROM entry WHERE kind = 'LapRidden'

CREATE VIEW scores AS
SELECT session,
  CAST(json_extract(text, '$.body.stint') AS INTEGER) AS stint,
  CAST(json_extract(text, '$.body.lap') AS INTEGER) AS lap,
  json_extract(text, '$.body.measure') AS measure,
  CAST(json_extract(text, '$.body.value') AS REAL) AS value,
  kind, at AS recorded_at
FROM entry WHERE kind IN ('ScoreGiven', 'ScoreCorrected')

CREATE VIEW voids AS
SELECT session,
  CAST(json_extract(text, '$.body.stint') AS INTEGER) AS stint,
  CAST(json_extract(text, '$.body.lap') AS INTEGER) AS lap,
  kind, json_extract(text, '$.body.event') AS event, at AS recorded_at
FROM entry WHERE kind IN ('LapVoided', 'VoidWithdrawn')
