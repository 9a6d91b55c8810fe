package tasks_test

import (
	"flag"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

var ambiguityDraws = flag.Int("draws", 10000, "draws of each task in the search for ambiguous ones")

// eachKind runs a test for every task, level and system of units it allows.
func eachKind(t *testing.T, run func(t *testing.T, task *problem.Task, level problem.Level, s machine.System)) {
	t.Helper()
	all := tasks.All()
	if len(all) < 14 {
		t.Fatalf("only %d tasks are registered", len(all))
	}
	for _, task := range all {
		t.Run(task.Name, func(t *testing.T) {
			t.Parallel()
			for level := problem.NumbersGiven; level <= problem.OnTheJob; level++ {
				for _, s := range []machine.System{machine.Imperial, machine.Metric} {
					if task.Allows(s) {
						run(t, task, level, s)
					}
				}
			}
		})
	}
}

func draws(n int) int {
	if testing.Short() {
		return n / 20
	}
	return n
}

func made(t *testing.T, task *problem.Task, level problem.Level, s machine.System, seed int, lathe machine.Lathe) *problem.Problem {
	t.Helper()
	p, err := problem.New(task, problem.NewCode(task.Name, level, s, uint32(seed), lathe))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// lathes are machines that differ in everything a problem may depend on.
func lathe(s machine.System, seed int) machine.Lathe {
	l := machine.DefaultLathe(s)
	switch seed % 3 {
	case 1:
		l.CompoundZero = calc.ZeroAlong - l.CompoundZero
		l.CrossReads = calc.ReadsDiameter - l.CrossReads
		l.DialTeeth = l.DialTeeth / 2
		l.Compound.Turn = l.Compound.Turn.Times(1.25)
		l.Compound.Division = l.Compound.Turn.Times(1.0 / 100)
	case 2:
		l.DialTeeth, l.DialMarks = 0, 0
		l.ScrewedNose = !l.ScrewedNose
	}
	return l
}

// The key is marked right, every slip is marked as that slip, and what is printed
// is marked the same as what is held.
func TestKeyAndSlipsAreMarked(t *testing.T) {
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		words := load(t, task.Name)
		seen := map[string]bool{}
		for seed := range draws(500) {
			p := made(t, task, level, s, seed, lathe(s, seed))
			if m := p.Mark(p.Expected.Show(p.Expected.Key)); m.Verdict != answer.Right || m.Points != 1 {
				t.Fatalf("%s: the key %s is marked %s", p.Code, p.Expected.Text(), m.Verdict)
			}
			for _, slip := range p.Expected.Errors {
				seen[slip.Name] = true
				want := answer.KnownError
				if slip.Convention {
					want = answer.Convention
				}
				if slip.Partial != nil { // a part of what is right
					want = answer.SafeWrong
				}
				for how, m := range map[string]answer.Mark{"as held": p.MarkResponse(slip.Response), "as printed": p.Mark(p.Expected.Show(slip.Response))} {
					if m.Verdict != want || m.Error != slip.Name {
						t.Fatalf("%s: slip %s (%s, %s) is marked %s %s; key %s", p.Code, slip.Name, p.Expected.ShowGiven(slip.Response), how, m.Verdict, m.Error, p.Expected.Text())
					}
				}
				if words.Task.Slips[slip.Name] == "" {
					t.Fatalf("slip %s has no words", slip.Name)
				}
			}
			prompt, unknown := words.Ask(p)
			if len(unknown) > 0 || strings.Contains(prompt, "${") {
				t.Fatalf("%s: the prompt asks for %v: %s", p.Code, unknown, prompt)
			}
		}
		inchesOnly := map[string]bool{"rounded-pitch": true} // pitches in mm are not rounded
		for _, slip := range task.Errors {
			if !seen[slip.Name] && level == problem.OnTheJob && !testing.Short() && !(inchesOnly[slip.Name] && s == machine.Metric) {
				t.Errorf("level %d %s: slip %s never comes up", level, s, slip.Name)
			}
		}
	})
}

