-- Version 8. Plans of steps days, whose fields an older program does not know; it is told so by the version before it
-- opens anything. Nothing in the tables changes.

