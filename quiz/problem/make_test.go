package problem_test

import (
	"errors"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// demo is a task of these tests: the travel of a compound, drawn between two depths.
func demo() *problem.Task {
	return &problem.Task{
		Name: "demo", Kind: answer.Quantity, Tolerance: answer.Tolerance{Inch: 0.001},
		Inputs: []problem.Input{{Name: "depth", Symbol: "h", Type: problem.InputLength, Low: 0.01, High: 0.2}, {Name: "angle", Symbol: "a", Type: problem.InputAngle, Low: 0, High: 45}},
		Draw: func(d *problem.Draw) problem.Values {
			v := d.Values()
			v.SetLength("depth", d.Length(30, 90, 80, 220))
			v.Set("angle", problem.Pick(d, 29, 29.5, 30))
			return v
		},
		Work: func(v problem.Values) (problem.Working, error) {
			w := v.Working()
			problem.Step2(w, "c", calc.TravelForDepth, v.Length("depth"), v.Angle("angle"))
			return w.Quantity()
		},
		Errors: []problem.CommonError{
			{Name: "no-angle", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Length("depth")) }},
			{Name: "never", Work: func(problem.Values) answer.Response { return answer.NoResponse }},
		},
	}
}

func demoCode(seed uint32) problem.Code { return problem.Code{Task: "demo", Level: 1, Seed: seed} }

// A code makes one problem: worked out, with its common errors and tolerances.
func TestNewMakesTheProblemOfACode(t *testing.T) {
	p, err := problem.New(demo(), demoCode(7))
	if err != nil {
		t.Fatal(err)
	}
	e := &p.Expected
	if len(e.Errors) != 1 || e.Errors[0].Name != "no-angle" || e.Tolerance <= 0 || e.ErrorTolerance <= 0 || p.Ambiguous() {
		t.Errorf("expected %+v", e)
	}
	if c, _ := calc.CompoundTravel(p.Values.Length("depth"), p.Values.Angle("angle")); c.Inches() != e.Key.X {
		t.Errorf("key %v, want %v", e.Key.X, c)
	}
	again, err := problem.New(demo(), demoCode(7))
	if err != nil || again.Working.Line(0) != p.Working.Line(0) {
		t.Errorf("%v, made again %v, %v", p.Working.Line(0), again.Working.Line(0), err)
	}
	if m := p.Mark(e.Text()); m.Verdict != answer.Right {
		t.Errorf("its key is marked %s", m.Verdict)
	}
	if m := p.MarkResponse(e.Errors[0].Response); m.Error != "no-angle" {
		t.Errorf("its error is marked %s %s", m.Verdict, m.Error)
	}
}

// What no problem can be made of, and what is said then.
func TestNewGivesUp(t *testing.T) {
	inchOnly, unusable, ambiguous, failing, other := demo(), demo(), demo(), demo(), demo()
	inchOnly.Systems = []machine.System{machine.Imperial}
	drawn := 0
	unusable.Draw = func(*problem.Draw) problem.Values { drawn++; return problem.Values{} }
	ambiguous.Errors[0].Work = func(v problem.Values) answer.Response {
		c, _ := calc.CompoundTravel(v.Length("depth"), v.Angle("angle"))
		return answer.LengthResponse(c)
	}
	failing.Work = func(problem.Values) (problem.Working, error) { return problem.Working{}, errors.New("no") }
	other.Kind = answer.Choice // and works out a number
	metric, lathe := demoCode(1), demoCode(1)
	metric.System, lathe.Lathe = machine.Metric, "no lathe"
	for _, c := range []struct {
		name string
		t    *problem.Task
		c    problem.Code
		want string
	}{
		{"another system", inchOnly, metric, "demo is not set in mm: give --units in"},
		{"unusable draws", unusable, demoCode(1), `demo finds no numbers that fit the lathe of "demo@1-0001"`},
		{"ambiguous draws", ambiguous, demoCode(1), "finds no numbers"},
		{"draws that can't be worked out", failing, demoCode(1), "finds no numbers"},
		{"another kind than declared", other, demoCode(1), "finds no numbers"},
		{"a code of no lathe", demo(), lathe, "lathe in the code"},
	} {
		if p, err := problem.New(c.t, c.c); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %+v, %v, want %q", c.name, p, err, c.want)
		}
	}
	if drawn < 100 {
		t.Errorf("gave up after %d draws", drawn)
	}
}

