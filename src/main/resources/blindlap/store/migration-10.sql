-- Version 10. Profiles, who should look at what: every version as its text (docs/file-format.md), beside the record like
-- the trail book. The view shows them to any SQLite tool.

CREATE TABLE profile (
  sha256 TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT

CREATE VIEW profiles AS
SELECT json_extract(text, '$.name') AS name,
  json_extract(text, '$.at') AS made_at,
  json_extract(text, '$.measures') AS measures,
  json_array_length(text, '$.measures') = 0 AS removed
FROM profile
