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
	s := sorter{Marker: k, codes: codes, byProblem: ProblemCodes{}}
	if slices.ContainsFunc(answers, func(g Given) bool { return g.Item == 0 }) { // only where one was typed
		if err := s.learnProblems(); err != nil {
			return nil, err
		}
	}
	for _, g := range answers {
		if g.Item == 0 {
			s.typedAnswer(g)
		} else {
			s.writtenAnswer(g)
		}
	}
	if s.strangers > 0 && s.strangers == len(answers) {
		return nil, fmt.Errorf("none of the %d answers belongs to this set: another blueprint, roster or secret made the sheets\n%w", len(answers), firstErrors(s.errs))
	}
	return k, firstErrors(s.errs)
}

// sorter sorts answers to sheets.
type sorter struct {
	*Marker
	codes     map[string]Apprentice // of the sheets
	byProblem ProblemCodes
	errs      []error
	strangers int // answers that belong to no sheet
}

// learnProblems finds out which problems stand on which sheet.
func (s *sorter) learnProblems() error {
	for _, a := range s.class {
		items, err := s.maker.Items(a.ID)
		if err == nil {
			err = s.byProblem.Add(s.maker.Code(a.ID), items)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// owner is whose an answer is to this sheet.
func (s *sorter) owner(code, who string) owner {
	if s.codes[code].Form == "" {
		return owner{code: code}
	}
	if !slices.Contains(s.forms[code], who) {
		s.forms[code] = append(s.forms[code], who)
	}
	return owner{code, who}
}

// stranger notes an answer that belongs to no sheet.
func (s *sorter) stranger(format string, args ...any) {
	s.strangers++
	s.wrong(format, args...)
}

func (s *sorter) wrong(format string, args ...any) {
	s.errs = append(s.errs, fmt.Errorf(format, args...))
}

// typedAnswer takes an answer that was typed on a screen, to a problem by its code.
func (s *sorter) typedAnswer(g Given) {
	sheet, ok := s.byProblem[g.Code]
	if !ok {
		s.stranger("%s: the problem %q is not in this set", g.Where, g.Code)
		return
	}
	o := s.owner(sheet, g.Who)
	if s.typed[o] == nil {
		s.typed[o] = map[string]Given{}
	}
	if _, twice := s.typed[o][g.Code]; twice { // the first answer counts: feedback came after it
		s.Repeats++
	} else {
		s.typed[o][g.Code] = g
	}
}

// writtenAnswer takes an answer from paper, to a question by its number.
func (s *sorter) writtenAnswer(g Given) {
	a, ok := s.codes[g.Code]
	if !ok {
		s.stranger("%s: no sheet of this set has the code %q%s", g.Where, g.Code, s.hintForID(g.Code))
		return
	}
	s.compareNames(a, g)
	if most := s.maker.Blueprint.Items(); g.Item > most {
		if g.Text != "" { // else a spare column
			s.wrong("%s: question %d: the set has %d", g.Where, g.Item, most)
		}
		return
	}
	o := s.owner(g.Code, g.Who)
	if s.given[o] == nil {
		s.given[o] = map[int]Given{}
	}
	if first, twice := s.given[o][g.Item]; twice {
		s.wrong("%s: question %d of %s is answered in %s already%s", g.Where, g.Item, g.Code, first.Where, hintForForms(a, g.Who))
		return
	}
	s.given[o][g.Item] = g
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
