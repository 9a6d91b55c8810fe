package set

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/tasks"
)

// twenty is a blueprint of so many questions.
func twenty(n int) string {
	names := []string{"pitch-from-tpi", "single-depth", "minor-diameter", "basic-pitch-diameter", "tool-nose-flat", "depth-for-tool", "compound-travel", "infeed-left",
		"dial-past-a-turn", "sideways-shift", "over-wires", "best-wire", "threading-speed", "carriage-speed", "time-to-shoulder", "gear-ratio", "thread-dial-line",
		"when-to-leave-compound", "stop-before-gauging", "one-full-pass"}
	text := "set: twenty\ntitle: Twenty\nunits: in\nslots:\n"
	for _, name := range names[:n] {
		text += fmt.Sprintf("  - {tasks: [%s]}\n", name)
	}
	return text
}

// The questions of one apprentice, 20 of them.
func BenchmarkItems(b *testing.B) {
	m := maker(b, twenty(20))
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		items(b, m, fmt.Sprint("a", i))
	}
}

// Preparing a set: words, and what its problems are to be like.
func BenchmarkNewMaker(b *testing.B) {
	blueprint, err := ParseBlueprint("b", []byte(twenty(20)), tasks.Set{}, noLathe)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := NewMaker(blueprint, testSecret, content.Shipped()); err != nil {
			b.Fatal(err)
		}
	}
}

// 24 apprentices x 20 questions, sheets and keys as PDF.
func BenchmarkClassOf24(b *testing.B) { benchmarkClass(b, 24, 20) }

// 1,000 apprentices x 12 questions, sheets and keys as PDF, 50 to a document.
func BenchmarkClassOf1000(b *testing.B) { benchmarkClass(b, 1000, 12) }

// What each further apprentice adds to the memory in use, with 12 questions: sheets, keys and
// rows of the grid made, answers read and marked, the class summed up.
func BenchmarkMemoryOfAPerson(b *testing.B) {
	for b.Loop() {
		few, many := inUse(b, 100), inUse(b, 500)
		b.ReportMetric((many-few)/400, "B/person")
	}
}

// inUse is the memory in use when all that is made of a class is made.
func inUse(b *testing.B, people int) float64 {
	m, class := maker(b, twenty(12)), roster(people)
	m.Seat(class)
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		b.Fatal(err)
	}
	var rows [][]string
	var file strings.Builder
	file.WriteString("code,item,answer\n")
	for _, who := range class {
		all := items(b, m, who.ID)
		if _, err := p.Sheet(who, all); err != nil {
			b.Fatal(err)
		}
		p.Key(who, all)
		rows = append(rows, p.GridRow(who, all))
		for _, it := range all {
			fmt.Fprintf(&file, "%s,%d,\"%s\"\n", m.Code(who.ID), it.Number, typed(it.Problem, it.Problem.Expected.Key))
		}
	}
	answers, err := ParseAnswers("a", []byte(file.String()))
	if err != nil {
		b.Fatal(err)
	}
	k, err := NewMarker(b.Context(), m, class, answers)
	if err != nil {
		b.Fatal(err)
	}
	sum := NewSummary(m, content.Shipped())
	if err := k.Each(func(r Result) error { sum.Add(r); return nil }); err != nil {
		b.Fatal(err)
	}
	runtime.GC()
	var now runtime.MemStats
	runtime.ReadMemStats(&now)
	runtime.KeepAlive([]any{m, p, rows, answers, k, sum})
	return float64(now.HeapAlloc)
}

func benchmarkClass(b *testing.B, class, questions int) {
	m := maker(b, twenty(questions))
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		var sheets, keys handout.Writer
		end := func() {
			if sheets != nil && (sheets.Close() != nil || keys.Close() != nil) {
				b.Fatal("not closed")
			}
		}
		for i, who := range roster(class) {
			if i%50 == 0 {
				end()
				sheets, err = handout.PDF(io.Discard, p.Options("x"))
				if err == nil {
					keys, err = handout.PDF(io.Discard, p.Options("x"))
				}
				if err != nil {
					b.Fatal(err)
				}
			}
			all := items(b, m, who.ID)
			sheet, err := p.Sheet(who, all)
			if err == nil {
				err = sheets.Sheet(sheet)
			}
			if err == nil {
				err = keys.Key(p.Key(who, all))
			}
			if err != nil {
				b.Fatal(err)
			}
		}
		end()
	}
}

// Marking and reporting a class of 1,000 with 10 questions.
func BenchmarkMark1000(b *testing.B) {
	m := maker(b, twenty(10))
	class := roster(1000)
	var file strings.Builder
	file.WriteString("code,item,answer\n")
	for _, who := range class {
		for _, it := range items(b, m, who.ID) {
			fmt.Fprintf(&file, "%s,%d,\"%s\"\n", m.Code(who.ID), it.Number, typed(it.Problem, it.Problem.Expected.Key))
		}
	}
	text := []byte(file.String())
	b.ReportAllocs()
	for b.Loop() {
		answers, err := ParseAnswers("a", text)
		if err != nil {
			b.Fatal(err)
		}
		k, err := NewMarker(b.Context(), m, class, answers)
		if err != nil {
			b.Fatal(err)
		}
		var out bytes.Buffer
		rows, sum := NewMarksCSV(&out), NewSummary(m, content.Shipped())
		if err := k.Each(func(r Result) error { sum.Add(r); return rows.Add(r) }); err != nil {
			b.Fatal(err)
		}
		if r := sum.Report(); r.Mean != r.Of || rows.Close() != nil {
			b.Fatal(r.Mean)
		}
	}
}
