package problem_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// draws calls do with the source of many problems of these inputs.
func draws(t *testing.T, level problem.Level, s machine.System, lathe machine.Lathe, inputs []problem.Input, do func(d *problem.Draw)) {
	t.Helper()
	task := &problem.Task{
		Name: "drawn", Kind: answer.Choice, Inputs: append([]problem.Input{{Name: "any", Type: problem.InputPlain, Extra: true}}, inputs...),
		Draw:   func(d *problem.Draw) problem.Values { do(d); return d.Values() },
		Work:   func(v problem.Values) (problem.Working, error) { return v.Working().Choice("a") },
		Errors: []problem.CommonError{{Name: "b"}},
	}
	for seed := range uint32(300) {
		if _, err := problem.New(task, problem.NewCode("drawn", level, s, seed, lathe)); err != nil {
			t.Fatal(err)
		}
	}
}

// Both ends of a range come up and nothing outside it.
func TestDrawnNumbers(t *testing.T) {
	least, most := map[string]float64{}, map[string]float64{}
	saw := func(name string, x float64) {
		if old, ok := least[name]; !ok || x < old {
			least[name] = x
		}
		if old, ok := most[name]; !ok || x > old {
			most[name] = x
		}
	}
	for s, lathe := range map[machine.System]machine.Lathe{machine.Imperial: machine.InchLathe, machine.Metric: machine.MetricLathe} {
		draws(t, 1, s, lathe, nil, func(d *problem.Draw) {
			saw("from 0 up to 5", float64(d.IntN(5)))
			saw("one way", float64(d.IntN(1)))
			saw("no way", float64(d.IntN(-3)))
			saw("3 to 7", float64(d.Between(3, 7)))
			saw("-2 to 2", float64(d.Between(-2, 2)))
			saw("steps", d.Steps(0.375, 0.75, 0.125))
			saw("length in "+s.String(), d.Length(4, 6, 10, 13).Inches()*s.Length().Factor)
			if x := d.Steps(0.375, 0.75, 0.125); x != 0.375 && x != 0.5 && x != 0.625 && x != 0.75 {
				t.Fatalf("%v is no step", x)
			}
			if x := problem.Pick(d, "a", "b"); x != "a" && x != "b" {
				t.Fatalf("picked %q", x)
			}
			items := []string{"a", "b", "c", "d"}
			shuffled := d.Shuffle(items)
			if again := slices.Sorted(slices.Values(shuffled)); !slices.Equal(again, items) {
				t.Fatalf("shuffled into %q", shuffled)
			}
		})
	}
	for name, want := range map[string][2]float64{
		"from 0 up to 5": {0, 4}, "one way": {0, 0}, "no way": {0, 0}, "3 to 7": {3, 7}, "-2 to 2": {-2, 2}, "steps": {0.375, 0.75}, "length in in": {0.004, 0.006}, "length in mm": {0.10, 0.13},
	} {
		if math.Abs(least[name]-want[0]) > 1e-12 || math.Abs(most[name]-want[1]) > 1e-12 {
			t.Errorf("%s: %v to %v, want %v", name, least[name], most[name], want)
		}
	}
}

// A thread lies between the two pitches, both included, and each pitch comes up.
func TestDrawnThreads(t *testing.T) {
	for _, c := range []struct {
		s                machine.System
		finest, coarsest calc.Length
		want             string
	}{
		{machine.Imperial, calc.Inch / 13, calc.Inch / 10, "10 11 12 13"},
		{machine.Imperial, calc.Inch / 20, calc.Inch / 16, "16 18 20"},
		{machine.Metric, calc.Millimetres(1), calc.Millimetres(1.5), "16.93 20.32 25.4"},
	} {
		seen := map[string]bool{}
		draws(t, 1, c.s, machine.DefaultLathe(c.s), nil, func(d *problem.Draw) {
			th := d.Thread(c.finest, c.coarsest)
			if th.Metric != (c.s == machine.Metric) || th.Nominal <= 0 || th.Starts != 1 {
				t.Fatalf("drew %+v", th)
			}
			seen[calc.Shortest(calc.Inch.Over(th.Pitch), 2)] = true
		})
		var all []string
		for n := range seen {
			all = append(all, n)
		}
		slices.Sort(all)
		if got := strings.Join(all, " "); got != c.want {
			t.Errorf("threads per inch drawn: %s, want %s", got, c.want)
		}
	}
}

