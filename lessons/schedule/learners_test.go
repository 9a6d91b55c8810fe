package schedule_test

import (
	"math"
	"math/rand/v2"
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// mind is one simulated learner working at one task.
type mind struct {
	random  *rand.Rand
	task    *problem.Task
	holding string // the common error it holds
	last    string // what was right the time before, as typed
	day     int
	asked   int // how often it was asked its task
}

// kind is a kind of learner: what it answers to a problem. ok tells whether it
// meant a common error, and which.
type kind struct {
	name   string
	knows  bool // to say that it has mastered a task is no mistake
	holds  bool // it holds a common error
	late   bool // it holds one at first, and then knows
	answer func(m *mind, p *problem.Problem) (r answer.Response, meant string)
}

func key(_ *mind, p *problem.Problem) (answer.Response, string) { return p.Expected.Key, "" }

// errorOf is what the learner's error gives in a problem; the key where it can't be
// made.
func errorOf(m *mind, p *problem.Problem) (answer.Response, string) {
	r, meant := p.Expected.Key, ""
	for _, s := range p.Expected.Errors {
		switch {
		case s.Name == m.holding:
			r, meant = s.Response, s.Name
		case s.SameResultAs == s.Name && meant == "": // two causes of nearly one number: the other has no name of its own here
			if merged[m.task.Name] == m.holding {
				r, meant = s.Response, s.Name
			}
		}
	}
	return r, meant
}

// merged are common errors that with most numbers can't be told from another, which then
// names both causes.
var merged = map[string]string{"time-to-shoulder": "tpi", "fastest-for-the-gap": "div-n"}

// careless is the key with a mistake of the pen: two digits swapped, one wrong, or the
// next option.
func careless(m *mind, p *problem.Problem) answer.Response {
	switch {
	case len(p.Expected.Key.Xs) > 0:
		r := answer.Response{Xs: slices.Clone(p.Expected.Key.Xs)}
		i := m.random.IntN(len(r.Xs))
		r.Xs[i] = smudge(m, r.Xs[i], p.Expected.Unit)
		return r
	case len(p.Expected.Options) > 0:
		return guess(m, p)
	case len(p.Expected.Key.Fields) > 0:
		return guess(m, p)
	}
	for range 50 { // a smudge in the last figure may still be right
		if r := answer.NumberResponse(smudge(m, p.Expected.Key.X, p.Expected.Unit)); !p.Expected.Right(r) {
			return r
		}
	}
	return answer.NumberResponse(p.Expected.Key.X * 3)
}

func smudge(m *mind, x float64, u machine.Unit) float64 {
	digits := []byte(u.Fixed(x))
	for range 20 {
		i := m.random.IntN(len(digits))
		if digits[i] < '0' || digits[i] > '9' {
			continue
		}
		if j := i + 1; m.random.IntN(2) == 0 && j < len(digits) && digits[j] >= '0' && digits[j] != digits[i] {
			digits[i], digits[j] = digits[j], digits[i]
			break
		}
		digits[i] = '0' + byte((int(digits[i]-'0')+1+m.random.IntN(8))%10)
		break
	}
	y, err := calc.ParseNumber(string(digits))
	if err != nil {
		return x
	}
	return y / u.Factor
}

// guess is an answer without an idea.
func guess(m *mind, p *problem.Problem) answer.Response {
	a := &p.Expected
	switch a.Kind.Name() {
	case "choice":
		return answer.OptionsResponse(a.Options[m.random.IntN(len(a.Options))])
	case "order":
		keys := slices.Clone(a.Options)
		m.random.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
		return answer.OptionsResponse(keys...)
	case "several":
		var keys []string
		for _, o := range a.Options {
			if m.random.IntN(2) == 0 {
				keys = append(keys, o)
			}
		}
		return answer.OptionsResponse(keys...)
	case "readings":
		r := answer.Response{Xs: make([]float64, len(a.Key.Xs))}
		for i := range r.Xs {
			r.Xs[i] = a.Key.Xs[i] * (0.2 + 3*m.random.Float64())
		}
		return r
	case "reading":
		r := answer.Response{Fields: slices.Clone(a.Key.Fields)}
		r.Fields[m.random.IntN(len(r.Fields))][1] = "something else"
		return r
	}
	return answer.NumberResponse(a.Key.X * math.Pow(10, 2*m.random.Float64()-1))
}

// lateAfter is how many answers someone who learns late gives before that.
const lateAfter = 6

var kinds = []kind{
	{name: "knows all", knows: true, answer: key},
	{name: "knows nothing", answer: func(m *mind, p *problem.Problem) (answer.Response, string) { return guess(m, p), "" }},
	{name: "one persistent slip", holds: true, answer: errorOf},
	{name: "unstable slip", holds: true, answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		if m.random.IntN(2) == 0 {
			return key(m, p)
		}
		return errorOf(m, p)
	}},
	{name: "careless 8 %", knows: true, answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		if m.random.Float64() < 0.08 {
			return careless(m, p), ""
		}
		return key(m, p)
	}},
	{name: "guesser", answer: func(m *mind, p *problem.Problem) (answer.Response, string) { return guess(m, p), "" }},
	{name: "stuck", answer: func(m *mind, p *problem.Problem) (answer.Response, string) { return careless(m, p), "" }},
	{name: "fast", knows: true, answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		if m.random.Float64() < 0.2 {
			return careless(m, p), ""
		}
		return key(m, p)
	}},
	{name: "copies the last answer", answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		text := m.last
		m.last = p.Expected.Show(p.Expected.Key)
		if r, err := p.Expected.Read(text); err == nil {
			return r, ""
		}
		return guess(m, p), ""
	}},
	{name: "forgets (half-life 4 days)", knows: true, answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		if m.random.Float64() < math.Pow(0.5, float64(m.day)/4) {
			return key(m, p)
		}
		return careless(m, p), ""
	}},
	{name: "over-confident, one slip", holds: true, answer: errorOf},
	{name: "switches convention", knows: true, answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		r, meant := p.Expected.Key, ""
		for _, s := range p.Expected.Errors {
			if s.Convention && m.random.IntN(2) == 0 {
				r, meant = s.Response, s.Name
			}
		}
		return r, meant
	}},
	{name: "learns after 6 answers", knows: true, late: true, answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		if m.asked <= lateAfter {
			return errorOf(m, p)
		}
		return key(m, p)
	}},
	{name: "mixes units", answer: func(m *mind, p *problem.Problem) (answer.Response, string) {
		if p.Expected.Kind == answer.Quantity && p.Expected.Unit.Name == "in" {
			return answer.NumberResponse(p.Expected.Key.X * 1000), ""
		}
		return careless(m, p), ""
	}},
}
