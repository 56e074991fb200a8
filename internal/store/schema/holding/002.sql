-- What comes by itself and is no act of a person: it has no entry, cannot be
-- taken back, and is not among the files. What is made of it for the balance, a
-- row for each whole day, is an entry like any other.

-- What instruments sent, gathered by the hour (hours since 1970 in UTC): so a
-- flood of messages makes no more rows than a trickle. rise adds up the steps of
-- totals that only rise, and what came in parts.
CREATE TABLE measured (
  sensor  TEXT NOT NULL,
  hour    INTEGER NOT NULL,
  n       INTEGER NOT NULL,
  total   REAL NOT NULL,                -- sum, for means
  least   REAL NOT NULL,
  most    REAL NOT NULL,
  rise    REAL NOT NULL,
  last    REAL NOT NULL,
  last_at INTEGER NOT NULL,             -- seconds since 1970
  PRIMARY KEY (sensor, hour)
) STRICT, WITHOUT ROWID;

-- The state of each instrument: its last figure, and what it sent that could not
-- be read.
CREATE TABLE heard (
  sensor  TEXT PRIMARY KEY,
  value   REAL,
  at      INTEGER NOT NULL,             -- seconds since 1970
  refused INTEGER NOT NULL,             -- messages, ever
  why     TEXT NOT NULL                 -- of the last one refused: a phrase as JSON, or nothing
) STRICT, WITHOUT ROWID;

-- The last forecast that each address gave, and how fetching it went.
CREATE TABLE fetched (
  address  TEXT PRIMARY KEY,
  url      TEXT NOT NULL,
  body     BLOB,                        -- as it came; NULL: none yet
  tag      TEXT NOT NULL,               -- entity tag
  modified TEXT NOT NULL,
  got_at   INTEGER NOT NULL,            -- seconds since 1970; 0: never
  tried_at INTEGER NOT NULL,
  failures INTEGER NOT NULL,            -- in a row
  why      TEXT NOT NULL                -- of the last failure: a phrase as JSON, or nothing
) STRICT, WITHOUT ROWID;
