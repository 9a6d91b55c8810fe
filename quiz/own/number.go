package own

import (
	"cmp"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// line is one line of the working; the last is the answer.
type line struct {
	symbol  string
	formula *arithmetic.Formula
	unit    machine.Unit
}

// sums are the formulas of a question that asks for a number.
type sums struct {
	inputs []drawn
	lines  []line
}

// number reads a question that asks for a number.
func (r *reader) number() {
	q := r.q
	if len(q.Options) > 0 || len(q.Right) > 0 || len(q.Either) > 0 {
		r.say("kind", "options, right and either belong to choice, several and order; a number has an answer with its formula")
	}
	if q.Answer == nil {
		r.say("", "answer is missing: a number has one, with symbol, formula and means")
		return
	}
	s := &sums{inputs: r.ranges}
	names := r.lines(s)
	errors := r.mistakes(s, names)
	used := r.used()
	for _, name := range names {
		if !used[name] {
			r.say(name, "no formula uses %s: use it, or take it out", name)
		}
	}
	r.tolerance(s.lines[len(s.lines)-1].unit)
	if len(r.found) > 0 {
		return
	}
	var units []machine.Unit
	for _, in := range s.inputs {
		units = append(units, in.unit)
	}
	for _, l := range s.lines {
		units = append(units, l.unit)
	}
	r.task.Kind, r.task.Systems = answer.Quantity, systems(units)
	r.task.Work, r.task.Errors = s.work, errors
}

// word is a name in a formula.
var word = regexp.MustCompile(`[A-Za-z][A-Za-z0-9]*`)

// used are the names that stand in formulas, also in those that could not be read: what is
// wrong with one is said once.
func (r *reader) used() map[string]bool {
	used := map[string]bool{}
	note := func(formula string) {
		for _, name := range word.FindAllString(formula, -1) {
			used[name] = true
		}
	}
	note(r.q.Answer.Formula)
	for _, s := range r.q.Steps {
		note(s.Formula)
	}
	for _, m := range r.q.Mistakes {
		note(m.Formula)
	}
	return used
}

// lines reads the steps and the answer. It returns the names that mistakes may use: those of
// the inputs and of the steps.
func (r *reader) lines(s *sums) []string {
	var names []string
	for _, in := range r.ranges {
		names = append(names, in.name)
	}
	if len(r.q.Steps) > mostSteps {
		r.say("steps", "steps: there are %d: give at most %d", len(r.q.Steps), mostSteps)
	}
	for _, step := range r.q.Steps[:min(len(r.q.Steps), mostSteps)] {
		r.line(s, step, names, r.unit("steps", step.Unit, nil))
		names = append(names, step.Symbol)
	}
	a := r.q.Answer
	u := r.unit("answer", a.Unit, a.Decimals)
	if a.Decimals == nil && !slices.ContainsFunc(usual, func(one machine.Unit) bool { return one.Name == u.Name }) {
		r.say("answer", "answer: decimals is missing: give 0 for a whole number, up to %d", mostDecimals)
	}
	r.line(s, content.QuestionStep{Symbol: a.Symbol, Formula: a.Formula, Unit: a.Unit, Means: a.Means}, names, u)
	return names
}

// line reads one line of the working.
func (r *reader) line(s *sums, step content.QuestionStep, names []string, u machine.Unit) {
	if err := arithmetic.CheckSymbol(step.Symbol); err != nil {
		r.say(step.Symbol, "symbol: %v", err)
	} else if slices.Contains(names, step.Symbol) {
		r.say(step.Symbol, "the symbol %s has a meaning already: choose another letter", step.Symbol)
	}
	if strings.TrimSpace(step.Means) == "" {
		r.say(step.Symbol, "the symbol %s: means is missing: say what the letter stands for", step.Symbol)
	}
	f, err := arithmetic.NewFormula(step.Formula, names)
	if err != nil {
		r.say(step.Formula, "formula of %s: %v", step.Symbol, err)
	}
	s.lines = append(s.lines, line{step.Symbol, f, u})
}

// mistakes reads what known errors give.
func (r *reader) mistakes(s *sums, names []string) []problem.CommonError {
	var all []problem.CommonError
	u := s.lines[len(s.lines)-1].unit
	for _, name := range slices.Sorted(maps.Keys(r.q.Mistakes)) {
		m := r.q.Mistakes[name]
		if len(m.Gives) > 0 {
			r.say(name, "the mistake %s has gives, which belongs to options; a number has a formula", name)
		}
		f, err := arithmetic.NewFormula(m.Formula, names)
		if err != nil {
			r.say(cmp.Or(m.Formula, name), "the mistake %s: %v", name, err)
			continue
		}
		all = append(all, problem.CommonError{Name: name, Work: func(v problem.Values) answer.Response {
			numbers, err := s.numbers(v, nil)
			if err != nil {
				return answer.NoResponse
			}
			x, err := f.Value(numbers)
			if err != nil {
				return answer.NoResponse
			}
			return answer.NumberResponse(x / u.Factor)
		}})
	}
	return all
}

// numbers are the values of inputs and steps, in their units. add is called with each line
// of the working.
func (s *sums) numbers(v problem.Values, add func(l line, x float64, err error)) (map[string]float64, error) {
	numbers := make(map[string]float64, len(s.inputs)+len(s.lines))
	for _, in := range s.inputs {
		numbers[in.name] = calc.Round(v.X(in.called)*in.unit.Factor, decimalsKept)
	}
	for _, l := range s.lines {
		x, err := l.formula.Value(numbers)
		if err != nil {
			return nil, err
		}
		if add != nil {
			add(l, x, nil)
		}
		numbers[l.symbol] = x
	}
	return numbers, nil
}

// work works a problem out.
func (s *sums) work(v problem.Values) (problem.Working, error) {
	w := v.Working()
	if _, err := s.numbers(v, func(l line, x float64, err error) {
		w.Number(l.symbol, l.formula.Shown(), l.unit)(x/l.unit.Factor, err)
	}); err != nil {
		return problem.Working{}, err
	}
	return w.Quantity()
}

// What an answer may be off where the question does not say: one in its last decimal, and
// of whole numbers so little that no other one is taken. Finer than that no rounding is.
const (
	usualShare = 1
	wholeShare = 0.8
	leastShare = 0.75
)

// tolerance reads how far from the key is still right, and what is a limit.
func (r *reader) tolerance(u machine.Unit) {
	a := r.q.Answer
	last := math.Pow10(-u.Places)
	t := last * usualShare
	if u.Places == 0 {
		t = last * wholeShare
	}
	if a.Tolerance != nil {
		t = *a.Tolerance
		if !(t >= last*leastShare) || unfit(t) {
			r.say("tolerance", "tolerance %s: with %d decimals give at least %s", calc.Shortest(t, 9), u.Places, calc.Shortest(last*leastShare, 9))
		}
	}
	r.task.Tolerance = answer.Tolerance{Inch: t, MM: t, Other: t, Printed: true, Reach: a.Room / 100}
	limits := map[string]answer.SafeSide{"": answer.BothSides, "at-most": answer.Below, "at-least": answer.Above}
	side, ok := limits[a.Limit]
	if !ok {
		r.say("limit", "limit %s: give at-most or at-least%s", calc.Quoted(a.Limit), content.DidYouMean(a.Limit, []string{"at-most", "at-least"}))
	}
	r.task.Tolerance.Safe = side
	switch {
	case a.Room != 0 && a.Limit == "":
		r.say("room", "room belongs to a limit: give limit as well, or tolerance instead")
	case !(a.Room >= 0 && a.Room <= 50):
		r.say("room", "room %s: give 0 to 50 percent", calc.Shortest(a.Room, 4))
	}
	ruins := map[string]answer.ScrapSide{"": answer.NoScrapSide, "high": answer.ScrapHigh, "low": answer.ScrapLow}
	if r.task.Scrap, ok = ruins[a.Ruins]; !ok {
		r.say("ruins", "ruins %s: give high or low", calc.Quoted(a.Ruins))
	}
}
