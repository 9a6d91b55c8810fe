-- +goose Up
-- The record of every learner: tables and columns are those of a record in a file
-- (lessons/record/schema.go), so that one text reads both. Texts that are put in an order are
-- compared by their bytes, as there.
CREATE TABLE answers (
	id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, learner text COLLATE "C" NOT NULL, n bigint NOT NULL,
	at_ms bigint NOT NULL, zone_s bigint NOT NULL, task text NOT NULL, code text NOT NULL, given text NOT NULL,
	verdict text NOT NULL, slip text NOT NULL, cause text NOT NULL, points double precision NOT NULL,
	certainty text NOT NULL, hint bigint NOT NULL, seconds double precision NOT NULL, form text NOT NULL,
	answer_key text NOT NULL, content text NOT NULL, sum bigint NOT NULL);
CREATE UNIQUE INDEX answers_by_number ON answers (learner, n);
CREATE INDEX answers_by_time ON answers (learner, at_ms, n);
CREATE TABLE states (
	learner text COLLATE "C" NOT NULL, task text COLLATE "C" NOT NULL, state text NOT NULL, sum bigint NOT NULL DEFAULT 0,
	PRIMARY KEY (learner, task));
CREATE TABLE tests (
	rowid bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, learner text COLLATE "C" NOT NULL, at_ms bigint NOT NULL,
	got bigint NOT NULL, of bigint NOT NULL, sum bigint NOT NULL);
CREATE INDEX tests_by_time ON tests (learner, at_ms);
CREATE TABLE places (
	learner text COLLATE "C" NOT NULL, lesson text COLLATE "C" NOT NULL, part bigint NOT NULL, at_ms bigint NOT NULL,
	PRIMARY KEY (learner, lesson));
CREATE TABLE sittings (
	learner text COLLATE "C" NOT NULL, sitting bigint NOT NULL, n bigint NOT NULL, line text NOT NULL,
	PRIMARY KEY (learner, sitting, n));
CREATE TABLE lost (
	learner text COLLATE "C" NOT NULL, n bigint NOT NULL, at_ms bigint NOT NULL, said bigint NOT NULL,
	PRIMARY KEY (learner, n));
CREATE TABLE rehearsals (
	id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, learner text COLLATE "C" NOT NULL, n bigint NOT NULL,
	at_ms bigint NOT NULL, zone_s bigint NOT NULL, begun_ms bigint NOT NULL, job text COLLATE "C" NOT NULL,
	job_sum text COLLATE "C" NOT NULL, thread text NOT NULL, verdict text NOT NULL, mistakes text NOT NULL,
	seconds double precision NOT NULL, passes bigint NOT NULL, room text NOT NULL, hints bigint NOT NULL,
	live bigint NOT NULL, sum bigint NOT NULL);
CREATE UNIQUE INDEX rehearsals_by_number ON rehearsals (learner, n);
CREATE TABLE lost_rehearsals (
	learner text COLLATE "C" NOT NULL, n bigint NOT NULL, at_ms bigint NOT NULL, said bigint NOT NULL,
	PRIMARY KEY (learner, n));
CREATE TABLE begun (
	learner text COLLATE "C" NOT NULL, job text COLLATE "C" NOT NULL, job_sum text COLLATE "C" NOT NULL,
	thread text NOT NULL, at_ms bigint NOT NULL, hints bigint NOT NULL, PRIMARY KEY (learner, job, job_sum));
