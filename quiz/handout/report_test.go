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
	seeds := uint64(60)
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

func TestEachReportCountsItsPages(t *testing.T) {
	long := fixedReport()
	for range 5 {
		long.Parts = append(long.Parts, fixedReport().Parts...)
	}
	pages, _ := pagesOf(t, document(t, PDF, testOptions(Letter), func(w Writer) {
		reports(long, fixedReport())(w)
		sheets(fixedSheet())(w)
	}))
	var counts []string
	for n, page := range pages {
		body, _ := ofPage(page, long.Owner)
		if last := body[len(body)-1].text; last == "Of 8 answers:" {
			t.Errorf("page %d ends with a line that leads to a table", n+1)
		}
		for _, p := range page {
			if strings.HasPrefix(p.text, "Page ") {
				counts = append(counts, strings.TrimPrefix(p.text, "Page "))
			}
		}
	}
	if got := strings.Join(counts, ", "); got != "1 of 4, 2 of 4, 3 of 4, 4 of 4, 1 of 1, 1 of 2, 2 of 2" {
		t.Errorf("the pages are %s", got)
	}
}

func BenchmarkReport(b *testing.B) {
	for _, f := range Formats() {
		b.Run(f.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				document(b, f.New, testOptions(A4), reports(fixedReport()))
			}
		})
	}
}
