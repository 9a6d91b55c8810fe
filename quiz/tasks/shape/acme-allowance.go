package shape

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// acmeClasses are the classes of general purpose Acme threads, and their formulas.
var (
	acmeClasses    = []string{"2G", "3G", "4G"}
	acmeAllowances = map[string]calc.Formula[func(calc.Length) (calc.Length, error)]{
		"2G": calc.AcmeAllowance2G, "3G": calc.AcmeAllowance3G, "4G": calc.AcmeAllowance4G,
	}
)

var _ = shared.Register(problem.Task{
	Name: "acme-allowance", Stage: problem.Shape, Kind: answer.Quantity, Systems: acmeSystems,
	Inputs: []problem.Input{acmePitchInputs[0], shared.LengthInput("nominal", "D", 0.1, 5),
		{Name: "class", Symbol: "class", Type: problem.InputWord, Words: acmeClasses}},
	Tolerance: answer.Tolerance{Inch: 0.0003},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"acme-b1-5", "handbook", "acme-tables"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		class := problem.Pick(d, "2G", "2G", "3G", "4G")
		v.SetWord("class", class)
		tellAcmeSize(d, &v, class, sizesByFormula())
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		pitch := w.Pitch()
		basic := problem.Step2(w, "E", calc.AcmePitchLine, v.Length("nominal"), pitch)
		allowance := problem.Step1(w, "k", acmeAllowances[v.Word("class")], v.Length("nominal"))
		w.Length("E1", "E - k")(basic-allowance, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-allowance", Work: lessAllowance(0)},
		{Name: "added", Work: lessAllowance(-1)},
		{Name: "no-root", Work: func(v problem.Values) answer.Response {
			root := math.Sqrt(v.Length("nominal").Inches())
			if math.Abs(root-1) < 0.01 {
				return answer.NoResponse // at 1 in it is the same
			}
			return lessAllowance(root)(v)
		}},
		{Name: "twice", Work: lessAllowance(2)},
		{Name: "other-class", Work: func(v problem.Values) answer.Response {
			if v.Word("class") == "2G" {
				return lessAllowance(0.75)(v) // 0.006, that of 3G
			}
			return lessAllowance(map[string]float64{"3G": 8.0 / 6, "4G": 6.0 / 4}[v.Word("class")])(v)
		}},
		{Name: "whole-pitch", Work: func(v problem.Values) answer.Response {
			a, err := acmeAllowances[v.Word("class")].Of(v.Length("nominal"))
			return shared.Worked(v.Length("nominal")-acmePitch(v)-a, err)
		}},
	},
})

// sizesByFormula are the sizes at which the standard's table and its formula agree.
func sizesByFormula() []acmeSize {
	var sizes []acmeSize
	for _, s := range acmeSizes {
		switch s.name {
		case "5/16", "7/16", "1-3/4", "3":
		default:
			sizes = append(sizes, s)
		}
	}
	return sizes
}

// lessAllowance is the error of taking so many times the allowance off.
func lessAllowance(times float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		basic, err := calc.AcmePitchLine.Of(v.Length("nominal"), acmePitch(v))
		a, _ := acmeAllowances[v.Word("class")].Of(v.Length("nominal")) // the key has been worked out
		return shared.Worked(basic-a.Times(times), err)
	}
}
