package set

import (
	"cmp"
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
	owns := func(code, who string) owner {
		if codes[code].Form == "" {
			return owner{code: code}
		}
		if !slices.Contains(k.forms[code], who) {
			k.forms[code] = append(k.forms[code], who)
		}
		return owner{code, who}
	}
	byProblem := ProblemCodes{} // only where one was typed
	if slices.ContainsFunc(answers, func(g Given) bool { return g.Item == 0 }) {
		for _, a := range class {
			items, err := m.Items(a.ID)
			if err == nil {
				err = byProblem.Add(m.Code(a.ID), items)
			}
			if err != nil {
				return nil, err
			}
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
			o := owns(sheet, g.Who)
			if k.typed[o] == nil {
				k.typed[o] = map[string]Given{}
			}
			if _, twice := k.typed[o][g.Code]; twice { // the first answer counts: feedback came after it
				k.Repeats++
			} else {
				k.typed[o][g.Code] = g
			}
			continue
		}
		if _, ok := codes[g.Code]; !ok {
			strangers++
			errs = append(errs, fmt.Errorf("%s: no sheet of this set has the code %q%s", g.Where, g.Code, k.hintForID(g.Code)))
			continue
		}
		k.compareNames(codes[g.Code], g)
		if g.Item > m.Blueprint.Items() && g.Text == "" {
			continue // a spare column
		}
		if g.Item > m.Blueprint.Items() {
			errs = append(errs, fmt.Errorf("%s: question %d: the set has %d", g.Where, g.Item, m.Blueprint.Items()))
			continue
		}
		o := owns(g.Code, g.Who)
		if k.given[o] == nil {
			k.given[o] = map[int]Given{}
		}
		if first, twice := k.given[o][g.Item]; twice {
			errs = append(errs, fmt.Errorf("%s: question %d of %s is answered in %s already%s", g.Where, g.Item, g.Code, first.Where, hintForForms(codes[g.Code], g.Who)))
			continue
		}
		k.given[o][g.Item] = g
	}
	if strangers > 0 && strangers == len(answers) {
		return nil, fmt.Errorf("none of the %d answers belongs to this set: another blueprint, roster or secret made the sheets\n%w", len(answers), firstErrors(errs))
	}
	return k, firstErrors(errs)
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
