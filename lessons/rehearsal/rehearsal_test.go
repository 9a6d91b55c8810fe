package rehearsal

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// atBench returns a session at the bench with a job that ships, and answers line by
// line; at the end of the lines it leaves.
func atBench(t testing.TB, job string, lines ...string) (Flow, *scripted.Face, *Rehearsal) {
	t.Helper()
	term := &scripted.Face{}
	term.Answer = func(q page.Prompt) (string, error) {
		if len(lines) == 0 && strings.Contains(q.Text, "take that move back") {
			return "", nil // no: the end
		}
		if len(lines) == 0 {
			return "leave", nil
		}
		line := lines[0]
		lines = lines[1:]
		return line, nil
	}
	session, err := sitting.NewSession(term, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := Flow{session}
	w, err := s.Library.Job(job)
	if err != nil {
		t.Fatal(err)
	}
	j, err := bench.ParseJob(w, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	return s, term, &Rehearsal{Name: job, Bench: bench.New(j)}
}

// script is one of the runs that ship with the bench.
func script(t testing.TB, run string) bench.Script {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "quiz", "bench", "testdata", "runs", run+".run"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := bench.ParseScript(run, text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A whole job by hand and one that goes wrong, as a learner reads them.
func TestDryRunTranscripts(t *testing.T) {
	for name, run := range map[string]string{"dryrun-good-outside": "good-outside", "dryrun-wrong-line": "wrong-line", "dryrun-inside-wrong-way": "withdrew-the-wrong-way"} {
		t.Run(name, func(t *testing.T) {
			script := script(t, run)
			lines := []string{"moves", "help", "hint", "look", "bananas", "log", "repeat"}
			for _, l := range script.Lines {
				lines = append(lines, l.Text)
			}
			s, term, r := atBench(t, script.Job, lines...)
			if err := s.Run(r); err != nil {
				t.Fatal(err)
			}
			if !r.Bench.Over {
				t.Error("the job did not come to an end")
			}
			scripted.Golden(t, filepath.Join("testdata", name+".transcript"), term.Log.String())
		})
	}
}

// What to practise next is told with the command at a terminal, and without it on pages.
func TestNoCommandsOnPages(t *testing.T) {
	for _, onPages := range []bool{false, true} {
		script := script(t, "wrong-line")
		var lines []string
		for _, l := range script.Lines {
			lines = append(lines, l.Text)
		}
		s, term, r := atBench(t, script.Job, lines...)
		s.OnPages = onPages
		if err := s.Run(r); err != nil {
			t.Fatal(err)
		}
		if log := term.Log.String(); !strings.Contains(log, "Practise next:") || strings.Contains(log, "scratchpass ") == onPages {
			t.Errorf("on pages %v: %s", onPages, log)
		}
	}
}

// The card of a job tells its cuts, and an option to change them only where one can be given.
func TestNoOptionsOnPages(t *testing.T) {
	for _, name := range content.Shipped().JobNames() {
		s, _, r := atBench(t, name)
		p, err := bench.NewPlan(r.Bench.Job, bench.AsUsual)
		if err != nil {
			t.Fatal(err)
		}
		for _, s.OnPages = range []bool{false, true} {
			for _, p.Light = range []bool{false, true} {
				card := scripted.Words(s.PlanPage(p))
				if cuts := strings.Contains(card, "the first goes to"); cuts != (len(p.Steps) > 0) || strings.Contains(card, "--") != (cuts && !s.OnPages) {
					t.Errorf("%s, on pages %v: %s", name, s.OnPages, card)
				}
			}
		}
	}
}

// A move may be chosen by its number, and its figure is asked for.
func TestMovesByNumber(t *testing.T) {
	s, term, r := atBench(t, "adjusting-screw", "4", "70", "4", "", "leave")
	err := s.Run(r)
	if !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if r.Bench.RPM != 70 || !strings.Contains(term.Log.String(), "speed: how much? (such as speed 70; ") {
		t.Errorf("%v rpm\n%s", r.Bench.RPM, term.Log.String())
	}
	var stopped page.Stopped
	if !errors.As(err, &stopped) || !strings.HasPrefix(stopped.Farewell, "Stopped. The part is not done") {
		t.Error(stopped)
	}
}

// Every move is kept before anything is said about it, so that a rehearsal that is
// killed can go on.
func TestEveryMoveIsKept(t *testing.T) {
	var kept []string
	s, _, r := atBench(t, "adjusting-screw", "dress", "nonsense", "look", "key out", "speed 70")
	r.Keep = func(lines ...string) error { kept = append(kept, lines...); return nil }
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if got := strings.Join(kept, ", "); got != "dress, key out, speed 70" {
		t.Error(got)
	}
}

// A move that broke something can be taken back; the debrief tells of it, and the log
// plays without it.
func TestTakenBack(t *testing.T) {
	var kept []string
	s, term, r := atBench(t, "adjusting-screw", "dress", "key out", "start", "stop", "reverse", "look", "back", "", "done")
	r.Keep = func(lines ...string) error { kept = append(kept, lines...); return nil }
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	log := term.Log.String()
	if r.Bench.Outcome.Why != "done" || len(r.Bench.Mistakes) != 0 || !strings.Contains(log, "Chuck unscrewed in reverse (taken back)") {
		t.Errorf("%+v %v\n%s", r.Bench.Outcome, r.Bench.Mistakes, log)
	}
	script, err := bench.ParseScript("log", []byte("job adjusting-screw\n"+strings.Join(kept, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	again, err := script.Replay("log", r.Bench.Job)
	if err != nil || again.Undone != 1 || len(again.Bench.Log) != 5 || !reflect.DeepEqual(again.TakenBack, r.TakenBack) || len(again.TakenBack) == 0 {
		t.Errorf("%v: %d taken back (%v), %d moves", err, again.Undone, again.TakenBack, len(again.Bench.Log))
	}
	if _, err := bench.ParseScript("log", []byte("job a\nundo\n")); err == nil || !strings.Contains(err.Error(), "log:2: nothing was done") {
		t.Error(err)
	}
}

// handsOn is a terminal with a stage: a person who presses space when a given mark
// comes round, and again at the end of the thread.
type handsOn struct {
	*scripted.Face
	mark float64 // of the dial, from 0
	late float64 // seconds behind the mark

	lateAfter int  // from which pass on
	sleep     bool // at the end: does nothing
	openFirst bool // in the thread: opens the half-nut with the tool still in
	log       []string
}

func (h *handsOn) Run(m page.Motion) error {
	p := m.(*pass)
	const tick = 1.0 / 60
	for i := 0; i < 60*200 && !m.Done(); i++ {
		m.Advance(tick)
		st := p.now.Status()
		if len(m.Scene().Lines) == 0 {
			h.log = append(h.log, "an empty frame")
		}
		switch {
		case !st.Nut && p.pending > 0.5 && st.Mark >= h.mark && st.Mark < h.mark+0.1:
			if len(p.base.Passes) >= h.lateAfter {
				m.Advance(h.late)
			}
			m.Key("space")
		case st.Nut && h.openFirst && st.Place == "thread":
			m.Key("h")
		case st.Nut && st.Place == "end" || st.Place == "gap" && st.Nut:
			if !h.sleep {
				m.Key("space")
			}
		}
	}
	return nil
}

func liveBench(t *testing.T, h *handsOn, lines ...string) *Rehearsal {
	t.Helper()
	return liveBenchKept(t, h, nil, lines...)
}

// liveBenchKept is liveBench with what is kept of it.
func liveBenchKept(t *testing.T, h *handsOn, keep func(lines ...string) error, lines ...string) *Rehearsal {
	t.Helper()
	s, term, r := atBench(t, "adjusting-screw", append([]string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "height", "square", "gibs", "oil",
		"start", "touch", "zero cross", "zero compound", "cross out 0.2", "return", "cross to 0", "compound in 0.002"}, lines...)...)
	h.Face = term
	s.Face = h
	r.Bench.Live, r.Keep = true, keep
	if err := s.Run(r); err != nil && !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if len(h.log) > 0 {
		t.Error(h.log)
	}
	return r
}

// Live: pressed when the mark comes round, and again at the end, the passes run in one
// groove; the log of it, played again, gives just the same bench.
func TestLivePassesByTheClock(t *testing.T) {
	r := liveBench(t, &handsOn{mark: 2}, "close", "pass 0.005", "pass 0.005", "spring", "stop")
	if len(r.Bench.Passes) != 4 || len(r.Bench.Mistakes) > 0 {
		t.Fatalf("%d passes, %v", len(r.Bench.Passes), r.Bench.Mistakes)
	}
	for _, p := range r.Bench.Passes {
		if p.Shift != 0 || p.Mark != 3 || p.To < r.Bench.Job.Length-0.002 {
			t.Errorf("pass %d: mark %d, %v beside, ends at %v", p.N, p.Mark, p.Shift, p.To)
		}
	}
	script, err := bench.ParseScript("log", []byte(r.Bench.Transcript("adjusting-screw", "", "")))
	if err != nil || !script.Live {
		t.Fatal(err, script.Live)
	}
	replayed, err := script.Replay("log", r.Bench.Job)
	if err != nil {
		t.Fatal(err)
	}
	again := replayed.Bench
	if len(again.Passes) != 4 || again.Passes[3].To != r.Bench.Passes[3].To || again.Clock != r.Bench.Clock {
		t.Errorf("played again: %d passes, %v s against %v s", len(again.Passes), again.Clock, r.Bench.Clock)
	}
}

// Live: a pass that ended in the shoulder is taken back whole, and the log of it plays
// again to the same bench.
func TestLiveTakenBack(t *testing.T) {
	kept := []string{"job adjusting-screw", "hands real"}
	h := &handsOn{mark: 1, sleep: true}
	r := liveBenchKept(t, h, func(lines ...string) error { kept = append(kept, lines...); return nil }, "close", "back", "leave")
	if r.Bench.Over || len(r.Bench.Passes) != 0 || len(r.TakenBack) == 0 {
		t.Fatalf("over %v, %d passes, taken back %v", r.Bench.Over, len(r.Bench.Passes), r.TakenBack)
	}
	script, err := bench.ParseScript("log", []byte(strings.Join(kept, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	again, err := script.Replay("log", bench.New(r.Bench.Job).Job)
	if err != nil || again.Undone < 2 || !reflect.DeepEqual(again.Bench, r.Bench) || !reflect.DeepEqual(again.TakenBack, r.TakenBack) {
		t.Errorf("%v: %d undone, %d moves against %d, taken back %v against %v", err, again.Undone, len(again.Bench.Log), len(r.Bench.Log), again.TakenBack, r.TakenBack)
	}
}

// Live: whoever leaves at that question leaves without the broken pass, and one that the
// slide can't make is not begun.
func TestLiveLeftAndRefused(t *testing.T) {
	kept := []string{"job adjusting-screw", "hands real"}
	keep := func(lines ...string) error { kept = append(kept, lines...); return nil }
	r := liveBenchKept(t, &handsOn{mark: 1, sleep: true}, keep, "close", "leave")
	script, err := bench.ParseScript("log", []byte(strings.Join(kept, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	again, err := script.Replay("log", r.Bench.Job)
	if err != nil || r.Bench.Over || !reflect.DeepEqual(again.Bench, r.Bench) {
		t.Errorf("%v: %d moves against %d, over %v", err, len(again.Bench.Log), len(r.Bench.Log), r.Bench.Over)
	}
	r = liveBench(t, &handsOn{mark: 1}, "close", "pass 1.5", "leave")
	last := r.Bench.Log[len(r.Bench.Log)-1]
	if len(r.Bench.Passes) != 1 || last.Event.Verb != "pass" || len(last.Happened) != 1 || last.Happened[0].Name != "too-far" {
		t.Errorf("%d passes, %v: %v", len(r.Bench.Passes), last.Event, last.Happened)
	}
}

// Live: whoever opens the half-nut in the thread with the tool still in has made that mistake,
// and a short pass, and no other: nobody winds the carriage back for them.
func TestLiveOpenedFirst(t *testing.T) {
	r := liveBench(t, &handsOn{mark: 1, openFirst: true}, "close", "cross out 0.2", "return")
	var made []string
	for _, m := range r.Bench.Mistakes {
		made = append(made, string(m.Name))
	}
	if strings.Join(made, " ") != "short opened-first" || r.Bench.Status().Place != "start" {
		t.Errorf("%v, at %s", made, r.Bench.Status().Place)
	}
}

// Live: what is said of the way that was left is the way that the bench has left, and
// nothing beyond it is drawn as free.
func TestLiveWayLeft(t *testing.T) {
	r := liveBench(t, &handsOn{mark: 1}, "close", "leave")
	b := r.Bench
	at := b.Passes[0].To
	left := b.Job.Length + b.Job.Gap - b.Job.Ahead - at
	if b.Job.Ahead == 0 || left <= 0 {
		t.Fatalf("%v ahead, %v left", b.Job.Ahead, left)
	}
	hit := b
	hit.Nut, hit.Turn = true, 1
	hit.Z += hit.Left()
	if track := trackOf(hit); track.Tool < 1-1e-9 || track.Tool > 1+1e-9 {
		t.Errorf("the tool that hits stands at %v of its way", track.Tool)
	}
}

// Live: no hand at the end runs the tool into the shoulder.
func TestLiveMissedEnd(t *testing.T) {
	r := liveBench(t, &handsOn{mark: 1, sleep: true}, "close", "")
	if !r.Bench.Over || r.Bench.Outcome.Why != "hit-shoulder" {
		t.Errorf("%v", r.Bench.Outcome)
	}
}

// The time a frame takes, with the bench let run on and drawn: 30 a second are to take
// no more than a twentieth of a core, 1.7 ms each.
func BenchmarkLiveFrame(b *testing.B) {
	s, _, r := atBench(b, "adjusting-screw")
	for _, line := range []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "start", "touch", "zero cross", "cross out 0.2", "return", "cross to 0", "compound in 0.002", "close on 1"} {
		e, err := bench.Parse(line, machine.Imperial)
		if err != nil {
			b.Fatal(err)
		}
		r.Bench, _ = r.Bench.Step(e)
	}
	p := &pass{s: s, base: r.Bench, now: r.Bench}
	b.ReportAllocs()
	for b.Loop() {
		p.pending = 1
		p.Advance(1.0 / 30)
		if len(p.Scene().Lines) == 0 {
			b.Fatal("nothing to see")
		}
	}
}

// Live: closed late, the half-nut falls into a later thread of the screw, and the tool
// runs beside its groove by just that; closed early it waits for the mark.
func TestLiveEarlyAndLate(t *testing.T) {
	// Up to the slack it drops back into the mark's own thread. On 8 TPI, 11 threads per inch
	// fit on every second mark: whatever is later by 1 to 3 threads of the screw is beside.
	for late, wrong := range map[float64]bool{0: false, 0.05: false, 0.6: true, 1.3: true, 2.6: true} {
		s, term, r := atBench(t, "valve-stem", "dress", "key out", "feed off", "speed 70", "gears 32/44", "angle 29.5 tailstock", "height", "square", "gibs", "oil",
			"start", "touch", "zero cross", "zero compound", "cross out 0.2", "return", "cross to 0", "compound in 0.002", "close", "compound in 0.002", "cross to 0", "close", "stop")
		h := &handsOn{Face: term, mark: 0}
		s.Face = h
		r.Bench.Live = true
		// The first pass is closed just on the mark, the second late by so many threads of the
		// lead screw, less the slack behind which it drops back.
		perThread := 0.125 / (70.0 / 60 / 11) // seconds
		h.lateAfter, h.late = 1, late*perThread
		if err := s.Run(r); err != nil && !errors.Is(err, page.ErrStopped) {
			t.Fatal(err)
		}
		made := false
		for _, m := range r.Bench.Mistakes {
			made = made || m.Name == "wrong-line"
		}
		if made != wrong || len(r.Bench.Passes) != 2 {
			t.Errorf("%v threads late: %v, %d passes, shift %v", late, r.Bench.Mistakes, len(r.Bench.Passes), r.Bench.Passes)
		}
	}
}
