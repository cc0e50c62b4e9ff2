/**
 * The steps that lead a PostgreSQL store from nothing to the present shape. A step once released is never edited: a new
 * shape is a new step at the end. Times are milliseconds since 1970, as Date.now gives.
 *
 * `documents` has one row a document, whose lock is what orders the appends of several relays: whoever raises
 * `last_sequence` holds it until its updates are committed, so a reader who sees a sequence sees all before it.
 */
export const POSTGRES_MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE jobs (
    job_id      TEXT PRIMARY KEY,
    created_ms  BIGINT NOT NULL,
    pen_seat_id TEXT
  );

  CREATE TABLE links (
    link_id    TEXT PRIMARY KEY,
    job_id     TEXT NOT NULL REFERENCES jobs (job_id),
    role       TEXT NOT NULL CHECK (role IN ('photographer', 'assistant', 'client')),
    key_hash   BYTEA NOT NULL,
    created_ms BIGINT NOT NULL,
    expires_ms BIGINT NOT NULL,
    closed_ms  BIGINT,
    revoked_ms BIGINT,
    ordinal    BIGINT GENERATED ALWAYS AS IDENTITY
  );
  CREATE INDEX links_of_job ON links (job_id, ordinal);

  CREATE TABLE seats (
    seat_id     TEXT PRIMARY KEY,
    job_id      TEXT NOT NULL REFERENCES jobs (job_id),
    link_id     TEXT NOT NULL REFERENCES links (link_id),
    role        TEXT NOT NULL CHECK (role IN ('photographer', 'assistant', 'client')),
    name        TEXT NOT NULL,
    secret_hash BYTEA NOT NULL,
    created_ms  BIGINT NOT NULL
  );
  CREATE INDEX seats_of_link ON seats (link_id);

  CREATE TABLE documents (
    job_id        TEXT NOT NULL REFERENCES jobs (job_id),
    document      TEXT NOT NULL,
    last_sequence BIGINT NOT NULL,
    PRIMARY KEY (job_id, document)
  ) WITH (fillfactor = 50);

  CREATE TABLE updates (
    job_id   TEXT NOT NULL,
    document TEXT NOT NULL,
    sequence BIGINT NOT NULL,
    bytes    BYTEA NOT NULL,
    PRIMARY KEY (job_id, document, sequence)
  );

  CREATE TABLE kept (
    job_id     TEXT NOT NULL REFERENCES jobs (job_id),
    hash       TEXT NOT NULL,
    media_type TEXT NOT NULL,
    bytes      BYTEA NOT NULL,
    PRIMARY KEY (job_id, hash)
  );
  -- Pictures are compressed already.
  ALTER TABLE kept ALTER COLUMN bytes SET STORAGE EXTERNAL;

  CREATE TABLE sealed_votes (
    job_id     TEXT NOT NULL REFERENCES jobs (job_id),
    ballot_id  TEXT NOT NULL,
    seat_id    TEXT NOT NULL,
    command_id TEXT NOT NULL,
    vote       TEXT NOT NULL,
    ordinal    BIGINT GENERATED ALWAYS AS IDENTITY,
    PRIMARY KEY (job_id, ballot_id, seat_id, command_id)
  );

  CREATE TABLE probe (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    bytes    BYTEA NOT NULL
  );

  -- Appends one batch in one round trip and one commit. The updates lie end to end in "contents". Gives the sequence of
  -- each; null for one whose document has moved on from the sequence it was to stand behind.
  CREATE FUNCTION append_updates(
    job_ids TEXT[], document_names TEXT[], lengths INTEGER[], contents BYTEA, only_behind BIGINT[]
  ) RETURNS BIGINT[] LANGUAGE plpgsql AS $$
  DECLARE
    sequences BIGINT[] := '{}';
    next_sequence BIGINT;
    at INTEGER := 1;
  BEGIN
    FOR i IN 1 .. cardinality(job_ids) LOOP
      next_sequence := NULL;
      INSERT INTO documents AS d (job_id, document, last_sequence) VALUES (job_ids[i], document_names[i], 1)
        ON CONFLICT (job_id, document) DO UPDATE SET last_sequence = d.last_sequence + 1
          WHERE only_behind[i] IS NULL OR d.last_sequence = only_behind[i]
        RETURNING d.last_sequence INTO next_sequence;
      IF next_sequence = 1 AND only_behind[i] > 0 THEN
        DELETE FROM documents WHERE job_id = job_ids[i] AND document = document_names[i];
        next_sequence := NULL;
      END IF;
      IF next_sequence IS NOT NULL THEN
        INSERT INTO updates (job_id, document, sequence, bytes)
          VALUES (job_ids[i], document_names[i], next_sequence, substring(contents FROM at FOR lengths[i]));
      END IF;
      at := at + lengths[i];
      sequences := array_append(sequences, next_sequence);
    END LOOP;
    RETURN sequences;
  END $$;

  -- Puts one update in place of all up to a sequence. The document's row is locked, or two relays folding at once could
  -- each take what the other puts there for something to delete.
  CREATE FUNCTION compact_document(of_job TEXT, of_document TEXT, snapshot BYTEA, up_to BIGINT)
  RETURNS VOID LANGUAGE plpgsql AS $$
  DECLARE
    last_replaced BIGINT;
  BEGIN
    PERFORM 1 FROM documents WHERE job_id = of_job AND document = of_document FOR UPDATE;
    SELECT max(sequence) INTO last_replaced FROM updates
      WHERE job_id = of_job AND document = of_document AND sequence <= up_to;
    IF last_replaced IS NULL THEN RETURN; END IF;
    DELETE FROM updates WHERE job_id = of_job AND document = of_document AND sequence <= last_replaced;
    INSERT INTO updates (job_id, document, sequence, bytes) VALUES (of_job, of_document, last_replaced, snapshot);
  END $$;
  `,
]
