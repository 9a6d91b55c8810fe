package problem

import (
	"scratchpass/calc"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
)

// Facts are what a figure may be drawn from: what the problem gives, by the names of its
// inputs, and nothing that is asked for.
func (v *Values) Facts() drawing.Facts {
	f := drawing.Facts{Lengths: map[string]calc.Length{}, Numbers: map[string]float64{}, Words: map[string]string{},
		Shown: map[string]string{}, Metric: v.System == machine.Metric}
	for i, in := range v.inputs {
		if !v.values[i].set {
			continue
		}
		switch in.Type {
		case InputLength:
			f.Lengths[in.Name] = calc.Inches(v.values[i].x)
		case InputWord:
			f.Words[in.Name] = v.values[i].word
			continue
		case InputThread: // what a figure looks like, none of its numbers
			d := v.values[i].thread
			if side, ok := d.Side(); ok && f.Words["side"] == "" {
				f.Words["side"] = side.String()
			}
			if _, given := f.Numbers["starts"]; !given {
				f.Numbers["starts"] = float64(d.Starts)
			}
			continue
		case InputCuts:
			continue
		default:
			f.Numbers[in.Name] = v.values[i].x
		}
		f.Shown[in.Name] = v.bare(i)
	}
	return f
}
