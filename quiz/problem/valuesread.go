package problem

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Check returns an error unless exactly one input of every group, and every input
// without a group, is given and in range.
func (v *Values) Check() error {
	groups := map[string][]string{}
	for i, in := range v.inputs {
		if in.Group != "" {
			groups[in.Group] = append(groups[in.Group], "--"+in.Name)
			continue
		}
		if !v.values[i].set && !in.Extra {
			return fmt.Errorf("--%s is missing: give %s", in.Name, in.Wants(v.System))
		}
	}
	for i, in := range v.inputs {
		if in.Group == "" || !v.values[i].set {
			continue
		}
		if _, open := groups[in.Group]; !open {
			return fmt.Errorf("--%s: another input has already told the %s; give one of them", in.Name, in.Group)
		}
		delete(groups, in.Group)
	}
	for _, in := range v.inputs { // in the order of the inputs, so that the message is always the same
		if names, missing := groups[in.Group]; missing {
			return fmt.Errorf("the %s is missing: give one of %s", in.Group, strings.Join(names, ", "))
		}
	}
	return nil
}

// sideWords puts the trade's words for the names that sides of a thread had first. Both
// are read.
var sideWords = strings.NewReplacer(calc.Outside.String(), calc.Outside.Word(), calc.Inside.String(), calc.Inside.Word())

// Wants says what may stand for the input.
func (in Input) Wants(s machine.System) string {
	u := in.Unit(s)
	switch in.Type {
	case InputWord:
		return sideWords.Replace(strings.Join(in.Words, " or "))
	case InputThread:
		return "a thread such as 1/2-13 UNC-2A or M12x1.75-6g"
	case InputCuts:
		return "feeds with commas between them, s for a spring pass, such as " + map[machine.System]string{machine.Imperial: "0.006,0.005,s", machine.Metric: "0.15,0.12,s"}[s]
	}
	return u.Exact(in.Low) + " to " + u.WithName(u.Exact(in.High))
}

// Read reads what someone typed for an input and sets it.
func (v *Values) Read(name, text string) error {
	i := v.at(name)
	in := v.inputs[i]
	refuse := func(err error) error { return fmt.Errorf("--%s: %w", name, err) }
	switch in.Type {
	case InputWord:
		i := slices.IndexFunc(in.Words, func(word string) bool { return text == word || text == sideWords.Replace(word) })
		if i < 0 {
			return refuse(&calc.InputError{What: "can't use", Got: calc.Quoted(text), Want: in.Wants(v.System)})
		}
		v.SetWord(name, in.Words[i])
		return nil
	case InputThread:
		d, err := calc.ParseDesignation(text)
		if err != nil {
			return refuse(err)
		}
		v.SetThread(name, d)
		return nil
	case InputCuts:
		return v.readCuts(in, text)
	}
	x, err := in.number(text, v.System)
	if err != nil {
		return refuse(err)
	}
	v.Set(name, x)
	return nil
}

// mostCuts is how many feeds and spring passes are read: no job has more.
const mostCuts = 200

func (v *Values) readCuts(in Input, text string) error {
	parts := strings.Split(text, ",")
	if len(parts) > mostCuts {
		return fmt.Errorf("--%s: %d passes: give at most %d", in.Name, len(parts), mostCuts)
	}
	var feeds []float64
	for _, part := range parts {
		part = strings.TrimSpace(part)
		if part == "s" || part == "spring" {
			feeds = append(feeds, 0)
			continue
		}
		x, err := in.number(part, v.System)
		if err != nil || x == 0 {
			return fmt.Errorf("--%s: can't use %s: give %s", in.Name, calc.Quoted(part), in.Wants(v.System))
		}
		feeds = append(feeds, x)
	}
	v.SetCuts(in.Name, feeds)
	return nil
}

// number reads a number for the input and holds it to its range.
func (in Input) number(text string, s machine.System) (float64, error) {
	var x float64
	var err error
	switch in.Type {
	case InputLength, InputCuts:
		bare := calc.UnitInch
		if in.Unit(s).Name == machine.MMUnit.Name {
			bare = calc.UnitMillimetre
		}
		var l calc.Length
		l, err = calc.LengthOf(text, bare)
		x = l.Inches()
	case InputAngle:
		var a calc.Angle
		a, err = calc.ParseAngle(text)
		x = a.Degrees()
	default:
		x, err = calc.ParseNumber(text)
	}
	if err != nil {
		return 0, err
	}
	slack := (in.High - in.Low) * 1e-9
	if x < in.Low-slack || x > in.High+slack || in.Type == InputCount && x != calc.Round(x, 0) {
		return 0, &calc.InputError{What: "can't use", Got: calc.Quoted(text), Want: in.Wants(s)}
	}
	return x, nil
}
