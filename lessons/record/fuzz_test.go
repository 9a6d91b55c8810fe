package record

import (
	"encoding/json"
	"math"
	"slices"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/quiz/answer"
)

// Whatever a line of an export is, it is an answer that can be one, or an error.
func FuzzImportedLine(f *testing.F) {
	now := time.Unix(1_800_000_000, 0)
	f.Add([]byte(`{"learner":"me","at":"2026-03-01T09:00:00Z","task":"pitch-from-tpi","code":"pitch-from-tpi@1-7f3a","given":"9","verdict":"right","points":1,"seconds":10}`))
	f.Add([]byte(`{"at":"2026-03-01T09:00:00+25:00","task":"t","code":"c","verdict":"slip","points":1e308,"certainty":"bet","form":"\u202e"}`))
	f.Add([]byte(`{"at":"-0001-01-01T00:00:00Z","task":1}`))
	f.Add([]byte(`[[[[`))
	f.Add([]byte(`{"learner":"me","at":"2026-03-01T09:00:00Z","begun":"2026-03-01T08:00:00Z","rehearsal":"gland-nut","thread":"1-1/4-12 UNF-2B","verdict":"fits","mistakes":[{"name":"heavy","times":1}],"seconds":900,"passes":14,"room":{"passes":1,"speeds":[{"rpm":70}]},"hints":1}`))
	f.Fuzz(func(t *testing.T, line []byte) {
		if isRehearsal(line) {
			importable(t, line, now)
			return
		}
		a, err := readAnswer(line, now)
		if err != nil {
			return
		}
		if a.At.Year() < 2020 || a.At.After(now.AddDate(0, 0, 2)) || !slices.Contains(answer.Verdicts, a.Verdict) || !a.Certainty.Known() ||
			math.IsNaN(a.Points) || a.Points < 0 || a.Points > 1 || a.Seconds < 0 || a.Seconds > 600 || content.Printable(a.Given+a.Key+a.Code) != a.Given+a.Key+a.Code {
			t.Errorf("%q is taken for %+v", line, a)
		}
		text, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := readAnswer(text, now); err != nil || again.Given != a.Given || !again.At.Equal(a.At) {
			t.Errorf("%s, read again: %+v, %v", text, again, err)
		}
	})
}

// importable reports a line that is taken for a rehearsal and can't be one.
func importable(t *testing.T, line []byte, now time.Time) {
	x, err := readRehearsal(line, now)
	if err != nil {
		return
	}
	if x.At.Year() < 2020 || x.At.After(now.AddDate(0, 0, 2)) || x.Passes < 0 || x.Hints < 0 || !(x.Seconds >= 0) || !(x.Room.Median.Seconds >= 0) || content.Printable(x.Job) != x.Job {
		t.Errorf("%q is taken for %+v", line, x)
	}
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := readRehearsal(text, now); err != nil || again.Job != x.Job || !again.At.Equal(x.At) || !isRehearsal(text) {
		t.Errorf("%s, read again: %+v, %v", text, again, err)
	}
}
