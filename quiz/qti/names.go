package qti

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strings"
	"sync"

	"scratchpass/calc"
)

// nameForm is an XML name without a colon, in plain letters: what every importer
// takes as an identifier and every system as the name of a file.
var nameForm = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9._-]{0,63}$`) })

func checkName(what, id string) error {
	if nameForm().MatchString(id) {
		return nil
	}
	return &calc.InputError{What: what, Got: calc.Quoted(id), Want: "a letter first, then letters, figures, dots, dashes or underscores, 64 at most"}
}

// check finds what is wrong with a package before any item is made.
func (p *Package) check() error {
	if p.Version != V21 && p.Version != V30 && p.Version != V12 {
		return &calc.InputError{What: "version", Got: calc.Quoted(fmt.Sprint(int(p.Version))), Want: "V21, V30 or V12"}
	}
	problems := []error{checkName("package ID", p.ID), p.Words.check()}
	if clean(p.Title) == "" {
		problems = append(problems, &calc.InputError{What: "title of the package", Got: calc.Quoted(p.Title), Want: "a title"})
	}
	if p.Seconds < 0 {
		problems = append(problems, &calc.InputError{What: "seconds", Got: fmt.Sprint(p.Seconds), Want: "a number above 0, or 0 for no limit"})
	}
	if len(p.Slots) == 0 {
		problems = append(problems, errors.New("the package has no slots: give at least one"))
	}
	// Names that differ only in capitals would be one file on some systems.
	seen := map[string]string{strings.ToLower(partID): partID, formsID: formsID, strings.ToLower(p.ID): p.ID}
	name := func(what, id string) {
		if other, taken := seen[strings.ToLower(id)]; taken {
			problems = append(problems, &calc.InputError{What: what, Got: calc.Quoted(id) + " is taken by " + calc.Quoted(other), Want: "each slot and item an ID of its own"})
		}
		seen[strings.ToLower(id)] = id
		problems = append(problems, checkName(what, id))
	}
	for _, s := range p.Slots {
		name("slot ID", s.ID)
		if s.Select < 0 || s.Select > len(s.Items) || len(s.Items) == 0 {
			problems = append(problems, &calc.InputError{What: "slot " + s.ID + ": selection", Got: fmt.Sprintf("of %d from %d items", s.Select, len(s.Items)), Want: "at least one item, and no more to select than there are"})
		}
		for _, it := range s.Items {
			name("item ID", it.ID)
			problems = append(problems, it.check())
		}
	}
	return errors.Join(problems...)
}

func (it *Item) check() error {
	switch {
	case it.Problem == nil || it.Words == nil:
		return fmt.Errorf("item %s has no problem or no words: give both", it.ID)
	case !(it.Points > 0) || math.IsInf(it.Points, 0):
		return &calc.InputError{What: "item " + it.ID + ": points", Got: fmt.Sprint(it.Points), Want: "a number above 0"}
	}
	return nil
}

func (w *Words) check() error {
	for _, sentence := range []struct{ name, text string }{
		{"Number", w.Number}, {"Limits", w.Limits}, {"Numbers", w.Numbers}, {"Parts", w.Parts}, {"Choice", w.Choice}, {"Several", w.Several},
		{"Order", w.Order}, {"None", w.None}, {"Unread", w.Unread}, {"WrongUnit", w.WrongUnit},
	} {
		if clean(sentence.text) == "" {
			return fmt.Errorf("words: %s is empty: give its sentence", sentence.name)
		}
	}
	return nil
}
