package set

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"scratchpass/calc"
)

// owner is whose answers these are: a sheet, and where several have one form who of them.
type owner struct{ code, who string }

// NewMarker sorts answers to the sheets they belong to. An answer that belongs to none is
// an error: a mistyped code, another set, or another secret. So is a file of answers that
// were typed to two sheets: it is one person's, and nobody knows whose. It ends with the
// context's error when that ends.
func NewMarker(ctx context.Context, m *Maker, class []Apprentice, answers []Given) (*Marker, error) {
	k := &Marker{maker: m, class: class, given: map[owner]map[int]Given{}, typed: map[owner]map[string][]Given{}, forms: map[string][]string{}, has: map[owner]bool{}, decisions: map[owner]map[int]Decision{},
		sheetOf: map[string]firstTyped{}, mixed: map[owner]bool{}, toldOf: map[string]bool{}}
	if err := k.adoptWritten(answers); err != nil {
		return nil, err
	}
	byProblem, err := k.adoptTyped(ctx, answers)
	if err != nil {
		return nil, err
	}
	codes, err := m.Codes(class)
	if err != nil {
		return nil, err
	}
	var wrong faults
	strangers := 0
	for i, g := range answers {
		if i%1000 == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		var err error
		if g.typed() {
			err = k.sortTyped(g, byProblem, codes)
		} else {
			err = k.sortWritten(g, codes)
		}
		if err == nil {
			continue
		}
		wrong.add(err)
		if _, stranger := err.(strangerError); stranger {
			strangers++
		}
	}
	if strangers > 0 && strangers == len(answers) {
		return nil, fmt.Errorf("none of the %d answers belongs to this set: another blueprint, roster or secret made the sheets\n%w", len(answers), wrong.err())
	}
	return k, wrong.err()
}

// adoptWritten finds out from the codes of sheets which of theirs people had.
func (k *Marker) adoptWritten(answers []Given) error {
	codes := map[string]bool{}
	for _, g := range answers {
		if !g.typed() {
			codes[g.Code] = true
		}
	}
	if len(codes) == 0 {
		return nil
	}
	var wrong faults
	for _, a := range k.maker.adopt(k.class, codes) {
		wrong.add(fmt.Errorf("two sheets of %s came back, of two rosters: leave one of them out", calc.Quoted(cmp.Or(a.Name, a.ID))))
	}
	return wrong.err()
}

// adoptTyped does the same with the codes of problems, where some are not those of the roster
// as it is, and returns the sheets by those codes.
func (k *Marker) adoptTyped(ctx context.Context, answers []Given) (ProblemCodes, error) {
	all, err := k.byProblem(ctx, answers)
	if err != nil {
		return nil, err
	}
	typed, missing := map[string]bool{}, false
	for _, g := range answers {
		if g.typed() {
			_, ok := all[g.Code]
			typed[g.Code], missing = true, missing || !ok
		}
	}
	if !missing {
		return all, nil
	}
	for _, a := range k.class {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err := k.adoptProblems(a.ID, typed); err != nil {
			return nil, err
		}
	}
	return k.byProblem(ctx, answers)
}

// adoptProblems takes the side of someone on which most of the codes are found that were typed.
// A problem may stand on several.
func (k *Marker) adoptProblems(who string, typed map[string]bool) error {
	best, most := k.maker.sides[who], 0
	for _, s := range []side{best, oneSide, otherSide, anySide} {
		k.maker.take(who, s)
		items, err := k.maker.Items(who)
		if err != nil {
			return err
		}
		n := 0
		for _, it := range items {
			if typed[it.Problem.Code.String()] {
				n++
			}
		}
		if n > most {
			best, most = s, n
		}
	}
	k.maker.take(who, best)
	return nil
}

// strangerError says that an answer belongs to no sheet of the set.
type strangerError struct{ error }

