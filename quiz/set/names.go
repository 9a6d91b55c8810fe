package set

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scratchpass/calc"
)

// compareNames notes where the name or the id that stands beside an answer does not fit the
// apprentice whose code it has: sheets may have been mixed up. A name fits if each of its
// words is one of theirs, or begins one.
func (k *Marker) compareNames(a Apprentice, g Given) {
	if a.Form != "" {
		return
	}
	if g.ID != "" && !strings.EqualFold(g.ID, a.ID) {
		k.tell(g, calc.Quoted(g.ID), a)
	}
	if strings.EqualFold(g.Who, a.ID) {
		return
	}
	theirs := wordsOf(a.Name + " " + a.ID)
	for _, word := range wordsOf(g.Who) {
		if !slices.ContainsFunc(theirs, func(w string) bool { return strings.HasPrefix(w, word) }) {
			k.tell(g, calc.Quoted(g.Who), a)
			return
		}
	}
}

// compareFile notes where a file of typed answers has the name of another apprentice than the
// one whose problems it answers, and where someone's answers come from several files.
func (k *Marker) compareFile(a Apprentice, g Given) {
	if a.Form != "" || slices.Contains(k.filesOf[a.ID], g.File) {
		return
	}
	if k.filesOf == nil {
		k.filesOf = map[string][]string{}
	}
	k.filesOf[a.ID] = append(k.filesOf[a.ID], g.File)
	if id, ok := k.calledSo(g.Who); ok && id != a.ID {
		k.tell(g, "the file "+calc.Quoted(g.Who), a)
	}
	if all := k.filesOf[a.ID]; len(all) == 2 {
		k.note(g, fmt.Sprintf("the answers of %s come from %s too", calc.Quoted(cmp.Or(a.Name, a.ID)), calc.Quoted(all[0])))
	}
}

// calledSo is the id of the apprentice who is called so: by name, by id, or by a part of the
// name that no other has.
func (k *Marker) calledSo(name string) (id string, ok bool) {
	if k.called == nil {
		k.called = map[string]string{}
		for _, a := range k.class {
			for _, name := range append(wordsOf(a.Name), strings.Join(wordsOf(a.Name), " "), strings.Join(wordsOf(a.ID), " ")) {
				if other, twice := k.called[name]; twice && other != a.ID {
					k.called[name] = "" // it tells nobody
					continue
				}
				k.called[name] = a.ID
			}
		}
	}
	id = k.called[strings.Join(wordsOf(name), " ")]
	return id, id != ""
}

// tell notes that something has the code of another apprentice.
func (k *Marker) tell(g Given, what string, a Apprentice) {
	k.note(g, fmt.Sprintf("%s has the code of %s", what, calc.Quoted(cmp.Or(a.Name, a.ID))))
}

// note notes something once, however many rows an apprentice has.
func (k *Marker) note(g Given, text string) {
	if !k.toldOf[text] && len(k.Names) < mostErrors {
		k.toldOf[text] = true
		k.Names = append(k.Names, g.Where()+": "+text)
	}
}

// wordsOf are the words of a name, in small letters.
func wordsOf(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}
