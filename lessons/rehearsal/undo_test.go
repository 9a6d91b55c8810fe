package rehearsal

import (
	"errors"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// setUp are the moves of the adjusting screw up to its first pass.
var setUp = strings.Split("dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, height, square, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return, cross to 0, compound in 0.002", ", ")

// A move with which no time has gone by is taken back by a word, one after the other; a pass
// is not. The log that is kept plays to the same bench.
func TestUndo(t *testing.T) {
	kept := []string{"job adjusting-screw"}
	lines := append([]string{"undo", "dress", "back", "undo"}, setUp...)
	lines = append(lines, "compound in 0.2", "undo", "undo", "compound in 0.003", "close on 1", "run", "undo", "cross out 0.2", "undo", "cross out 0.2", "open")
	s, term, r := atBench(t, "adjusting-screw", lines...)
	r.Keep = func(lines ...string) error { kept = append(kept, lines...); return nil }
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	log := term.Log.String()
	for said, n := range map[string]int{"There is no move to take back.": 2, "Taken back: dress.": 1, "Taken back: compound in 0.2.": 1, "Taken back: compound in 0.002.": 1, "Time has gone by with that move": 2} {
		if strings.Count(log, said) != n {
			t.Errorf("%q: %d times, want %d", said, strings.Count(log, said), n)
		}
	}
	if len(r.Bench.Passes) != 1 || r.Bench.Passes[0].Compound < 0.0029 || r.Bench.Passes[0].Compound > 0.0031 {
		t.Errorf("%+v", r.Bench.Passes)
	}
	script, err := bench.ParseScript("log", []byte(strings.Join(kept, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	again, err := script.Replay("log", bench.New(r.Bench.Job).Job)
	if err != nil || !reflect.DeepEqual(again.Bench, r.Bench) {
		t.Errorf("%v: the log plays to another bench", err)
	}
}

// A move that made the part scrap can be taken back though time went by, and the offer is
// made with it; its mistake stays in the debrief.
func TestUndoOfScrap(t *testing.T) {
	s, term, r := atBench(t, "adjusting-screw", append(append([]string{}, setUp[:12]...), "compound in 0.02", "undo", "done")...)
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	log := term.Log.String()
	for _, want := range []string{"The part is scrap.", "The work is torn where", "Type undo to take that move back", "Taken back: compound in 0.02.", "Tool run into turning work (taken back)"} {
		if !strings.Contains(log, want) {
			t.Errorf("%q was not said\n%s", want, log)
		}
	}
	if len(r.TakenBack) != 1 || r.Bench.Outcome.Verdict == bench.Scrap {
		t.Errorf("%v, %v", r.TakenBack, r.Bench.Outcome)
	}
}

// The verdict names the move; a question inside a move leads back to the bench.
func TestTheVerdictNamesTheMove(t *testing.T) {
	s, term, r := atBench(t, "adjusting-screw", append(append([]string{}, setUp[:12]...), "compound in 0.02", "5", "back", "done")...)
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	if log := term.Log.String(); !strings.Contains(strings.Join(strings.Fields(log), " "), "That was move 13, compound in 0.02: tool run into turning work.") {
		t.Error(log)
	}
}

// Of each state the bench can be in there is one thing to look at, and it is said.
func TestHintsHaveWords(t *testing.T) {
	moves := append(append([]string{}, setUp...), "close on 1", "wait 8", "run", "wait 0.5", "cross out 0.2", "open", "return", "stop", "count", "clean hook", "test go", "start", "compound in 0.005", "cross to 0")
	var lines []string
	for _, m := range moves {
		lines = append(lines, m, "hint")
	}
	s, term, r := atBench(t, "adjusting-screw", lines...)
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	for _, place := range []string{"start", "touch", "thread", "end", "gap", "return", "feed", "count", "chips", "standing"} {
		if hint := s.Say("bench-hint-" + place); hint == "" || !strings.Contains(strings.Join(strings.Fields(term.Log.String()), " "), hint) {
			t.Errorf("%s: %q was not said", place, hint)
		}
	}
}

// The card of a job can be read before one is chosen, and at the bench.
func TestCardOnTheMenu(t *testing.T) {
	card := strconv.Itoa(len(content.Shipped().JobNames()) + 1)
	s, term, _ := atBench(t, "adjusting-screw", card, "1", card, card, "2")
	name, err := s.ChooseJob()
	if err != nil || name != "gland-nut" || !strings.Contains(term.Log.String(), "Which card?") || strings.Count(term.Log.String(), s.Say("plan-passes")) != 1 {
		t.Errorf("%q, %v\n%s", name, err, term.Log.String())
	}
	s, term, r := atBench(t, "adjusting-screw", "card", "leave")
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) || !strings.Contains(term.Log.String(), s.Say("plan-passes")) {
		t.Errorf("%v\n%s", err, term.Log.String())
	}
}

// After a crash both words take the last move back, and anything else is told what is taken. A
// term is explained at the bench as elsewhere, by more than one of it too.
func TestWordsAfterACrashAndATerm(t *testing.T) {
	s, term, r := atBench(t, "adjusting-screw", "? gibs", "? qwerty", "dress", "key out", "start", "stop", "reverse", "open", "undo", "done")
	if err := s.Run(r); err != nil {
		t.Fatal(err)
	}
	log := strings.Join(strings.Fields(term.Log.String()), " ")
	for _, want := range []string{"gib: ", `No word of the trade is called "qwerty"`, `"open" is not taken here`, "Mistakes: 1, of them by moves that were taken back: 1."} {
		if !strings.Contains(log, want) {
			t.Errorf("%q is not said in %s", want, log[max(0, len(log)-2500):])
		}
	}
	if r.Bench.Outcome.Why != "done" {
		t.Errorf("%+v", r.Bench.Outcome)
	}
}

// What a bore does is told of a bore: its bar gives, and no ring gauge goes on.
func TestWordsOfABore(t *testing.T) {
	for job, want := range map[string][2]string{"adjusting-screw": {"Thin work bends", "A ring gauge"}, "gland-nut": {"The bar gives", "A rule, plug gauge"}} {
		s, _, r := atBench(t, job)
		words, err := s.Library.Bench()
		if err != nil {
			t.Fatal(err)
		}
		heavy, measured := r.Bench.Job.WordsOf(bench.Mistake{Name: "heavy"}, words), r.Bench.Job.WordsOf(bench.Mistake{Name: "measured-running"}, words)
		if !strings.HasPrefix(heavy.Part, want[0]) || !strings.HasPrefix(measured.You, want[1]) {
			t.Errorf("%s: %q, %q", job, heavy.Part, measured.You)
		}
	}
}
