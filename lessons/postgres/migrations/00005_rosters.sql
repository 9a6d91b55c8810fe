-- +goose Up
-- The class lists that were fetched from the school's own service, and what was sent to it of marks:
-- a sum of each, so that the same mark is sent with the same date again (lessons/school/oneroster).
CREATE TABLE rosters (
	name text COLLATE "C" NOT NULL PRIMARY KEY, class text NOT NULL, people text NOT NULL, got_ms bigint NOT NULL,
	tried_ms bigint NOT NULL, tries bigint NOT NULL, ended boolean NOT NULL, fault text NOT NULL);
CREATE TABLE sent (id text COLLATE "C" NOT NULL PRIMARY KEY, sum text NOT NULL, at_ms bigint NOT NULL);
