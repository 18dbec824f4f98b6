-- Version 1. One statement a paragraph; paragraphs are parted by empty lines.

CREATE TABLE notebook (
  only INTEGER PRIMARY KEY CHECK (only = 1),
  id TEXT NOT NULL,
  made_at TEXT NOT NULL
) STRICT

CREATE TABLE entry (
  arrived INTEGER PRIMARY KEY,
  session TEXT NOT NULL,
  notebook TEXT NOT NULL,
  number INTEGER NOT NULL CHECK (number >= 1),
  previous TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  at TEXT NOT NULL,
  text TEXT NOT NULL,
  UNIQUE (session, notebook, number)
) STRICT

CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END

CREATE TRIGGER entry_is_not_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END

CREATE TABLE draft (
  name TEXT PRIMARY KEY,
  text TEXT NOT NULL
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
