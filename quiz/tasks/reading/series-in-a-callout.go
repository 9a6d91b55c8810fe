package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "series-in-a-callout", Stage: problem.Reading, Kind: answer.Choice,
	Inputs: []problem.Input{
		{Name: "series", Symbol: "series", Type: problem.InputWord, Words: []string{"coarse", "fine", "extra-fine", "constant", "special", "rounded"}},
	},
	Systems: []machine.System{machine.Imperial},
	Sources: []string{"b1-1", "unr"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		series := problem.Pick(d, "coarse", "fine", "extra-fine", "constant", "special", "rounded")
		size := problem.Pick(d, sizesOfAllSeries()...)
		n, ok := threadsOf(d, series, size)
		if !ok {
			return problem.Values{} // the size has none of that series
		}
		perInch := func(n calc.ThreadsPerInch) string { return calc.Shortest(n.Number(), 1) }
		v.SetWord("series", series)
		v.Say("size", size.Size)
		v.Say("count", perInch(n))
		v.Say("coarse", perInch(size.TPI[calc.UNC]))
		v.Say("fine", perInch(size.TPI[calc.UNF]))
		v.Say("extra", perInch(size.TPI[calc.UNEF]))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: shared.Decide("series", map[string]string{
		"coarse": "unc", "fine": "unf", "extra-fine": "unef", "constant": "un", "special": "uns", "rounded": "unrc",
	}),
	Errors: []problem.CommonError{
		{Name: "unc", Work: shared.OptionUnlessIn("series", "unc", "coarse")},
		{Name: "unf", Work: shared.OptionUnlessIn("series", "unf", "fine")},
		{Name: "unef", Work: shared.OptionUnlessIn("series", "unef", "extra-fine")},
		{Name: "un", Work: shared.OptionUnlessIn("series", "un", "constant")},
		{Name: "uns", Work: shared.OptionUnlessIn("series", "uns", "special")},
		{Name: "unrc", Work: shared.OptionUnlessIn("series", "unrc", "rounded")},
	},
})

// sizesOfAllSeries are the sizes that beginners meet and that all three series have.
func sizesOfAllSeries() []calc.UnifiedSize {
	var sizes []calc.UnifiedSize
	for _, s := range calc.UnifiedSizes() {
		if s.Nominal >= 0.375 && s.Nominal <= 1.5 && len(s.TPI) == 3 {
			sizes = append(sizes, s)
		}
	}
	return sizes
}

// threadsOf draws threads per inch that a size has in a series. Of the constant pitches only
// those finer than the coarse series are standard for a size, and 32 only up to 1 in.
func threadsOf(d *problem.Draw, series string, size calc.UnifiedSize) (calc.ThreadsPerInch, bool) {
	pick := func(counts ...calc.ThreadsPerInch) (calc.ThreadsPerInch, bool) {
		n := problem.Pick(d, counts...)
		return n, n > size.TPI[calc.UNC] && n != size.TPI[calc.UNF] && n != size.TPI[calc.UNEF]
	}
	switch series {
	case "fine":
		return size.TPI[calc.UNF], true
	case "extra-fine":
		return size.TPI[calc.UNEF], true
	case "constant":
		n, ok := pick(8, 12, 16, 20, 28, 32)
		return n, ok && (n < 32 || size.Nominal <= 1)
	case "special":
		return pick(10, 14, 18, 24, 27)
	}
	return size.TPI[calc.UNC], true
}