// byProblem are the sheets by the codes of their problems, for answers that were typed on
// a screen; empty where none was.
func (k *Marker) byProblem(ctx context.Context, answers []Given) (ProblemCodes, error) {
	all := ProblemCodes{}
	if !slices.ContainsFunc(answers, Given.typed) {
		return all, nil
	}
	for _, a := range k.class {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
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
	o := owner{code, who}
	if !k.has[o] {
		k.has[o] = true
		k.forms[code] = append(k.forms[code], who)
	}
	return o
}

// firstTyped is the first answer of a file and the sheet it is to.
type firstTyped struct {
	sheet string
	given Given
}

// sortTyped keeps an answer that was typed to a problem. Of two in one file the first
// counts: feedback came after it. Of two in two files nobody knows which was first.
func (k *Marker) sortTyped(g Given, byProblem ProblemCodes, codes map[string]Apprentice) error {
	sheet, ok := byProblem[g.Code]
	if !ok {
		return strangerError{fmt.Errorf("%s: the problem %s is not in this set", g.Where(), calc.Quoted(g.Code))}
	}
	first, ok := k.sheetOf[g.File]
	if !ok {
		first = firstTyped{sheet, g}
		k.sheetOf[g.File] = first
	}
	if first.sheet != sheet {
		other := owner{sheet, g.File}
		if k.mixed[other] {
			return nil // an earlier line has said so
		}
		k.mixed[other] = true
		return fmt.Errorf("%s: the problem %s is %s's, and %s is %s's: a file has the answers of one person; find out whose it is, and leave the others' lines out",
			g.Where(), g.Code, whose(codes[sheet], sheet), first.given.Where(), whose(codes[first.sheet], first.sheet))
	}
	k.compareFile(codes[sheet], g)
	o := k.ownerOf(sheet, g.Who, codes)
	if k.typed[o] == nil {
		k.typed[o] = map[string][]Given{}
	}
	before := k.typed[o][g.Code]
	if same := slices.IndexFunc(before, func(b Given) bool { return b.File == g.File }); same >= 0 {
		k.repeat(before[same], g)
		return nil
	}
	k.typed[o][g.Code] = append(before, g)
	return nil
}

// whose names a person or a form with the code of the sheet.
func whose(a Apprentice, sheet string) string { return cmp.Or(a.Name, a.ID) + " (" + sheet + ")" }

// repeat counts an answer that came a second time and remembers in which files.
func (k *Marker) repeat(first, second Given) {
	k.Repeats++
	if in := [2]string{first.File, second.File}; len(k.RepeatedIn) < mostErrors && !slices.Contains(k.RepeatedIn, in) {
		k.RepeatedIn = append(k.RepeatedIn, in)
	}
}

// sortWritten keeps an answer that was written to a question of a sheet. Of two nobody
// knows which was meant.
func (k *Marker) sortWritten(g Given, codes map[string]Apprentice) error {
	if _, ok := codes[g.Code]; !ok {
		return strangerError{fmt.Errorf("%s: no sheet of this set has the code %s%s", g.Where(), calc.Quoted(g.Code), k.hintForID(g.Code))}
	}
	if g.Row {
		k.compareNames(codes[g.Code], g)
	}
	switch items := k.maker.Blueprint.Items(); {
	case g.Item > items && g.Text == "":
		return nil // a spare column
	case g.Item > items:
		return fmt.Errorf("%s: question %d: the set has %d", g.Where(), g.Item, items)
	}
	o := k.ownerOf(g.Code, g.Who, codes)
	if k.given[o] == nil {
		k.given[o] = map[int]Given{}
	}
	if first, twice := k.given[o][g.Item]; twice {
		return fmt.Errorf("%s: question %d of %s is answered in %s already%s", g.Where(), g.Item, g.Code, first.Where(), hintForForms(codes[g.Code], g.Who))
	}
	k.given[o][g.Item] = g
	return nil
}

// hintForID says it when someone wrote an apprentice's id for the code.
func (k *Marker) hintForID(code string) string {
	if k.byID == nil {
		k.byID = map[string]string{}
		for _, a := range k.class {
			k.byID[cleanCode(a.ID)] = a.ID
		}
	}
	if id, ok := k.byID[code]; ok {
		return ", which is an id: give the code that stands on the sheet, such as " + k.maker.Code(id)
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
