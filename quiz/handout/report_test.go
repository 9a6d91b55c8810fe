package handout

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"scratchpass/quiz/drawing"
)

// wordy makes texts of words that are used once each and tell where they stand.
type wordy struct {
	r    *rand.Rand
	used int
}

func (w *wordy) phrase(kind string, most int) string {
	var words []string
	for range 1 + w.r.IntN(most) {
		words = append(words, fmt.Sprintf("%s%dw%s", kind, w.used, strings.Repeat("x", w.r.IntN(14)*w.r.IntN(2))))
		w.used++
	}
	return strings.Join(words, " ")
}

// randomReport has parts of all forms. Headings have words with K, names of columns
// with H, and whatever must keep together is in runs.
func randomReport(r *rand.Rand) (report Report, runs []string) {
	w := &wordy{r: r}
	kept := func(text string) string {
		runs = append(runs, text)
		return text
	}
	report = Report{Title: w.phrase("K", 9), Owner: "Owner", Note: testWords.Rehearsal}
	for range r.IntN(4) {
		report.Facts = append(report.Facts, kept(w.phrase("Q", 12)))
	}
	for range 1 + r.IntN(9) {
		var p Part
		if r.IntN(4) > 0 {
			p.Heading = w.phrase("K", 8)
		}
		for range r.IntN(6) {
			p.Lines = append(p.Lines, kept(w.phrase("Q", 40)))
		}
		if r.IntN(2) == 0 {
			columns := 1 + r.IntN(8)
			p.Table = &Table{}
			for i := range columns {
				p.Table.Columns = append(p.Table.Columns, w.phrase(fmt.Sprintf("H%dh", i), 3))
			}
			for range r.IntN(30) {
				var cells []string
				for range columns {
					cells = append(cells, w.phrase("Q", 1+r.IntN(6)))
				}
				kept(strings.Join(cells, " "))
				p.Table.Rows = append(p.Table.Rows, cells)
			}
		}
		if r.IntN(3) == 0 {
			bars := make([]drawing.Bar, r.IntN(13))
			for i := range bars {
				bars[i] = drawing.Bar{Label: fmt.Sprintf("Q%db", w.used), Value: r.Float64() * 120, High: r.Float64() * 120}
				w.used++
			}
			d := drawing.Bars(w.phrase("K", 3), "told", bars, 100, "%")
			p.Drawing = &d
		}
		report.Parts = append(report.Parts, p)
	}
	report.Parts = append(report.Parts, Part{Heading: w.phrase("K", 3), Lines: []string{kept(w.phrase("Q", 5))}})
	return report, runs
}

// words lists the words of a report that come out of each format, but for names of
// columns, which stand once or again on each page.
func (r Report) words() []string {
	texts := append([]string{r.Title}, r.Facts...)
	for _, p := range r.Parts {
		texts = append(append(texts, p.Heading), p.Lines...)
		if p.Table != nil {
			for _, cells := range p.Table.Rows {
				texts = append(texts, cells...)
			}
		}
	}
	return strings.Fields(strings.Join(texts, " "))
}

// ofPage are the texts of a page without its foot, and where the foot begins.
func ofPage(page []printedText, owner string) (body []printedText, foot float64) {
	for _, p := range page {
		switch {
		case p.text == testWords.Rehearsal:
			foot = p.y
		case p.text != owner && !strings.HasPrefix(p.text, "Page "):
			body = append(body, p)
		}
	}
	return body, foot
}

var pathPoint = regexp.MustCompile(`([0-9.-]+) [0-9.-]+ [ml]\b`)

