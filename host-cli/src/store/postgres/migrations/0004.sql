-- The people who pull, each under the identifier that entries hold; the name is empty where it was taken out.
CREATE TABLE tenter.person (
    log integer NOT NULL REFERENCES tenter.log (number),
    id text COLLATE "C" NOT NULL,
    name text NOT NULL,
    same_as text COLLATE "C",
    PRIMARY KEY (log, id)
);

-- Who is taken to have pulled a test, after what was said of who is the same person; nobody where nobody said.
ALTER TABLE tenter.test ADD COLUMN pulled_by text COLLATE "C";
CREATE INDEX test_pulled_by ON tenter.test (log, pulled_by) WHERE pulled_by IS NOT NULL;

-- What the tests of a cloth say of the repeatability of each person who pulled it, in place of one sum a cloth: degrees of
-- freedom and weighted squares, from pull to pull and from day to day. pulled_by is empty where nobody said; before this
-- schema nobody could, so that the sums move as they are.
CREATE TABLE tenter.hand (
    log integer NOT NULL,
    fabric text COLLATE "C" NOT NULL,
    pulled_by text COLLATE "C" NOT NULL,
    hand_dof double precision NOT NULL,
    hand_sum double precision NOT NULL,
    session_dof double precision NOT NULL,
    session_sum double precision NOT NULL,
    PRIMARY KEY (log, fabric, pulled_by),
    FOREIGN KEY (log, fabric) REFERENCES tenter.fabric (log, id)
);
INSERT INTO tenter.hand
    SELECT log, id, '', hand_dof, hand_sum, session_dof, session_sum FROM tenter.fabric
    WHERE hand_dof > 0 OR session_dof > 0;
ALTER TABLE tenter.fabric DROP COLUMN hand_dof, DROP COLUMN hand_sum, DROP COLUMN session_dof, DROP COLUMN session_sum;
