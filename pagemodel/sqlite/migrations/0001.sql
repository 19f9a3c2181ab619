-- The first form of a collection file.
--
-- Times are text, UTC, RFC 3339 with milliseconds. Rows of state, edit and
-- change are added and never altered.

-- One row: where the history stands.
CREATE TABLE meta (
	one       INTEGER PRIMARY KEY CHECK (one = 1),
	head_edit INTEGER NOT NULL REFERENCES edit (id) DEFERRABLE INITIALLY DEFERRED,
	next_id   INTEGER NOT NULL CHECK (next_id >= 1), -- the lowest identity never given out
	made_by   TEXT NOT NULL,                         -- the program and version that made the file
	made_at   TEXT NOT NULL
) STRICT;

-- What one thing of the collection was at some time, as JSON.
CREATE TABLE state (
	id   INTEGER PRIMARY KEY,
	kind TEXT NOT NULL, -- poem, section, design, order or about
	key  TEXT NOT NULL, -- the identity of a poem or section, else empty
	hash BLOB NOT NULL, -- SHA-256 of body
	body BLOB NOT NULL
) STRICT;

-- The tree of edits. Only the first, which made the file, has no parent.
CREATE TABLE edit (
	id     INTEGER PRIMARY KEY,
	parent INTEGER REFERENCES edit (id),
	kind   TEXT NOT NULL,
	args   TEXT NOT NULL, -- the edit's arguments as JSON
	label  TEXT NOT NULL, -- what it does, in words
	at     TEXT NOT NULL
) STRICT;

-- What an edit changed: NULL where the thing was not there.
CREATE TABLE change (
	edit      INTEGER NOT NULL REFERENCES edit (id),
	kind      TEXT NOT NULL,
	key       TEXT NOT NULL,
	old_state INTEGER REFERENCES state (id),
	new_state INTEGER REFERENCES state (id),
	PRIMARY KEY (edit, kind, key)
) STRICT, WITHOUT ROWID;

-- The collection as it stands: one row for each thing in it.
CREATE TABLE head (
	kind  TEXT NOT NULL,
	key   TEXT NOT NULL,
	state INTEGER NOT NULL REFERENCES state (id),
	PRIMARY KEY (kind, key)
) STRICT, WITHOUT ROWID;

-- A round: the edit that was the head when the text and pages went out.
CREATE TABLE mark (
	id   INTEGER PRIMARY KEY,
	edit INTEGER NOT NULL REFERENCES edit (id),
	name TEXT NOT NULL,
	at   TEXT NOT NULL
) STRICT;

-- Where each line stood in that round.
CREATE TABLE mark_place (
	mark INTEGER NOT NULL REFERENCES mark (id),
	line INTEGER NOT NULL, -- the line's identity
	page TEXT NOT NULL,    -- the folio as printed
	row  INTEGER NOT NULL CHECK (row >= 1), -- set lines from the head of the page, from 1
	PRIMARY KEY (mark, line)
) STRICT, WITHOUT ROWID;

-- Another version of a poem, kept beside it.
CREATE TABLE variant (
	id    INTEGER PRIMARY KEY,
	poem  INTEGER NOT NULL, -- the poem's identity
	name  TEXT NOT NULL,
	state INTEGER NOT NULL REFERENCES state (id),
	at    TEXT NOT NULL
) STRICT;

-- A running order of poems to be read aloud.
CREATE TABLE reading (
	id   INTEGER PRIMARY KEY,
	name TEXT NOT NULL,
	slot INTEGER NOT NULL CHECK (slot >= 0), -- seconds there are; 0 for no limit
	at   TEXT NOT NULL
) STRICT;

-- One poem of a running order. What is taken out of it stays, without a place,
-- for the sake of its takings.
CREATE TABLE reading_item (
	id      INTEGER PRIMARY KEY,
	reading INTEGER NOT NULL REFERENCES reading (id),
	place   INTEGER CHECK (place >= 1),         -- in the order, from 1
	poem    INTEGER NOT NULL,                   -- the poem's identity
	talk    INTEGER NOT NULL CHECK (talk >= 0), -- seconds spoken before the poem
	UNIQUE (reading, place)
) STRICT;

-- One timed run-through of an item: a fact, outside undo.
CREATE TABLE taking (
	id   INTEGER PRIMARY KEY,
	item INTEGER NOT NULL REFERENCES reading_item (id),
	ms   INTEGER NOT NULL CHECK (ms >= 0),
	at   TEXT NOT NULL
) STRICT;

-- A face of the user's own, which travels in the file.
CREATE TABLE face (
	id     INTEGER PRIMARY KEY,
	hash   BLOB NOT NULL UNIQUE, -- SHA-256 of bytes
	family TEXT NOT NULL,
	bold   INTEGER NOT NULL CHECK (bold IN (0, 1)),
	italic INTEGER NOT NULL CHECK (italic IN (0, 1)),
	bytes  BLOB NOT NULL,
	rights TEXT NOT NULL -- what the face says of embedding, in words
) STRICT;