// Whatever a report is like: nothing is lost or printed twice, no paragraph and no row
// is split, nothing reaches into the foot or over the edge, and no heading ends a page.
func TestRandomReportsOnPages(t *testing.T) {
	seeds := uint64(100)
	if testing.Short() {
		seeds = 15
	}
	for seed := range seeds {
		r := rand.New(rand.NewPCG(seed, 31))
		report, runs := randomReport(r)
		doc := document(t, PDF, testOptions([]Paper{A4, Letter}[seed%2]), reports(report))
		pages, lines := pagesOf(t, doc)
		where := map[string]int{}
		for n, page := range pages {
			body, foot := ofPage(page, report.Owner)
			if text := pageText(page); !strings.Contains(text, fmt.Sprintf("Page %d of %d", n+1, len(pages))) || !strings.Contains(text, report.Owner) {
				t.Errorf("seed %d: page %d has no foot", seed, n+1)
			}
			lowest := slices.MinFunc(body, func(a, b printedText) int { return cmp.Compare(a.y, b.y) })
			if strings.HasPrefix(lowest.text, "K") || lowest.y < foot+2*pt(small.size) {
				t.Errorf("seed %d: %q ends page %d at %g, its foot at %g", seed, lowest.text, n+1, lowest.y, foot)
			}
			for _, y := range lines[n] {
				if y < foot+pt(small.size) {
					t.Errorf("seed %d: page %d: a line reaches into the foot", seed, n+1)
				}
			}
			for _, p := range body {
				for _, word := range strings.Fields(p.text) {
					if was, ok := where[word]; ok && strings.ContainsAny(word[:1], "QK") {
						t.Errorf("seed %d: %q is on pages %d and %d", seed, word, was+1, n+1)
					}
					where[word] = n
				}
			}
		}
		streams, _ := inflated(t, doc)
		for _, m := range pathPoint.FindAllStringSubmatch(strings.Join(streams[:len(pages)], "\n"), -1) {
			if x, _ := strconv.ParseFloat(m[1], 64); x < pt(margin) || x > 612-pt(margin) {
				t.Errorf("seed %d: a line is drawn at %g from the left edge", seed, x)
			}
		}
		for _, word := range report.words() {
			if _, ok := where[word]; !ok {
				t.Errorf("seed %d: %q is lost", seed, word)
			}
		}
		for _, run := range runs {
			words := strings.Fields(run)
			if slices.ContainsFunc(words, func(word string) bool { return where[word] != where[words[0]] }) {
				t.Errorf("seed %d: %q is split", seed, run)
			}
		}
	}
}

// shown are the headings, paragraphs and cells of a page, a line each.
func shown(t *testing.T, doc []byte) string {
	var b strings.Builder
	for _, e := range parsed(t, doc) {
		if slices.Contains([]string{"h1", "h2", "p", "th", "td", "text"}, e.name) {
			b.WriteString(e.text + "\n")
		}
	}
	return b.String()
}

func TestRandomReportsAsTextAndHTML(t *testing.T) {
	for seed := range uint64(60) {
		report, _ := randomReport(rand.New(rand.NewPCG(seed, 37)))
		out := string(document(t, Text, testOptions(A4), reports(report)))
		for n, line := range strings.Split(out, "\n") {
			if utf8.RuneCountInString(line) > textWidth || line != strings.TrimRight(line, " ") {
				t.Errorf("seed %d: line %d: %q", seed, n+1, line)
			}
		}
		for name, text := range map[string]string{"text": out, "html": shown(t, document(t, HTML, testOptions(A4), reports(report)))} {
			found := map[string]int{}
			for _, word := range strings.Fields(text) {
				found[strings.TrimSuffix(word, ":")]++
			}
			for _, word := range report.words() {
				if strings.ContainsAny(word[:1], "QK") && found[word] != 1 {
					t.Errorf("seed %d: %s has %q %d times", seed, name, word, found[word])
				}
			}
		}
	}
}

// The names of the columns stand above the rows of each page, and a row that no page
// holds goes on below them.
func TestTableGoesOn(t *testing.T) {
	table := &Table{Columns: []string{"Apprentice", "Note"}}
	for i := range 60 {
		table.Rows = append(table.Rows, []string{fmt.Sprintf("row%d", i), "short"})
	}
	var long []string
	for i := range 900 {
		long = append(long, fmt.Sprintf("word%d", i))
	}
	table.Rows = append(table.Rows, []string{"row60", strings.Join(long, " ")})
	report := Report{Title: "T", Note: testWords.Rehearsal, Parts: []Part{{Heading: "All", Table: table}}}
	pages, _ := pagesOf(t, document(t, PDF, testOptions(A4), reports(report)))
	if len(pages) < 4 {
		t.Fatalf("%d pages", len(pages))
	}
	var all strings.Builder
	for n, page := range pages {
		text := pageText(page)
		all.WriteString(text + "\n")
		if strings.Count(text, "Apprentice") != 1 || strings.Index(text, "Apprentice") > max(strings.Index(text, "row"), strings.Index(text, "word")) {
			t.Errorf("page %d has no names above its rows:\n%s", n+1, text)
		}
	}
	for _, cells := range table.Rows {
		for _, word := range strings.Fields(strings.Join(cells, " ")) {
			if word != "short" && strings.Count(" "+strings.Join(strings.Fields(all.String()), " ")+" ", " "+word+" ") != 1 {
				t.Errorf("%q is lost or printed twice", word)
			}
		}
	}
}

