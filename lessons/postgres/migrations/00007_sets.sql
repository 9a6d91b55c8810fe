-- +goose Up
-- Blueprints that the instructors of a group keep for its rooms (lessons/school/sets.go).
CREATE TABLE sets (
	of_group text COLLATE "C" NOT NULL, name text COLLATE "C" NOT NULL, blueprint text NOT NULL,
	by_name text NOT NULL, at_ms bigint NOT NULL, PRIMARY KEY (of_group, name));
