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
	f.Fuzz(func(t *testing.T, line []byte) {
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
