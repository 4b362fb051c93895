-- What else is known of a cloth, as JSON; filled in from the entries after this migration.
ALTER TABLE fabric ADD COLUMN more TEXT NOT NULL DEFAULT '{}';

-- What the retests of the cloth say of how much days differ: degrees of freedom, and weighted squares.
ALTER TABLE fabric ADD COLUMN session_dof REAL NOT NULL DEFAULT 0;
ALTER TABLE fabric ADD COLUMN session_sum REAL NOT NULL DEFAULT 0;

-- The doubts that a person stood by when the test was stored, as words.
ALTER TABLE test ADD COLUMN as_read TEXT NOT NULL DEFAULT '';

-- What the log remembers of how it is used; the entry that said so first counts.
CREATE TABLE setting (
    name TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT, WITHOUT ROWID;
