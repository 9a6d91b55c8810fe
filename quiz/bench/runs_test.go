package bench

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
)

var update = flag.Bool("update", false, "write the golden files anew; read them before committing")

func shippedJob(t testing.TB, name string) Job {
	t.Helper()
	w, err := content.Shipped().Job(name)
	if err != nil {
		t.Fatal(err)
	}
	j, err := ParseJob(w, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// runJob is the job of a run: one that ships, or the one that it carries.
func runJob(t testing.TB, file string, s Script) Job {
	t.Helper()
	if s.As == "" {
		return shippedJob(t, s.Job)
	}
	j, err := s.ReadJob(file, content.Job{}, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// playRun plays one of the fixed runs.
func playRun(t testing.TB, file string) (Script, Replayed) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, err := ParseScript(file, text)
	if err != nil {
		t.Fatal(err)
	}
	j := runJob(t, file, s)
	r, err := s.Replay(file, j)
	if err != nil {
		t.Fatal(err)
	}
	return s, r
}

// Every run gives just the result that was read when it was committed. The good ones
// fit without a mistake; each of the others makes the mistake that it is named after.
func TestRuns(t *testing.T) {
	words, err := content.Shipped().Bench()
	if err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob("testdata/runs/*.run")
	if len(files) < 40 {
		t.Fatalf("only %d runs", len(files))
	}
	made := map[string]bool{}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".run")
		t.Run(name, func(t *testing.T) {
			s, r := playRun(t, file)
			b := r.Bench
			if !b.Over {
				t.Fatal("the run does not come to an end")
			}
			for _, m := range b.Mistakes {
				made[string(m.Name)] = true
			}
			if strings.HasPrefix(name, "good-") && (b.Outcome.Verdict != Fits || len(b.Mistakes) > 0) {
				t.Errorf("%s, %v", b.Outcome.Verdict, b.Mistakes)
			}
			if _, is := words.Mistakes[name]; is && !b.made(MistakeName(name)) {
				t.Errorf("made %v", b.Mistakes)
			}
			var out bytes.Buffer
			e := json.NewEncoder(&out)
			e.SetEscapeHTML(false)
			e.SetIndent("", " ")
			if err := e.Encode(r.Document(s.Job, words)); err != nil {
				t.Fatal(err)
			}
			golden := strings.TrimSuffix(file, ".run") + ".json"
			if *update {
				if err := os.WriteFile(golden, out.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(out.Bytes(), want) {
				t.Errorf("%s differs; run go test ./quiz/bench -update and read the change.\ngot:\n%s", golden, out.String())
			}
			if strings.Contains(out.String(), "${") {
				t.Error("a text has a figure missing")
			}
		})
	}
	for name := range words.Mistakes {
		if !made[name] {
			t.Errorf("no run makes the mistake %q", name)
		}
	}
}

// made reports whether a mistake was made.
func (b Bench) made(name MistakeName) bool {
	for _, m := range b.Mistakes {
		if m.Name == name {
			return true
		}
	}
	return false
}
