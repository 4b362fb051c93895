-- What else is known of a cloth, as JSON; filled in from the entries after this migration.
ALTER TABLE fabric ADD COLUMN more TEXT NOT NULL DEFAULT '{}';
