CREATE TABLE answers (
	id INTEGER PRIMARY KEY, learner TEXT NOT NULL, at_ms INTEGER NOT NULL, task TEXT NOT NULL, code TEXT NOT NULL,
	given TEXT NOT NULL, verdict TEXT NOT NULL, slip TEXT NOT NULL, points REAL NOT NULL, certainty TEXT NOT NULL,
	hint INTEGER NOT NULL, seconds REAL NOT NULL, content TEXT NOT NULL);
CREATE INDEX answers_by_learner ON answers (learner, id);
INSERT INTO answers VALUES (1, 'Ada', 1700000000000, 'single-depth', 'single-depth@1-0001', '0.0613', 'right', '', 1, '', 0, 30, '00000000');
INSERT INTO answers VALUES (2, 'Ada', 1700000060000, 'single-depth', 'single-depth@1-0002', '0.1227', 'slip', 'double', 0, 'bet', 0, 25, '00000000');
INSERT INTO answers VALUES (3, 'Ada', 1700086400000, 'single-depth', 'single-depth@1-0003', '0.0472', 'right', '', 1, '', 1, 20, '00000000');
PRAGMA user_version = 1;
