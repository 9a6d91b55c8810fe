package record_test

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/bench"
)

// played is the n-th rehearsal of a learner, one an hour, with fewer and fewer mistakes.
func played(n int) record.Rehearsal {
	x := record.Rehearsal{
		Learner: "Ada", At: time.UnixMilli(1_700_000_900_000 + int64(n)*3_600_000), Begun: time.UnixMilli(1_700_000_000_000 + int64(n)*3_600_000),
		Job: "gland-nut", Thread: "1-1/4-12 UNF-2B", Verdict: bench.Fits, Mistakes: []record.MistakeMade{}, Seconds: 900.25 + float64(n), Passes: 14, Hints: n, Live: n%2 == 1,
		Room: record.Room{Passes: 13, Shortest: record.Way{Inches: 0.11, Seconds: 0.9}, Median: record.Way{Inches: 0.2, Seconds: 1.6},
			Speeds: []record.SpeedRoom{{RPM: 70, Passes: 13, Shortest: record.Way{Inches: 0.11, Seconds: 0.9}, Longest: record.Way{Inches: 0.25, Seconds: 2}}}},
	}
	if n%3 != 2 {
		x.Verdict, x.Mistakes = bench.Scrap, []record.MistakeMade{{Name: "heavy", Times: 3 - n%3}, {Name: "hit-chuck", TakenBack: 1}}
	}
	return x
}

