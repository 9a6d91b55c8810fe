package rehearsal

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// kept is a bench whose rehearsals go into a record of its own.
func kept(t *testing.T, path, job string, lines ...string) (Flow, *scripted.Face, *Rehearsal) {
	t.Helper()
	s, term, r := atBench(t, job, lines...)
	rec, err := record.Open(path, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { rec.Close() })
	book, err := schedule.NewBook(rec, machine.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	s.KeepIn(book, rec.Sittings())
	return s, term, r
}

// flat is what was said, without its lines.
func flat(term *scripted.Face) string { return strings.Join(strings.Fields(term.Log.String()), " ") }

// A rehearsal that ends is kept before its debrief, with what was taken back and the hints; the
// next one says what is other than last time.
func TestFinishedRehearsalsAreKept(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	s, term, r := kept(t, path, "adjusting-screw", "hint", "key out", "hint", "start", "stop", "reverse", "back", "done")
	shown := false
	s.Face = &spying{term, func(p page.Page) {
		if h, ok := p[0].(page.Heading); ok && h.Text == s.Say("bench-debrief") {
			all, err := s.Book.Rehearsals()
			shown = err == nil && len(all) == 1
		}
	}}
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	if !shown {
		t.Error("the debrief came before it was kept")
	}
	all, err := s.Book.Rehearsals()
	if err != nil || len(all) != 1 {
		t.Fatal(all, err)
	}
	x := all[0]
	want := []record.MistakeMade{{Name: "not-dressed", Times: 1}, {Name: "chuck-unscrewed", TakenBack: 1}}
	if x.Job != "adjusting-screw" || x.Verdict != bench.Binds || x.Hints != 2 || !slices.Equal(x.Mistakes, want) || x.Live || x.Thread != "3/4-10 UNC-2A" || x.Begun.After(x.At) {
		t.Errorf("%+v", x)
	}
	if begun, err := s.Book.BegunRehearsals(); len(begun) > 0 || err != nil {
		t.Errorf("still begun: %v, %v", begun, err)
	}
	if strings.Contains(flat(term), "last time") {
		t.Error("there was no last time")
	}
	s, term, r = kept(t, path, "adjusting-screw", "key out", "start", "stop", "done")
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	date := x.At.Format(time.DateOnly)
	if log := flat(term); !strings.Contains(log, "Mistakes last time, on "+date+": 2. This time: 1. Not made again: chuck unscrewed in reverse. Made again: not dressed for the lathe.") {
		t.Error(log)
	}
	// A job of the same name with a text of its own is another.
	s, term, r = kept(t, path, "adjusting-screw", "done")
	r.As = `{"thread":"3/4-10 UNC-2A"}`
	if err := s.Run(r); err != nil || strings.Contains(flat(term), "last time") {
		t.Error(err, flat(term))
	}
}

// spying is a face that looks at each page before it is shown.
type spying struct {
	*scripted.Face
	look func(p page.Page)
}

func (f *spying) Show(p page.Page) error { f.look(p); return f.Face.Show(p) }

// One that is broken off is begun and does not count; gone on with, it keeps when it was begun
// and its hints, and its last moves are told.
func TestBrokenOffIsOnlyBegun(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	s, term, r := kept(t, path, "adjusting-screw", "moves", "dress", "hint", "key out", "leave")
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) || strings.Contains(flat(term), "Your last moves") {
		t.Fatal(err)
	}
	begun, err := s.Book.BegunRehearsals()
	if all, e := s.Book.Rehearsals(); len(all) > 0 || e != nil || err != nil || len(begun) != 1 || begun[0].Hints != 1 {
		t.Fatalf("%+v, %+v, %v", all, begun, err)
	}
	if titles, err := s.jobsSoFar(); err != nil || !strings.HasSuffix(titles[0], ". Begun "+begun[0].At.Format(time.DateOnly)) || strings.Contains(titles[1], "Begun") {
		t.Errorf("%q, %v", titles, err)
	}
	was := r.Bench
	s, term, r = kept(t, path, "adjusting-screw", "hint", "done")
	r.Bench = was
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	if log := flat(term); strings.Count(log, "Your last moves: 1. dress: Glasses on, sleeves up, rings and gloves off. 2. key out: The chuck key hangs on its hook.") != 1 {
		t.Error(log)
	}
	all, err := s.Book.Rehearsals()
	if err != nil || len(all) != 1 || all[0].Hints != 2 || !all[0].Begun.Equal(begun[0].At) {
		t.Errorf("%+v, %v", all, err)
	}
	if titles, err := s.jobsSoFar(); err != nil || !strings.HasSuffix(titles[0], ". Done "+all[0].At.Format(time.DateOnly)+", mistakes 0") {
		t.Errorf("%q, %v", titles, err)
	}
}

