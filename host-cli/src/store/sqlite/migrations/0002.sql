-- All tests of a grain count together: there is no newest one to mark any more.
DROP INDEX test_newest;
ALTER TABLE test DROP COLUMN newest;

-- When the cloth was last washed, where the log saw that; filled in from the entries after this migration.
ALTER TABLE fabric ADD COLUMN last_washed INTEGER;
