package bench

import (
	"flag"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// allVerbs are the first words of all moves: sorted once.
var allVerbs = Verbs()

// anyEvent is an event that someone might type, good or bad.
func anyEvent(r *rand.Rand, b Bench) Event {
	offers := b.Offers()
	for {
		text := allVerbs[r.IntN(len(allVerbs))]
		if len(offers) > 0 && r.IntN(3) > 0 {
			text = offers[r.IntN(len(offers))].Text
		}
		for _, figure := range []string{"", " 1", " 0.005", " 0.2", " 70", " 32/40", " 10 TPI", " in 0.2", " out 0.2", " to 0", " out 0.05", " in 0.002", " on 1", " on 3", " cross", " compound 0.01", " hook", " go", " off", " out", " left", " over", " groove", " end"} {
			if r.IntN(4) > 0 {
				continue
			}
			if e, err := Parse(text+figure, b.Job.System()); err == nil {
				return e
			}
		}
	}
}

// heldJobs are the jobs that the lists of moves are made at: those that ship, and others with
// the spindle in reverse, several starts by each way, and no groove to start in.
func heldJobs(t *testing.T) []Job {
	t.Helper()
	var jobs []Job
	for _, name := range content.Shipped().JobNames() {
		jobs = append(jobs, shippedJob(t, name))
	}
	for _, w := range []content.Job{
		{Thread: "3/4-10 UNC-2A-LH"}, {Thread: "1-8 UNC-2B-LH"}, {Thread: "M12x1.75-6g-LH", Nose: "locked"}, {Thread: "3/4-10 UNC-2A-LH", End: Jaws},
		{Thread: "3/4-10 UNC-2A", Towards: Tailstock, Nose: "locked"}, {Thread: "3/4-10 UNC-2A", Towards: Tailstock}, {Thread: "M20x2.5-6H", Towards: Tailstock, Nose: "locked"},
		{Thread: "5/8-11 UNC-2A-LH", Towards: Headstock, Nose: "locked"}, {Thread: "3/4-10 UNC-2A 2 STARTS"}, {Thread: "3/4-16 UNF-2A 2 STARTS"},
		{Thread: "1 1/2-12 UN-2A 3 STARTS", Hold: Centres, End: Jaws, Shank: "1.2 in"}, {Thread: "M30xPh4P2-6H", Nose: "locked"}, {Thread: "1-12 UN-2B-LH 2 STARTS"},
	} {
		j, err := ParseJob(Usual(w, machine.InchLathe), machine.InchLathe)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, j)
	}
	return jobs
}

var lists = flag.Int("lists", 1000, "how many lists of 200 moves are played")

// No list of events panics or breaks what must hold: metal never comes back, a slide
// agrees with its dial within the play, a closed half-nut keeps its phase, time does
// not run back, no figure is lost, and what is over stays over.
func TestWhateverIsDoneTheBenchHolds(t *testing.T) {
	t.Parallel()
	words, err := content.Shipped().Bench()
	if err != nil {
		t.Fatal(err)
	}
	if testing.Short() {
		*lists = 60
	}
	jobs := heldJobs(t)
	setUps := make([][]Event, len(jobs))
	for i, j := range jobs {
		p, err := NewPlan(j, 29.5)
		if err != nil {
			t.Fatal(err)
		}
		setUps[i] = p.Events()
	}
	ends, kinds := map[string]int{}, map[string]bool{}
	for seed := range *lists {
		r := rand.New(rand.NewPCG(uint64(seed), 99))
		at := (seed / 2) % len(jobs)
		j := jobs[at]
		b := New(j)
		b.Live = seed%5 == 0
		if seed%2 == 0 { // half of them begin with a good set-up, so that they come further
			moves := setUps[at]
			b = Play(j, b.Live, moves[:min(20+r.IntN(40), len(moves))])
		}
		h := held{t: t, words: words, seed: seed, areas: map[int]float64{}}
		for range 200 {
			b = h.step(b, anyEvent(r, b))
		}
		for _, m := range b.Mistakes {
			kinds[string(m.Name)] = true
		}
		if b.Outcome != nil {
			ends[string(b.Outcome.Verdict)]++
		}
		if again := Play(j, b.Live, eventsOf(b)); !reflect.DeepEqual(again, b) {
			t.Fatalf("seed %d: played again, the log gives another bench: %v s and not %v, %d passes and not %d", seed, again.Clock, b.Clock, len(again.Passes), len(b.Passes))
		}
		if field := lost(reflect.ValueOf(b)); field != "" {
			t.Fatalf("seed %d: %s is no number", seed, field)
		}
	}
	if len(ends) == 0 || !testing.Short() && *lists >= 1000 && len(kinds) < 25 {
		t.Errorf("ends %v, kinds of mistakes %d: the lists do not come far", ends, len(kinds))
	}
	t.Log(ends, len(kinds))
}

