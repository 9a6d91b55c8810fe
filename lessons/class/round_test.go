package class_test

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// jobText is a shipped job as the event of a round has it.
func jobText(t testing.TB, name string) string {
	t.Helper()
	w, err := content.Shipped().Job(name)
	if err != nil {
		t.Fatal(err)
	}
	text, err := class.JobText(name, w, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// screw is the job of most rounds here.
const screw = "adjusting-screw"

// aPass is the third pass of it by hand, and how it goes wrong.
var (
	aPass  = []string{"cross to 0", "compound in 0.006", "close on 1", "run", "cross out 0.2", "open", "return"}
	aCrash = []string{"cross to 0", "close on 1", "run", "run"}
)

// atBench is a room in which the third pass is rehearsed.
func atBench(t *testing.T) room {
	t.Helper()
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Benched, Text: jobText(t, screw), N: 3})
	return r
}

// moves makes moves of someone, on from where their lathe stands.
func (r room) moves(who string, texts ...string) {
	r.t.Helper()
	for _, text := range texts {
		_, n := r.Round()
		r.do(class.Event{Kind: class.Moved, Who: who, Set: n, N: len(r.Work(r.Person(who), n).Moves), Text: text})
	}
}

func (r room) work(who string) class.Work { return r.Work(r.Person(who), len(r.Rounds)-1) }

// All begin at the same lathe, and end when the pass is made, or can't be any more.
func TestAPassInARound(t *testing.T) {
	r := atBench(t)
	round, _ := r.Round()
	if round.Pass.N != 3 || len(round.Pass.Start.Passes) != 2 || round.Closed {
		t.Fatalf("%+v", round.Pass.N)
	}
	r.moves("1", aPass[:6]...)
	if w := r.work("1"); w.End != class.GoesOn || len(w.Moves) != 6 {
		t.Error("before it is back: ", w.End, len(w.Moves))
	}
	r.moves("1", aPass[6], "cross in 0.1") // the last is one too many
	if w := r.work("1"); w.End != class.Through || len(w.Moves) != 7 || len(round.Pass.Made(w.Bench)) != 0 {
		t.Error("made: ", w.End, len(w.Moves), round.Pass.Made(w.Bench))
	}
	r.moves("2", aCrash...)
	if w := r.work("2"); w.End != class.Ruined || len(w.Moves) != 4 {
		t.Error("run into the shoulder: ", w.End, len(w.Moves))
	}
	if w := r.work("3"); len(w.Moves) != 0 || w.Bench.CrossReading() != round.Pass.Start.CrossReading() {
		t.Error("who did nothing: ", w.Moves)
	}
}

// A move that does not fit changes nothing.
func TestMovesThatDoNotFit(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	move := class.Event{Kind: class.Moved, Who: "1", Text: "cross to 0"}
	r.do(move) // before any round
	r.do(class.Event{Kind: class.Benched, Text: jobText(t, screw), N: 3})
	for _, e := range []class.Event{
		{Who: "nobody", Text: "cross to 0"}, {Who: "", Text: "cross to 0"},
		{Who: "1", Set: 1, Text: "cross to 0"}, {Who: "1", Set: -1, Text: "cross to 0"},
		{Who: "1", N: 1, Text: "cross to 0"}, {Who: "1", N: -1, Text: "cross to 0"},
		{Who: "1", Text: "jump"}, {Who: "1", Text: ""}, {Who: "1", Text: strings.Repeat("note ", 100)},
		{Who: "1", Text: "pass 0.004"}, {Who: "1", Text: "spring"}, {Who: "1", Text: "done"},
	} {
		e.Kind = class.Moved
		r.do(e)
	}
	r.do(class.Event{Kind: class.Removed, Who: "2"})
	r.do(class.Event{Kind: class.Moved, Who: "2", Text: "cross to 0"})
	for _, p := range r.Everyone() {
		if len(p.Works) > 0 {
			t.Error(p.ID, p.Works)
		}
	}
	r.do(class.Event{Kind: class.Joined, Who: "2", Text: "phone 1"}) // back again
	r.moves("2", aPass[:2]...)
	again := class.Event{Kind: class.Moved, Who: "2", N: 1, Text: "compound in 0.006"} // seen before the last move
	r.do(again)
	r.do(class.Event{Kind: class.Halted, Set: 0})
	r.moves("2", aPass[2])
	r.moves("1", aPass[0])
	r.do(class.Event{Kind: class.Halted, Set: 0, N: 0})
	if w := r.work("2"); len(w.Moves) != 2 || len(r.work("1").Moves) != 0 {
		t.Error("after the close: ", len(w.Moves))
	}
}

