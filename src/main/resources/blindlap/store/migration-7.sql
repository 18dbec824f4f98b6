-- Version 7. Entries that phones gave have one field more, and the kind PlateRead; an older program, which cannot
-- read them, is told so by the version before it opens anything. The view shows which entries came by which phone.

CREATE VIEW phones AS
SELECT session, notebook, number, kind,
  json_extract(text, '$.by_phone.client') AS client,
  CAST(json_extract(text, '$.by_phone.number') AS INTEGER) AS message,
  json_extract(text, '$.by_phone.role') AS role,
  json_extract(text, '$.by_phone.given') AS given,
  json_extract(text, '$.by_phone.sent') AS sent,
  CAST(json_extract(text, '$.by_phone.offset_ms') AS INTEGER) AS offset_ms,
  json_extract(text, '$.by_phone.knew') IS NOT NULL AS late,
  at AS recorded_at
FROM entry WHERE json_extract(text, '$.by_phone') IS NOT NULL
