package served_test

import (
	"bytes"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// forms are the numbers of all forms.
func forms(t *testing.T) (all []int) {
	t.Helper()
	names, err := filepath.Glob(migrations + "/*.sql")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		var n int
		if _, err := fmt.Sscanf(filepath.Base(name), "%d_", &n); err != nil {
			t.Fatal(name, err)
		}
		all = append(all, n)
	}
	slices.Sort(all)
	return all
}

// A database of each form that was released is brought to the newest by today's program: all that was
// in it is there, the tables are those of a new database, and no step took anything away from the one
// before, so that nodes which are not replaced yet go on.
func TestEveryFormOpens(t *testing.T) {
	postgrestest.Address(t) // or there is none
	all := forms(t)
	for _, form := range all {
		if _, err := os.Stat(dumpOf(form)); err != nil && *dumps {
			writeDump(t, form)
		} else if err != nil && form != all[len(all)-1] {
			t.Error("no dump of a form that was released; write it with -dump: ", err)
		}
	}
	fresh := shapeOf(t, opened(t, postgrestest.Address(t)))
	for _, form := range all {
		text, err := os.ReadFile(dumpOf(form))
		if errors.Is(err, os.ErrNotExist) {
			continue // of the newest: said above for others
		}
		t.Run(fmt.Sprint(form), func(t *testing.T) {
			address := postgrestest.Address(t)
			raw, err := sql.Open("pgx", address)
			if err != nil {
				t.Fatal(err)
			}
			defer raw.Close()
			if _, err := raw.Exec(string(text)); err != nil {
				t.Fatal(err)
			}
			before := shapeOf(t, &postgres.DB{DB: raw})
			db := opened(t, address)
			after := shapeOf(t, db)
			if !reflect.DeepEqual(after, fresh) {
				t.Errorf("brought to the newest form it is\n%v\nand a new one is\n%v", after, fresh)
			}
			before.goesOnIn(t, after)
			findsRecords(t, db)
			if form >= 2 {
				findsRoom(t, address)
			}
			if form >= 3 {
				findsPeople(t, db, string(text))
			}
		})
	}
}

func opened(t *testing.T, address string) *postgres.DB {
	t.Helper()
	db, err := postgres.Open(t.Context(), address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	return db
}

// findsRecords wants the two records of a dump.
func findsRecords(t *testing.T, db *postgres.DB) {
	t.Helper()
	for _, who := range []string{ada, ben} {
		same, err := record.Open(filepath.Join(t.TempDir(), "r.db"), who)
		if err != nil {
			t.Fatal(err)
		}
		defer same.Close()
		fill(t, same)
		r := record.In(db, who)
		if _, err := schedule.NewBook(r, machine.Imperial); err != nil { // it makes summaries anew where those are of an older rule
			t.Fatal(err)
		}
		if got, want := contents(t, r), contents(t, same); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %v\nnot %v", who, got, want)
		}
		practises(t, r, 100, 101) // and it goes on
	}
}

// contents is all that a record tells.
func contents(t testing.TB, r *record.Record) []any {
	t.Helper()
	var out bytes.Buffer
	_, err := r.Export(&out)
	summaries, _, err2 := r.Summaries()
	begun, err3 := r.BegunRehearsals()
	places, err4 := r.Places()
	test, _, err5 := r.LastTest()
	lines, err6 := r.Sittings().Lines()
	if err := errors.Join(err, err2, err3, err4, err5, err6); err != nil {
		t.Fatal(err)
	}
	return []any{out.String(), summaries, begun, places, test, lines}
}

