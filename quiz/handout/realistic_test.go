package handout

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

var testNames = []string{"Łukasz Wójcik", "Zoë Marchetti", "Øyvind Ås", "Ştefan Țăranu", "Ada Bell", "Marrow Ford", "Ngũgĩ wa Mbugua"}

// class makes sheets and keys of real problems for so many apprentices.
func class(t testing.TB, apprentices, items int) (sheets []Sheet, keys []Key) {
	t.Helper()
	lib := content.Shipped()
	drawings, err := lib.Drawings()
	if err != nil {
		t.Fatal(err)
	}
	all := tasks.All()
	words := map[string]*wording.Words{}
	for a := range apprentices {
		s := Sheet{
			Title: "First thread: numbers and decisions", Name: testNames[a%len(testNames)], Code: fmt.Sprintf("MF-%04d", a*37%10000),
			Facts: []string{"Time: 45 minutes.", "Tolerance: half a dial division unless a size is given.", "The lathe: 8 threads per inch lead screw, dial 0.100 in a turn, reads radius."},
		}
		k := Key{Title: s.Title, Name: s.Name, Code: s.Code}
		for n := 1; n <= items; n++ {
			task := all[(a*5+n*7)%len(all)]
			system := machine.Imperial
			if !task.Allows(system) {
				system = machine.Metric
			}
			p, err := problem.New(task, problem.Code{Task: task.Name, Level: problem.Level(1 + n%3), System: system, Seed: uint32(a*1000 + n)})
			if err != nil {
				t.Fatal(err)
			}
			w := words[task.Name]
			if w == nil {
				if w, err = wording.Load(lib, task.Name); err != nil {
					t.Fatal(err)
				}
				words[task.Name] = w
			}
			it, ki := realItem(n, p, w)
			if n == 4 && a%2 == 0 {
				name := drawing.Names()[a%len(drawing.Names())]
				d, err := drawing.Named(name, drawings)
				if err != nil {
					t.Fatal(err)
				}
				it.Drawing = &d
			}
			s.Items, k.Items = append(s.Items, it), append(k.Items, ki)
		}
		sheets, keys = append(sheets, s), append(keys, k)
	}
	return sheets, keys
}

func realItem(n int, p *problem.Problem, w *wording.Words) (Item, KeyItem) {
	text, _ := w.Ask(p)
	question, options, _ := strings.Cut(text, "\n1) ")
	it := Item{Number: n, Points: "2 points", Text: strings.Split(question, "\n"), Expects: w.Expects(p), Unit: p.Expected.Unit.Name, Caution: p.Task.SafetyCritical}
	if options != "" {
		for i, line := range strings.Split(options, "\n") {
			line = strings.TrimPrefix(line, fmt.Sprintf("%d) ", i+1))
			if len(w.Task.Readings) > 0 {
				it.Readings = append(it.Readings, line)
			} else {
				it.Options = append(it.Options, line)
			}
		}
	}
	ki := KeyItem{Number: n, Title: w.Task.Title, Points: it.Points, Answer: w.KeyText(p), Caution: it.Caution}
	if p.Expected.Tolerance > 0 {
		ki.Limits = p.Expected.Unit.Fixed(p.Expected.Key.X-p.Expected.Tolerance) + " to " + p.Expected.Unit.Text(p.Expected.Key.X+p.Expected.Tolerance)
	}
	var path []string
	for i, s := range p.Working.Steps {
		if s.Formula != "" {
			path = append(path, s.Symbol+" = "+p.Working.With(i)+" = "+s.Value())
		}
	}
	ki.Path = strings.Join(path, ", ")
	for _, s := range p.Expected.Errors {
		ki.Seen = append(ki.Seen, Seen{p.Expected.ShowGiven(s.Response), s.Name})
	}
	if n == 5 {
		ki.Carried = "Takes the answer to item 4: mark what follows from it."
	}
	return it, ki
}

// classTally names the rows of a tally.
func classTally(k Key) []string {
	var items []string
	for _, it := range k.Items {
		items = append(items, fmt.Sprintf("%d. %s", it.Number, it.Title))
	}
	return items
}
