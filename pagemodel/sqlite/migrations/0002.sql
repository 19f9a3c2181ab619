-- Run-throughs of readings. Running orders themselves are states of the
-- collection, under undo; the three tables that were meant for them were never
-- written.

DROP TABLE taking;
DROP TABLE reading_item;
DROP TABLE reading;

-- A running order read through with the clock: a fact, outside undo. Rows of run
-- and timing are added and never altered.
CREATE TABLE run (
	id      INTEGER PRIMARY KEY,
	reading INTEGER NOT NULL, -- the running order's identity; 0 for the book in its order
	at      TEXT NOT NULL     -- when the clock was started
) STRICT;

-- How long each item took, in the order in which they were read. What is no
-- longer in the running order stays.
CREATE TABLE timing (
	run      INTEGER NOT NULL REFERENCES run (id),
	place    INTEGER NOT NULL CHECK (place >= 1),
	item     INTEGER NOT NULL,                 -- the item's identity
	poem     INTEGER NOT NULL,                 -- the poem's identity; 0 for one from elsewhere
	ms       INTEGER NOT NULL CHECK (ms >= 0), -- pauses of the clock left out
	stumbles TEXT NOT NULL,                    -- ms from the item's beginning, a JSON array
	PRIMARY KEY (run, place)
) STRICT, WITHOUT ROWID;
