package quiz

import (
	"fmt"
	"slices"

	"scratchpass/calc"
)

// Following returns the problem with one input taken from the answer to another one:
// x, in held units. told stands in the prompt where the number would: "your answer to
// question 3". The result has no code that remakes it, and may be ambiguous: see
// Ambiguous.
func (p *Problem) Following(input string, x float64, told string) (*Problem, error) {
	v := p.Values
	i := slices.IndexFunc(v.inputs, func(in Input) bool { return in.Name == input })
	if i < 0 || !v.values[i].set {
		return nil, fmt.Errorf("%s has no %s to take over here", p.Task.Name, calc.Quoted(input))
	}
	in := v.inputs[i]
	if x < in.Low || x > in.High {
		return nil, &calc.InputError{What: input, Got: in.Unit(v.System).WithName(in.Unit(v.System).Exact(x)), Want: in.Wants(v.System)}
	}
	v.values = slices.Clone(v.values)
	v.values[i].x = x
	v.words = append([][2]string{{in.Symbol, told}, {in.Name, told}}, v.words...)
	next := &Problem{Task: p.Task, Code: p.Code, Lathe: p.Lathe, Values: v}
	if err := next.work(); err != nil {
		return nil, err
	}
	switch next.Answer.Kind.(type) {
	case quantity, row, limits:
		next.ambiguous = !next.unambiguous()
		return next, nil
	}
	return nil, fmt.Errorf("%s asks for a decision; only an answer in numbers can follow from another one", p.Task.Name)
}

// FollowingMeant is Following for a reply. A bare number that the input can't be, and could
// be in another unit, is taken for that: 61.3 where thousandths were written. inUnit tells
// that it was.
func (p *Problem) FollowingMeant(input string, r Reply) (next *Problem, inUnit bool, err error) {
	next, err = p.Following(input, r.X, "")
	i := slices.IndexFunc(p.Values.inputs, func(in Input) bool { return in.Name == input })
	if err == nil || r.Unit != "" || i < 0 {
		return next, false, err
	}
	for _, factor := range otherUnits(p.Values.inputs[i].Unit(p.Values.System)) {
		if meant, err := p.Following(input, r.X/factor, ""); err == nil {
			return meant, true, nil
		}
	}
	return next, false, err
}

// Ambiguous reports whether an answer might be taken for another one, or a printed step
// come out otherwise on a calculator. Problems of Make never are.
func (p *Problem) Ambiguous() bool { return p.ambiguous }

// NumberInputs lists the inputs that an answer in this unit can be taken over to.
func (t *Task) NumberInputs() []Input {
	var all []Input
	for _, in := range t.Inputs {
		switch in.Is {
		case ALength, AnAngle, ATPI, APlain, ACount:
			all = append(all, in)
		}
	}
	return all
}

// IsNumber reports whether the answer is one number.
func (a *Answer) IsNumber() bool {
	_, ok := a.Kind.(quantity)
	return ok
}
