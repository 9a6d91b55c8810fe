package bench

import (
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Whatever a script has in it, with a job and a lathe of its own, it is played or what is
// wrong has words; what was played is written down and plays again.
func FuzzReplay(f *testing.F) {
	f.Add([]byte("job adjusting-screw\ndress\nkey out\nundo\nstart\ntouch\npass 0.005\ntest mate\ndone\n"))
	f.Add([]byte("job a\nas {\"thread\":\"1/2-13 UNC-2A\",\"blank\":\"0.5 in\",\"length\":\"1 in\",\"end\":\"shoulder\",\"gap\":\"0.2 in\",\"hold\":\"chuck\",\"stands_out\":\"2 in\",\"flat\":\"0.010 in\",\"title\":\"x\",\"story\":\"y\"}\nhands real\nwait 2\n"))
	lathe, err := OneLine(machine.MetricLathe.File())
	if err != nil {
		f.Fatal(err)
	}
	f.Add([]byte("job gland-nut\nlathe " + lathe + "\nspeed 70\nangle 29.5\ncross in 1\n"))
	lib := content.Shipped()
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := ParseScript("f", text)
		if err != nil {
			return
		}
		written, _ := lib.Job(s.Job)
		j, err := s.ReadJob("f", written, machine.InchLathe)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		played, err := s.Replay("f", j)
		if err != nil {
			return
		}
		again, err := ParseScript("g", []byte(played.Bench.Transcript(s.Job, s.As, s.Lathe)))
		if err != nil {
			if len(played.Bench.Log) > 0 && strings.TrimSpace(s.Job) != "" {
				t.Fatalf("%q is played and can't be written down: %v", text, err)
			}
			return
		}
		if r, err := again.Replay("g", j); err != nil || len(r.Bench.Log) != len(played.Bench.Log) || r.Bench.Clock != played.Bench.Clock {
			t.Errorf("%q plays again to %d moves and %v s, want %d and %v: %v", text, len(r.Bench.Log), r.Bench.Clock, len(played.Bench.Log), played.Bench.Clock, err)
		}
	})
}

// Whatever a file of a job has in it, its card can be made or what is wrong has words.
func FuzzJob(f *testing.F) {
	for _, name := range content.Shipped().JobNames() {
		w, err := content.Shipped().Job(name)
		if err != nil {
			f.Fatal(err)
		}
		line, err := OneLine(w)
		if err != nil {
			f.Fatal(err)
		}
		f.Add([]byte(line))
	}
	f.Add([]byte("thread: M12x1.75-6g\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		var w content.Job
		if content.Decode("f", text, &w) != nil {
			return
		}
		for _, own := range []machine.Lathe{machine.InchLathe, machine.MetricLathe} {
			if CheckThread(w) != nil {
				continue
			}
			for _, w := range []content.Job{w, Usual(w, own)} {
				j, err := ParseJob(w, own)
				if err != nil {
					continue
				}
				if _, err := NewPlan(j, 29.5); err != nil && err.Error() == "" {
					t.Error("an error without words")
				}
			}
		}
	})
}
