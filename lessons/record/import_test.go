package record_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

// What is exported can be read in elsewhere, twice without harm, and comes to the
// same.
func TestExportAndImport(t *testing.T) {
	fold := schedule.Fold(items)
	from, to := fresh(t, 50), fresh(t, 0)
	to.Learner = "Ada at home"
	var out bytes.Buffer
	if n, err := from.Export(&out); n != 50 || err != nil {
		t.Fatal(n, err)
	}
	for _, want := range [][2]int{{50, 0}, {0, 50}} {
		added, known, err := to.Import(strings.NewReader(out.String()), fold)
		if err != nil || added != want[0] || known != want[1] {
			t.Fatal(added, known, err)
		}
	}
	a, _, _ := from.Summaries()
	b, n, err := to.Summaries()
	if one, other := asJSON(t, a), asJSON(t, b); n != 50 || err != nil || one != other {
		t.Errorf("%d, %v\n%s\n%s", n, err, one, other)
	}
	for _, got := range kept(t, to) {
		if got.Learner != "Ada at home" {
			t.Fatalf("an answer of %q was read into the record of someone else", got.Learner)
		}
	}
}

func asJSON(t *testing.T, x any) string {
	t.Helper()
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// The names of the fields are those of exports that are out there.
func TestExportHasTheseFields(t *testing.T) {
	r := fresh(t, 0)
	at := time.UnixMilli(1_700_000_000_123)
	full := record.Answer{At: at, Task: "single-depth", Code: "single-depth@2m-7f3a", Given: "<&> 0.0613", Verdict: answer.KnownError, Slip: "double", Cause: "diameter",
		Points: 0.5, Certainty: answer.Bet, Hint: true, Seconds: 12.5, Situation: "outside", Key: "0.0307 in", Content: "0123abcd"}
	for _, a := range []record.Answer{full, {At: at, Task: "t", Verdict: answer.Right}} {
		if err := r.Append(a, nil); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if _, err := r.Export(&out); err != nil {
		t.Fatal(err)
	}
	when := asJSON(t, at)
	want := `{"learner":"Ada","at":` + when + `,"task":"single-depth","code":"single-depth@2m-7f3a","given":"<&> 0.0613","verdict":"slip","slip":"double","cause":"diameter","points":0.5,"certainty":"bet","hint":true,"seconds":12.5,"form":"outside","key":"0.0307 in","content":"0123abcd"}
{"learner":"Ada","at":` + when + `,"task":"t","code":"","given":"","verdict":"right","points":0,"seconds":0,"key":"","content":""}
`
	if out.String() != want {
		t.Errorf("%s", out.String())
	}
	back := fresh(t, 0)
	if _, _, err := back.Import(&out, schedule.Fold(items)); err != nil || !reflect.DeepEqual(kept(t, back), kept(t, r)) {
		t.Errorf("read in again: %+v, %v", kept(t, back), err)
	}
}

// Of two answers that differ in when, what or which problem, none is left out; the same
// one in an export twice is one.
func TestImportLeavesOutWhatIsThere(t *testing.T) {
	line := func(at int64, code, given string) string {
		return fmt.Sprintf(`{"at":%q,"task":"t","code":%q,"given":%q,"verdict":"right"}`, time.UnixMilli(at).UTC().Format(time.RFC3339Nano), code, given)
	}
	r := fresh(t, 0)
	text := strings.Join([]string{line(1000, "a", "1"), line(1001, "a", "1"), line(1000, "b", "1"), line(1000, "a", "2"), line(1000, "a", "1"), ""}, "\r\n")
	for _, want := range [][2]int{{4, 1}, {0, 5}} {
		if added, known, err := r.Import(strings.NewReader(text), schedule.Fold(items)); added != want[0] || known != want[1] || err != nil {
			t.Errorf("%d added, %d known, %v", added, known, err)
		}
	}
	r.Learner = "Ben" // the same answers of someone else are not his
	if added, known, err := r.Import(strings.NewReader(text), schedule.Fold(items)); added != 4 || known != 1 || err != nil {
		t.Errorf("%d added, %d known, %v", added, known, err)
	}
}

// Answers are folded in the order they were given, whatever the order of the lines.
func TestImportFoldsInOrder(t *testing.T) {
	r := fresh(t, 0)
	late, early := nth(9), nth(1)
	late.Verdict = answer.Wrong
	if _, _, err := r.Import(strings.NewReader(asJSON(t, late)+"\n"+asJSON(t, early)), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	of, n, err := r.Summaries()
	if s := of["single-depth"]; n != 2 || err != nil || !s.Last.Equal(late.At) || s.Run.Length != 0 {
		t.Errorf("%+v, %d, %v", s, n, err)
	}
}

func TestImportErrors(t *testing.T) {
	good := asJSON(t, nth(100)) + "\n"
	long := func(bytes int) string { // a line of so many bytes, a good answer but for its length
		a := nth(101)
		a.Given = strings.Repeat("x", bytes-len(asJSON(t, a))+len(a.Given))
		return asJSON(t, a)
	}
	for _, row := range []struct {
		name, text, want string
	}{
		{"no JSON", "not json\n", "line 1 is no answer: invalid character"},
		{"no JSON further down", good + "\n" + good + "{\n" + good, "line 4 is no answer"},
		{"a blank is no empty line", good + " \n", "line 2 is no answer"},
		{"JSON of another kind", good + "[1]\n", "line 2 is no answer"},
		{"a field of another kind", good + `{"task":"t","verdict":"right","at":"2026-01-01T00:00:00Z","points":"one"}`, "line 2 is no answer"},
		{"a time that is none", good + `{"task":"t","verdict":"right","at":"yesterday"}`, "line 2 is no answer"},
		{"no task", good + `{"verdict":"right","at":"2026-01-01T00:00:00Z"}`, "line 2 is no answer: task, verdict and at are wanted"},
		{"no verdict", good + `{"task":"t","at":"2026-01-01T00:00:00Z"}`, "line 2 is no answer: task, verdict and at are wanted"},
		{"no time", good + `{"task":"t","verdict":"right"}`, "line 2 is no answer: task, verdict and at are wanted"},
		{"a long line", good + long(64<<10) + "\n", "line 2 is no answer: it has more than 65536 bytes"},
	} {
		r := fresh(t, 2)
		added, known, err := r.Import(strings.NewReader(row.text), schedule.Fold(items))
		if added != 0 || known != 0 || !says(err, row.want) || !says(err, "; nothing was read in") {
			t.Errorf("%s: %d added, %d known, %v", row.name, added, known, err)
		}
		sound(t, r, 2)
	}
	r := fresh(t, 2)
	if added, _, err := r.Import(strings.NewReader(long(64<<10-2)), schedule.Fold(items)); added != 1 || err != nil {
		t.Errorf("a line that is just short enough: %d, %v", added, err)
	}
	failure := errors.New("the stick was pulled out")
	r = fresh(t, 2)
	if added, _, err := r.Import(io.MultiReader(strings.NewReader(good), iotest.ErrReader(failure)), schedule.Fold(items)); added != 0 || !errors.Is(err, failure) || !says(err, "nothing was read in") {
		t.Errorf("%d, %v", added, err)
	}
	sound(t, r, 2)
}

// writer takes so many writes and then fails.
type writer struct{ left int }

func (w *writer) Write(p []byte) (int, error) {
	if w.left--; w.left < 0 {
		return 0, io.ErrShortWrite
	}
	return len(p), nil
}

func TestExportThatCannotBeWritten(t *testing.T) {
	r := fresh(t, 5)
	if n, err := r.Export(&writer{left: 3}); n != 3 || !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("%d written, %v", n, err)
	}
	sound(t, r, 5) // and the record is none the worse
}