// A word that is wider than the page, a name without rows, a part with a heading only.
func TestOddReports(t *testing.T) {
	wide := strings.Repeat("abcdefghij", 60)
	many := make([]string, 40)
	for i := range many {
		many[i] = fmt.Sprintf("Column%d", i)
	}
	report := Report{Parts: []Part{
		{Heading: "Alone"}, {}, {Lines: []string{"", wide}},
		{Table: &Table{[]string{"", ""}, [][]string{{"1", wide}, {"", ""}}}},
		{Table: &Table{[]string{"Without"}, nil}}, {Table: &Table{many, nil}}, {Table: &Table{many, [][]string{many, make([]string, 40)}}},
		{Drawing: &drawing.Drawing{Title: "W", Width: 50, Height: 20, Labels: []drawing.Label{{Text: wide[:150]}}}},
		{Heading: "Last"},
	}}
	for _, f := range Formats() {
		out := document(t, f.New, testOptions(Letter), reports(report))
		text := string(out)
		switch f.Name {
		case "pdf":
			pages, _ := pagesOf(t, out)
			text = ""
			for _, page := range pages {
				text += pageText(page) + "\n"
			}
		case "html":
			text = shown(t, out)
		}
		if n := strings.Count(strings.Join(strings.Fields(text), ""), wide); n != 2 {
			t.Errorf("%s: a wide word comes out %d times of 2", f.Name, n)
		}
		for _, want := range []string{"Alone", "Without", "Column39", "Last", "1"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is lost", f.Name, want)
			}
		}
	}
}

func TestNumbersOfATable(t *testing.T) {
	for text, want := range map[string]bool{
		"12": true, "-0.5": true, "−3": true, ".0556": true, "1/2": true, "0.0587 in": true, "62.5 %": true, "40–75 %": true, "29.5°": true, "1,234": true, "± 3": false,
		"": false, "–": false, "no-angle": false, "1/2-13 UNC-2A": false, "3 of the 12": false, ".": false,
	} {
		if got := (&Table{[]string{"a"}, [][]string{{text}}}).Numbers()[0]; got != want {
			t.Errorf("a column of %q holds numbers: %v", text, got)
		}
	}
	mixed := &Table{[]string{"a", "b"}, [][]string{{"1", "2"}, {"–", "x"}, {"", "3"}}}
	if got := mixed.Numbers(); !slices.Equal(got, []bool{true, false}) {
		t.Errorf("mixed columns: %v", got)
	}
}

func TestShared(t *testing.T) {
	test := func(room int, want []int, spans ...span) {
		t.Helper()
		got, ok := shared(spans, room)
		if ok != (want != nil) || !slices.Equal(got, want) {
			t.Errorf("a room of %d is shared %v %v, want %v", room, got, ok, want)
		}
	}
	test(100, []int{10, 40}, span{5, 10, 5}, span{5, 40, 40})
	test(100, []int{30, 40}, span{5, 10, 30}, span{5, 40, 200})
	test(60, []int{10, 25, 25}, span{5, 10, 30}, span{5, 80, 80}, span{5, 90, 5})
	test(60, []int{10, 30, 20}, span{5, 10, 30}, span{30, 80, 80}, span{5, 90, 5})
	test(19, nil, span{10, 10, 10}, span{10, 20, 10})
	test(-3, nil, span{1, 1, 1})
}

func TestReportAsHTML(t *testing.T) {
	count := map[string]int{}
	for _, e := range parsed(t, document(t, HTML, testOptions(A4), reports(fixedReport()))) {
		count[e.name]++
		count[e.name+" "+e.attrs["scope"]]++
		if e.name == "td" && e.text == "62.5 %" && e.attrs["class"] != "number" {
			t.Error("a number is not set as one")
		}
	}
	for name, want := range map[string]int{"h1": 1, "h2": 3, "table": 2, "thead": 2, "th col": 7, "th row": 5, "th": 12, "td": 14, "svg": 1, "section": 1} {
		if count[name] != want {
			t.Errorf("%d of %s, want %d", count[name], name, want)
		}
	}
}