func load(t *testing.T, task string) *wording.Words {
	t.Helper()
	w, err := wording.Load(content.Shipped(), task)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// No draw is ambiguous: nothing near the key is taken for a slip, nothing near a
// slip for the key or for another slip.
func TestNoAmbiguousDraw(t *testing.T) {
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		for seed := range draws(*ambiguityDraws / 6) {
			p := made(t, task, level, s, seed+7000, lathe(s, seed))
			a := &p.Expected
			if a.Tolerance < 0 || (a.Kind == answer.Quantity && a.Tolerance <= 0) {
				t.Fatalf("%s: tolerance %v", p.Code, a.Tolerance)
			}
			var slips []answer.Known
			var replies []answer.Response
			for _, slip := range p.Expected.Errors {
				slips, replies = append(slips, slip), append(replies, slip.Response)
			}
			for i, r := range replies {
				if slips[i].Near { // right, and named for its own number alone
					continue
				}
				if a.Right(r) {
					t.Fatalf("%s: slip %s would be marked right", p.Code, slips[i].Name)
				}
				for j := range i {
					if slips[j].Near {
						continue
					}
					if a.Kind.Same(a, r, replies[j], 2*a.ErrorTolerance) && slips[i].SameResultAs != slips[j].Name && slips[j].SameResultAs != slips[i].Name {
						t.Fatalf("%s: slips %s and %s give one answer", p.Code, slips[i].Name, slips[j].Name)
					}
				}
			}
			if a.Kind != answer.Quantity {
				continue
			}
			for _, share := range []float64{-1, -0.5, 0.5, 1} {
				if m := p.MarkResponse(answer.NumberResponse(a.Key.X + share*a.Tolerance)); m.Verdict != answer.Right && !(a.Safe == answer.Below && share > 0) && !(a.Safe == answer.Above && share < 0) && m.Verdict != answer.Convention {
					t.Fatalf("%s: key and %.1f tolerances is marked %s", p.Code, share, m.Verdict)
				}
				for i, r := range replies {
					if slips[i].Near {
						continue
					}
					if m := p.MarkResponse(answer.NumberResponse(r.X + share*a.ErrorTolerance)); m.Error != slips[i].Name {
						t.Fatalf("%s: slip %s and %.1f tolerances is marked %s %s", p.Code, slips[i].Name, share, m.Verdict, m.Error)
					}
				}
			}
		}
	})
}

// Every task has words for all it may say, a source, and steps whose letters mean
// something.
func TestEveryTaskHasItsWords(t *testing.T) {
	sources, err := content.Shipped().Sources()
	if err != nil {
		t.Fatal(err)
	}
	for _, task := range tasks.All() {
		words := load(t, task.Name)
		for _, s := range task.Errors {
			if _, asked := words.Task.FollowUps[s.Name]; (s.SameResultAs != "") != asked {
				t.Errorf("%s: slip %s: twin %q, follow-up %v", task.Name, s.Name, s.SameResultAs, asked)
			}
		}
		if len(task.Sources) == 0 {
			t.Errorf("%s names no source", task.Name)
		}
		for _, key := range task.Sources {
			if sources[key].Title == "" {
				t.Errorf("%s: no source %q", task.Name, key)
			}
		}
		if task.SafetyCritical && len(words.Task.Safety) == 0 {
			t.Errorf("%s can hurt someone and shows no caution", task.Name)
		}
		for name := range words.Task.Slips {
			known := false
			for _, s := range task.Errors {
				known = known || s.Name == name
			}
			if !known {
				t.Errorf("%s: words for a slip %q that is not one of its slips", task.Name, name)
			}
		}
		for seed := range 40 {
			s := machine.Imperial
			if !task.Allows(s) {
				s = task.Systems[0]
			}
			p := made(t, task, 3, s, seed, machine.DefaultLathe(s))
			for _, g := range p.Values.Givens() {
				if len(p.Working.Steps) > 0 && g.Symbol != g.Name && words.Means(g.Symbol) == "" && len(g.Symbol) <= 2 {
					t.Errorf("%s: the letter %s of %s means nothing", task.Name, g.Symbol, g.Name)
				}
			}
			for _, step := range p.Working.Steps {
				if words.Means(step.Symbol) == "" {
					t.Errorf("%s: the letter %s means nothing", task.Name, step.Symbol)
				}
			}
			for _, text := range words.Options(p) {
				if text == "" || strings.Contains(text, "${") {
					t.Errorf("%s: option %q", task.Name, text)
				}
			}
		}
	}
}
