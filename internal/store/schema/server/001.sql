CREATE TABLE holdings (
  id   TEXT PRIMARY KEY,
  file TEXT NOT NULL UNIQUE,  -- its database in the folder of holdings
  name TEXT NOT NULL          -- as the holding calls itself
) STRICT, WITHOUT ROWID;

CREATE TABLE settings (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
