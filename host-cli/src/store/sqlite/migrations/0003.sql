-- What else is known of a cloth, as JSON; filled in from the entries after this migration.
ALTER TABLE fabric ADD COLUMN more TEXT NOT NULL DEFAULT '{}';

-- In which order the entries arrived here, whatever their identifiers.
CREATE TABLE arrival (
    number INTEGER NOT NULL PRIMARY KEY,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT;
INSERT INTO arrival (entry) SELECT id FROM entry ORDER BY id;

-- What the retests of the cloth say of how much days differ: degrees of freedom, and weighted squares.
ALTER TABLE fabric ADD COLUMN session_dof REAL NOT NULL DEFAULT 0;
ALTER TABLE fabric ADD COLUMN session_sum REAL NOT NULL DEFAULT 0;

-- The doubts that a person stood by when the test was stored, as words.
ALTER TABLE test ADD COLUMN as_read TEXT NOT NULL DEFAULT '';

-- Photographs, each once, under the SHA-256 of its bytes.
CREATE TABLE photo (
    name TEXT NOT NULL PRIMARY KEY CHECK (length(name) = 64),
    jpeg BLOB NOT NULL
) STRICT;

-- Garments. The cloths chosen for them, for whom they are, and anything else, as JSON.
CREATE TABLE garment (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    number INTEGER NOT NULL,
    name TEXT NOT NULL,
    due TEXT,
    done INTEGER,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;

-- What the log remembers of how it is used; the entry that said so first counts.
CREATE TABLE setting (
    name TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT, WITHOUT ROWID;
