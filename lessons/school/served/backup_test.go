package served_test

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

const ada, ben = "https://login.example.school Ada", "https://login.example.school Ben"

// onCluster is a school whose database is on a server of the test's own, made as the README has it.
func onCluster(t *testing.T, settings ...string) (campus, *postgrestest.Cluster) {
	t.Helper()
	server := postgrestest.NewCluster(t, settings...)
	newDatabase(server)
	return campusAt(t, server.Address("scratchpass", "scratchpass")), server
}

func newDatabase(server *postgrestest.Cluster) {
	server.Run("createuser", "scratchpass")
	server.Run("createdb", "scratchpass", "--owner", "scratchpass")
}

// nth is the n-th answer of someone's practice.
func nth(n int) record.Answer {
	return record.Answer{At: time.UnixMilli(1_790_000_000_000 + int64(n)*60_000).UTC(), Task: "single-depth", Code: fmt.Sprintf("single-depth@1-%04x", n), Given: "0,0613 \"in\" µ", Verdict: answer.Right, Points: 1, Seconds: float64(n) / 8, Key: fmt.Sprint(n), Content: "00000000"}
}

// practises keeps answers in a record, with what they come to.
func practises(t *testing.T, r *record.Record, from, to int) {
	t.Helper()
	book, err := schedule.NewBook(r, machine.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	for n := from; n < to; n++ {
		if err := book.Keep(nth(n)); err != nil {
			t.Fatal(err)
		}
	}
}

// fill puts more than answers into a record, always the same.
func fill(t *testing.T, r *record.Record) {
	t.Helper()
	practises(t, r, 0, 12)
	at := time.UnixMilli(1_790_000_000_000).UTC()
	for _, err := range []error{r.SetPlace("dial-book", 2), r.AddTest(record.Test{At: at, Got: 11, Of: 12}),
		r.BeginRehearsal(record.Begun{Job: "gland-nut", At: at}), r.FinishRehearsal(record.Rehearsal{At: at, Begun: at, Job: "adjusting-screw", Thread: "1/2-13", Verdict: "fits", Seconds: 300, Passes: 9})} {
		if err != nil {
			t.Fatal(err)
		}
	}
}

// kept is all that a school has of some people and a room, as it is given out, and its audit up to an
// entry.
func (n *node) kept(teacher, code string, audit int64) map[string]any {
	n.t.Helper()
	all := map[string]any{"answers": n.page(teacher, "/desk/"+code+"/answers/0")}
	for _, who := range []string{ada, ben} {
		person, err := n.sessions.Known(n.t.Context(), who)
		if err != nil {
			n.t.Fatal(err)
		}
		all[who] = append(contents(n.t, record.In(n.db, who)), person)
	}
	entries, err := n.audit.Before(n.t.Context(), audit+1, 1000)
	secret, err2 := n.secrets.Of(n.t.Context(), "turning-1")
	if err := errors.Join(err, err2); err != nil {
		n.t.Fatal(err)
	}
	all["audit"], all["secret"] = entries, string(secret)
	return all
}

// forgiven are what went wrong at a node and was to: each is taken from what it has told.
func (n *node) forgiven(such func(error) bool) (taken int) {
	n.mu.Lock()
	defer n.mu.Unlock()
	rest := n.fails[:0]
	for _, err := range n.fails {
		if !such(err) {
			rest = append(rest, err)
		}
	}
	taken, n.fails = len(n.fails)-len(rest), rest
	return taken
}

// A school's server is lost with all its disks. From the copy of the day, put back as the README has
// it, everything of that moment is there to the byte: records, a room, sessions, the audit, secrets that
// the seal opens. What came after is gone, and nothing pretends otherwise: who came in later has to come
// in again. What a phone had not been told of is sent again and counts once. A node that ran all the
// while goes on from what was put back, as one does that is started anew.
func TestServerLost(t *testing.T) {
	c, server := onCluster(t)
	n := c.node(t)
	teacher := n.token("the teacher", "teach-1")
	n.token("Ben", "first-year")
	study := n.token("Ada", "first-year")
	code := n.room(teacher, "turning-1")
	does := func(n *node, fields ...string) {
		n.sends(teacher, "/desk/"+code+"/do", append(fields, "sure", "yes")...)
	}
	does(n, "do", "open", "place", "0")
	sends := func(n *node, p *phone, text, key string) int {
		status, _ := p.do(n, http.MethodPost, "/r/"+code+"/answer", url.Values{"set": {"0"}, "place": {"0"}, "answer": {text}, "key": {key}})
		return status
	}
	phoneOfAda := n.phone(code, "Ada Brook")
	if status := sends(n, phoneOfAda, "0.05", "one"); status != http.StatusSeeOther {
		t.Fatal(status)
	}
	fill(t, record.In(n.db, ada))
	fill(t, record.In(n.db, ben))
	n.sends(study, "/study/answer", "prompt", prompt(t, n.page(study, "/study")), "answer", "1")
	asked := prompt(t, n.page(study, "/study"))
	latest, err := n.audit.Before(t.Context(), 0, 1)
	if err != nil {
		t.Fatal(err)
	}
	want := n.kept(teacher, code, latest[0].Number)

	dump := filepath.Join(server.Folder, "scratchpass.dump")
	server.Run("pg_dump", "--format=custom", "--file="+dump, "scratchpass")

	practises(t, record.In(n.db, ada), 100, 105)
	late := n.token("Late", "teach-1")
	phoneOfBen := n.phone(code, "Ben Carr")
	if status := sends(n, phoneOfBen, "0.06", "two"); status != http.StatusSeeOther {
		t.Fatal(status)
	}
	before, err := n.hall.Room(t.Context(), code)
	if err != nil {
		t.Fatal(err)
	}
	server.Lose()
	if status := sends(n, phoneOfAda, "0.07", "three"); status != http.StatusServiceUnavailable {
		t.Error("an answer while there is no server: ", status)
	}

	server.Empty()
	server.Start()
	newDatabase(server)
	server.Run("pg_restore", "--exit-on-error", "--dbname=scratchpass", dump)

	// The node looks at what is there, too, while that is being put back.
	wentBack := func(err error) bool {
		says := err.Error()
		return errors.Is(err, class.ErrAway) || strings.Contains(says, "an older one was put in its place") || strings.Contains(says, "in reach again") || strings.Contains(says, "does not exist")
	}
	t.Cleanup(func() { n.forgiven(wentBack) })
	for now := before; now == before; { // it looks by itself, too, every two seconds
		if err := n.hall.Look(t.Context(), n.journal); err != nil && !wentBack(err) {
			t.Fatal(err)
		}
		if now, err = n.hall.Room(t.Context(), code); err != nil {
			t.Fatal(err)
		}
	}
	fresh := c.node(t)
	for name, at := range map[string]*node{"the node that ran all the while": n, "one that was started anew": fresh} {
		got := at.kept(teacher, code, latest[0].Number)
		for what := range want {
			if !reflect.DeepEqual(got[what], want[what]) {
				t.Errorf("%s: %s is\n%.1500v\nnot\n%.1500v", name, what, got[what], want[what])
			}
		}
		has(t, at.page(teacher, "/desk/"+code), "In the room: 1")
		if _, err := at.sessions.Person(t.Context(), late); !errors.Is(err, school.ErrNoSession) {
			t.Errorf("%s: someone who signed on after the copy was made: %v", name, err)
		}
		if prompt(t, at.page(study, "/study")) != asked {
			t.Error(name, ": the study is at another question")
		}
	}
	other, _ := school.NewSeal(school.NewKey())
	if _, err := (school.Secrets{DB: fresh.db, Seal: other}).Of(t.Context(), "turning-1"); err == nil {
		t.Error("a secret is opened by another seal")
	}

	for range 2 { // the phone sends what was not acknowledged until it is, to whichever node
		for _, at := range []*node{fresh, n} {
			if status := sends(at, phoneOfAda, "0.07", "three"); status != http.StatusSeeOther {
				t.Error("sent again: ", status)
			}
		}
	}
	if status := sends(n, phoneOfBen, "0.06", "two"); status != http.StatusForbidden {
		t.Error("a phone that came in after the copy was made: ", status)
	}
	phoneOfBen.comesIn(fresh, code, "Ben Carr")
	if status := sends(fresh, phoneOfBen, "0.06", "two"); status != http.StatusSeeOther {
		t.Error("after it has come in again: ", status)
	}
	does(fresh, "do", "lock")
	practises(t, record.In(fresh.db, ada), 100, 101)
	rows := fresh.page(teacher, "/desk/"+code+"/answers/0")
	if strings.Count(rows, "\n") != 3 || !strings.Contains(rows, ",0.07,") || !strings.Contains(rows, ",0.06,") {
		t.Error("the room did not go on: ", rows)
	}
	if err := n.hall.Look(t.Context(), n.journal); err != nil {
		t.Error(err)
	}
	if at := n.page(teacher, "/desk/"+code+"/answers/0"); at != rows {
		t.Error("the other node has ", at)
	}
}

// Who streams the log of the database to another place, where each commit waits for it, loses nothing
// that was acknowledged, whenever the server is lost.
func TestServerLostWithItsLogElsewhere(t *testing.T) {
	server := postgrestest.NewCluster(t, "synchronous_standby_names=pg_receivewal")
	base, logs := filepath.Join(server.Folder, "base"), server.Subfolder("logs")
	server.Run("pg_receivewal", "--slot=elsewhere", "--create-slot")
	server.Begin("pg_receivewal", "--directory="+logs, "--slot=elsewhere", "--synchronous", "--no-loop")
	server.Run("pg_basebackup", "--pgdata="+base, "--checkpoint=fast", "--no-sync")
	newDatabase(server)
	address := server.Address("scratchpass", "scratchpass")
	db, err := postgres.Open(t.Context(), address)
	if err != nil {
		t.Fatal(err)
	}
	j, code := journal.Over(db), "ACDEFH"
	if err := j.Begin(t.Context(), class.Head{Code: code}); err != nil {
		t.Fatal(err)
	}
	const phones = 8
	var all sync.WaitGroup
	acknowledged, some := make([][]string, phones), make(chan bool, phones)
	for phone := range phones {
		all.Go(func() {
			for i := 0; ; i++ {
				key := fmt.Sprint(phone, "-", i)
				if _, err := j.Append(t.Context(), code, class.Event{Kind: class.Paused, Key: key}); err != nil {
					return
				}
				if acknowledged[phone] = append(acknowledged[phone], key); i == 20 {
					some <- true
				}
			}
		})
	}
	for range phones / 2 { // and all are in the midst of it
		<-some
	}
	server.Run("psql", "--command=SELECT pg_terminate_backend(pid) FROM pg_stat_replication")
	for range 3 { // nor when it is sent again, after the connection was cut and this server has it
		short, cancel := context.WithTimeout(t.Context(), 300*time.Millisecond)
		if e, err := j.Append(short, code, class.Event{Kind: class.Paused, Key: "nowhere else"}); err == nil {
			t.Error("acknowledged while the other place is away: ", e)
		}
		cancel()
		server.Run("psql", "--command=SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE wait_event = 'SyncRep'")
	}
	server.Lose()
	all.Wait()
	_ = j.Close() // it has no server any more

	server.Recover(base, `cp "`+logs+`/%f" "%p" || cp "`+logs+`/%f.partial" "%p"`)
	if db, err = postgres.Open(t.Context(), address); err != nil {
		t.Fatal(err)
	}
	j = journal.Over(db)
	defer j.Close()
	events, err := j.After(t.Context(), code, 0)
	if err != nil {
		t.Fatal(err)
	}
	there, n := map[string]int{}, 0
	for _, e := range events {
		there[e.Key]++
	}
	for _, keys := range acknowledged {
		for _, key := range keys {
			if n++; there[key] != 1 {
				t.Errorf("%s was acknowledged and is there %d times", key, there[key])
			}
		}
	}
	if _, err := j.Append(t.Context(), code, class.Event{Kind: class.Resumed, Key: "after"}); err != nil {
		t.Error("it does not go on: ", err)
	}
	t.Logf("%d acknowledged, %d there", n, len(events))
}