// Of too many moves the rest is left out.
func TestTooManyMoves(t *testing.T) {
	r := atBench(t)
	for range 310 {
		r.moves("1", "note again")
	}
	if n := len(r.work("1").Moves); n != 300 {
		t.Error(n, " moves")
	}
}

// A second round begins anew; the first stays as it was. What else comes to hand closes a round.
func TestRoundsOneAfterAnother(t *testing.T) {
	r := atBench(t)
	r.moves("1", aPass...)
	r.do(class.Event{Kind: class.Benched, Text: jobText(t, "pump-stud"), N: 0, Name: class.WithHints})
	if round, n := r.Round(); n != 1 || !round.Hints || !r.Rounds[0].Closed || r.Rounds[0].Hints || len(round.Pass.Start.Log) != 0 {
		t.Error(n, round.Hints)
	}
	r.do(class.Event{Kind: class.Moved, Who: "2", Set: 0, Text: aPass[0]}) // still meant for the first
	r.do(class.Event{Kind: class.Halted, Set: 0, N: 1})
	r.moves("2", "dress", "key out")
	r.do(class.Event{Kind: class.Nudged, Who: "2", Set: 1})
	if w := r.work("2"); len(w.Moves) != 2 || w.Hints != 1 || r.Rounds[1].Closed || len(r.Work(r.Person("1"), 0).Moves) != len(aPass) {
		t.Error(len(w.Moves), w.Hints)
	}
	for name, e := range map[string]class.Event{
		"opened": {Kind: class.Opened}, "turned": {Kind: class.Turned}, "asked": {Kind: class.Asked, Text: strings.ReplaceAll(blueprint, "%s", "{}"), Name: "together"},
	} {
		r := atBench(t)
		if e.Kind == class.Asked {
			e.Text = strings.Replace(blueprint, "{feedback: %s}", "{feedback: end}", 1)
		}
		r.do(e)
		if round, _ := r.Round(); round != nil || !r.Rounds[0].Closed {
			t.Error(name, " leaves the bench on")
		}
	}
}

// A visitor who turns out to be someone brings what they did, unless that one has begun too.
func TestMergedAtBench(t *testing.T) {
	for _, both := range []bool{false, true} {
		r := newRoom(t, "end", class.Together)
		r.do(class.Event{Kind: class.Joined, Who: "visitor-x", Text: "v", Name: "Zoe"})
		r.do(class.Event{Kind: class.Benched, Text: jobText(t, screw), N: 3})
		r.moves("visitor-x", aPass[:3]...)
		want := 3
		if both {
			r.moves("1", aPass[0])
			want = 1
		}
		r.do(class.Event{Kind: class.Merged, Who: "visitor-x", Text: "1"})
		r.do(class.Event{Kind: class.Moved, Who: "visitor-x", N: want, Text: "cross out 0.1"}) // was on its way
		if n := len(r.work("1").Moves); n != want+1 {
			t.Errorf("both %v: %d moves", both, n)
		}
	}
}

// A round is made again from its event alone, whatever became of the jobs that ship.
func TestARoundStandsAlone(t *testing.T) {
	text := jobText(t, screw)
	for _, wrong := range []string{"", "job adjusting-screw\n", "job x\nas {}\nlathe {}\n", strings.Replace(text, "UNC", "XYZ", 1), jobText(t, "adjuster-sleeve")} {
		if _, err := class.NewRound(wrong, 1); err == nil {
			t.Errorf("a round of %q", wrong)
		}
	}
	for _, n := range []int{-1, 99} {
		if _, err := class.NewRound(text, n); err == nil {
			t.Error("a round of pass ", n)
		}
	}
	round, err := class.NewRound(strings.Replace(text, screw, "a-job-of-mine", 1), 3)
	if err != nil || round.Name != "a-job-of-mine" || round.Pass.Of < 5 {
		t.Error(round, err)
	}
}

