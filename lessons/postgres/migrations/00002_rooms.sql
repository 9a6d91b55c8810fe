-- +goose Up
-- Rooms and what happened in them: as in a file (lessons/class/journal/file.go).
CREATE TABLE rooms (code text COLLATE "C" NOT NULL PRIMARY KEY, began_ms bigint NOT NULL, head text NOT NULL, of_group text COLLATE "C" NOT NULL DEFAULT '');
CREATE INDEX rooms_by_group ON rooms (of_group, began_ms);
CREATE TABLE events (
	room text COLLATE "C" NOT NULL, seq bigint NOT NULL, at_ms bigint NOT NULL, kind text NOT NULL, who text NOT NULL,
	in_set bigint NOT NULL, place bigint NOT NULL, n bigint NOT NULL, body text NOT NULL, name text NOT NULL,
	certainty text NOT NULL, once text COLLATE "C" NOT NULL, PRIMARY KEY (room, seq));
CREATE UNIQUE INDEX events_once ON events (room, once);
