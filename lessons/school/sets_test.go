package school_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/school"
)

// A group keeps so many sets and no more; what is kept already can still be changed, and other groups
// have room of their own.
func TestMostSets(t *testing.T) {
	sets := school.Sets{DB: database(t), Clock: time.Now}
	keep := func(group, name string) error {
		return sets.Keep(t.Context(), group, school.Kept{Name: name, Blueprint: "of " + name}, school.Person{Name: "Cato"})
	}
	for n := range 200 {
		if err := keep("turning-1", fmt.Sprint("set-", n)); err != nil {
			t.Fatal(n, err)
		}
	}
	if err := keep("turning-1", "one-more"); err == nil || !strings.Contains(err.Error(), "200 sets already") {
		t.Error(err)
	}
	for _, row := range [][2]string{{"turning-1", "set-7"}, {"turning-2", "one-more"}} {
		if err := keep(row[0], row[1]); err != nil {
			t.Error(row, err)
		}
		if text, err := sets.Blueprint(t.Context(), row[0], row[1]); text != "of "+row[1] || err != nil {
			t.Error(text, err)
		}
	}
	if err := sets.Delete(t.Context(), "turning-2", "set-7"); err != school.ErrNoSet {
		t.Error(err)
	}
	all, err := sets.Of(t.Context(), "turning-1")
	if len(all) != 200 || err != nil {
		t.Error(len(all), err)
	}
}