// held holds one list of moves to what must be so after each.
type held struct {
	t     *testing.T
	words content.BenchWords
	seed  int
	areas map[int]float64 // of each start
}

func (h held) step(b Bench, e Event) Bench {
	h.t.Helper()
	j, before := b.Job, b
	move := e.Write(j.System())
	next, happened := b.Step(e)
	if !reflect.DeepEqual(before, b) {
		h.t.Fatalf("seed %d: %s changed the bench it came from", h.seed, move)
	}
	for _, what := range happened {
		if text := what.Text(h.words); text == "" || strings.Contains(text, "${") {
			h.t.Fatalf("seed %d: %s: %q says %q", h.seed, move, what.Name, text)
		}
	}
	h.dials(next, move)
	if next.Nut && before.Nut && math.Abs((next.phase()-before.phase()).Inches()) > 1e-9 {
		h.t.Fatalf("seed %d: %s moved the carriage along its screw", h.seed, move)
	}
	if next.Clock < before.Clock || before.Over && !next.Over || len(next.Passes) < len(before.Passes) {
		h.t.Fatalf("seed %d: %s turned something back", h.seed, move)
	}
	if next.Turn < 0 && j.Unscrews() {
		h.t.Fatalf("seed %d: %s: a screwed chuck turns in reverse", h.seed, move)
	}
	if len(next.Passes) == len(before.Passes) && next.cutting == before.cutting {
		return next
	}
	for start := range next.starts() {
		g, err := next.GrooveOf(start, j.Thread.Pitch)
		if err != nil {
			continue
		}
		if a := g.Area(); a < h.areas[start]-1e-12 {
			h.t.Fatalf("seed %d: after %s there is metal again: %v, before %v", h.seed, move, a, h.areas[start])
		} else {
			h.areas[start] = a
		}
	}
	return next
}

// dials holds slides to their dials, and the tool between what stands at either end.
func (h held) dials(b Bench, move string) {
	h.t.Helper()
	l := b.Job.Lathe
	for i, s := range []calc.Slide{b.Cross, b.Compound} {
		if loose := s.Loose(); loose < -1e-9 || loose > s.Play+1e-9 {
			h.t.Fatalf("seed %d: after %s a slide is loose by %v of %v", h.seed, move, loose, s.Play)
		}
		reads, turn, per := b.CrossReading(), l.Cross.Turn, l.CrossReads.PerRadial()
		if i == 1 {
			reads, turn, per = b.CompoundReading(), l.Compound.Turn, 1
		}
		turns := ((s.Screw - b.Zeros[i]).Times(per) - reads).Over(turn)
		if reads < -hair || reads >= turn || math.Abs(turns-math.Round(turns)) > 1e-6 {
			h.t.Fatalf("seed %d: after %s a dial reads %v, its slide is %v in", h.seed, move, reads, s.Screw-b.Zeros[i])
		}
	}
	if at, ok := b.Mark(); ok && !(at >= 0 && at < float64(l.DialMarks)) {
		h.t.Fatalf("seed %d: after %s the thread dial stands on %v", h.seed, move, at)
	}
}

// lost names a figure of a value that is no number.
func lost(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
			return "a figure"
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if lost(v.Field(i)) != "" {
				return v.Type().Field(i).Name
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if field := lost(v.Index(i)); field != "" {
				return field
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return lost(v.Elem())
		}
	}
	return ""
}

func eventsOf(b Bench) []Event {
	events := make([]Event, len(b.Log))
	for i, e := range b.Log {
		events[i] = e.Event
	}
	return events
}
