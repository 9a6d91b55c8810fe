package tasks_test

import (
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"strconv"
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

var update = flag.Bool("update", false, "write the golden files anew; read them before committing")

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

// The key is marked right, every common error is marked as that error, and what is printed
// is marked the same as what is held.
func TestKeyAndErrorsAreMarked(t *testing.T) {
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		words := load(t, task.Name)
		seen := map[string]bool{}
		for seed := range draws(500) {
			p := made(t, task, level, s, seed, lathe(s, seed))
			if m := p.Mark(p.Expected.Show(p.Expected.Key)); m.Verdict != answer.Right || m.Points != 1 {
				t.Fatalf("%s: the key %s is marked %s", p.Code, p.Expected.Text(), m.Verdict)
			}
			for _, known := range p.Expected.Errors {
				seen[known.Name] = true
				want := answer.KnownError
				if known.Convention {
					want = answer.Convention
				}
				if known.Partial != nil { // a part of what is right
					want = answer.SafeWrong
				}
				for how, m := range map[string]answer.Mark{"as held": p.MarkResponse(known.Response), "as printed": p.Mark(p.Expected.Show(known.Response))} {
					if m.Verdict != want || m.Error != known.Name {
						t.Fatalf("%s: error %s (%s, %s) is marked %s %s; key %s", p.Code, known.Name, p.Expected.ShowGiven(known.Response), how, m.Verdict, m.Error, p.Expected.Text())
					}
				}
				if words.Task.Slips[known.Name] == "" {
					t.Fatalf("error %s has no words", known.Name)
				}
			}
			prompt, unknown := words.Ask(p)
			if len(unknown) > 0 || strings.Contains(prompt, "${") {
				t.Fatalf("%s: the prompt asks for %v: %s", p.Code, unknown, prompt)
			}
		}
		for _, known := range task.Errors {
			if !seen[known.Name] && level == problem.OnTheJob && !testing.Short() {
				t.Errorf("level %d %s: error %s never comes up", level, s, known.Name)
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

// No draw is ambiguous: nothing near the key is taken for a common error, nothing
// near an error for the key or for another error.
func TestNoAmbiguousDraw(t *testing.T) {
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		for seed := range draws(*ambiguityDraws / 6) {
			p := made(t, task, level, s, seed+7000, lathe(s, seed))
			a := &p.Expected
			if a.Tolerance < 0 || (a.Kind == answer.Quantity && a.Tolerance <= 0) {
				t.Fatalf("%s: tolerance %v", p.Code, a.Tolerance)
			}
			var errors []answer.Known
			var responses []answer.Response
			for _, known := range p.Expected.Errors {
				errors, responses = append(errors, known), append(responses, known.Response)
			}
			for i, r := range responses {
				if a.Right(r) {
					t.Fatalf("%s: error %s would be marked right", p.Code, errors[i].Name)
				}
				for j := range i {
					if a.Kind.Same(a, r, responses[j], 2*a.ErrorTolerance) && errors[i].SameResultAs != errors[j].Name && errors[j].SameResultAs != errors[i].Name {
						t.Fatalf("%s: errors %s and %s give one answer", p.Code, errors[i].Name, errors[j].Name)
					}
				}
			}
			if a.Kind != answer.Quantity {
				continue
			}
			for _, share := range []float64{-1, -0.5, 0.5, 1} {
				if m := p.MarkResponse(answer.NumberResponse(a.Key.X + share*a.Tolerance)); m.Verdict != answer.Right && !(a.UpperLimit && share > 0) {
					t.Fatalf("%s: key and %.1f tolerances is marked %s", p.Code, share, m.Verdict)
				}
				for i, r := range responses {
					if m := p.MarkResponse(answer.NumberResponse(r.X + share*a.ErrorTolerance)); m.Error != errors[i].Name {
						t.Fatalf("%s: error %s and %.1f tolerances is marked %s %s", p.Code, errors[i].Name, share, m.Verdict, m.Error)
					}
				}
			}
		}
	})
}

// A calculator that is fed the printed line gives the printed number.
func TestPrintedStepsReproduceThePrintedAnswer(t *testing.T) {
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		for seed := range draws(300) {
			p := made(t, task, level, s, seed+100, lathe(s, seed))
			for i, step := range p.Working.Steps {
				if step.Formula == "" {
					continue
				}
				with := p.Working.With(i)
				x, err := evaluate(with)
				if err != nil {
					t.Fatalf("%s: step %q: %v", p.Code, with, err)
				}
				places := step.Unit.Places
				slack := 0.0
				if !step.Final {
					places += 2
					slack = 2.1 * math.Pow10(-places) // on the way the last figure may waver
				}
				if got := calc.Fixed(x, places); got != step.Value() && !(step.Unit.Count && parse(t, got) == parse(t, step.Value())) && math.Abs(x-parse(t, step.Value())) > slack {
					t.Errorf("%s: %s = %s gives %s, printed %s", p.Code, step.Formula, with, got, step.Value())
				}
			}
		}
	})
}

