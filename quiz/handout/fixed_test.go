package handout

import (
	"bytes"
	"testing"

	"scratchpass/quiz/drawing"
)

// testWords are fixed words as content has them.
var testWords = Words{
	Lang: "en", Name: "Name", Form: "Form", Code: "Code", Date: "Date", Answer: "Answer", Page: "Page ${page} of ${of}",
	Rehearsal: "This is rehearsal, not permission. Your shop's rules and a qualified instructor come first.",
	Star:      "A mistake here can hurt someone.", Key: "KEY: do not hand out", Accepted: "Also right", Path: "Working",
	Seen: "Seen this number?", Tally: "Class tally", TallyItem: "Item",
	TallyHow:     "One stroke for each apprentice, in the column of what the answer was.",
	TallyColumns: []string{"right", "another convention", "wrong unit", "a named slip", "wrong", "no answer"},
}

func testOptions(p Paper) Options { return Options{Paper: p, Words: testWords, Title: "First thread"} }

// fixedDrawing is a line of each pen, a tint and an arrowhead, with labels.
var fixedDrawing = drawing.Drawing{
	Title: "Depth and travel", Twin: "A line straight in, 0.0511 in, and the longer way of the compound beside it.", Width: 100, Height: 50,
	Shapes: []drawing.Shape{
		{Points: []drawing.Point{{X: 40, Y: 45}, {X: 40, Y: 5}}, Pen: drawing.Hidden},
		{Points: []drawing.Point{{X: 40, Y: 5}, {X: 62.63, Y: 45}, {X: 40, Y: 45}}, Pen: drawing.Outline, Fill: drawing.Tint},
		{Points: []drawing.Point{{X: 30, Y: 5}, {X: 70, Y: 5}}, Pen: drawing.Centre},
		{Points: []drawing.Point{{X: 40, Y: 5}, {X: 41, Y: 9}, {X: 39, Y: 9}, {X: 40, Y: 5}}, Pen: drawing.NoEdge, Fill: drawing.Solid},
	},
	Labels: []drawing.Label{{At: drawing.Point{X: 28, Y: 25}, Text: "depth"}, {At: drawing.Point{X: 70, Y: 25}, Text: "travel"}},
}

// fixedSheet has one item of each form.
func fixedSheet() Sheet {
	return Sheet{
		Title: "First thread", Name: "Łukasz Wójcik", Form: "B", Code: "MF-0042", Facts: []string{"Time: 20 minutes.", "The lathe reads radius."},
		Items: []Item{
			{Number: 1, Points: "2 points", Text: []string{"The thread has 12 threads per inch. The compound stands 29.5° from the cross-slide line.", "How far do you feed the compound?"},
				Expects: "Answer in inches, such as 0.1234.", Unit: "in"},
			{Number: 2, Points: "1 point", Text: []string{"The spindle turns. What do you do?"}, Options: []string{"Stop it, then measure.", "Measure at once."},
				Expects: "Answer with the number of one line.", Caution: true},
			{Number: 3, Points: "3 points", Text: []string{"What does the dial show?"}, Readings: []string{"after the first pass:", "after the ⌀ was measured and the spring pass was taken, before the last cut of all:"},
				Unit: "thou", Drawing: &fixedDrawing},
			{Number: 4, Points: "1 point", Text: []string{"How deep does the tool stand, straight in?"}, Unit: "in"},
			{Number: 5, Points: "1 point", Text: []string{"What is left to feed?"}, Unit: "in", Drawing: &fixedDrawing},
		},
	}
}

func fixedKey() Key {
	return Key{
		Title: "First thread", Name: "Łukasz Wójcik", Form: "B", Code: "MF-0042",
		Items: []KeyItem{
			{Number: 1, Title: "Compound travel for the depth", Points: "2 points", Answer: "0.0587 in", Limits: "0.0582 to 0.0592 in",
				Path: "P = 1 / 12 = 0.083333, h = 0.613435 x 0.083333 = 0.051120, c = 0.051120 / cos(29.5) = 0.0587",
				Seen: []Seen{{"0.0511", "no-angle"}, {"0.0445", "times-cos"}, {"0.1038", "sin-or-ref"}, {"0.1175", "double"}, {"0.1022", "double-no-angle"}}},
			{Number: 2, Title: "Stop before gauging", Points: "1 point", Answer: "\"Stop it, then measure\"", Caution: true, Seen: []Seen{{"2", "at-once"}}},
			{Number: 3, Title: "Dial after passes", Points: "3 points", Answer: "36 41", Carried: "Takes the answer to item 1: mark what follows from it."},
		},
	}
}

// fixedReport has a table that fits on a line and one that is told row by row.
func fixedReport() Report {
	chart := drawing.Bars("Share right", "Compound travel 25 %, spring passes 62.5 %, pitch from lead 0 %.", []drawing.Bar{
		{Label: "Compound travel", Value: 25, Low: 7, High: 59}, {Label: "Spring passes", Value: 62.5, Low: 31, High: 86}, {Label: "Pitch from lead"},
	}, 100, "%")
	return Report{
		Title: "First thread: what came of it", Owner: "Łukasz Wójcik", Facts: []string{"8 answers to each task."}, Note: testWords.Rehearsal,
		Parts: []Part{
			{Lines: []string{"One common error explains most of what went wrong.", "", "Look at the ⌀ last."}},
			{Heading: "Task by task", Drawing: &chart},
			{Heading: "The numbers", Lines: []string{"Of 8 answers:"}, Table: &Table{
				Columns: []string{"Task", "Right", "Right by another convention", "Share", "Slip"},
				Rows:    [][]string{{"Compound travel", "2", "0", "25 %", "no-angle"}, {"Spring passes", "5", "1", "62.5 %", ""}, {"Pitch from lead", "0", "–", "0 %", "turned-over"}}}},
			{Heading: "Common errors", Table: &Table{Columns: []string{"Error", "What it is"}, Rows: [][]string{
				{"no-angle", "The depth was fed along the compound, as if that stood straight to the work."}, {"turned-over", "The pitch was taken for the threads per inch."}}}},
		},
	}
}

// document writes parts with a format.
func document(t testing.TB, f New, o Options, parts func(w Writer)) []byte {
	t.Helper()
	var out bytes.Buffer
	w, err := f(&out, o)
	if err != nil {
		t.Fatal(err)
	}
	parts(w)
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func sheets(all ...Sheet) func(Writer) {
	return func(w Writer) {
		for _, s := range all {
			_ = w.Sheet(s) // the writer keeps its error for Close
		}
	}
}

func keys(all ...Key) func(Writer) {
	return func(w Writer) {
		for _, k := range all {
			_ = w.Key(k)
		}
	}
}

func reports(all ...Report) func(Writer) {
	return func(w Writer) {
		for _, r := range all {
			_ = w.Report(r)
		}
	}
}
