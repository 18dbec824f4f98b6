-- Version 3. Entries of the kind FindingRecorded; an older program, which cannot read them, is told
-- so by the version before it opens anything. The view shows what was found at each unsealing; it
-- shows every record, also one that another had come before.

CREATE VIEW findings AS
SELECT session,
  CAST(json_extract(text, '$.body.edition') AS INTEGER) AS edition,
  json_extract(text, '$.body.verdict') AS verdict,
  CAST(json_extract(text, '$.body.figures.estimate') AS REAL) AS estimate,
  CAST(json_extract(text, '$.body.figures.low_95') AS REAL) AS low_95,
  CAST(json_extract(text, '$.body.figures.high_95') AS REAL) AS high_95,
  CAST(json_extract(text, '$.body.figures.low_90') AS REAL) AS low_90,
  CAST(json_extract(text, '$.body.figures.high_90') AS REAL) AS high_90,
  CAST(json_extract(text, '$.body.figures.p') AS REAL) AS p,
  at AS recorded_at
FROM entry WHERE kind = 'FindingRecorded'
