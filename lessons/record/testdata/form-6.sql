CREATE TABLE answers (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, at_ms INTEGER NOT NULL, task TEXT NOT NULL, code TEXT NOT NULL,
		given TEXT NOT NULL, verdict TEXT NOT NULL, slip TEXT NOT NULL, points REAL NOT NULL, certainty TEXT NOT NULL,
		hint INTEGER NOT NULL, seconds REAL NOT NULL, content TEXT NOT NULL, cause TEXT NOT NULL DEFAULT '', form TEXT NOT NULL DEFAULT '', answer_key TEXT NOT NULL DEFAULT '', n INTEGER NOT NULL DEFAULT 0, zone_s INTEGER NOT NULL DEFAULT 0, sum INTEGER NOT NULL DEFAULT 0);
CREATE TABLE begun (learner TEXT NOT NULL, job TEXT NOT NULL, job_sum TEXT NOT NULL, thread TEXT NOT NULL, at_ms INTEGER NOT NULL, hints INTEGER NOT NULL, PRIMARY KEY (learner, job, job_sum));
CREATE TABLE lost (learner TEXT NOT NULL, n INTEGER NOT NULL, at_ms INTEGER NOT NULL, said INTEGER NOT NULL, PRIMARY KEY (learner, n));
CREATE TABLE lost_rehearsals (learner TEXT NOT NULL, n INTEGER NOT NULL, at_ms INTEGER NOT NULL, said INTEGER NOT NULL, PRIMARY KEY (learner, n));
CREATE TABLE moves (
		learner TEXT NOT NULL, log INTEGER NOT NULL, n INTEGER NOT NULL, job TEXT NOT NULL, job_sum TEXT NOT NULL, at_ms INTEGER NOT NULL, line TEXT NOT NULL,
		PRIMARY KEY (learner, log, n));
CREATE TABLE places (learner TEXT NOT NULL, lesson TEXT NOT NULL, part INTEGER NOT NULL, at_ms INTEGER NOT NULL, PRIMARY KEY (learner, lesson));
CREATE TABLE rehearsals (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, n INTEGER NOT NULL, at_ms INTEGER NOT NULL, zone_s INTEGER NOT NULL, begun_ms INTEGER NOT NULL,
		job TEXT NOT NULL, job_sum TEXT NOT NULL, thread TEXT NOT NULL, verdict TEXT NOT NULL, mistakes TEXT NOT NULL, seconds REAL NOT NULL,
		passes INTEGER NOT NULL, room TEXT NOT NULL, hints INTEGER NOT NULL, live INTEGER NOT NULL, sum INTEGER NOT NULL);