// A rehearsal that was killed between the end of its log and its row is kept when one comes
// back to it, once; a log that was there before it was begun is another's.
func TestLeftBetweenLogAndRecord(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	s, _, r := kept(t, path, "adjusting-screw", "dress", "leave")
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	over, _ := r.Bench.Step(bench.Event{Verb: "done"})
	left := &Rehearsal{Name: r.Name, Bench: over}
	if err := s.FinishLeft(left, r.Begun.Add(-time.Hour)); err != nil {
		t.Fatal(err)
	}
	if all, _ := s.Book.Rehearsals(); len(all) > 0 {
		t.Errorf("of an older log: %+v", all)
	}
	for range 2 {
		if err := s.FinishLeft(left, r.Begun.Add(time.Hour)); err != nil {
			t.Fatal(err)
		}
		if all, err := s.Book.Rehearsals(); len(all) != 1 || err != nil {
			t.Errorf("%+v, %v", all, err)
		}
	}
}

// Live passes leave what the hands leave: later at the end of one, it is the closest, and the
// record has the least, the middle and the most at each speed.
func TestMarginsOfLivePasses(t *testing.T) {
	r := liveBench(t, &handsOn{mark: 2}, "close", "pass 0.005", "pass 0.005", "stop")
	if n := len(r.Bench.Margins); n != 3 {
		t.Fatalf("%d margins", n)
	}
	closest, _ := r.Bench.Closest()
	x := room(r.Bench.Margins)
	if x.Passes != 3 || len(x.Speeds) != 1 || x.Speeds[0].RPM != 70 || x.Shortest.Seconds > x.Median.Seconds || x.Median.Seconds > x.Speeds[0].Longest.Seconds || x.Shortest != way(closest.Left, closest.Seconds) {
		t.Errorf("%+v", x)
	}
	even := room([]bench.Margin{{Seconds: 3, Left: 0.3, RPM: 70}, {Seconds: 1, Left: 0.2, RPM: 110}, {Seconds: 2, Left: 0.2, RPM: 70}, {Seconds: 4, Left: 0.4, RPM: 70}})
	if even.Median != (record.Way{Inches: 0.25, Seconds: 2.5}) || even.Speeds[0].Passes != 3 || even.Speeds[0].Longest.Seconds != 4 || even.Speeds[1].RPM != 110 || even.Shortest.Seconds != 1 {
		t.Errorf("%+v", even)
	}
	if none := room(nil); none.Passes != 0 || len(none.Speeds) != 0 {
		t.Errorf("%+v", none)
	}
	s, _, _ := atBench(t, "adjusting-screw")
	for i := range r.Bench.Margins { // the second the closest
		r.Bench.Margins[i] = bench.Margin{Pass: i + 1, Left: 0.2, Seconds: 1.7, RPM: 70}
	}
	r.Bench.Margins[1] = bench.Margin{Pass: 2, Left: 0.1, Seconds: 0.9, RPM: 70}
	var said []string
	for _, b := range s.margins(r.Bench) {
		switch b := b.(type) {
		case page.Paragraph:
			said = append(said, b.Text)
		case page.Item:
			said = append(said, b.Text)
		}
	}
	want := []string{
		"The closest you came to the shoulder: 0.1000 in, in pass 2. That is 0.9 seconds. That was by the clock, with your own hands.",
		"pass 1: 0.2000 in, 1.7 seconds, at 70 rpm", "pass 2: 0.1000 in, 0.9 seconds, at 70 rpm", "pass 3: 0.2000 in, 1.7 seconds, at 70 rpm",
	}
	if !slices.Equal(said, want) {
		t.Errorf("%q", said)
	}
}
