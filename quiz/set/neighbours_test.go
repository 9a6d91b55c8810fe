package set

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// neighboursAlike are the questions on two sheets that ask for the same number, or for one
// that would be right on the other sheet.
func neighboursAlike(a, b []Item) (alike []string) {
	for _, x := range a {
		i := slices.IndexFunc(b, func(y Item) bool { return y.Place == x.Place && y.Problem.Task == x.Problem.Task })
		if i < 0 {
			continue
		}
		y := b[i]
		kind := x.Problem.Task.Kind
		if !kind.Numeric() {
			continue
		}
		right := kind.OneNumber() && y.Problem.Expected.Right(kind.Typed(&x.Problem.Expected, x.Problem.Expected.Key)) || meaning(x.Problem) == meaning(y.Problem)
		if right {
			alike = append(alike, fmt.Sprintf("%s: %s and %s", x.Problem.Task.Name, meaning(x.Problem), meaning(y.Problem)))
		}
	}
	return alike
}

// Neighbours in the roster differ in every number that they are asked for: what one writes is
// wrong on the next sheet. So in the shipped sets, and in every task that has two answers.
func TestNeighboursDiffer(t *testing.T) {
	for _, name := range []string{"first-thread.yaml", "exit-ticket.yaml"} {
		m := example(t, name)
		class := roster(24)
		m.Seat(class)
		for i := 1; i < len(class); i++ {
			for _, alike := range neighboursAlike(items(t, m, class[i-1].ID), items(t, m, class[i].ID)) {
				t.Errorf("%s, %s and %s: %s", name, class[i-1].ID, class[i].ID, alike)
			}
		}
	}
	few := 12
	if testing.Short() {
		few = 4
	}
	for _, system := range []machine.System{machine.Imperial, machine.Metric} {
		for _, task := range tasks.All() {
			if !task.Allows(system) || !task.Kind.Numeric() {
				continue
			}
			m := maker(t, fmt.Sprintf("set: x\ntitle: X\nunits: %s\nslots:\n- {tasks: [%s]}\n- {tasks: [%s], level: 3}\n", system.Length().Name, task.Name, task.Name))
			class := roster(few)
			m.Seat(class)
			for i := 1; i < len(class); i++ {
				for _, alike := range neighboursAlike(items(t, m, class[i-1].ID), items(t, m, class[i].ID)) {
					t.Errorf("%s: %s", system.Length().Name, alike)
				}
			}
		}
	}
}

// A roster that was put in another order, or lost a row, finds its sheets again by their codes
// and by those of their problems, and marks them right; so do sheets made without a roster.
func TestSheetsAreFoundAgain(t *testing.T) {
	const blueprint = "set: n\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}, {tasks: [compound-travel]}]\n"
	class := roster(4)
	for name, seat := range map[string]func(*Maker){
		"the same":          func(m *Maker) { m.Seat(class) },
		"another order":     func(m *Maker) { m.Seat([]Apprentice{class[2], class[3], class[0], class[1]}[1:]) },
		"one less":          func(m *Maker) { m.Seat(class[1:]) },
		"without neighbors": func(*Maker) {},
	} {
		made := maker(t, blueprint)
		made.Seat(class)
		for _, onScreen := range []bool{false, true} {
			var answers []Given
			for _, a := range class[1:] {
				for _, it := range items(t, made, a.ID) {
					g := Given{Code: made.Code(a.ID), Item: it.Number, Text: typed(it.Problem, it.Problem.Expected.Key), File: a.ID}
					if onScreen {
						g.Code, g.Item = it.Problem.Code.String(), 0
					}
					answers = append(answers, g)
				}
			}
			m := maker(t, blueprint)
			seat(m)
			for _, r := range mark(t, m, class[1:], answers) {
				if r.Points != 2 || !onScreen && r.Code != made.Code(r.ID) { // on two sides both problems may be the same
					t.Errorf("%s, screen %v: %s has %v points on %s, made as %s", name, onScreen, r.ID, r.Points, r.Code, made.Code(r.ID))
				}
			}
		}
	}
	// Sheets of a version that knew no neighbours are marked as well.
	old, m := maker(t, blueprint), maker(t, blueprint)
	m.Seat(class)
	it := items(t, old, class[0].ID)[0]
	g := Given{Code: old.Code(class[0].ID), Item: 1, Text: typed(it.Problem, it.Problem.Expected.Key), File: "a"}
	if r := mark(t, m, class, []Given{g})[0]; r.Items[0].Verdict != answer.Right {
		t.Errorf("%+v", r)
	}
	// Two sheets of one person are nobody's.
	m.Seat(class)
	_, err := NewMarker(t.Context(), m, class, []Given{g, {Code: m.Code(class[0].ID), Item: 1, Text: "1", File: "b"}})
	if err == nil || !strings.Contains(err.Error(), `two sheets of "Apprentice 0" came back`) {
		t.Error(err)
	}
}

// The fewest different answers are counted over all sheets.
func TestFewestAnswers(t *testing.T) {
	m := maker(t, "set: n\ntitle: x\nunits: in\nslots: [{tasks: [compound-travel]}, {tasks: [stop-before-gauging]}]\n")
	s := NewSameAnswers()
	want := map[string]bool{}
	for _, a := range roster(20) {
		all := items(t, m, a.ID)
		want[meaning(all[1].Problem)] = true
		s.Add(all)
	}
	if q, n, sheets := s.Fewest(); q != 2 || n != len(want) || sheets != 20 {
		t.Errorf("question %d: %d on %d sheets, want 2: %d on 20", q, n, sheets, len(want))
	}
	if q, _, _ := NewSameAnswers().Fewest(); q != 0 {
		t.Error(q)
	}
}