// What the instructor and the wall are told: who needs help first, how far each is, and which
// mistakes came, the worst first, each once a person.
func TestStandingOfARound(t *testing.T) {
	r := atBench(t)
	now := begin.Add(time.Hour)
	standing := func() []class.RoundRow {
		return r.RoundStanding(0, now, func(string) bool { return false })
	}
	r.moves("1", aPass...)
	r.moves("2", "cross to 0", "close on 1", "run", "cross out 0.2", "open", "return") // no deeper than before
	r.moves("3", aCrash...)
	rows := standing()
	if ids := []string{rows[0].ID, rows[1].ID, rows[2].ID}; !slices.Equal(ids, []string{"3", "1", "2"}) {
		t.Error("the order is ", ids)
	}
	if rows[0].Needs != class.NeedsScrap || !rows[0].Seeable() || rows[0].Stage != class.StageScrap || rows[1].Stage != class.StageThrough || rows[1].Off || !rows[2].Off {
		t.Errorf("%v %v", rows[0].Why, rows[0].Stage)
	}
	s := class.SpreadOf(rows)
	if s.Began != 3 || s.Through != 2 || s.Clean != 1 || s.Off != 1 || s.Scrap != 1 || !s.Few() || len(s.Made) != 1 || s.Made[0].Name != "hit-shoulder" {
		t.Errorf("%+v", s)
	}
	r.do(class.Event{Kind: class.Seen, Who: "3"})
	if rows := standing(); rows[0].Needs != class.NeedsNone {
		t.Error("after it was seen: ", rows[0].Why)
	}
	late := newRoom(t, "end", class.Together)
	late.do(class.Event{Kind: class.Benched, Text: jobText(t, screw), N: 3})
	for _, c := range []struct {
		moves int
		stage class.Stage
	}{{0, class.StageNone}, {1, class.StageDeep}, {2, class.StageDeep}, {3, class.StageDeep}, {4, class.StageCut}, {5, class.StageCut}, {6, class.StageCut}, {7, class.StageThrough}} {
		for len(late.work("1").Moves) < c.moves {
			late.moves("1", aPass[len(late.work("1").Moves)])
		}
		for _, row := range late.RoundStanding(0, now, func(string) bool { return false }) {
			if row.ID == "1" && row.Stage != c.stage || row.ID == "2" && row.Needs != class.NeedsTime {
				t.Error(row.ID, " after ", c.moves, " moves: ", row.Stage, row.Why)
			}
		}
	}
}

// The steps of a round: close it, what came, each move of the pass, and on to the questions.
func TestStepsOfARound(t *testing.T) {
	r := atBench(t)
	round, _ := r.Round()
	want := append([]class.Step{class.StepHalt, class.StepCame}, slices.Repeat([]class.Step{class.StepMove}, len(round.Pass.Moves))...)
	positions := map[string]bool{}
	for i, step := range append(want, class.StepQuestions, class.StepFirst) {
		got, e, err := r.Next()
		if got != step || err != nil {
			t.Fatal("step ", i, ": ", got, err)
		}
		if positions[r.Position()] {
			t.Error(i, " was there before: ", r.Position())
		}
		positions[r.Position()] = true
		r.do(e)
	}
	r = atBench(t)
	if _, err := r.Back(); err == nil {
		t.Error("a step back from the beginning")
	}
	for range 4 {
		_, e, _ := r.Next()
		r.do(e)
	}
	for range 3 {
		e, err := r.Back()
		if err != nil {
			t.Fatal(err)
		}
		r.do(e)
	}
	if round, _ := r.Round(); round.Shown != 0 || !round.Closed {
		t.Error("back at the beginning: ", round.Shown, round.Closed)
	}
}

// A phone learns of its own moves and of the close, and of nothing that others do.
func TestVersionAtBench(t *testing.T) {
	r := atBench(t)
	version := func() string { return r.Version(r.Person("1"), begin) }
	v := version()
	r.moves("2", aCrash...)
	if version() != v {
		t.Error("it changes with what others do")
	}
	r.moves("1", aPass[0])
	if version() == v {
		t.Error("it stays after a move")
	}
	v = version()
	r.do(class.Event{Kind: class.Halted})
	if version() == v {
		t.Error("it stays after the close")
	}
}

