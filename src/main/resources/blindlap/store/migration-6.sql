-- Version 6. The trail book: every version of a trail as its text (docs/trail-file.md), beside the record like
-- drafts, and what a recording left of the way between start and finish, once per content. Kinds of entries
-- and fields of plans for recordings.

CREATE TABLE trail (
  name TEXT NOT NULL,
  version INTEGER NOT NULL,
  sha256 TEXT NOT NULL,
  text TEXT NOT NULL,
  made_at TEXT NOT NULL,
  PRIMARY KEY (name, version)
) STRICT

CREATE TABLE content (
  sha256 TEXT PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT
