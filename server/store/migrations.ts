/**
 * The steps that lead an SQLite store from nothing to the present shape. A step once released is never edited: a new
 * shape is a new step at the end. Times are milliseconds since 1970, as Date.now gives.
 */
export const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE jobs (
    job_id      TEXT PRIMARY KEY,
    created_ms  INTEGER NOT NULL,
    pen_seat_id TEXT
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE links (
    link_id    TEXT PRIMARY KEY,
    job_id     TEXT NOT NULL REFERENCES jobs (job_id),
    role       TEXT NOT NULL CHECK (role IN ('photographer', 'assistant', 'client')),
    key_hash   BLOB NOT NULL,
    created_ms INTEGER NOT NULL,
    expires_ms INTEGER NOT NULL,
    closed_ms  INTEGER,
    revoked_ms INTEGER
  ) STRICT;
  CREATE INDEX links_of_job ON links (job_id);

  CREATE TABLE seats (
    seat_id     TEXT PRIMARY KEY,
    job_id      TEXT NOT NULL REFERENCES jobs (job_id),
    link_id     TEXT NOT NULL REFERENCES links (link_id),
    role        TEXT NOT NULL CHECK (role IN ('photographer', 'assistant', 'client')),
    name        TEXT NOT NULL,
    secret_hash BLOB NOT NULL,
    created_ms  INTEGER NOT NULL
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX seats_of_link ON seats (link_id);

  CREATE TABLE updates (
    job_id   TEXT NOT NULL REFERENCES jobs (job_id),
    document TEXT NOT NULL,
    sequence INTEGER NOT NULL,
    bytes    BLOB NOT NULL,
    PRIMARY KEY (job_id, document, sequence)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE probe (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    bytes    BLOB NOT NULL
  ) STRICT;
  `,
  `
  CREATE TABLE kept (
    job_id     TEXT NOT NULL REFERENCES jobs (job_id),
    hash       TEXT NOT NULL,
    media_type TEXT NOT NULL,
    bytes      BLOB NOT NULL,
    PRIMARY KEY (job_id, hash)
  ) STRICT;

  CREATE TABLE sealed_votes (
    job_id     TEXT NOT NULL REFERENCES jobs (job_id),
    ballot_id  TEXT NOT NULL,
    seat_id    TEXT NOT NULL,
    command_id TEXT NOT NULL,
    vote       TEXT NOT NULL,
    PRIMARY KEY (job_id, ballot_id, seat_id, command_id)
  ) STRICT;
  `,
  `
  CREATE TABLE recent_updates (
    job_id   TEXT NOT NULL REFERENCES jobs (job_id),
    document TEXT NOT NULL,
    sequence INTEGER NOT NULL,
    bytes    BLOB NOT NULL
  ) STRICT;
  `,
]
