-- Version 5. Kinds of entries and fields for days without a helper, and a table of covered orders
-- (docs/sealing.md#covered): beside the record, not part of it, and never exported. The list of
-- sessions holds the looks that a plan declares; views for looks and covariates.

CREATE TABLE cover (
  session TEXT PRIMARY KEY,
  chain TEXT NOT NULL,
  k0 TEXT NOT NULL,
  places TEXT NOT NULL
) STRICT

DROP TABLE summary

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
  looks TEXT NOT NULL,
  step TEXT NOT NULL,
  verdict TEXT NOT NULL,
  words TEXT NOT NULL
) STRICT

DELETE FROM summary_form

CREATE VIEW looks AS
SELECT declared.session AS session,
  CAST(look.value AS INTEGER) AS stint,
  json_extract(taken.text, '$.body.outcome') AS outcome,
  taken.at AS recorded_at
FROM entry AS declared
JOIN json_each('["' || replace(
  json_extract(json_extract(declared.text, '$.body.plan'), '$.looks'), ', ', '","') || '"]') AS look
LEFT JOIN entry AS taken ON taken.session = declared.session AND taken.kind = 'LookTaken'
  AND json_extract(taken.text, '$.body.stint') = look.value
WHERE declared.kind = 'PlanCommitted'

CREATE VIEW covariates AS
SELECT session,
  CAST(json_extract(text, '$.body.stint') AS INTEGER) AS stint,
  CAST(json_extract(text, '$.body.lap') AS INTEGER) AS lap,
  json_extract(text, '$.body.covariate') AS covariate,
  CAST(json_extract(text, '$.body.value') AS REAL) AS value,
  at AS recorded_at
FROM entry WHERE kind = 'CovariateSaid'
