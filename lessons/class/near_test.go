package class_test

import (
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// Who types a part of their name, or slips, is found where only one can be meant; and what is
// said of them tells one letter that was not typed, at most.
func TestNearNames(t *testing.T) {
	list := []class.Apprentice{{ID: "1", Name: "Cato Enis"}, {ID: "2", Name: "Dilys Enis"}, {ID: "3", Name: "Jon Smith"}, {ID: "4", Name: "John Smith"},
		{ID: "5", Name: "Brink, Ada"}, {ID: "6", Name: "Ana de la Luz"}, {ID: "7", Name: "José Vega"}, {ID: "8", Name: "Bo"}, {ID: "9", Name: "Ana Lopez"}, {ID: "10"}, {ID: "11", Name: "John Abbot"}}
	r := class.NewRoom(class.Head{Code: "AAAAAA", Roster: list}, makes())
	for _, c := range []struct {
		typed string
		id    string // empty for nobody
		sure  bool
		more  bool // several fit
		short string
	}{
		{typed: "Cato E", id: "1", sure: true, short: "Cato E."},
		{typed: "cato e.", id: "1", sure: true},
		{typed: "cato en", id: "1", sure: true},
		{typed: "Cato", id: "1", short: "Cato E."},
		{typed: "Cato X"},
		{typed: "Enis"},
		{typed: "Cato Ennis", id: "1"},
		{typed: "Dillys Enys", id: "2"},
		{typed: "Dyllis Enis"},
		{typed: "Kato Enis", id: "1"},
		{typed: "Kato", id: "1", short: "Cato E."},
		{typed: "Kato E", id: "1"},
		{typed: "Kato X"},
		{typed: "Jom", id: "3"},
		{typed: "Ane", more: true},
		{typed: "Luz"}, {typed: "Brink"}, {typed: "Enys"}, {typed: "Be"},
		{typed: "Jom Smith", more: true},
		{typed: "John S", id: "4", sure: true},
		{typed: "Jon", id: "3"},
		{typed: "John", more: true},
		{typed: "Ada Brink", id: "5", sure: true, short: "Ada B."},
		{typed: "ada", id: "5"},
		{typed: "brink, ada", id: "5", sure: true},
		{typed: "Ana L", more: true},
		{typed: "Ana Lu", id: "6", sure: true, short: "Ana L."},
		{typed: "Ana de la Luz", id: "6", sure: true},
		{typed: "Jose Vega", id: "7", sure: true, short: "José V."},
		{typed: "Bo", id: "8", short: "Bo"},
		{typed: "Zoe"}, {typed: ""}, {typed: " , "}, {typed: "."}, {typed: "C"}, {typed: "Ca E"}, {typed: "10"},
	} {
		near := r.Near(c.typed)
		id := ""
		if near.Person != nil {
			id = near.Person.ID
		}
		if id != c.id || near.Sure != c.sure || near.Several != c.more {
			t.Errorf("%q: %q, sure %v, several %v", c.typed, id, near.Sure, near.Several)
		}
		if c.short != "" && near.Person.Short() != c.short {
			t.Errorf("%q: the phone shows %s", c.typed, near.Person.Short())
		}
	}
}

// Whatever is typed, nothing breaks, and who is sure has their first name typed.
func FuzzNear(f *testing.F) {
	for _, s := range []string{"Ada B", "Brink, Ada", ",", "é", "ada\u0301 b", ". .", "Ben Cory"} {
		f.Add(s)
	}
	r := class.NewRoom(class.Head{Code: "AAAAAA", Roster: roster}, makes())
	f.Fuzz(func(t *testing.T, typed string) {
		near := r.Near(typed)
		if near.Sure && near.Person == nil || near.Several && near.Person != nil {
			t.Error(near)
		}
		if near.Person != nil && strings.HasSuffix(near.Person.Short(), strings.Fields(near.Person.Name)[1]) {
			t.Error("a whole last name: ", near.Person.Short())
		}
	})
}
