CREATE TABLE answers (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, at_ms INTEGER NOT NULL, task TEXT NOT NULL, code TEXT NOT NULL,
		given TEXT NOT NULL, verdict TEXT NOT NULL, slip TEXT NOT NULL, points REAL NOT NULL, certainty TEXT NOT NULL,
		hint INTEGER NOT NULL, seconds REAL NOT NULL, content TEXT NOT NULL, cause TEXT NOT NULL DEFAULT '', form TEXT NOT NULL DEFAULT '', answer_key TEXT NOT NULL DEFAULT '');
CREATE TABLE places (learner TEXT NOT NULL, lesson TEXT NOT NULL, part INTEGER NOT NULL, at_ms INTEGER NOT NULL, PRIMARY KEY (learner, lesson));
CREATE TABLE states (learner TEXT NOT NULL, task TEXT NOT NULL, state TEXT NOT NULL, PRIMARY KEY (learner, task));
CREATE TABLE tests (learner TEXT NOT NULL, at_ms INTEGER NOT NULL, got INTEGER NOT NULL, of INTEGER NOT NULL);
CREATE INDEX answers_by_learner ON answers (learner, id);
CREATE INDEX answers_by_time ON answers (learner, at_ms);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (1, 'Ada', 1700000000000, 'single-depth', 'single-depth@1-0000', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '0');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (2, 'Ada', 1700000060000, 'single-depth', 'single-depth@1-0001', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '1');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (3, 'Ada', 1700000120000, 'single-depth', 'single-depth@1-0002', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '2');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (4, 'Ada', 1700000180000, 'single-depth', 'single-depth@1-0003', '0,0613 "in" µ', 'right', '', 1.0, '', 1, 30.0, '00000000', '', '', '3');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (5, 'Ada', 1700000240000, 'single-depth', 'single-depth@1-0004', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '4');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (6, 'Ada', 1700000300000, 'single-depth', 'single-depth@1-0005', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '5');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (7, 'Ada', 1700000360000, 'single-depth', 'single-depth@1-0006', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '6');
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key) VALUES (8, 'Ada', 1700000420000, 'single-depth', 'single-depth@1-0007', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '7');
INSERT INTO places (learner, lesson, part, at_ms) VALUES ('Ada', 'dial-book', 2, 1795759548615);
INSERT INTO states (learner, task, state) VALUES ('Ada', 'single-depth', '{"answers":8,"right":8,"streak":{"n":4,"key":"4","varied":true,"item":8,"last":{"t":1700000420,"d":19675}},"since":8,"missed":16,"shown_days":0,"mastered":false,"card":{"Due":"2023-11-17T22:13:20Z","Stability":3.173,"Difficulty":5.282434422319005,"ElapsedDays":0,"ScheduledDays":3,"Reps":1,"Lapses":0,"State":2,"LastReview":"2023-11-14T22:13:20Z"},"last":"2023-11-14T22:20:20Z","seconds":240,"last_shown":"0001-01-01T00:00:00Z","sure_wrong":"0001-01-01T00:00:00Z"}');
INSERT INTO states (learner, task, state) VALUES ('Ada', '', '{"answers":8,"fold":7}');
INSERT INTO tests (learner, at_ms, got, of) VALUES ('Ada', 5, 11, 12);
PRAGMA application_id = 0;
PRAGMA user_version = 2;
