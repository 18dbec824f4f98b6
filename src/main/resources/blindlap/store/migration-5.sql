-- Version 5. Kinds of entries and fields for days without a helper, and a table of covered orders
-- (docs/sealing.md#covered): beside the record, not part of it, and never exported.

CREATE TABLE cover (
  session TEXT PRIMARY KEY,
  chain TEXT NOT NULL,
  k0 TEXT NOT NULL,
  places TEXT NOT NULL
) STRICT