CREATE TABLE sittings (learner TEXT NOT NULL, sitting INTEGER NOT NULL, n INTEGER NOT NULL, line TEXT NOT NULL, PRIMARY KEY (learner, sitting, n));
CREATE TABLE states (learner TEXT NOT NULL, task TEXT NOT NULL, state TEXT NOT NULL, sum INTEGER NOT NULL DEFAULT 0, PRIMARY KEY (learner, task));
CREATE TABLE tests (learner TEXT NOT NULL, at_ms INTEGER NOT NULL, got INTEGER NOT NULL, of INTEGER NOT NULL, sum INTEGER NOT NULL DEFAULT 0);
CREATE UNIQUE INDEX answers_by_number ON answers (learner, n);
CREATE INDEX answers_by_time ON answers (learner, at_ms);
CREATE UNIQUE INDEX rehearsals_by_number ON rehearsals (learner, n);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (1, 'Ada', 1700000000000, 'single-depth', 'single-depth@1-0000', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '0', 1, 0, -7722827859503682134);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (2, 'Ada', 1700000060000, 'single-depth', 'single-depth@1-0001', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '1', 2, 0, 6882006832614972377);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (3, 'Ada', 1700000120000, 'single-depth', 'single-depth@1-0002', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '2', 3, 0, -7559785317091523365);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (4, 'Ada', 1700000180000, 'single-depth', 'single-depth@1-0003', '0,0613 "in" µ', 'right', '', 1.0, '', 1, 30.0, '00000000', '', '', '3', 4, 0, -1733914822441232753);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (5, 'Ada', 1700000240000, 'single-depth', 'single-depth@1-0004', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '4', 5, 0, -6761857815500182899);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (6, 'Ada', 1700000300000, 'single-depth', 'single-depth@1-0005', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '5', 6, 0, 7498664108672447124);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (7, 'Ada', 1700000360000, 'single-depth', 'single-depth@1-0006', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '6', 7, 0, -7008797296026029028);
INSERT INTO answers (id, learner, at_ms, task, code, given, verdict, slip, points, certainty, hint, seconds, content, cause, form, answer_key, n, zone_s, sum) VALUES (8, 'Ada', 1700000420000, 'single-depth', 'single-depth@1-0007', '0,0613 "in" µ', 'right', '', 1.0, '', 0, 30.0, '00000000', '', '', '7', 8, 0, -7944940519389989723);
INSERT INTO begun (learner, job, job_sum, thread, at_ms, hints) VALUES ('Ada', 'gland-nut', '', '1-1/4-12 UNF-2B', 1700007200000, 2);
INSERT INTO places (learner, lesson, part, at_ms) VALUES ('Ada', 'dial-book', 2, 1795761922085);
INSERT INTO rehearsals (id, learner, n, at_ms, zone_s, begun_ms, job, job_sum, thread, verdict, mistakes, seconds, passes, room, hints, live, sum) VALUES (1, 'Ada', 1, 1700000900000, 0, 1700000000000, 'gland-nut', '', '1-1/4-12 UNF-2B', 'scrap', '[{"name":"heavy","times":3,"taken_back":0},{"name":"hit-chuck","times":0,"taken_back":1}]', 900.25, 14, '{"passes":13,"shortest":{"inches":0.11,"seconds":0.9},"median":{"inches":0.2,"seconds":1.6},"speeds":[{"rpm":70,"passes":13,"shortest":{"inches":0.11,"seconds":0.9},"longest":{"inches":0.25,"seconds":2}}]}', 0, 0, 1951899716921567968);
INSERT INTO rehearsals (id, learner, n, at_ms, zone_s, begun_ms, job, job_sum, thread, verdict, mistakes, seconds, passes, room, hints, live, sum) VALUES (2, 'Ada', 2, 1700004500000, 0, 1700003600000, 'gland-nut', '', '1-1/4-12 UNF-2B', 'scrap', '[{"name":"heavy","times":2,"taken_back":0},{"name":"hit-chuck","times":0,"taken_back":1}]', 901.25, 14, '{"passes":13,"shortest":{"inches":0.11,"seconds":0.9},"median":{"inches":0.2,"seconds":1.6},"speeds":[{"rpm":70,"passes":13,"shortest":{"inches":0.11,"seconds":0.9},"longest":{"inches":0.25,"seconds":2}}]}', 1, 1, 7303166536003894369);
INSERT INTO sittings (learner, sitting, n, line) VALUES ('Ada', 1795761922087000989, 0, '{}');
INSERT INTO states (learner, task, state, sum) VALUES ('Ada', 'single-depth', '{"answers":8,"right":8,"streak":{"n":4,"key":"4","varied":true,"item":8,"last":{"t":1700000420,"d":19675}},"since":8,"missed":16,"shown_days":0,"mastered":false,"card":{"Due":"2023-11-17T22:13:20Z","Stability":3.173,"Difficulty":5.282434422319005,"ElapsedDays":0,"ScheduledDays":3,"Reps":1,"Lapses":0,"State":2,"LastReview":"2023-11-14T22:13:20Z"},"last":"2023-11-14T22:20:20Z","seconds":240,"last_shown":"0001-01-01T00:00:00Z","sure_wrong":"0001-01-01T00:00:00Z"}', 973939891928800269);
INSERT INTO states (learner, task, state, sum) VALUES ('Ada', '', '{"answers":8,"fold":7}', 620648651613271666);
INSERT INTO tests (learner, at_ms, got, of, sum) VALUES ('Ada', 5, 11, 12, 3397664517606249659);
PRAGMA application_id = 1399025779;
PRAGMA user_version = 6;
