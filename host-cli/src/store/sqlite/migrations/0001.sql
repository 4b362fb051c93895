-- The log itself: entries are added and never changed.
CREATE TABLE entry (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 26),
    subject TEXT NOT NULL CHECK (length(subject) = 26),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
CREATE INDEX entry_subject ON entry (subject, id);

-- What the entries make. Lengths in steps of 1/1600 mm; times in milliseconds since 1970.
CREATE TABLE fabric (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    tag INTEGER NOT NULL,
    name TEXT NOT NULL,
    fibre TEXT NOT NULL,
    construction TEXT NOT NULL CHECK (construction IN ('woven', 'knit', 'other')),
    width INTEGER,
    length INTEGER CHECK (length >= 0),
    mg_per_m2 INTEGER,
    place TEXT NOT NULL,
    note TEXT NOT NULL,
    washed INTEGER NOT NULL CHECK (washed IN (0, 1)),
    shop TEXT CHECK (shop IS NULL OR json_valid(shop)),
    washed_lengthwise TEXT,
    washed_crosswise TEXT,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)),
    -- The sums of its tests' hand_dof and hand_sum.
    hand_dof REAL NOT NULL DEFAULT 0,
    hand_sum REAL NOT NULL DEFAULT 0
) STRICT, WITHOUT ROWID;
CREATE INDEX fabric_tag ON fabric (tag);

CREATE TABLE test (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    fabric TEXT REFERENCES fabric (id),
    tag INTEGER,
    grain TEXT NOT NULL CHECK (grain IN ('lengthwise', 'crosswise', 'bias')),
    pulled INTEGER NOT NULL,
    clock_unset INTEGER NOT NULL CHECK (clock_unset IN (0, 1)),
    device INTEGER,
    number INTEGER,
    note TEXT NOT NULL,
    record BLOB NOT NULL,
    -- For lists and questions in plain SQL; answers are computed from the record.
    stretch_percent REAL NOT NULL,
    growth_percent REAL,
    -- Degrees of freedom and weighted squares of the pull-to-pull scatter.
    hand_dof REAL NOT NULL,
    hand_sum REAL NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)),
    -- Whether it is the one that counts for its grain of its fabric.
    newest INTEGER NOT NULL DEFAULT 0 CHECK (newest IN (0, 1))
) STRICT, WITHOUT ROWID;
CREATE INDEX test_fabric ON test (fabric, grain, pulled, id);
CREATE INDEX test_newest ON test (fabric, grain) WHERE newest = 1;
CREATE INDEX test_inbox ON test (pulled) WHERE fabric IS NULL;

CREATE TABLE pattern (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    name TEXT NOT NULL,
    note TEXT NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1))
) STRICT, WITHOUT ROWID;

CREATE TABLE role (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    pattern TEXT NOT NULL REFERENCES pattern (id),
    view TEXT NOT NULL,
    name TEXT NOT NULL,
    -- Demand, constructions and cloth as JSON.
    asks TEXT NOT NULL CHECK (json_valid(asks)),
    note TEXT NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1))
) STRICT, WITHOUT ROWID;
CREATE INDEX role_pattern ON role (pattern, id);

-- Tests and roles whose fabric or pattern has not arrived yet.
CREATE TABLE orphan (
    subject TEXT NOT NULL PRIMARY KEY,
    waits_for TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX orphan_waits_for ON orphan (waits_for);

-- What was begun and not finished.
CREATE TABLE draft (
    name TEXT NOT NULL PRIMARY KEY,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
