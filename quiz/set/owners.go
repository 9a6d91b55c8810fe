package set

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scratchpass/calc"
)

// owner is whose answers these are: a sheet, and where several have one form who of them.
type owner struct{ code, who string }

// NewMarker sorts answers to the sheets they belong to. An answer that belongs to none is
// an error: a mistyped code, another set, or another secret.
func NewMarker(m *Maker, class []Apprentice, answers []Given) (*Marker, error) {
	k := &Marker{maker: m, class: class, given: map[owner]map[int]Given{}, typed: map[owner]map[string]Given{}, forms: map[string][]string{}, toldOf: map[string]bool{}}
	codes, err := m.Codes(class)
	if err != nil {
		return nil, err
	}
	byProblem, err := k.byProblem(answers)
	if err != nil {
		return nil, err
	}
	var errs []error
	strangers := 0
	for _, g := range answers {
		var err error
		if g.Item == 0 {
			err = k.sortTyped(g, byProblem, codes)
		} else {
			err = k.sortWritten(g, codes)
		}
		if err != nil {
			errs = append(errs, err)
		}
		var stranger strangerError
		if errors.As(err, &stranger) {
			strangers++
		}
	}
	if strangers > 0 && strangers == len(answers) {
		return nil, fmt.Errorf("none of the %d answers belongs to this set: another blueprint, roster or secret made the sheets\n%w", len(answers), firstErrors(errs))
	}
	return k, firstErrors(errs)
}

// strangerError says that an answer belongs to no sheet of the set.
type strangerError struct{ error }

// byProblem are the sheets by the codes of their problems, for answers that were typed on
// a screen; empty where none was.
func (k *Marker) byProblem(answers []Given) (ProblemCodes, error) {
	all := ProblemCodes{}
	if !slices.ContainsFunc(answers, func(g Given) bool { return g.Item == 0 }) {
		return all, nil
	}
	for _, a := range k.class {
		items, err := k.maker.Items(a.ID)
		if err == nil {
			err = all.Add(k.maker.Code(a.ID), items)
		}
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// ownerOf is whose the answers on a sheet are. Of a form that several have each is their
// own.
func (k *Marker) ownerOf(code, who string, codes map[string]Apprentice) owner {
	if codes[code].Form == "" {
		return owner{code: code}
	}
	if !slices.Contains(k.forms[code], who) {
		k.forms[code] = append(k.forms[code], who)
	}
	return owner{code, who}
}

// sortTyped keeps an answer that was typed to a problem. Of two the first counts:
// feedback came after it.
func (k *Marker) sortTyped(g Given, byProblem ProblemCodes, codes map[string]Apprentice) error {
	sheet, ok := byProblem[g.Code]
	if !ok {
		return strangerError{fmt.Errorf("%s: the problem %q is not in this set", g.Where, g.Code)}
	}
	o := k.ownerOf(sheet, g.Who, codes)
	if k.typed[o] == nil {
		k.typed[o] = map[string]Given{}
	}
	if _, twice := k.typed[o][g.Code]; twice {
		k.Repeats++
		return nil
	}
	k.typed[o][g.Code] = g
	return nil
}

// sortWritten keeps an answer that was written to a question of a sheet. Of two nobody
// knows which was meant.
func (k *Marker) sortWritten(g Given, codes map[string]Apprentice) error {
	if _, ok := codes[g.Code]; !ok {
		return strangerError{fmt.Errorf("%s: no sheet of this set has the code %q%s", g.Where, g.Code, k.hintForID(g.Code))}
	}
	k.compareNames(codes[g.Code], g)
	switch items := k.maker.Blueprint.Items(); {
	case g.Item > items && g.Text == "":
		return nil // a spare column
	case g.Item > items:
		return fmt.Errorf("%s: question %d: the set has %d", g.Where, g.Item, items)
	}
	o := k.ownerOf(g.Code, g.Who, codes)
	if k.given[o] == nil {
		k.given[o] = map[int]Given{}
	}
	if first, twice := k.given[o][g.Item]; twice {
		return fmt.Errorf("%s: question %d of %s is answered in %s already%s", g.Where, g.Item, g.Code, first.Where, hintForForms(codes[g.Code], g.Who))
	}
	k.given[o][g.Item] = g
	return nil
}

// compareNames notes a row whose name has not one word in common with the apprentice
// whose code it has: sheets may have been mixed up.
func (k *Marker) compareNames(a Apprentice, g Given) {
	if !g.Row || g.Who == "" || a.Form != "" || strings.EqualFold(g.Who, a.ID) {
		return
	}
	words := strings.FieldsFunc(strings.ToLower(a.Name), apart)
	if slices.ContainsFunc(strings.FieldsFunc(strings.ToLower(g.Who), apart), func(w string) bool { return slices.Contains(words, w) }) {
		return
	}
	if told := fmt.Sprintf("%s has the code of %s", calc.Quoted(g.Who), calc.Quoted(cmp.Or(a.Name, a.ID))); !k.toldOf[told] && len(k.Names) < mostErrors {
		k.toldOf[told] = true // once, however many rows an apprentice has
		k.Names = append(k.Names, g.Where+": "+told)
	}
}

// apart reports what parts the words of a name.
func apart(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }

// hintForID says it when someone wrote an apprentice's id for the code.
func (k *Marker) hintForID(code string) string {
	for _, a := range k.class {
		if cleanCode(a.ID) == code {
			return ", which is an id: give the code that stands on the sheet, such as " + k.maker.Code(a.ID)
		}
	}
	return ""
}

// hintForForms says how several who have one form are told apart.
func hintForForms(a Apprentice, who string) string {
	if a.Form == "" || who != "" {
		return ""
	}
	return "; where several have one form, give a column name to tell them apart"
}
