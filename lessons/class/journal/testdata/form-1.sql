CREATE TABLE rooms (code TEXT NOT NULL PRIMARY KEY, began_ms INTEGER NOT NULL, head TEXT NOT NULL) STRICT;
CREATE TABLE events (
	room TEXT NOT NULL, seq INTEGER NOT NULL, at_ms INTEGER NOT NULL, kind TEXT NOT NULL, who TEXT NOT NULL, in_set INTEGER NOT NULL,
	place INTEGER NOT NULL, n INTEGER NOT NULL, body TEXT NOT NULL, name TEXT NOT NULL, certainty TEXT NOT NULL, once TEXT NOT NULL,
	PRIMARY KEY (room, seq)) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX events_once ON events (room, once);
INSERT INTO rooms VALUES ('ACDEFH', 1790000000000, '{"code":"ACDEFH","title":"Dumped","began":"2026-09-21T12:53:20Z","key":"k","roster":[{"ID":"a1","Name":"Ada Brook","Form":""}]}');
INSERT INTO events VALUES ('ACDEFH', 1, 1790000001000, 'joined', 'a1', 0, 0, 0, 'phone', '', '', 'one');
INSERT INTO events VALUES ('ACDEFH', 2, 1790000002123, 'answered', 'a1', 0, 1, 0, '0,05 "in" µ', '', 'bet', 'a1 two');
PRAGMA application_id = 1399025763;
PRAGMA user_version = 1;
