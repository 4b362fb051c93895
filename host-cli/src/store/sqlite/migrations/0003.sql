-- What else is known of a cloth, as JSON; filled in from the entries after this migration.
ALTER TABLE fabric ADD COLUMN more TEXT NOT NULL DEFAULT '{}';

-- In which order the entries arrived here, whatever their identifiers.
CREATE TABLE arrival (
    number INTEGER NOT NULL PRIMARY KEY,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT;
INSERT INTO arrival (entry) SELECT id FROM entry ORDER BY id;
