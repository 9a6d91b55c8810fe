-- +goose Up
-- What came of each room, worked out: rooms are marked anew from their events, which a program that
-- draws other numbers can't (lessons/school/marks.go).
CREATE TABLE marks (
	room text COLLATE "C" NOT NULL PRIMARY KEY REFERENCES rooms (code) ON DELETE CASCADE,
	seq bigint NOT NULL, came text NOT NULL);