// findsRoom wants the room of a dump, and goes on in it; one of a program that drew other numbers is
// refused.
func findsRoom(t *testing.T, address string) {
	t.Helper()
	n := dumped(t, address).node(t)
	head, err := n.journal.Head(t.Context(), dumpRoom)
	if err != nil || head.Title != "Dumped" || head.Group != "turning-1" || len(head.Roster) != 2 {
		t.Fatal(head, err)
	}
	events, err := n.journal.After(t.Context(), dumpRoom, 0)
	var kinds []class.Kind
	for _, e := range events {
		kinds = append(kinds, e.Kind)
	}
	if want := []class.Kind{class.Asked, class.Joined, class.Opened, class.Answered}; err != nil || !slices.Equal(kinds, want) || events[3].Text != dumpAnswer || events[3].Key != "a1 one" {
		t.Fatal(events, err)
	}
	l, err := n.hall.Room(t.Context(), dumpRoom)
	if head.Draws != problem.Draws {
		if err == nil {
			t.Error("a room with other numbers goes on")
		}
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := l.Do(t.Context(), class.Event{Kind: class.Locked}); err != nil {
		t.Error(err)
	}
	l.See(func(r *class.Room) {
		if r.Seq != 5 || r.Person("a1").Answers[class.Question{}].Text != dumpAnswer {
			t.Error("the room is another: ", r.Seq, r.Person("a1"))
		}
	})
}

// findsPeople wants who had signed on, the audit and the secret of a dump.
func findsPeople(t *testing.T, db *postgres.DB, dump string) {
	t.Helper()
	seal, err := school.NewSeal(dumpKey)
	if err != nil {
		t.Fatal(err)
	}
	clock := func() time.Time { return dumpTime.Add(time.Minute) }
	p, err := school.Sessions{DB: db, Clock: clock}.Person(t.Context(), dumpToken)
	if want := (school.Person{ID: ada, Name: "Ada", Groups: []string{"first-year"}}); err != nil || !reflect.DeepEqual(p, want) {
		t.Error(p, err)
	}
	entries, err := school.Audit{DB: db, Clock: clock}.Before(t.Context(), 0, 10)
	if want := (school.Entry{Number: 1, At: dumpTime, Who: ada, Name: "Ada", Did: school.SignedOn, About: "-"}); err != nil || len(entries) != 1 || entries[0] != want {
		t.Error(entries, err)
	}
	secret, err := school.Secrets{DB: db, Seal: seal}.Of(t.Context(), "turning-1")
	var sealed string
	err2 := db.QueryRow("SELECT sealed FROM secrets").Scan(&sealed)
	if err := errors.Join(err, err2); err != nil || len(secret) != 32 || !strings.Contains(dump, sealed) {
		t.Error("the secret is another: ", err)
	}
}

// shape is what the tables of a database are, by name.
type shape map[string]string

// shapeOf reads the columns and the indexes of a database, but not where columns stand.
func shapeOf(t *testing.T, db *postgres.DB) shape {
	t.Helper()
	rows, err := db.Query(`
		SELECT 'column ' || table_name || '.' || column_name, concat_ws(' ', data_type, collation_name, 'null: ' || is_nullable, 'default: ' || coalesce(column_default, 'none'), 'identity: ' || is_identity)
		FROM information_schema.columns WHERE table_schema = current_schema() AND table_name NOT LIKE 'goose%'
		UNION ALL SELECT 'index ' || indexname, replace(indexdef, current_schema() || '.', '') FROM pg_indexes WHERE schemaname = current_schema() AND tablename NOT LIKE 'goose%'
		UNION ALL SELECT 'constraint ' || conrelid::regclass || ' ' || conname, pg_get_constraintdef(oid) FROM pg_constraint WHERE connamespace = current_schema()::regnamespace AND conrelid::regclass::text NOT LIKE 'goose%'`)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	s := shape{}
	for rows.Next() {
		var name, is string
		if err := rows.Scan(&name, &is); err != nil {
			t.Fatal(err)
		}
		s[name] = is
	}
	if err := rows.Err(); err != nil || len(s) == 0 {
		t.Fatal("no tables: ", err)
	}
	return s
}

// goesOnIn wants that a program which knows one shape can work with a later one: each column is there
// as it was, and what was added to a table of its own need not be given.
func (s shape) goesOnIn(t *testing.T, later shape) {
	t.Helper()
	tables := map[string]bool{}
	for name, is := range s {
		column, isColumn := strings.CutPrefix(name, "column ")
		if !isColumn {
			continue
		}
		table, _, _ := strings.Cut(column, ".")
		tables[table] = true
		if later[name] != is {
			t.Errorf("the %s was %q and is %q: nodes that are not replaced yet can't go on", name, is, later[name])
		}
	}
	for name, is := range later {
		column, isColumn := strings.CutPrefix(name, "column ")
		table, _, _ := strings.Cut(column, ".")
		if _, was := s[name]; isColumn && tables[table] && !was && !strings.Contains(is, "null: YES") && strings.Contains(is, "default: none") {
			t.Errorf("the new %s has to be given (%s): nodes that are not replaced yet can't go on", name, is)
		}
	}
}

// A node that was not replaced yet goes on when another one brings the database to a newer form that
// only adds: signing on, studies, rooms, results, the audit. Once it has ended it is not started
// again: that is refused, with what to do.
func TestNodeOfAnOlderForm(t *testing.T) {
	c := newCampus(t)
	n := c.node(t)
	teacher, study := n.token("the teacher", "teach-1"), n.token("Ada", "first-year")
	code := n.room(teacher, "turning-1")
	p := n.phone(code, "Ada Brook")
	works := func() {
		t.Helper()
		n.token("Ben", "first-year")
		n.sends(teacher, "/desk/"+code+"/do", "do", "open", "place", "0", "sure", "yes")
		if status, page := p.do(n, "POST", "/r/"+code+"/answer", url.Values{"set": {"0"}, "place": {"0"}, "answer": {"0.05"}}); status != 303 {
			t.Error("an answer: ", status, page)
		}
		n.sends(study, "/study/answer", "prompt", prompt(t, n.page(study, "/study")), "answer", "1")
		n.page(study, "/mine.jsonl")
		has(t, n.page(teacher, "/groups/turning-1/rooms/"+code+"/grades/0"), "Ada Brook")
		n.page(n.token("Ina", "inspectors"), "/audit")
		has(t, n.page(n.token("Ira", "it-staff"), "/people?name=Ben"), "Ben")
		n.room(teacher, "turning-1")
		fill(t, record.In(n.db, "https://login.example.school "+n.token("another", "first-year")))
	}
	works()
	newer := opened(t, c.address)
	was := shapeOf(t, newer)
	tables := map[string]bool{}
	for name := range was {
		if column, is := strings.CutPrefix(name, "column "); is {
			table, _, _ := strings.Cut(column, ".")
			tables[table] = true
		}
	}
	for table := range tables { // more in each of them, and one more
		if _, err := newer.Exec("ALTER TABLE " + table + " ADD COLUMN news text NOT NULL DEFAULT 'none'"); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := newer.Exec("CREATE TABLE news (of text); INSERT INTO goose_db_version (version_id, is_applied) VALUES (9999, true)"); err != nil {
		t.Fatal(err)
	}
	was.goesOnIn(t, shapeOf(t, newer))
	works()
	if _, err := postgres.Open(t.Context(), c.address); err == nil || !strings.Contains(err.Error(), "form 9999 by a newer program") || !strings.Contains(err.Error(), "use that one") {
		t.Error("it is started again: ", err)
	}
}
