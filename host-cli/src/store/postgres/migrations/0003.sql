-- Schema 3, the first on PostgreSQL; the number is that of the same schema in a file.
--
-- One database holds many logs. Entries of one log never refer to another, so `log` leads every key: a log can be moved
-- or placed on a server of its own by this one column.
CREATE SCHEMA tenter;

CREATE TABLE tenter.about (
    application text NOT NULL CHECK (application = 'tenter'),
    schema integer NOT NULL
);

CREATE TABLE tenter.log (
    number integer NOT NULL GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    name text COLLATE "C" NOT NULL UNIQUE
);

-- The log itself: entries are added and never changed. `arrival` counts them as they came, from 1 on.
CREATE TABLE tenter.entry (
    log integer NOT NULL REFERENCES tenter.log (number),
    id text COLLATE "C" NOT NULL CHECK (length(id) = 26),
    subject text COLLATE "C" NOT NULL CHECK (length(subject) = 26),
    arrival bigint NOT NULL CHECK (arrival > 0),
    -- json keeps the text as it came; jsonb would order the keys anew.
    body json NOT NULL,
    PRIMARY KEY (log, id),
    UNIQUE (log, arrival)
);
CREATE INDEX entry_subject ON tenter.entry (log, subject, id);

-- What the entries make. Lengths in steps of 1/1600 mm; times in milliseconds since 1970.
CREATE TABLE tenter.fabric (
    log integer NOT NULL,
    id text COLLATE "C" NOT NULL,
    tag integer NOT NULL,
    name text NOT NULL,
    fibre text NOT NULL,
    construction text NOT NULL CHECK (construction IN ('woven', 'knit', 'other')),
    width integer,
    length integer CHECK (length >= 0),
    mg_per_m2 bigint,
    place text NOT NULL,
    note text NOT NULL,
    washed boolean NOT NULL,
    shop json,
    washed_lengthwise json,
    washed_crosswise json,
    dropped boolean NOT NULL,
    last_washed bigint,
    more json NOT NULL,
    -- The sums of its tests' hand_dof and hand_sum.
    hand_dof double precision NOT NULL DEFAULT 0,
    hand_sum double precision NOT NULL DEFAULT 0,
    -- What its retests say of how much days differ.
    session_dof double precision NOT NULL DEFAULT 0,
    session_sum double precision NOT NULL DEFAULT 0,
    PRIMARY KEY (log, id),
    FOREIGN KEY (log, id) REFERENCES tenter.entry (log, id)
);
CREATE INDEX fabric_tag ON tenter.fabric (log, tag);

CREATE TABLE tenter.test (
    log integer NOT NULL,
    id text COLLATE "C" NOT NULL,
    fabric text COLLATE "C",
    tag integer,
    grain text NOT NULL CHECK (grain IN ('lengthwise', 'crosswise', 'bias')),
    pulled bigint NOT NULL,
    clock_unset boolean NOT NULL,
    device bigint,
    number bigint,
    note text NOT NULL,
    record bytea NOT NULL,
    -- The doubts that a person stood by when it was stored, as words.
    as_read text NOT NULL,
    -- For lists and questions in plain SQL; answers are computed from the record.
    stretch_percent double precision NOT NULL,
    growth_percent double precision,
    -- Degrees of freedom and weighted squares of the pull-to-pull scatter.
    hand_dof double precision NOT NULL,
    hand_sum double precision NOT NULL,
    dropped boolean NOT NULL,
    PRIMARY KEY (log, id),
    FOREIGN KEY (log, id) REFERENCES tenter.entry (log, id),
    FOREIGN KEY (log, fabric) REFERENCES tenter.fabric (log, id)
);
CREATE INDEX test_fabric ON tenter.test (log, fabric, grain, pulled, id);
CREATE INDEX test_inbox ON tenter.test (log, pulled) WHERE fabric IS NULL;

CREATE TABLE tenter.pattern (
    log integer NOT NULL,
    id text COLLATE "C" NOT NULL,
    name text NOT NULL,
    note text NOT NULL,
    dropped boolean NOT NULL,
    PRIMARY KEY (log, id),
    FOREIGN KEY (log, id) REFERENCES tenter.entry (log, id)
);

CREATE TABLE tenter.role (
    log integer NOT NULL,
    id text COLLATE "C" NOT NULL,
    pattern text COLLATE "C" NOT NULL,
    view text NOT NULL,
    name text NOT NULL,
    -- Demand, constructions and cloth as JSON.
    asks json NOT NULL,
    note text NOT NULL,
    dropped boolean NOT NULL,
    PRIMARY KEY (log, id),
    FOREIGN KEY (log, id) REFERENCES tenter.entry (log, id),
    FOREIGN KEY (log, pattern) REFERENCES tenter.pattern (log, id)
);
CREATE INDEX role_pattern ON tenter.role (log, pattern, id);

-- Garments. The cloths chosen for them, for whom they are, and anything else, as JSON.
CREATE TABLE tenter.garment (
    log integer NOT NULL,
    id text COLLATE "C" NOT NULL,
    number integer NOT NULL,
    name text NOT NULL,
    due text,
    done bigint,
    dropped boolean NOT NULL,
    body json NOT NULL,
    PRIMARY KEY (log, id),
    FOREIGN KEY (log, id) REFERENCES tenter.entry (log, id)
);

-- Photographs, each once in a log, under the SHA-256 of its bytes.
CREATE TABLE tenter.photo (
    log integer NOT NULL REFERENCES tenter.log (number),
    name text COLLATE "C" NOT NULL CHECK (length(name) = 64),
    jpeg bytea NOT NULL,
    PRIMARY KEY (log, name)
);

-- What the log remembers of how it is used; the entry that said so first counts.
CREATE TABLE tenter.setting (
    log integer NOT NULL,
    name text COLLATE "C" NOT NULL,
    value text NOT NULL,
    entry text COLLATE "C" NOT NULL,
    PRIMARY KEY (log, name),
    FOREIGN KEY (log, entry) REFERENCES tenter.entry (log, id)
);

-- Tests and roles whose fabric or pattern has not arrived yet.
CREATE TABLE tenter.orphan (
    log integer NOT NULL,
    subject text COLLATE "C" NOT NULL,
    waits_for text COLLATE "C" NOT NULL,
    PRIMARY KEY (log, subject)
);
CREATE INDEX orphan_waits_for ON tenter.orphan (log, waits_for);
