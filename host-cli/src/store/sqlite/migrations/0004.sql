-- The people who pull, each under the identifier that entries hold; the name is empty where it was taken out.
CREATE TABLE person (
    id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    same_as TEXT
) STRICT, WITHOUT ROWID;

-- Who is taken to have pulled a test, after what was said of who is the same person; nobody where nobody said.
ALTER TABLE test ADD COLUMN pulled_by TEXT;
CREATE INDEX test_pulled_by ON test (pulled_by) WHERE pulled_by IS NOT NULL;

-- What the tests of a cloth say of the repeatability of each person who pulled it, in place of one sum a cloth: degrees of
-- freedom and weighted squares, from pull to pull and from day to day. pulled_by is empty where nobody said. Filled in after
-- this migration.
CREATE TABLE hand (
    fabric TEXT NOT NULL REFERENCES fabric (id),
    pulled_by TEXT NOT NULL,
    hand_dof REAL NOT NULL,
    hand_sum REAL NOT NULL,
    session_dof REAL NOT NULL,
    session_sum REAL NOT NULL,
    PRIMARY KEY (fabric, pulled_by)
) STRICT, WITHOUT ROWID;
ALTER TABLE fabric DROP COLUMN hand_dof;
ALTER TABLE fabric DROP COLUMN hand_sum;
ALTER TABLE fabric DROP COLUMN session_dof;
ALTER TABLE fabric DROP COLUMN session_sum;