// Where someone is at the bench, and what they have of it after the lesson.
func TestWhereAtBench(t *testing.T) {
	r := atBench(t)
	scene := func(want class.Scene) {
		t.Helper()
		at, err := r.At(r.Person("1"), -1, begin)
		if err != nil || at.Scene != want {
			t.Error(at.Scene, " and not ", want, err)
		}
	}
	scene(class.AtBench)
	r.do(class.Event{Kind: class.Paused})
	scene(class.Stops)
	r.do(class.Event{Kind: class.Resumed})
	r.moves("1", aPass...)
	scene(class.BenchOver)
	r.do(class.Event{Kind: class.Halted})
	scene(class.BenchTold)
	r.do(class.Event{Kind: class.Ended})
	scene(class.Over)
	if at, _ := r.At(r.Person("1"), -1, begin); len(at.Did) != 1 || len(at.Did[0].Work.Moves) != len(aPass) {
		t.Error("what was done is gone: ", at.Did)
	}
	alone := room{class.NewRoom(class.Head{Code: "AAAAAA", Roster: roster, Began: begin}, makes()), t} // without questions
	alone.do(class.Event{Kind: class.Joined, Who: "1", Text: "phone"})
	alone.do(class.Event{Kind: class.Benched, Text: jobText(t, screw), N: 1})
	r = alone
	scene(class.AtBench)
	if text, err := r.OneMore(tasks.Set{}, "compound-travel", 1); err != nil || !strings.Contains(text, "class-2026-11-26-more-0") {
		t.Error("a question on the spot: ", text, err)
	}
	r.do(class.Event{Kind: class.Ended})
	scene(class.Over)
	if _, _, err := r.Next(); err == nil {
		t.Error("a step after the end")
	}
}

// What is kept of a move is what a person is given of themselves, and nothing of others.
func TestMovesOfOnePerson(t *testing.T) {
	events := []class.Event{{Kind: class.Moved, Who: "1", Text: "run"}, {Kind: class.Moved, Who: "2", Text: "open"}, {Kind: class.Benched, Text: "job"}}
	text, err := json.Marshal(class.Of(events, map[string]bool{"1": true}))
	if err != nil || string(text) != `[{"seq":0,"at":"0001-01-01T00:00:00Z","kind":"moved","who":"1","text":"run"}]` {
		t.Error(string(text), err)
	}
}

// Made again from its list, a room has the same lathes.
func TestBenchesAreMadeAgain(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	events := []class.Event{{Kind: class.Benched, Text: jobText(t, screw), N: 3}}
	for i, text := range aPass {
		events = append(events, class.Event{Kind: class.Moved, Who: "1", N: i, Text: text})
	}
	again := newRoom(t, "end", class.Together)
	for _, e := range events {
		r.do(e)
		again.do(e)
	}
	if a, b := r.work("1"), again.work("1"); !reflect.DeepEqual(a, b) || a.Bench.Transcript("x", "", "") != b.Bench.Transcript("x", "", "") {
		t.Error("they are others")
	}
	if played := bench.Play(r.Rounds[0].Pass.Plan.Job, false, eventsOf(r.work("1").Bench)); !reflect.DeepEqual(played, r.work("1").Bench) {
		t.Error("the log plays to another lathe")
	}
}

func eventsOf(b bench.Bench) (all []bench.Event) {
	for _, e := range b.Log {
		all = append(all, e.Event)
	}
	return all
}

// How long a move takes in a room of 30, each with so many moves behind them.
func BenchmarkMove(b *testing.B) {
	r := class.NewRoom(class.Head{Code: "A"}, makes())
	seq := int64(0)
	do := func(e class.Event) {
		seq++
		e.Seq = seq
		if err := r.Apply(e); err != nil {
			b.Fatal(err)
		}
	}
	n := 0
	text := jobText(b, screw)
	for b.Loop() {
		if n%(30*200) == 0 { // a new round before the limit
			b.StopTimer()
			do(class.Event{Kind: class.Benched, Text: text, N: 3})
			if n == 0 {
				for i := range 30 {
					do(class.Event{Kind: class.Joined, Who: string(rune('A' + i)), Text: string(rune('A' + i)), Name: string(rune('A' + i))})
				}
			}
			b.StartTimer()
		}
		_, round := r.Round()
		do(class.Event{Kind: class.Moved, Who: string(rune('A' + n%30)), Set: round, N: n % (30 * 200) / 30, Text: "cross out 0.001"})
		n++
	}
}
