package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "acme-nut-bore", Stage: problem.Shape, Kind: answer.Quantity, Systems: acmeSystems,
	Inputs:    []problem.Input{acmePitchInputs[0], shared.LengthInput("nominal", "D", 0.1, 5)},
	Tolerance: answer.Tolerance{Inch: 0.0005},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"acme-b1-5", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		tellAcmeSize(d, &v, problem.Pick(d, "2G", "3G", "4G"), acmeSizes)
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step2(w, "B", calc.AcmeNutBore, v.Length("nominal"), w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "pitch-line", Work: ofAcme(calc.AcmePitchLine.Of)},
		{Name: "v-form", Work: func(v problem.Values) answer.Response {
			bore, err := calc.BasicBore.Of(v.Length("nominal"), acmePitch(v))
			if root, err := acmeRoot(v); err != nil || max(bore-root, root-bore) < 1.5*calc.Thou {
				return answer.NoResponse // at 4 and 8 threads per inch the root of the screw lies there
			}
			return shared.Worked(bore, err)
		}},
		{Name: "root", Work: func(v problem.Values) answer.Response { return shared.Worked(acmeRoot(v)) }},
		{Name: "centralizing", Work: ofAcme(func(nominal, pitch calc.Length) (calc.Length, error) {
			return nominal - pitch.Times(0.9), nil // Machinery's Handbook 27th ed. p. 1837
		})},
		{Name: "twice", Work: ofAcme(func(nominal, pitch calc.Length) (calc.Length, error) {
			if pitch.Times(2.5) > nominal {
				return 0, &calc.InputError{What: "bore"} // nobody writes down such a hole
			}
			return nominal - pitch.Times(2), nil
		})},
	},
})

// acmeRoot is the largest minor diameter of the screw, with its clearance at the root.
func acmeRoot(v problem.Values) (calc.Length, error) {
	h, err := calc.AcmeDepth(acmePitch(v))
	return v.Length("nominal") - h.Times(2), err
}
