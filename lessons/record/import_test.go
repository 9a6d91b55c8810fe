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
	if x, err := from.Export(&out); x.Answers != 50 || err != nil {
		t.Fatal(x, err)
	}
	for _, want := range [][2]int{{50, 0}, {0, 50}} {
		i, err := importInto(to, strings.NewReader(out.String()), fold)
		if err != nil || i.Added != want[0] || i.Known != want[1] {
			t.Fatal(i, err)
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
	for _, a := range []record.Answer{full, {At: at, Task: "t", Code: "t@1-1", Verdict: answer.Right}} {
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
{"learner":"Ada","at":` + when + `,"task":"t","code":"t@1-1","given":"","verdict":"right","points":0,"seconds":0,"key":"","content":""}
`
	if out.String() != want {
		t.Errorf("%s", out.String())
	}
	back := fresh(t, 0)
	if _, err := importInto(back, &out, schedule.Fold(items)); err != nil || !reflect.DeepEqual(kept(t, back), kept(t, r)) {
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
	text := strings.Join([]string{line(1_700_000_001_000, "a", "1"), line(1_700_000_001_001, "a", "1"), line(1_700_000_001_000, "b", "1"), line(1_700_000_001_000, "a", "2"), line(1_700_000_001_000, "a", "1"), ""}, "\r\n")
	for _, want := range [][2]int{{4, 1}, {0, 5}} {
		if i, err := importInto(r, strings.NewReader(text), schedule.Fold(items)); i.Added != want[0] || i.Known != want[1] || err != nil {
			t.Errorf("%+v, %v", i, err)
		}
	}
	r.Learner = "Ben" // the same answers of someone else are not his
	if i, err := importInto(r, strings.NewReader(text), schedule.Fold(items)); i.Added != 4 || i.Known != 1 || err != nil {
		t.Errorf("%+v, %v", i, err)
	}
}

// Answers are folded in the order they were given, whatever the order of the lines.
func TestImportFoldsInOrder(t *testing.T) {
	r := fresh(t, 0)
	late, early := nth(9), nth(1)
	late.Verdict = answer.Wrong
	if _, err := importInto(r, strings.NewReader(asJSON(t, late)+"\n"+asJSON(t, early)), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	of, n, err := r.Summaries()
	if s := of["single-depth"]; n != 2 || err != nil || !s.Last.Equal(late.At) || s.Run.Length != 0 {
		t.Errorf("%+v, %d, %v", s, n, err)
	}
}

// changed is the line of an answer with something else in it.
func changed(t *testing.T, what, into string) string {
	t.Helper()
	line := asJSON(t, nth(100))
	other := strings.Replace(line, what, into, 1)
	if other == line {
		t.Fatalf("%s is not in %s", what, line)
	}
	return other + "\n"
}

// importInto reads answers in as they are marked; one whose code begins with "nothing" makes no
// problem, and one whose code begins with "another" makes another.
func importInto(r *record.Record, in io.Reader, fold record.Fold) (record.Imported, error) {
	mark := func(a record.Answer) (record.Answer, error) {
		switch {
		case strings.HasPrefix(a.Code, "nothing"):
			return a, errors.New("no such problem")
		case strings.HasPrefix(a.Code, "another"):
			return a, fmt.Errorf("%w: 1, and was 2", record.ErrOtherProblem)
		case a.Given == "0.9" && a.Verdict == answer.Right:
			a.Verdict, a.Points = answer.Wrong, 0
		}
		return a, nil
	}
	return r.Import(in, mark, fold, time.Unix(1_800_000_000, 0))
}

// What was read in is marked anew: it counts as it is marked now. What can't be marked anew is
// left out, and told of.
func TestImportMarksAnew(t *testing.T) {
	r := fresh(t, 0)
	text := changed(t, "0.0613", "0.9") + changed(t, `"code":"single-depth`, `"code":"another`) + asJSON(t, nth(7))
	i, err := importInto(r, strings.NewReader(text), schedule.Fold(items))
	if err != nil || i.Added != 2 || i.Changed != 1 || len(i.LeftOut) != 1 || i.LeftOut[0] != 2 {
		t.Fatalf("%+v, %v", i, err)
	}
	if all := kept(t, r); len(all) != 2 || all[0].Verdict != answer.Wrong || all[0].Points != 0 || all[1].Verdict != answer.Right {
		t.Errorf("%+v", all)
	}
	of, n, err := r.Summaries()
	if n != 2 || of["single-depth"].Right != 1 || err != nil {
		t.Errorf("%+v, %d, %v", of, n, err)
	}
}

func TestImportErrors(t *testing.T) {
	good := asJSON(t, nth(100)) + "\n"
	long := func(bytes int) string { // a line of so many bytes, a good answer but for its length
		line := asJSON(t, nth(101))
		return line[:1] + strings.Repeat(" ", bytes-len(line)) + line[1:]
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
		{"no task", good + `{"verdict":"right","at":"2026-01-01T00:00:00Z"}`, "line 2 is no answer: task, code, verdict and at are wanted"},
		{"no verdict", good + `{"task":"t","at":"2026-01-01T00:00:00Z"}`, "line 2 is no answer: task, code, verdict and at are wanted"},
		{"no time", good + `{"task":"t","verdict":"right"}`, "line 2 is no answer: task, code, verdict and at are wanted"},
		{"no code", good + `{"task":"t","verdict":"right","at":"2026-01-01T00:00:00Z"}`, "line 2 is no answer: task, code, verdict and at are wanted"},
		{"a verdict that is none", good + changed(t, `"verdict":"right"`, `"verdict":"fine"`), `line 2 is no answer: the verdict "fine": give one of [right`},
		{"one that no answer is kept with", good + changed(t, `"verdict":"right"`, `"verdict":"unread"`), `line 2 is no answer: the verdict "unread"`},
		{"before there were lathes that ask", good + changed(t, "2023-", "1970-"), "line 2 is no answer: at 1970-"},
		{"in no zone", good + changed(t, nth(100).At.Format("Z07:00")+`"`, `+14:01"`), "line 2 is no answer: at 2023-"},
		{"later than now", good + changed(t, "2023-", "2123-"), "line 2 is no answer: at 2123-"},
		{"another certainty", good + changed(t, `"points"`, `"certainty":"very","points"`), `line 2 is no answer: the certainty "very": give one of [guess`},
		{"less than no time", good + changed(t, `"seconds":30`, `"seconds":-1`), "line 2 is no answer: seconds -1: give 0 to 600"},
		{"a day on one task", good + changed(t, `"seconds":30`, `"seconds":86400`), "line 2 is no answer: seconds 86400"},
		{"more than JSON has", good + changed(t, `"seconds":30`, `"seconds":1e999`), "line 2 is no answer"},
		{"points", good + changed(t, `"points":1`, `"points":1.5`), "line 2 is no answer: points 1.5: give 0 to 1"},
		{"a text that rings a bell", good + changed(t, `"given":"0.0613"`, `"given":"\u0007"`), "line 2 is no answer: "},
		{"a long text", good + changed(t, `"given":"0.0613"`, `"given":"`+strings.Repeat("6", 201)+`"`), "line 2 is no answer: given has more than 200 letters"},
		{"a long key", good + changed(t, `"key":"100"`, `"key":"`+strings.Repeat("6", 1001)+`"`), "line 2 is no answer"},
		{"a code that makes no problem", good + changed(t, `"code":"single-depth`, `"code":"nothing`), "line 2 is no answer: no such problem"},
		{"a long line", good + long(64<<10) + "\n", "line 2 is no answer: it has more than 65536 bytes"},
	} {
		r := fresh(t, 2)
		i, err := importInto(r, strings.NewReader(row.text), schedule.Fold(items))
		if i.Added != 0 || i.Known != 0 || !says(err, row.want) || !says(err, "; nothing was read in") {
			t.Errorf("%s: %+v, %v", row.name, i, err)
		}
		sound(t, r, 2)
	}
	r := fresh(t, 2)
	if i, err := importInto(r, strings.NewReader(long(64<<10-2)), schedule.Fold(items)); i.Added != 1 || err != nil {
		t.Errorf("a line that is just short enough: %+v, %v", i, err)
	}
	failure := errors.New("the stick was pulled out")
	r = fresh(t, 2)
	if i, err := importInto(r, io.MultiReader(strings.NewReader(good), iotest.ErrReader(failure)), schedule.Fold(items)); i.Added != 0 || !errors.Is(err, failure) || !says(err, "nothing was read in") {
		t.Errorf("%+v, %v", i, err)
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
	if x, err := r.Export(&writer{left: 3}); x.Answers != 3 || !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("%+v written, %v", x, err)
	}
	sound(t, r, 5) // and the record is none the worse
}
