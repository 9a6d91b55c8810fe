package answer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// reference marks one number without bands, step by step: right, one error and no other,
// the right number in another unit, and then the side it lies on. It is the second
// computation that the bands are held to.
func reference(e *answer.Expected, r answer.Response) (v answer.Verdict, name string) {
	for i := range e.Errors {
		if known := &e.Errors[i]; known.Near && calc.Within(r.X, known.Response.X, 0.5*math.Pow10(-e.Unit.Places)/e.Unit.Factor) {
			return answer.Convention, known.Name
		}
	}
	if e.Right(r) {
		return answer.Right, ""
	}
	var found *answer.Known
	several := false
	for i := range e.Errors {
		known := &e.Errors[i]
		if known.Near || !calc.Within(r.X, known.Response.X, e.ErrorTolerance) {
			continue
		}
		switch {
		case found == nil, known.Convention && !found.Convention:
			found, several = known, false
		case found.Convention, found.SameResultAs == known.Name, known.SameResultAs == found.Name:
		default:
			several = true
		}
	}
	switch {
	case found != nil && found.Convention:
		return answer.Convention, found.Name
	case found != nil && !several:
		return answer.KnownError, found.Name
	}
	if e.Kind != answer.Quantity {
		return answer.Wrong, ""
	}
	if otherUnit(e, r) {
		return answer.WrongUnit, ""
	}
	given, key := math.Abs(r.X), math.Abs(e.Key.X)
	switch {
	case e.Scrap == answer.NoScrapSide, key > 0 && (given > 6*key*(1+1e-9) || given*6 < key*(1-1e-9)), r.X < 0 && e.Key.X > 0:
		return answer.Wrong, ""
	case (r.X > e.Key.X) == (e.Scrap == answer.ScrapHigh):
		return answer.ScrapWrong, ""
	}
	return answer.SafeWrong, ""
}

// otherUnit reports whether the number would be right in another unit.
func otherUnit(e *answer.Expected, r answer.Response) bool {
	if e.Key.X == 0 {
		return false
	}
	low, high, _ := e.Bounds()
	right := func(x float64) bool { return calc.Within(x, (low+high)/2, (high-low)/2) }
	if r.Unit == "" {
		factors := map[string][]float64{"in": {1000, 25.4}, "mm": {1 / 25.4, 1000 / 25.4}, "percent": {0.01}}[e.Unit.Name]
		for _, f := range factors {
			if right(r.X / f) {
				return true
			}
		}
		return false
	}
	one, ok := map[string]float64{"in": 1, "mm": 1 / 25.4, "thou": 0.001}[r.Unit]
	return ok && r.Unit != e.Unit.Name && right(r.X/one/e.Unit.Factor)
}

// near are numbers at and round everything that marks could turn on, and some by chance.
func near(e *answer.Expected, chance *rand.Rand) []float64 {
	var all []float64
	around := func(x, tolerance float64) {
		for _, share := range []float64{-2, -1.001, -0.999, -0.5, 0, 0.5, 0.999, 1.001, 2} {
			all = append(all, x+share*tolerance)
		}
	}
	around(e.Key.X, e.Tolerance)
	around(e.Low, 1e-4)
	around(e.High, 1e-4)
	for _, known := range e.Errors {
		around(known.Response.X, e.ErrorTolerance)
	}
	for _, times := range []float64{-7, -6.01, -5.99, -1, -0.17, -0.16, 0, 0.01, 0.16, 0.17, 5.99, 6.01, 7, 1000, 25.4, 1 / 25.4, 1000 / 25.4} {
		around(e.Key.X*times, e.Tolerance*math.Abs(times))
	}
	for range 20 {
		all = append(all, e.Key.X*(chance.Float64()*4-1), e.Key.X*math.Exp(chance.NormFloat64()*3))
	}
	return all
}

// Marks by bands are those of the second computation, for problems that were drawn,
// whatever unit was written behind the number.
func TestBandsMarkAsTheReferenceDoes(t *testing.T) {
	numbers := 0
	for _, task := range tasks.All() {
		if !task.Kind.OneNumber() {
			if p := make1(t, task, 1); p.Expected.Bands() != nil {
				t.Errorf("%s: bands of an answer that is no number", task.Name)
			}
			continue
		}
		for seed := range uint32(40) {
			p := make1(t, task, seed)
			e := &p.Expected
			chance := rand.New(rand.NewPCG(uint64(seed), 7))
			for _, x := range near(e, chance) {
				for _, unit := range []string{"", "in", "mm", "thou", e.Unit.Name} {
					r := answer.Response{X: x, Unit: unit}
					m := e.MarkResponse(r)
					numbers++
					if verdict, name := reference(e, r); m.Verdict != verdict || m.Error != name {
						t.Fatalf("%s: %v %q is marked %s %s; the reference has %s %s", p.Code, x, unit, m.Verdict, m.Error, verdict, name)
					}
				}
			}
		}
	}
	if numbers < 100_000 {
		t.Errorf("only %d numbers were marked", numbers)
	}
}

func make1(t *testing.T, task *problem.Task, seed uint32) *problem.Problem {
	t.Helper()
	system := machine.System(seed % 2)
	if !task.Allows(system) {
		system = task.Systems[0]
	}
	p, err := problem.New(task, problem.NewCode(task.Name, problem.Level(1+seed%3), system, seed, machine.DefaultLathe(system)))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A band is where it says: of the bands for other programs the first that holds a number
// gives the mark of that number, and the last holds every number.
func TestBandsForOtherPrograms(t *testing.T) {
	for _, task := range tasks.All() {
		if !task.Kind.OneNumber() {
			continue
		}
		for seed := range uint32(20) {
			p := make1(t, task, seed)
			bands := p.Expected.Bands()
			if last := bands[len(bands)-1]; !math.IsInf(last.Low, -1) || !math.IsInf(last.High, 1) {
				t.Fatalf("%s: the last band ends: %+v", p.Code, last)
			}
			for i, b := range bands {
				if math.IsInf(b.Low, 0) || math.IsInf(b.High, 0) {
					continue
				}
				middle := (b.Low + b.High) / 2
				first := 0
				for first < i && (middle < bands[first].Low-1e-12 || middle > bands[first].High+1e-12) {
					first++
				}
				m := p.Mark(calc.Shortest(middle*p.Expected.Unit.Factor, 12))
				if got := bands[first].Mark; got.Verdict != m.Verdict && m.Verdict != answer.Right || got.Error != m.Error {
					t.Errorf("%s %v: band %s %s, marked %s %s", p.Code, middle, got.Verdict, got.Error, m.Verdict, m.Error)
				}
			}
		}
	}
}

// Someone's own numbers may bring two errors to one place: neither is named there.
func TestBandsWhereErrorsCoincide(t *testing.T) {
	task, err := (tasks.Set{}).Find("compound-travel")
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for angle := 5.0; angle <= 45; angle += 0.5 {
		v := problem.NewValues(task.Inputs, machine.Imperial)
		v.Set("tpi", 12)
		v.Set("angle", angle)
		p, err := problem.FromValues(task, v, machine.InchLathe)
		if err != nil {
			t.Fatal(err)
		}
		for _, known := range p.Expected.Errors {
			m := p.MarkResponse(known.Response)
			found = found || m.Error == "" && m.Verdict != answer.Right
			if verdict, name := reference(&p.Expected, known.Response); m.Error != name || m.Verdict != verdict {
				t.Errorf("%v degrees, %s: %s %s; the reference has %s %s", angle, known.Name, m.Verdict, m.Error, verdict, name)
			}
		}
	}
	if !found {
		t.Error("no two errors came to one place")
	}
}
