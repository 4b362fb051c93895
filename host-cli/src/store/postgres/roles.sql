-- The rights to a shared log of tenter, with the least that does. Run it once as whoever owns the log, after the log was
-- begun and again after a newer tenter has raised its schema:
--
--   tenter log roles | psql DATABASE
--
-- tenter_writer adds entries and reads. What was stored it can neither change nor delete, not even the name of a person
-- (tenter make forget, tenter people forget), which is for the owner; the tables that are made from the entries it keeps up to date. tenter_reader only reads. Give one of them to each person:
--
--   CREATE ROLE anna LOGIN IN ROLE tenter_writer;
--   \password anna
DO $$
BEGIN
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'tenter_reader') THEN
        CREATE ROLE tenter_reader NOLOGIN;
    END IF;
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'tenter_writer') THEN
        CREATE ROLE tenter_writer NOLOGIN;
    END IF;
END
$$;

REVOKE ALL ON SCHEMA tenter FROM PUBLIC;
REVOKE ALL ON ALL TABLES IN SCHEMA tenter FROM PUBLIC, tenter_reader, tenter_writer;
GRANT USAGE ON SCHEMA tenter TO tenter_reader, tenter_writer;
GRANT SELECT ON ALL TABLES IN SCHEMA tenter TO tenter_reader, tenter_writer;
-- Entries, photographs, settings and new logs are added and never changed.
GRANT INSERT ON tenter.log, tenter.entry, tenter.photo, tenter.setting TO tenter_writer;
-- What the entries make is brought up to date.
GRANT INSERT, UPDATE ON tenter.fabric, tenter.test, tenter.pattern, tenter.role, tenter.garment, tenter.person
    TO tenter_writer;
GRANT INSERT, UPDATE, DELETE ON tenter.hand, tenter.orphan TO tenter_writer;
