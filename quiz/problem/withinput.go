package problem

import (
	"fmt"
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
)

// WithInput returns the problem with one input taken from the answer to another one:
// x, in held units. told stands in the prompt where the number would: "your answer to
// question 3". The result has no code that remakes it, and may be ambiguous: see
// Ambiguous.
func (p *Problem) WithInput(input string, x float64, told string) (*Problem, error) {
	v := p.Values
	i := slices.IndexFunc(v.inputs, func(in Input) bool { return in.Name == input })
	if i < 0 || !v.values[i].set {
		return nil, fmt.Errorf("%s has no %s to take over here", p.Task.Name, calc.Quoted(input))
	}
	in := v.inputs[i]
	if x < in.Low || x > in.High {
		u := in.Unit(v.System)
		return nil, &calc.InputError{What: input, Got: u.WithName(u.Exact(x)), Want: in.Wants(v.System)}
	}
	v.values = slices.Clone(v.values)
	v.values[i].x = x
	v.words = append([][2]string{{in.Symbol, told}, {in.Name, told}}, v.words...)
	next := &Problem{Task: p.Task, Code: p.Code, Lathe: p.Lathe, Values: v}
	if err := next.work(); err != nil {
		return nil, err
	}
	if !p.Task.Kind.Numeric() {
		return nil, fmt.Errorf("%s asks for a decision; only an answer in numbers can follow from another one", p.Task.Name)
	}
	next.ambiguous = !next.settle()
	return next, nil
}

// WithInputGuess is WithInput for a response. A bare number that the input can't be, and
// could be in another unit, is taken for that: 61.3 where thousandths were written. inUnit
// tells that it was.
func (p *Problem) WithInputGuess(input string, r answer.Response) (next *Problem, inUnit bool, err error) {
	next, err = p.WithInput(input, r.X, "")
	i := slices.IndexFunc(p.Values.inputs, func(in Input) bool { return in.Name == input })
	if err == nil || r.Unit != "" || i < 0 {
		return next, false, err
	}
	for _, x := range answer.MeantIn(p.Values.inputs[i].Unit(p.Values.System), r.X) {
		if meant, err := p.WithInput(input, x, ""); err == nil {
			return meant, true, nil
		}
	}
	return next, false, err
}

// NumberInputs lists the inputs that the answer to another problem can be taken over to.
func (t *Task) NumberInputs() []Input {
	var all []Input
	for _, in := range t.Inputs {
		switch in.Type {
		case InputLength, InputAngle, InputTPI, InputPlain, InputCount:
			all = append(all, in)
		}
	}
	return all
}