// Draws that fit are waited for, and the numbers stay those of the code.
func TestNewDrawsAgain(t *testing.T) {
	picky := demo()
	draw, tried := picky.Draw, 0
	picky.Draw = func(d *problem.Draw) problem.Values {
		v := draw(d)
		if tried++; tried < 5 {
			return problem.Values{}
		}
		return v
	}
	if _, err := problem.New(picky, demoCode(3)); err != nil || tried != 5 {
		t.Errorf("%d draws, %v", tried, err)
	}
}

// Someone's own numbers may make errors come out right, or come out ambiguous; both are
// marked all the same.
func TestFromValues(t *testing.T) {
	made := func(pairs string) (*problem.Problem, error) {
		return problem.FromValues(demo(), read(t, demo().Inputs, machine.Imperial, pairs), machine.InchLathe)
	}
	p, err := made("depth=0.05; angle=30")
	if err != nil || p.Ambiguous() || len(p.Expected.Errors) != 1 || p.Code.Task != "" {
		t.Errorf("%+v, %v", p, err)
	}
	p, err = made("depth=0.05; angle=2") // without the angle it is 0.0500 as well
	if err != nil || len(p.Expected.Errors) != 0 || p.Mark("0.05").Verdict != answer.Right {
		t.Errorf("%+v, %v", p.Expected, err)
	}
	p, err = made("depth=0.05; angle=9") // 0.0506: neither the same nor far enough
	if err != nil || !p.Ambiguous() || p.Mark("0.0506").Verdict != answer.Right {
		t.Errorf("ambiguous %v, %v", p.Ambiguous(), err)
	}
	for pairs, want := range map[string]string{"depth=0.05": "--angle is missing", "depth=0.05; angle=30": ""} {
		if _, err := made(pairs); (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", pairs, err, want)
		}
	}
	other := demo()
	other.Kind = answer.Choice
	if _, err := problem.FromValues(other, read(t, other.Inputs, machine.Imperial, "depth=0.05; angle=30"), machine.InchLathe); err == nil || err.Error() != "demo is declared to ask for choice and works out quantity" {
		t.Errorf("another kind than declared: %v", err)
	}
}

// An answer so near to half-way between two printed ones that a calculator, fed what is
// printed, may give the other is thrown away; just on it or further off it is not.
func TestRoundingEdges(t *testing.T) {
	task := demo()
	task.Errors = nil
	for before, cases := range map[float64]map[string]bool{
		1.0 / 3: {"0.1234": false, "0.123451": true, "0.123449": true, "0.12345": false, "0.1234535": true, "0.1234545": false, "0.1234465": true, "0.123444": false},
		0.25:    {"0.1234": false, "0.123451": false, "0.123449": false, "0.12345": false, "0.1234502": true, "0.1234498": true, "0.1234505": false}, // a step that is printed as it is
	} {
		task.Work = func(v problem.Values) (problem.Working, error) {
			w := v.Working()
			w.Length("b", "1 / 3")(calc.Inches(before), nil)
			w.Length("c", "h x 1")(v.Length("depth"), nil)
			return w.Quantity()
		}
		for depth, want := range cases {
			p, err := problem.FromValues(task, read(t, task.Inputs, machine.Imperial, "depth="+depth+"; angle=30"), machine.InchLathe)
			if err != nil || p.Ambiguous() != want {
				t.Errorf("%s after %v: ambiguous %v, %v", depth, before, p.Ambiguous(), err)
			}
		}
	}
}

