package bench

import (
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Every job that ships can be read, and what is wrong in one that does not is said at
// once.
func TestParseJob(t *testing.T) {
	for _, name := range content.Shipped().JobNames() {
		if j := shippedJob(t, name); j.Story == "" || j.Title == "" {
			t.Errorf("%s has no words", name)
		}
	}
	good, err := content.Shipped().Job("gland-nut")
	if err != nil {
		t.Fatal(err)
	}
	for want, change := range map[string]func(*content.Job){
		"thread:":                            func(w *content.Job) { w.Thread = "9-9-9" },
		`bore "1.167": give a size with`:     func(w *content.Job) { w.Bore = "1.167" },
		"blank \"1 in\": that is for":        func(w *content.Job) { w.Blank = "1 in" },
		`end "wall": give shoulder`:          func(w *content.Job) { w.End = "wall" },
		"end shoulder: a bore ends":          func(w *content.Job) { w.End = Shoulder },
		"take a thinner bar":                 func(w *content.Job) { w.Bar = "1.0 in" },
		"cuts threads with up to 4 starts":   func(w *content.Job) { w.Thread = "1 1/4-12 UNF-2B 5 STARTS" },
		`towards "me": give headstock or`:    func(w *content.Job) { w.Towards = "me" },
		`gears_left "12": give a lead such`:  func(w *content.Job) { w.GearsLeft = "12" },
		"shank: can't read \"thin\"":         func(w *content.Job) { w.Shank = "thin" },
		"shank 0.0100 in: give":              func(w *content.Job) { w.Shank = "0.010 in" },
		"flat of the tool":                   func(w *content.Job) { w.Flat = "0.030 in" },
		"flat and nose: give one":            func(w *content.Job) { w.Round = "0.010 in" },
		"is an internal thread by its class": func(w *content.Job) { w.Side = "outside" },
		`lathe "wood": give inch or metric`: func(w *content.Job) {
			w.Lathe = "wood"
		},
		"surprise after 0": func(w *content.Job) { w.Surprises = []content.Surprise{{After: 0, What: CalledAway}} },
		"bore 1.3000 in":   func(w *content.Job) { w.Bore = "1.3 in" },
	} {
		w := good
		change(&w)
		if _, err := ParseJob(w, machine.InchLathe); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

// What can't be read is refused with what would work; what can is written the same way.
func TestParse(t *testing.T) {
	for text, want := range map[string]string{
		"cross out 0.2": "cross out 0.2", "Cross  Out .2": "cross out 0.2", "compound in 5 thou": "compound in 0.005", "compound in 0.127 mm": "compound in 0.005",
		"close": "close", "close on 3": "close on 3", "gears 32/40 x 30/50": "gears 32/40 x 30/50", "levers 10 tpi": "levers 10 TPI",
		"note the first one": "note the first one", "key out": "key out", "test not-go": "test not-go", "return": "return", "return groove": "return groove", "tumbler left": "tumbler left", "tool over": "tool over", "index": "index",
	} {
		e, err := Parse(text, machine.Imperial)
		if err != nil || e.Write(machine.Imperial) != want {
			t.Errorf("%q: %q %v, want %q", text, e.Write(machine.Imperial), err, want)
		}
	}
	for text, want := range map[string]string{
		"": "a move", "crss out 1": "did you mean cross?", "cross 0.2": "cross in or out or to 0.005", "cross out": "cross in or out or to", "cross out x": "cross in or out or to",
		"close on 1.5": "close on 1, or just close", "gears 32": "gears 32/40", "speed fast": "speed 70", "dress up": "dress", "test nut": "test mate or go or not-go or wires",
		"cross out 0.2 now": "cross in", "return shoulder": "return groove or end, or just return", "tumbler": "tumbler right or left", "tool under": "tool over or up", "levers 10": "levers 10 TPI or levers 2.5 mm", "wait NaN": "wait 1.5",
	} {
		if _, err := Parse(text, machine.Imperial); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	if e, err := Parse("compound in 0.12", machine.Metric); err != nil || !calc.Within(e.Length().Millimetres(), 0.12, 1e-9) {
		t.Error(e, err)
	}
}
