package bench

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Whatever makes a part scrap is said at the move that does it, in the word of the verdict,
// and the verdict finds that move again.
func TestScrapIsSaidAtItsMove(t *testing.T) {
	files, _ := filepath.Glob("testdata/runs/*.run")
	found := map[string]bool{}
	for _, file := range files {
		_, r := playRun(t, file)
		b := r.Bench
		if b.Outcome.Verdict != Scrap {
			if len(b.Spoiled) > 0 {
				t.Errorf("%s: %s, and spoiled by %v", file, b.Outcome.Verdict, b.Spoiled)
			}
			continue
		}
		if len(b.Spoiled) == 0 {
			t.Errorf("%s: scrap for %v by no move", file, b.Outcome.Reasons)
		}
		for _, s := range b.Spoiled {
			found[s.Reason] = true
			said := names(b.Log[s.Event-1].Happened)
			want := []string{"scrapped", "reason-" + s.Reason}
			if s.Reason == "smashed" {
				want = []string{"verdict-scrap"}
			}
			for _, name := range want {
				if !slices.Contains(said, name) {
					t.Errorf("%s: move %d spoils it (%s) and says %v", file, s.Event, s.Reason, said)
				}
			}
			if !slices.Contains(b.Outcome.Reasons, s.Reason) {
				t.Errorf("%s: %s at move %d is no reason of the verdict: %v", file, s.Reason, s.Event, b.Outcome.Reasons)
			}
			if s.Cause == "" && s.Reason != "past-size" {
				t.Errorf("%s: %s at move %d by no mistake", file, s.Reason, s.Event)
			}
		}
	}
	for _, reason := range []string{"torn", "second-groove", "wrong-lead", "past-size", "leans", "on-cone", "no-taper", "smashed"} {
		if !found[reason] {
			t.Errorf("no run is scrap for %q", reason)
		}
	}
}

func names(happened []Happening) []string {
	var all []string
	for _, h := range happened {
		all = append(all, h.Name)
	}
	return all
}

// set is the set-up of the adjusting screw, up to the first cut.
const set = "dress, key out, feed off, speed 70, gears 32/40, angle 29.5 tailstock, height, square, gibs, oil, start, touch, zero cross, zero compound, cross out 0.2, return, cross to 0, "

// onePass is a pass of which the tool is not taken out, and backs is the way back.
const (
	onePass = "close on 1, run"
	backs   = "cross out 0.2, open, return, "
)

// does makes moves, and returns what the last of them said.
func does(t *testing.T, b Bench, moves string) (Bench, []string) {
	t.Helper()
	var said []Happening
	for _, move := range strings.Split(moves, ", ") {
		e, err := Parse(move, machine.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		b, said = b.Step(e)
	}
	return b, names(said)
}

// Where nothing is cut it is said why.
func TestWhyNothingIsCut(t *testing.T) {
	for moves, why := range map[string]string{
		set + "compound in 0.004, compound out 0.002, compound in 0.0025, " + onePass: "", // the play is only what is left of it
		set + "compound out 0.01, compound in 0.011, " + onePass:                      "",
		set + onePass: "clear-short",
		set + "compound in 0.005, " + onePass + ", " + backs + onePass:                                             "clear-out",
		set + "compound out 0.005, " + onePass:                                                                     "fed-away",
		strings.Replace(set, "zero cross, ", "cross out 0.1, zero cross, ", 1) + "compound in 0.002, " + onePass:   "clear-no-touch",
		set + "compound in 0.005, " + onePass + ", " + backs + "pass 0.005, pass 0.005, cross in 0.19, " + onePass: "short-of-groove",
		set + "compound in 0.005, " + onePass + ", " + backs + strings.Repeat("spring, ", 9) + "spring":            "cuts-no-more",
	} {
		_, said := does(t, New(shippedJob(t, "adjusting-screw")), moves)
		if why == "" && slices.Contains(said, "runs-clear") || why != "" && !slices.Contains(said, why) {
			t.Errorf("%s: %v, want %q", strings.TrimPrefix(moves, set), said, why)
		}
	}
}

// Play that is not taken up: the compound is wound away past its play and back by less.
func TestPlayNotTakenUp(t *testing.T) {
	j := shippedJob(t, "gland-nut")
	b := New(j)
	b.AtTouch, b.Zeroed, b.Turn, b.FeedOn = true, [2]bool{true, true}, 1, false
	b.Cross.Table = b.Cross.Screw // on the far side of its play
	b.Cross, _ = b.Cross.Wound(-j.slide().Play.Times(0.5))
	s := step{Bench: b}
	s.Cross.Screw -= calc.Thou // deeper here
	s.whyClear()
	if said := names(s.happened); !slices.Contains(said, "clear-play") {
		t.Error(said)
	}
}

// In a relief groove that is deeper than the root an open half-nut leaves the tool free;
// where the thread runs out in plain metal it is a mistake.
func TestOpenedBehindTheThread(t *testing.T) {
	for _, plain := range []bool{false, true} {
		j := shippedJob(t, "adjusting-screw")
		if plain {
			j.End = Jaws
		}
		b, said := does(t, New(j), set+"compound in 0.005, "+onePass+", open")
		if slices.Contains(said, "mistake-opened-first") != plain || slices.Contains(said, "opened-in-relief") == plain || len(b.Spoiled) > 0 {
			t.Errorf("plain metal %v: %v", plain, said)
		}
		if b, said = does(t, b, "return"); !slices.Contains(said, "mistake-dragged") || !slices.Contains(said, "scrapped") {
			t.Errorf("back with the tool in: %v", said)
		}
	}
}

// Opened early with the tool drawn out the pass is short, and nothing else.
func TestOpenedEarlyAndClear(t *testing.T) {
	b, _ := does(t, New(shippedJob(t, "adjusting-screw")), set+"compound in 0.005, close on 1, wait 8, cross out 0.2, open, return")
	if len(b.Mistakes) != 1 || b.Mistakes[0].Name != mistakeShort || len(b.Spoiled) > 0 {
		t.Errorf("%v, %v", b.Mistakes, b.Spoiled)
	}
}
