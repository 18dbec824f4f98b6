-- Version 9. Plans of telling runs, whose fields and answers an older program does not know; it is told so by the version
-- before it opens anything. Nothing in the tables changes.

