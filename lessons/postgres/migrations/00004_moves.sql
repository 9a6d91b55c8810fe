-- +goose Up
-- The moves of rehearsals that have no file on one computer, a line each; as in a file
-- (lessons/record/schema.go).
CREATE TABLE moves (
	learner text COLLATE "C" NOT NULL, log bigint NOT NULL, n bigint NOT NULL, job text COLLATE "C" NOT NULL,
	job_sum text COLLATE "C" NOT NULL, at_ms bigint NOT NULL, line text NOT NULL, PRIMARY KEY (learner, log, n));
