package handout

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// Whatever the items are like: in two columns too none is lost, printed twice, split over
// pages or over the foot.
func TestRandomItemsInTwoColumns(t *testing.T) {
	seeds := uint64(60)
	if testing.Short() {
		seeds = 10
	}
	for seed := range seeds {
		o := testOptions([]Paper{A4, Letter}[seed%2])
		o.Layout = Compact
		s, words := randomSheet(rand.New(rand.NewPCG(seed, 41)))
		pages, lines := pagesOf(t, document(t, PDF, o, sheets(s)))
		where, run := map[string]int{}, make([]string, len(pages)) // run: a page's text, in which a word broken at a narrow column is whole
		for n, page := range pages {
			foot, half := 0.0, false // where the caution stands
			for _, p := range page {
				half = half || p.text == "✂"
				if p.text == testWords.Rehearsal {
					foot = p.y
				}
			}
			for _, y := range lines[n] {
				if y < foot+pt(small.size) && !half {
					t.Errorf("seed %d: page %d: a line reaches into the foot", seed, n+1)
				}
			}
			for _, p := range page {
				run[n] += strings.ReplaceAll(p.text, " ", "")
				for _, word := range strings.Fields(p.text) {
					if !strings.HasPrefix(word, "Q") {
						continue
					}
					if was, ok := where[word]; ok {
						t.Errorf("seed %d: %q is on pages %d and %d", seed, word, was+1, n+1)
					}
					if where[word] = n; p.y < foot+pt(small.size) {
						t.Errorf("seed %d: %q stands in the foot of page %d", seed, word, n+1)
					}
				}
			}
		}
		for i, mine := range words {
			for _, word := range mine {
				first := where[mine[0]]
				if on, ok := where[word]; (!ok || on != first) && !strings.Contains(run[first], word) {
					t.Errorf("seed %d: item %d: %q is on page %d (found: %v), the item on page %d", seed, i+1, word, on+1, ok, where[mine[0]]+1)
				}
			}
		}
	}
}

// shortSheet has so many questions of one line.
func shortSheet(code string, items int) Sheet {
	s := Sheet{Title: "Ticket", Code: code}
	for n := range items {
		s.Items = append(s.Items, Item{Number: n + 1, Points: "1 point", Text: []string{"How deep is the thread?"}, Expects: "Write one number.", Unit: "in"})
	}
	return s
}

// Sheets that half a page holds stand two to a page with a line to cut along; what is
// longer, and what comes after it, begins a page.
func TestTwoToAPage(t *testing.T) {
	o := testOptions(A4)
	o.Layout = Compact
	pages, _ := pagesOf(t, document(t, PDF, o, sheets(shortSheet("C-1", 5), shortSheet("C-2", 5), shortSheet("C-3", 5), shortSheet("C-4", 30), shortSheet("C-5", 5))))
	codes := make([]string, len(pages))
	for i, page := range pages {
		cut, long := false, false
		for _, p := range page {
			cut = cut || p.text == "✂"
			long = long || p.text == "25"
			if strings.HasPrefix(p.text, "C-") {
				codes[i] += p.text + " "
			}
		}
		if codes[i] == "" { // a second page has its code in the foot
			codes[i] = "and on "
		}
		if cut == (strings.Contains(codes[i], "C-4") || long) {
			t.Errorf("page %d: a line to cut along: %v", i+1, cut)
		}
	}
	if got := strings.Join(codes, "| "); got != "C-1 C-2 | C-3 | C-4 | and on | C-5 " {
		t.Errorf("the pages hold %s", got)
	}
	for name, c := range map[string]int{"two halves on a leaf": 2, "three": 4} {
		o.Duplex = true
		all := []Sheet{shortSheet("C-1", 5), shortSheet("C-2", 5), shortSheet("C-3", 5)}
		if n := pageCount(document(t, PDF, o, sheets(all[:c/2+1]...))); n != c {
			t.Errorf("%s: %d pages, want %d", name, n, c)
		}
	}
}

// The last page has two columns of about the same height.
func TestColumnsAreBalanced(t *testing.T) {
	o := testOptions(A4)
	o.Layout = Compact
	pages, _ := pagesOf(t, document(t, PDF, o, sheets(shortSheet("C-1", 18))))
	if len(pages) != 1 {
		t.Fatalf("%d pages", len(pages))
	}
	left, right := 0, 0
	for _, p := range pages[0] {
		switch {
		case p.text != "How deep is the thread?":
		case p.x < 200:
			left++
		default:
			right++
		}
	}
	if left != 9 || right != 9 {
		t.Errorf("%d items at the left, %d at the right", left, right)
	}
}

// A wide report lies across the paper, and the next page stands upright again.
func TestWideReport(t *testing.T) {
	wide := fixedReport()
	wide.Wide = true
	doc := document(t, PDF, testOptions(A4), func(w Writer) { reports(wide, fixedReport())(w) })
	streams, rest := inflated(t, doc)
	if len(streams) == 0 || !strings.Contains(rest, "/MediaBox [0 0 841.89 595.28]") || !strings.Contains(rest, "[0 0 595.28 841.89]") {
		t.Errorf("no page lies across, or none upright: %s", rest[:min(len(rest), 2000)])
	}
}

// Two brief reports share a page where each has room on half of it, and lose nothing.
func TestBriefReports(t *testing.T) {
	brief := Report{Title: "Feedback", Owner: "Ada", Facts: []string{"Points: 3 of 5."}, Note: testWords.Rehearsal, Brief: true,
		Parts: []Part{{Heading: "2. Depth", Lines: []string{"Not right.", "h = 0.0511 in"}, Drawing: &fixedDrawing}, {Heading: "4. Table", Table: &Table{[]string{"a"}, [][]string{{"b"}}}}}}
	pages, _ := pagesOf(t, document(t, PDF, testOptions(A4), reports(brief, brief)))
	if len(pages) != 1 {
		t.Fatalf("%d pages", len(pages))
	}
	text := pageText(pages[0])
	for _, want := range []string{"Feedback", "2. Depth", "h = 0.0511 in", "travel", "4. Table", "b", testWords.Rehearsal, "Page 1 of 1"} {
		if strings.Count(text, want) < 2 {
			t.Errorf("%q does not stand there twice in %s", want, text)
		}
	}
}
