-- Entries are the truth and are never changed; rows are what they come to.

CREATE TABLE entries (
  version INTEGER PRIMARY KEY,          -- 1, 2, 3 and on: the order they were made in
  id      TEXT NOT NULL UNIQUE,         -- made by the client
  key     TEXT NOT NULL UNIQUE,         -- an entry with a known key is not made twice
  who     TEXT NOT NULL,
  device  TEXT NOT NULL,
  at      TEXT NOT NULL,                -- RFC 3339
  what    TEXT NOT NULL,                -- the phrase, as JSON
  undoes  TEXT REFERENCES entries(id)   -- the entry this one takes back
) STRICT;

CREATE INDEX entries_undoes ON entries(undoes) WHERE undoes IS NOT NULL;

-- Cells are JSON objects by column name without the blank ones, so that columns
-- may be added and moved.
CREATE TABLE changes (
  version INTEGER NOT NULL REFERENCES entries(version),
  n       INTEGER NOT NULL,             -- order within the entry
  tab     TEXT NOT NULL,
  id      TEXT NOT NULL,
  before  TEXT,                         -- NULL: no row
  after   TEXT,
  place   REAL NOT NULL,
  PRIMARY KEY (version, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE rows (
  tab     TEXT NOT NULL,
  id      TEXT NOT NULL,
  place   REAL NOT NULL,                -- order within the table
  cells   TEXT NOT NULL,
  version INTEGER NOT NULL REFERENCES entries(version),
  PRIMARY KEY (tab, id)
) STRICT, WITHOUT ROWID;

-- Weather files, and photos one day, by the SHA-256 of their content in
-- hexadecimal. Files once written stay, since an undo may need them again.
CREATE TABLE files (
  hash    TEXT PRIMARY KEY,
  content BLOB NOT NULL
) STRICT;

-- Computed results by the hash of their inputs. They may be lost at any time.
CREATE TABLE results (
  digest  BLOB PRIMARY KEY,
  used    INTEGER NOT NULL,             -- rises with every use: the lowest goes first
  content BLOB NOT NULL
) STRICT;

CREATE INDEX results_used ON results(used);

-- What the database says of itself: the id under which the holding is kept.
CREATE TABLE facts (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
