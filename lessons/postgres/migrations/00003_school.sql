-- +goose Up
-- People who have signed on, who is signed on now, what was done that others may ask about, and
-- what the numbers of each group hang on, sealed (lessons/school).
CREATE TABLE people (
	id text COLLATE "C" NOT NULL PRIMARY KEY, name text NOT NULL, groups text NOT NULL, seen_ms bigint NOT NULL);
CREATE TABLE sessions (
	id text COLLATE "C" NOT NULL PRIMARY KEY, hash text NOT NULL,
	person text COLLATE "C" NOT NULL REFERENCES people (id) ON DELETE CASCADE,
	began_ms bigint NOT NULL, seen_ms bigint NOT NULL);
CREATE INDEX sessions_by_person ON sessions (person);
CREATE TABLE audit (
	id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, at_ms bigint NOT NULL, who text COLLATE "C" NOT NULL,
	name text NOT NULL, did text NOT NULL, about text NOT NULL);
CREATE TABLE secrets (name text COLLATE "C" NOT NULL PRIMARY KEY, sealed text NOT NULL);
