package qti

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// answered is an answer as a player hands it on, and its mark by quiz.
type answered struct {
	given responses
	mark  answer.Mark
	exact bool // the very answer of the key or of an error
}

func casesOf(it Item, chance *rand.Rand) []answered {
	switch p := it.Problem; p.Expected.Kind.Name() {
	case "quantity", "limits":
		return numberCases(p, chance)
	case "readings":
		return rowCases(p, chance)
	case "reading":
		return partCases(p, chance)
	default:
		return optionCases(p, chance)
	}
}

// numberCases types numbers, as a learner does, and lets quiz read the text.
func numberCases(p *problem.Problem, chance *rand.Rand) []answered {
	var all []answered
	a := &p.Expected
	key := math.Abs(a.Key.X * a.Unit.Factor)
	tried := map[string]bool{}
	try := func(x float64, exact bool) {
		number := decimal(x + 0) // no minus zero
		text := number
		if fewer := a.Unit.Places - 1; fewer > 0 && calc.Shortest(x, fewer) == number {
			text = calc.Fixed(x, fewer) // 2.0 and 2 are one number to a player
		}
		for _, far := range []float64{6 * key, key / 6} { // binary noise decides there
			if calc.Within(math.Abs(x), far, far*1e-9) {
				return
			}
		}
		if m := p.Mark(text); m.Verdict != answer.Unread && (exact || !tried[text]) {
			tried[text] = true
			all = append(all, answered{responses{response: {number}}, m, exact})
		}
	}
	typed := func(x float64) { // with as many places as someone may type
		for _, places := range []int{0, 1, 2, 3, 4, 7} {
			try(calc.Round(x, places), false)
		}
	}
	around := func(x, tol float64) {
		for _, off := range []float64{0, tol, tol * 0.999, tol * 1.001, tol / 2, 2 * tol} {
			for _, at := range []float64{x - off, x + off} {
				typed(at * a.Unit.Factor)
			}
		}
	}
	around(a.Key.X, a.Tolerance)
	around(a.Low, 1e-4)
	around(a.High, 1e-4)
	for _, known := range p.Expected.Errors {
		around(known.Response.X, a.ErrorTolerance)
		if shown, err := strconv.ParseFloat(a.Unit.Fixed(known.Response.X), 64); err == nil && shown == calc.Round(known.Response.X*a.Unit.Factor, 9) {
			try(shown, true)
		}
	}
	shown := a.Key.X * a.Unit.Factor
	for _, times := range []float64{-1, 0, 1.0 / 6, 6, -6, -1.0 / 6, 7, 0.1, 10, 1000, 0.001, 25.4, 1 / 25.4, 1000 / 25.4, 1e6} {
		typed(shown * times)
		around(a.Key.X*times, a.Tolerance*math.Abs(times))
	}
	for range 12 {
		typed(shown * (chance.Float64()*4 - 1))
		typed(shown * math.Exp(chance.NormFloat64()*3))
	}
	return all
}

func rowCases(p *problem.Problem, chance *rand.Rand) []answered {
	var all []answered
	a := &p.Expected
	try := func(xs []float64, exact bool) {
		r, given := answer.Response{Xs: make([]float64, len(xs))}, responses{}
		for i, x := range xs {
			x = calc.Round(x*a.Unit.Factor, 7)
			r.Xs[i] = x / a.Unit.Factor
			given[response+strconv.Itoa(i+1)] = []string{decimal(x)}
		}
		all = append(all, answered{given, p.MarkResponse(r), exact})
	}
	around := func(xs []float64, tol float64) {
		for i := range xs {
			for _, off := range []float64{0, tol, -tol, tol + 1e-6, -tol - 1e-6, 2 * tol} {
				moved := slices.Clone(xs)
				moved[i] += off
				try(moved, false)
			}
		}
		moved := slices.Clone(xs)
		for i := range moved {
			moved[i] += tol * (chance.Float64()*4 - 2)
		}
		try(moved, false)
	}
	around(a.Key.Xs, a.Tolerance)
	for _, known := range p.Expected.Errors {
		around(known.Response.Xs, a.ErrorTolerance)
		try(known.Response.Xs, true)
	}
	return all
}

func partCases(p *problem.Problem, chance *rand.Rand) []answered {
	var all []answered
	try := func(fields [][2]string, nudge float64) {
		r, given := answer.Response{}, responses{}
		for i, f := range fields {
			said := f[1]
			if x, err := strconv.ParseFloat(said, 64); err == nil && x > 0 && nudge != 0 {
				x = calc.Round(x+nudge, 9)
				said, f[1] = decimal(x), calc.Shortest(x, 4)
			}
			r.Fields = append(r.Fields, f)
			given[response+strconv.Itoa(i+1)] = []string{said}
		}
		all = append(all, answered{given, p.MarkResponse(r), nudge == 0})
	}
	change := func(fields [][2]string) {
		for _, nudge := range []float64{0, 0.00005, -0.00005, 0.000049, -0.000049, 0.0001, 1} {
			try(fields, nudge)
		}
		for range 8 {
			other := slices.Clone(fields)
			i := chance.IntN(len(other))
			if words := answer.FieldWords(other[i][0]); words != nil {
				other[i][1] = words[chance.IntN(2)]
			} else {
				other[i][1] = strconv.Itoa(1 + chance.IntN(20))
			}
			try(other, 0)
		}
	}
	change(p.Expected.Key.Fields)
	for _, known := range p.Expected.Errors {
		change(known.Response.Fields)
	}
	return all
}

func optionCases(p *problem.Problem, chance *rand.Rand) []answered {
	var all []answered
	options := p.Expected.Options
	try := func(exact bool, keys ...string) {
		var ids []string
		for _, key := range keys {
			ids = append(ids, choiceID(slices.Index(options, key)))
		}
		if len(keys) == 0 {
			ids = []string{noneID}
		}
		all = append(all, answered{responses{response: ids}, p.MarkResponse(answer.OptionsResponse(keys...)), exact})
	}
	shuffled := func(keys []string) []string {
		keys = slices.Clone(keys)
		chance.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
		return keys
	}
	try(true, p.Expected.Key.Keys...)
	for _, known := range p.Expected.Errors {
		try(true, known.Response.Keys...)
	}
	for range 40 {
		switch p.Expected.Kind.Name() {
		case "choice":
			try(true, options[chance.IntN(len(options))])
		case "order":
			try(false, shuffled(options)...)
			for _, r := range p.Expected.SameOrders(p.Expected.Key) { // steps that are free, the other way round
				try(false, r.Keys...)
			}
		case "several":
			try(false, shuffled(options)[:chance.IntN(len(options)+1)]...)
			try(false, shuffled(p.Expected.Key.Keys)[:chance.IntN(len(p.Expected.Key.Keys)+1)]...)
		}
	}
	return all
}

// endsOf are the numbers that an item compares with.
func endsOf(item *tree) []float64 {
	var ends []float64
	for _, v := range item.kid("responseProcessing").all("baseValue") {
		if x, err := strconv.ParseFloat(v.text, 64); err == nil {
			ends = append(ends, x)
		}
	}
	return ends
}

// besideAnEnd reports whether a number lies beside the end of a range by less than
// anyone would type. A number just on a round end is compared.
func besideAnEnd(ends []float64, given responses) bool {
	for _, answers := range given {
		x, err := strconv.ParseFloat(answers[0], 64)
		if err != nil {
			continue
		}
		for _, end := range ends {
			if x != end && math.Abs(x-end) < 1e-7*max(1, math.Abs(end)) {
				return true
			}
		}
	}
	return false
}