// Numbers are given at level 1 and must be found above it; the pitch is what is printed of
// it, and the class that of the side.
func TestToldThreads(t *testing.T) {
	told := func(level problem.Level, s machine.System, side calc.Side) map[string]bool {
		ways := map[string]bool{}
		draws(t, level, s, machine.DefaultLathe(s), problem.ThreadInputs, func(d *problem.Draw) {
			v := d.Values()
			th := d.Thread(calc.Millimetres(1), calc.Millimetres(3))
			d.Tell(&v, th, side)
			phrase, _ := v.PhraseFor("told-thread")
			switch {
			case v.Has("thread"):
				ways[phrase+" "+v.Thread("thread").Class] = true
				if on, ok := v.Thread("thread").Side(); !ok || on != side {
					t.Fatalf("%s is told for an %s thread", v.Thread("thread"), side)
				}
			case v.Has("pitch"):
				ways[phrase] = true
				if text, _ := v.Symbol("P"); text != s.Length().Fixed(v.Length("pitch").Inches()) {
					t.Fatalf("a pitch of %s is held as %v", text, v.Length("pitch"))
				}
			default:
				ways[phrase] = true
			}
		})
		return ways
	}
	for _, c := range []struct {
		level problem.Level
		s     machine.System
		side  calc.Side
		want  []string
	}{
		{1, machine.Imperial, calc.Outside, []string{"told-thread-pitch", "told-thread-tpi"}},
		{1, machine.Metric, calc.Outside, []string{"told-thread-pitch"}},
		{2, machine.Imperial, calc.Outside, []string{"told-thread-previous", "told-thread-thread 2A", "told-thread-thread 3A"}},
		{2, machine.Imperial, calc.Inside, []string{"told-thread-previous", "told-thread-thread 2B", "told-thread-thread 3B"}},
		{3, machine.Metric, calc.Outside, []string{"told-thread-previous", "told-thread-thread 6g"}},
		{3, machine.Metric, calc.Inside, []string{"told-thread-previous", "told-thread-thread 6H"}},
	} {
		var got []string
		for way := range told(c.level, c.s, c.side) {
			got = append(got, way)
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("level %d in %s, %s: told as %q, want %q", c.level, c.s, c.side, got, c.want)
		}
	}
}

// A job of the bench: one of its side, at a slow speed of the lathe, with the work no
// further out than three times its diameter and a bar no further than four of its own.
func TestJobsOfADraw(t *testing.T) {
	noSpeeds := machine.InchLathe
	noSpeeds.LeadScrew = 4 // a lathe that a code describes has no list of speeds
	inputs := append([]problem.Input{{Name: "nominal", Symbol: "D", Type: problem.InputLength, High: 12}, {Name: "bar", Symbol: "b", Type: problem.InputLength, High: 12}}, problem.ThreadInputs...)
	for _, c := range []struct {
		name   string
		s      machine.System
		lathe  machine.Lathe
		side   calc.Side
		told   string
		most   float64 // of the stickout, in inches
		steps  float64
		jobs   string
		speeds string
	}{
		{"a thread", machine.Imperial, machine.InchLathe, calc.Outside, "thread=1/2-13 UNC", 1.5, 0.125, "job-adjusting-screw job-tie-rod job-valve-stem", "110 45 70"},
		{"a diameter", machine.Imperial, noSpeeds, calc.Outside, "nominal=1", 3, 0.125, "job-adjusting-screw job-tie-rod job-valve-stem", "110 45 70"},
		{"a thick one", machine.Imperial, machine.InchLathe, calc.Outside, "nominal=4", 3.5, 0.125, "job-adjusting-screw job-tie-rod job-valve-stem", "110 45 70"},
		{"nothing told", machine.Imperial, machine.InchLathe, calc.Outside, "tpi=8", 1.5, 0.125, "job-adjusting-screw job-tie-rod job-valve-stem", "110 45 70"},
		{"a bore", machine.Metric, machine.MetricLathe, calc.Inside, "nominal=20", 40 / 25.4, 2 / 25.4, "job-adjuster-sleeve job-gland-nut job-lock-ring", "125 50 80"},
		{"a bar in a bore", machine.Metric, machine.MetricLathe, calc.Inside, "nominal=40; bar=8", 32 / 25.4, 2 / 25.4, "job-adjuster-sleeve job-gland-nut job-lock-ring", "125 50 80"},
	} {
		jobs, speeds, furthest := map[string]bool{}, map[string]bool{}, 0.0
		draws(t, 3, c.s, c.lathe, inputs, func(d *problem.Draw) {
			v := read(t, inputs, c.s, c.told)
			d.Job(&v, c.side)
			job, _ := v.PhraseFor("job")
			rpm, _ := v.PromptWord("rpm", "")
			text, _ := v.PromptWord("stickout", "")
			out, err := calc.LengthOf(text, calc.UnitInch)
			if err != nil {
				t.Fatal(err)
			}
			jobs[job], speeds[rpm] = true, true
			furthest = max(furthest, out.Inches())
			if n := out.Inches() / c.steps; math.Abs(n-math.Round(n)) > 1e-3 || out.Inches() > c.most+1e-4 || n < 1.999 {
				t.Fatalf("%s: stands out %s, at most %v in", c.name, text, c.most)
			}
		})
		keys := func(m map[string]bool) string {
			var all []string
			for k := range m {
				all = append(all, k)
			}
			slices.Sort(all)
			return strings.Join(all, " ")
		}
		if keys(jobs) != c.jobs || keys(speeds) != c.speeds || furthest < c.most-c.steps-1e-3 {
			t.Errorf("%s: jobs %s, speeds %s, at most %v in out, want %s, %s, %v", c.name, keys(jobs), keys(speeds), furthest, c.jobs, c.speeds, c.most)
		}
	}
}
