package set

import (
	"fmt"
	"strings"

	"scratchpass/quiz"
)

// Verdicts that only a set has.
const (
	Carried quiz.Verdict = "carried" // wrong, but right from the wrong answer it starts from
	Blank   quiz.Verdict = "blank"   // nothing was written
)

// Result is what came of one apprentice's sheet.
type Result struct {
	ID     string       `json:"id"`
	Name   string       `json:"name"`
	Form   string       `json:"form"`
	Code   string       `json:"code"`
	Points float64      `json:"points"`
	Of     float64      `json:"of"`
	Handed bool         `json:"handed_in"`
	Items  []ItemResult `json:"items"`

	items []Item // the questions, for feedback
}

// ItemResult is what came of one answer.
type ItemResult struct {
	Number    int          `json:"number"`
	Task      string       `json:"task"`
	Code      string       `json:"code"` // of the problem
	Given     string       `json:"given"`
	Key       string       `json:"key"`
	Verdict   quiz.Verdict `json:"verdict"`
	Slip      string       `json:"slip"`
	Points    float64      `json:"points"`
	Of        float64      `json:"of"`
	Certainty string       `json:"certainty"`
	Gate      bool         `json:"gate"`

	place int
	mark  quiz.Mark
}

// Marker marks the sheets of a set.
type Marker struct {
	maker *Maker
	class []Apprentice
	given map[string]map[int]Given    // by sheet code and printed number
	typed map[string]map[string]Given // by sheet code and problem code
}

// NewMarker sorts answers to the sheets they belong to. An answer that belongs to none is
// an error: a mistyped code, another set, or another secret.
func NewMarker(m *Maker, class []Apprentice, answers []Given) (*Marker, error) {
	k := &Marker{maker: m, class: class, given: map[string]map[int]Given{}, typed: map[string]map[string]Given{}}
	codes, err := m.Codes(class)
	if err != nil {
		return nil, err
	}
	byProblem := map[string]string{} // problem code -> sheet code, only where one was typed
	for _, g := range answers {
		if g.Item == 0 {
			if byProblem, err = m.problemCodes(class); err != nil {
				return nil, err
			}
			break
		}
	}
	var errs []error
	strangers := 0
	for _, g := range answers {
		if g.Item == 0 {
			sheet, ok := byProblem[g.Code]
			if !ok {
				strangers++
				errs = append(errs, fmt.Errorf("%s: the problem %q is not in this set", g.Where, g.Code))
				continue
			}
			if k.typed[sheet] == nil {
				k.typed[sheet] = map[string]Given{}
			}
			if _, twice := k.typed[sheet][g.Code]; !twice { // the first answer counts: feedback came after it
				k.typed[sheet][g.Code] = g
			}
			continue
		}
		if _, ok := codes[g.Code]; !ok {
			strangers++
			errs = append(errs, fmt.Errorf("%s: no sheet of this set has the code %q", g.Where, g.Code))
			continue
		}
		if g.Item > m.Blueprint.Items() {
			errs = append(errs, fmt.Errorf("%s: question %d: the set has %d", g.Where, g.Item, m.Blueprint.Items()))
			continue
		}
		if k.given[g.Code] == nil {
			k.given[g.Code] = map[int]Given{}
		}
		if first, twice := k.given[g.Code][g.Item]; twice {
			errs = append(errs, fmt.Errorf("%s: question %d of %s is answered in %s already", g.Where, g.Item, g.Code, first.Where))
			continue
		}
		k.given[g.Code][g.Item] = g
	}
	if strangers > 0 && strangers == len(answers) {
		return nil, fmt.Errorf("none of the %d answers belongs to this set: another blueprint, roster or secret made the sheets\n%w", len(answers), firstErrors(errs))
	}
	return k, firstErrors(errs)
}

// Codes are the codes of a class's sheets.
func (m *Maker) Codes(class []Apprentice) (map[string]Apprentice, error) {
	codes := make(map[string]Apprentice, len(class))
	for _, a := range class {
		code := m.Code(a.ID)
		if other, twice := codes[code]; twice {
			return nil, fmt.Errorf("%s and %s have one code, by a rare chance: give the set another name", other.ID, a.ID)
		}
		codes[code] = a
	}
	return codes, nil
}

// problemCodes are the codes of all problems of a class, with the sheets they stand on.
func (m *Maker) problemCodes(class []Apprentice) (map[string]string, error) {
	codes := map[string]string{}
	for _, a := range class {
		items, err := m.Items(a.ID)
		if err != nil {
			return nil, err
		}
		for _, it := range items {
			codes[it.Problem.Code.String()] = m.Code(a.ID)
		}
	}
	return codes, nil
}

// Each marks one apprentice after the other.
func (k *Marker) Each(do func(Result) error) error {
	for _, a := range k.class {
		items, err := k.maker.Items(a.ID)
		if err != nil {
			return err
		}
		if err := do(k.sheet(a, items)); err != nil {
			return err
		}
	}
	return nil
}

// sheet marks one apprentice.
func (k *Marker) sheet(a Apprentice, items []Item) Result {
	code := k.maker.Code(a.ID)
	r := Result{ID: a.ID, Name: a.Name, Form: a.Form, Code: code, Of: k.maker.Blueprint.Points(), Items: make([]ItemResult, len(items)), items: items}
	read := map[int]quiz.Mark{} // by place, what was understood
	for i, it := range items {
		g, onScreen := k.typed[code][it.Problem.Code.String()]
		if !onScreen {
			g = k.given[code][it.Number]
		}
		res := ItemResult{Number: it.Number, Task: it.Problem.Task.Name, Code: it.Problem.Code.String(), Given: g.Text, Key: it.Problem.Answer.Text(), Of: it.Points,
			Certainty: g.Certainty, Gate: it.Problem.Task.Gate, Verdict: Blank, place: it.Place}
		if strings.EqualFold(g.Text, "pass") && onScreen { // not known, and said so
			r.Handed = true
		} else if strings.TrimSpace(g.Text) != "" {
			r.Handed = true
			k.mark(&res, it, g.Text, onScreen, read)
		}
		r.Points += res.Points
		r.Items[i] = res
	}
	return r
}

// mark marks one answer. A wrong answer that follows rightly from a wrong one before it
// costs nothing more: one slip costs once.
func (k *Marker) mark(res *ItemResult, it Item, text string, onScreen bool, read map[int]quiz.Mark) {
	p := it.Problem
	if onScreen && len(it.From) > 0 { // on a screen the question has a number of its own
		if own, err := quiz.Make(p.Task, p.Code); err == nil {
			p = own
			res.Key = p.Answer.Text()
		}
	}
	m := p.Mark(text)
	read[it.Place] = m
	res.Verdict, res.Slip, res.Points, res.mark = m.Verdict, m.Slip, m.Points*it.Points, m
	if m.Correct() || m.Verdict == quiz.Unread || onScreen {
		return
	}
	after := p
	wrongBefore := false
	for input, from := range it.From {
		before, ok := read[from]
		if !ok || before.Verdict == quiz.Unread {
			return
		}
		wrongBefore = wrongBefore || !before.Correct()
		next, err := after.Following(input, before.Reply.X, "")
		if err != nil {
			return
		}
		after = next
	}
	if wrongBefore && after.Answer.Right(m.Reply) {
		res.Verdict, res.Slip, res.Points = Carried, "", it.Points
	}
}