// A decision offers what its errors choose; without words of its own an error chooses
// its name. Someone's own situation offers them sorted.
func TestOptionsOfADecision(t *testing.T) {
	decision := &problem.Task{
		Name: "decision", Kind: answer.Choice,
		Inputs: []problem.Input{{Name: "where", Symbol: "where", Type: problem.InputWord, Words: []string{"past", "lost"}}},
		Draw: func(d *problem.Draw) problem.Values {
			v := d.Values()
			v.SetWord("where", problem.Pick(d, "past", "lost"))
			return v
		},
		Work:   func(v problem.Values) (problem.Working, error) { return v.Working().Choice("stop") },
		Errors: []problem.CommonError{{Name: "wait"}, {Name: "go-on"}, {Name: "hidden", Work: func(problem.Values) answer.Response { return answer.NoResponse }}},
	}
	p, err := problem.FromValues(decision, read(t, decision.Inputs, machine.Imperial, "where=lost"), machine.InchLathe)
	if err != nil || strings.Join(p.Expected.Options, " ") != "go-on stop wait" {
		t.Errorf("%q, %v", p.Expected.Options, err)
	}
	orders := map[string]bool{}
	for seed := range uint32(40) {
		p, err := problem.New(decision, problem.Code{Task: "decision", Level: 1, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		orders[strings.Join(p.Expected.Options, " ")] = true
	}
	if len(orders) != 6 {
		t.Errorf("three options in %d orders: %v", len(orders), orders)
	}
	if !decision.Situations() || demo().Situations() || !decision.Allows(machine.Metric) || len(decision.NumberInputs()) != 0 {
		t.Error("what a decision is about")
	}
}

// An answer carried on to another problem: in its unit, in the unit it was meant in, or
// not at all.
func TestWithInput(t *testing.T) {
	p, err := problem.New(demo(), demoCode(7))
	if err != nil {
		t.Fatal(err)
	}
	next, err := p.WithInput("depth", 0.06, "your answer to question 3")
	if err != nil || next.Values.X("depth") != 0.06 || p.Values.X("depth") == 0.06 {
		t.Fatalf("%+v, %v", next, err)
	}
	if c, _ := calc.CompoundTravel(0.06, next.Values.Angle("angle")); next.Expected.Key.X != c.Inches() {
		t.Errorf("the key is %s", next.Expected.Text())
	}
	for _, name := range []string{"h", "depth"} {
		if word, _ := next.Values.PromptWord(name, ""); word != "your answer to question 3" {
			t.Errorf("${%s} says %q", name, word)
		}
	}
	for _, c := range []struct {
		input string
		x     float64
		want  string
	}{
		{"feed", 1, `demo has no "feed" to take over here`}, {"depth", 0.2001, "give 0.0100 to 0.2000 in"}, {"depth", 0.0099, "depth"}, {"depth", 0.2, ""}, {"depth", 0.01, ""},
	} {
		if _, err := p.WithInput(c.input, c.x, ""); (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %v: %v, want %q", c.input, c.x, err, c.want)
		}
	}
	for _, c := range []struct {
		r      answer.Response
		depth  float64
		inUnit bool
		ok     bool
	}{
		{answer.NumberResponse(0.06), 0.06, false, true},
		{answer.NumberResponse(61.3), 0.0613, true, true},       // thousandths, without a unit
		{answer.NumberResponse(1.524), 0.06, true, true},        // millimetres
		{answer.NumberResponse(9999), 0, false, false},          // in no unit
		{answer.Response{X: 61.3, Unit: "in"}, 0, false, false}, // in is what was written
	} {
		next, inUnit, err := p.WithInputGuess("depth", c.r)
		if inUnit != c.inUnit || (err == nil) != c.ok || err == nil && !calc.Within(next.Values.X("depth"), c.depth, 1e-9) {
			t.Errorf("%+v: %v, in another unit %v, %v", c.r, next, inUnit, err)
		}
	}
	if _, _, err := p.WithInputGuess("feed", answer.NumberResponse(1)); err == nil {
		t.Error("an input that the task has not was taken over")
	}
	if in := demo().NumberInputs(); len(in) != 2 || in[0].Name != "depth" {
		t.Errorf("may be taken over: %v", in)
	}
	worded := demo()
	worded.Kind, worded.Errors = answer.Choice, []problem.CommonError{{Name: "go-on"}}
	worded.Work = func(v problem.Values) (problem.Working, error) { return v.Working().Choice("stop") }
	w, err := problem.New(worded, demoCode(7))
	if err == nil {
		_, err = w.WithInput("depth", 0.06, "")
	}
	if err == nil || !strings.Contains(err.Error(), "asks for a decision") {
		t.Errorf("a decision followed from another answer: %v", err)
	}
}
