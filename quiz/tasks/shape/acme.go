package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// Acme threads are inch threads: their clearances and allowances are in inches.
var acmeSystems = []machine.System{machine.Imperial}

// acmePitchInputs are the two ways to tell the pitch of an Acme thread. A callout of one
// is no designation that the program reads: the prompt shows it and these numbers stand
// behind it.
var acmePitchInputs = []problem.Input{
	{Name: "tpi", Symbol: "n", Type: problem.InputTPI, Low: 1, High: 20, Group: "thread"},
	{Name: "pitch", Symbol: "P", Type: problem.InputLength, Low: 0.05, High: 1, Group: "thread"},
}

// acmeSize is a size of the general purpose series.
type acmeSize struct {
	name    string
	nominal float64
	tpi     float64
}

// acmeSizes are the sizes from 1/4 to 3. Source: ASME B1.5, partly seen, the rest from
// memory.
var acmeSizes = []acmeSize{
	{"1/4", 0.25, 16}, {"5/16", 0.3125, 14}, {"3/8", 0.375, 12}, {"7/16", 0.4375, 12}, {"1/2", 0.5, 10}, {"5/8", 0.625, 8},
	{"3/4", 0.75, 6}, {"7/8", 0.875, 6}, {"1", 1, 5}, {"1-1/8", 1.125, 5}, {"1-1/4", 1.25, 5}, {"1-3/8", 1.375, 4}, {"1-1/2", 1.5, 4},
	{"1-3/4", 1.75, 4}, {"2", 2, 4}, {"2-1/4", 2.25, 3}, {"2-1/2", 2.5, 3}, {"2-3/4", 2.75, 3}, {"3", 3, 2},
}

// tellAcmePitch draws a pitch, each of the series as often as another, and tells it by
// threads per inch or by its length, above level 1 by a callout.
func tellAcmePitch(d *problem.Draw, v *problem.Values) {
	tpi := problem.Pick(d, 16.0, 14, 12, 10, 8, 6, 5, 4, 3, 2)
	if d.Level == problem.NumbersGiven && d.IntN(3) == 0 {
		v.SetLength("pitch", calc.Inches(calc.Round(1/tpi, 4)))
		return
	}
	v.Set("tpi", tpi)
	if d.Level == problem.NumbersGiven {
		return
	}
	sizes := map[float64]string{}
	for _, s := range acmeSizes {
		if sizes[s.tpi] == "" || d.IntN(2) == 0 {
			sizes[s.tpi] = s.name
		}
	}
	v.Say("callout", sizes[tpi]+"-"+calc.Shortest(tpi, 1)+" ACME-"+problem.Pick(d, "2G", "3G"))
	v.Phrase("told-thread", "told-thread-callout")
}

// acmePitch is the pitch, however it was told.
func acmePitch(v problem.Values) calc.Length {
	if v.Has("pitch") {
		return v.Length("pitch")
	}
	p, _ := calc.ThreadsPerInch(v.X("tpi")).Pitch() // the input's range lies within the formula's
	return p
}

// isFine reports whether an Acme thread has the clearance of the finer ones.
func isFine(pitch calc.Length) bool { return pitch < 0.1*(1-1e-9) }

// tellAcmeSize draws a size and tells it by its numbers, above level 1 by a callout.
func tellAcmeSize(d *problem.Draw, v *problem.Values, class string, sizes []acmeSize) {
	s := problem.Pick(d, sizes...)
	v.SetLength("nominal", calc.Inches(s.nominal))
	v.Set("tpi", s.tpi)
	v.Say("callout", s.name+"-"+calc.Shortest(s.tpi, 1)+" ACME-"+class)
}

// shareOfAcmePitch is the error of taking a share of the pitch and something on top.
func shareOfAcmePitch(share float64, more calc.Length) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		return answer.LengthResponse(acmePitch(v).Times(share) + more)
	}
}

// ofAcme is the error of working out another length of the thread.
func ofAcme(of func(nominal, pitch calc.Length) (calc.Length, error)) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response { return shared.Worked(of(v.Length("nominal"), acmePitch(v))) }
}