func parse(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// evaluate works out a printed expression as a pocket calculator in degrees would.
func evaluate(text string) (float64, error) {
	e, err := parser.ParseExpr(strings.ReplaceAll(text, " x ", " * "))
	if err != nil {
		return 0, err
	}
	var failed error
	var eval func(e ast.Expr) float64
	eval = func(e ast.Expr) float64 {
		switch e := e.(type) {
		case *ast.BasicLit:
			x, err := strconv.ParseFloat(e.Value, 64)
			if err != nil {
				failed = err
			}
			return x
		case *ast.ParenExpr:
			return eval(e.X)
		case *ast.UnaryExpr:
			return -eval(e.X)
		case *ast.BinaryExpr:
			x, y := eval(e.X), eval(e.Y)
			switch e.Op {
			case token.ADD:
				return x + y
			case token.SUB:
				return x - y
			case token.MUL:
				return x * y
			case token.QUO:
				return x / y
			}
		case *ast.CallExpr:
			if f, ok := e.Fun.(*ast.Ident); ok && len(e.Args) == 1 {
				x := eval(e.Args[0])
				switch f.Name {
				case "cos":
					return math.Cos(x * math.Pi / 180)
				case "tan":
					return math.Tan(x * math.Pi / 180)
				case "sqrt":
					return math.Sqrt(x)
				case "atan":
					return math.Atan(x) * 180 / math.Pi
				}
			}
		}
		failed = fmt.Errorf("can't work out %T in %q", e, text)
		return 0
	}
	x := eval(e)
	return x, failed
}

// Five problems of every task, as a learner and an instructor see them. Read what
// changed before committing a new golden.
func TestGoldenProblems(t *testing.T) {
	for _, task := range tasks.All() {
		t.Run(task.Name, func(t *testing.T) {
			words := load(t, task.Name)
			var b strings.Builder
			for i, k := range []struct {
				level problem.Level
				s     machine.System
			}{{1, 0}, {2, 0}, {3, 0}, {1, 1}, {3, 1}} {
				if !task.Allows(k.s) {
					k.s = task.Systems[0]
				}
				p := made(t, task, k.level, k.s, 0x1a00+i, machine.DefaultLathe(k.s))
				prompt, _ := words.Ask(p)
				fmt.Fprintf(&b, "%s\n%s\n%s\n", p.Code, prompt, words.Expects(p))
				for _, line := range words.StepLines(p) {
					fmt.Fprintln(&b, "  ", line)
				}
				fmt.Fprintf(&b, "   key: %s\n", words.KeyText(p))
				for _, known := range p.Expected.Errors {
					fmt.Fprintf(&b, "   %s: %s\n", known.Name, p.Expected.Join(p.Expected.Kind.Print(&p.Expected, known.Response), words.Phrases["between-readings"]))
				}
				b.WriteString("\n")
			}
			golden(t, filepath.Join("testdata", task.Name+".golden"), b.String())
		})
	}
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; run go test ./quiz/tasks -update and read the change.\ngot:\n%s", file, got)
	}
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
				t.Errorf("%s: error %s: same result as %q, follow-up %v", task.Name, s.Name, s.SameResultAs, asked)
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
				t.Errorf("%s: words for an error %q that is not one of its errors", task.Name, name)
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