// rehearsed are the rehearsals that are there.
func rehearsed(t testing.TB, r *record.Record) []record.Rehearsal {
	t.Helper()
	all, err := r.Rehearsals()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// withRehearsals is a record of Ada's with so many rehearsals, the last of which is begun again.
func withRehearsals(t testing.TB, path string, n int) *record.Record {
	t.Helper()
	r := open(t, path, "Ada")
	for i := range n {
		if err := r.FinishRehearsal(played(i)); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.BeginRehearsal(record.Begun{Job: "gland-nut", Thread: "1-1/4-12 UNF-2B", At: played(n).Begun, Hints: 2}); err != nil {
		t.Fatal(err)
	}
	return r
}

// What is kept of a rehearsal comes back; kept again it is there once; begun is what was not
// brought to its end, one of a job.
func TestRehearsalsAreKept(t *testing.T) {
	r := withRehearsals(t, place(t), 3)
	want := []record.Rehearsal{played(0), played(1), played(2)}
	if err := r.FinishRehearsal(played(1)); err != nil { // it was stopped before it heard that this was kept
		t.Fatal(err)
	}
	if got := rehearsed(t, r); !reflect.DeepEqual(got, want) {
		t.Errorf("%+v\nwant %+v", got, want)
	}
	if !want[2].Faultless() || want[0].Faultless() || want[0].MistakesMade() != 4 {
		t.Errorf("%+v", want)
	}
	// To keep one ends what was begun of that job, and of no other.
	other := record.Begun{Job: "own", JobSum: record.SumOfJob("thread: M12"), Thread: "M12x1.75-6H", At: time.UnixMilli(1_700_000_000_001)}
	for _, b := range []record.Begun{other, {Job: "gland-nut", Thread: "1-1/4-12 UNF-2B", At: played(3).Begun, Hints: 2}} {
		if err := r.BeginRehearsal(b); err != nil {
			t.Fatal(err)
		}
	}
	if begun, err := r.BegunRehearsals(); err != nil || len(begun) != 2 || begun[0].Hints != 2 || begun[1] != other {
		t.Errorf("%+v, %v", begun, err)
	}
	if err := r.FinishRehearsal(played(3)); err != nil {
		t.Fatal(err)
	}
	if begun, err := r.BegunRehearsals(); err != nil || len(begun) != 1 || begun[0] != other {
		t.Errorf("%+v, %v", begun, err)
	}
	if ben := open(t, place(t), "Ben"); len(rehearsed(t, ben)) > 0 {
		t.Error("another learner has them")
	}
}

// Two jobs of one name are two jobs; one that ships has no sum.
func TestSumOfJob(t *testing.T) {
	if a, b := record.SumOfJob(`{"gap":"0.2 in"}`), record.SumOfJob(`{"gap":"0.3 in"}`); a == b || len(a) != 16 || record.SumOfJob("") != "" {
		t.Errorf("%q %q", a, b)
	}
}

// Exported, forgotten and read in again a record has the same rehearsals; read in twice they
// are there once; whose they were does not matter.
func TestRehearsalsExportForgetImport(t *testing.T) {
	path := place(t)
	r, fold := withRehearsals(t, path, 4), schedule.Fold(items)
	if err := r.Append(nth(0), fold); err != nil {
		t.Fatal(err)
	}
	before := asJSON(t, rehearsed(t, r))
	var out bytes.Buffer
	if x, err := r.Export(&out); x.Answers != 1 || x.Rehearsals != 4 || err != nil {
		t.Fatal(x, err)
	}
	f, err := r.Forget()
	if f.Answers != 1 || f.Rehearsals != 4 || err != nil {
		t.Fatal(f, err)
	}
	if begun, err := r.BegunRehearsals(); len(rehearsed(t, r)) > 0 || len(begun) > 0 || err != nil {
		t.Errorf("left: %+v, %v", begun, err)
	}
	if !onServer {
		if found := holds(t, filepath.Dir(path), "gland-nut"); len(found) > 0 {
			t.Errorf("%v still hold it", found)
		}
	}
	for _, want := range [][2]int{{4, 0}, {0, 4}} {
		i, err := importInto(r, strings.NewReader(out.String()), fold)
		if err != nil || i.Rehearsals != want[0] || i.RehearsalsKnown != want[1] {
			t.Fatal(i, err)
		}
	}
	if after := asJSON(t, rehearsed(t, r)); after != before {
		t.Errorf("%s\nwas %s", after, before)
	}
	ben := open(t, path, "Ben")
	if i, err := importInto(ben, strings.NewReader(out.String()), fold); err != nil || i.Rehearsals != 4 || rehearsed(t, ben)[0].Learner != "Ben" {
		t.Errorf("%+v, %v", i, err)
	}
}

// What can't be a rehearsal is an error that names the line, and nothing is read in.
func TestRehearsalImportErrors(t *testing.T) {
	whole := asJSON(t, played(0))
	for _, row := range [][3]string{
		{`"rehearsal":"gland-nut"`, `"rehearsal":""`, "are wanted"},
		{`"thread":"1-1/4-12 UNF-2B"`, `"thread":""`, "are wanted"},
		{`"verdict":"scrap"`, `"verdict":"perfect"`, `"perfect": give fits, binds or scrap`},
		{`"seconds":900.25`, `"seconds":-1`, "seconds -1: give 0"},
		{`"seconds":900.25`, `"seconds":1e7`, "give 0"},
		{`"passes":14`, `"passes":-2`, "passes -2"},
		{`"hints":0`, `"hints":99999`, "hints 99999"},
		{`"times":3`, `"times":-3`, "-3 and 0 times"},
		{`"times":3`, `"times":0`, "0 and 0 times"},
		{`"name":"heavy"`, `"name":""`, "give a name"},
		{`"name":"heavy"`, `"name":"he\u0007avy"`, "can't be printed"},
		{`"rpm":70`, `"rpm":-70`, "give numbers from 0 up"},
		{`"begun":"2023`, `"begun":"1023`, "no rehearsal can have ended then"},
		{`"at":"2023`, `"at":"2123`, "no rehearsal can have ended then"},
		{`"mistakes":[`, `"mistakes":7,"x":[`, "line 2 is no rehearsal"},
	} {
		bad := strings.Replace(whole, row[0], row[1], 1)
		if bad == whole {
			t.Fatalf("%s is not in %s", row[0], whole)
		}
		r := fresh(t, 1)
		_, err := importInto(r, strings.NewReader(whole+"\n"+bad+"\n"), schedule.Fold(items))
		if !says(err, row[2]) || !says(err, "line 2 is no rehearsal") || !says(err, "nothing was read in") {
			t.Errorf("%s: %v", row[1], err)
		}
		if n := len(rehearsed(t, r)); n > 0 {
			t.Errorf("%s: %d were read in", row[1], n)
		}
	}
}

// A rehearsal that damage has taken comes from the copy of the day; one that the copy has not
// is known by its number, and told once. The others are there.
func TestDamagedRehearsals(t *testing.T) {
	for _, row := range []struct {
		at, lost int // which one is spoilt; the copy has the first thirty
	}{{10, 0}, {29, 0}, {35, 1}} {
		path := filepath.Join(t.TempDir(), "r.db")
		r := open(t, path, "Ada")
		for n := range 40 {
			if n == 30 {
				r.Close()
				r = open(t, path, "Ada") // makes the copy
			}
			x := played(n)
			if n == row.at {
				x.Job = "spoilt-nut"
			}
			if err := r.FinishRehearsal(x); err != nil {
				t.Fatal(err)
			}
		}
		r.Close()
		spoil(t, path, func(b []byte) []byte { return flipText(b, "spoilt-nut", true) })
		r = open(t, path, "Ada")
		lost, err := r.LostRehearsals(false)
		if r.Mended == nil || r.Mended.LostRehearsals != row.lost || err != nil || len(lost) != row.lost {
			t.Fatalf("%d: %+v, lost %v, %v", row.at, r.Mended, lost, err)
		}
		if got := len(rehearsed(t, r)); got != 40-row.lost {
			t.Errorf("%d: %d are there", row.at, got)
		}
		if row.lost > 0 && (lost[0].N != 36 || !lost[0].After.Equal(played(34).At) || !lost[0].Before.Equal(played(36).At)) {
			t.Errorf("%d: %+v", row.at, lost)
		}
		if err := r.LostSaid(); err != nil {
			t.Fatal(err)
		}
		if lost, _ := r.LostRehearsals(false); len(lost) > 0 {
			t.Error("told twice")
		}
		// A number is given once.
		if err := r.FinishRehearsal(played(50)); err != nil {
			t.Fatal(err)
		}
		open(t, path, "Ada").Close()
	}
}

// A page of rehearsals that is gone takes those on it and no others, and each that is gone is
// counted; what the copy has comes back.
func TestPageOfRehearsalsGone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	withRehearsals(t, path, 60).Close()
	os.Remove(path + ".copy")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	at := 0 // a page in the midst of the rehearsals
	for page := 1; page < len(text)/4096; page++ {
		if bytes.Count(text[page*4096:(page+1)*4096], []byte("gland-nut")) > 3 {
			if at++; at == 3 {
				spoil(t, path, func(b []byte) []byte { clear(b[page*4096 : (page+1)*4096]); return b })
				break
			}
		}
	}
	r := open(t, path, "Ada")
	there := len(rehearsed(t, r))
	lost, err := r.LostRehearsals(true)
	if err != nil || r.Mended == nil || there+len(lost) != 60 || len(lost) == 0 || len(lost) > 15 {
		t.Errorf("%d there, %d lost, %+v, %v", there, len(lost), r.Mended, err)
	}
}

// rehearsing are the statements that keep a rehearsal.
var rehearsing = []string{"AFTER INSERT ON rehearsals", "BEFORE DELETE ON begun", "AFTER DELETE ON begun"}

// Killed at any statement of it, a rehearsal is there and no longer begun, or neither.
func TestRehearsalKilled(t *testing.T) {
	for _, dies := range rehearsing {
		path := filepath.Join(t.TempDir(), "r.db")
		withRehearsals(t, path, 2).Close()
		crash(t, path, "rehearse", "statement: "+dies)
		r := open(t, path, "Ada")
		begun, err := r.BegunRehearsals()
		if n := len(rehearsed(t, r)); n != 2 || len(begun) != 1 || err != nil || r.Mended != nil {
			t.Errorf("%s: %d there, begun %v, %v", dies, n, begun, err)
		}
	}
}

// Killed at any moment at all, nothing that was acknowledged is lost, and numbers have no gaps.
func TestRehearsalsKilledAtRandom(t *testing.T) {
	kills := *randomLives
	if testing.Short() {
		kills = 3
	}
	path := place(t)
	acknowledged := map[string]bool{}
	for range kills {
		for _, name := range killed(t, doing(path, "rehearse on", ""), rand.IntN(30)) {
			acknowledged[name] = true
		}
	}
	r := open(t, path, "Ada")
	if r.Mended != nil {
		t.Fatalf("%+v", r.Mended)
	}
	said := len(acknowledged)
	for _, x := range rehearsed(t, r) {
		delete(acknowledged, x.Job)
	}
	if len(acknowledged) > 0 {
		t.Errorf("acknowledged and lost: %v", acknowledged)
	}
	t.Logf("%d kills, %d rehearsals acknowledged, none lost", kills, said)
}
