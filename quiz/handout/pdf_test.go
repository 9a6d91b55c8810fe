package handout

import (
	"bytes"
	"fmt"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
)

// Each sheet begins on a page of its own and counts its own pages; the code is on each.
func TestPagesOfEachSheet(t *testing.T) {
	all, allKeys := class(t, 3, 10)
	for _, paper := range []Paper{A4, Letter} {
		pages, _ := pagesOf(t, document(t, PDF, testOptions(paper), sheets(all...)))
		at := 0
		for i, s := range all {
			if !strings.HasPrefix(pageText(pages[at]), s.Title) {
				t.Errorf("%s: sheet %d does not begin on a page of its own", paper, i)
			}
			of := 0
			for n := at; n < len(pages) && (n == at || !strings.HasPrefix(pageText(pages[n]), s.Title)); n++ {
				of++
			}
			for n := range of {
				text := pageText(pages[at+n])
				for _, want := range []string{fmt.Sprintf("Page %d of %d", n+1, of), s.Code, "rehearsal"} {
					if !strings.Contains(text, want) {
						t.Errorf("%s: page %d of sheet %d lacks %q", paper, n+1, i, want)
					}
				}
			}
			at += of
		}
		if at != len(pages) {
			t.Errorf("%s: %d pages, %d of sheets", paper, len(pages), at)
		}
		pages, _ = pagesOf(t, document(t, PDF, testOptions(paper), keys(allKeys...)))
		for i, page := range pages {
			if text := pageText(page); !strings.Contains(text, testWords.Key) || strings.Contains(text, "rehearsal") {
				t.Errorf("%s: page %d of the keys is not marked as a key", paper, i+1)
			}
		}
	}
}

// What was put in comes out: every word of every field, in sheet, key and tally.
func TestPDFHasEveryWord(t *testing.T) {
	pages, _ := pagesOf(t, document(t, PDF, testOptions(A4), func(w Writer) {
		sheets(fixedSheet())(w)
		keys(fixedKey())(w)
		_ = w.Tally("Bench 3", []string{"1. Compound travel", "2. Stop before gauging"})
	}))
	if len(pages) < 3 {
		t.Fatalf("%d pages", len(pages))
	}
	var all strings.Builder
	for _, page := range pages {
		all.WriteString(pageText(page) + "\n")
	}
	words := map[string]bool{}
	for _, word := range strings.Fields(all.String()) {
		words[word] = true
	}
	for _, want := range strings.Fields("First thread Łukasz Wójcik B MF-0042 Time: 20 minutes. 29.5° cross-slide line. How far 2 points 1 point in thou Answer " +
		"1) 2) Stop it, then measure. Measure at once. ⌀ measured spring after first pass: such as 0.1234. depth travel Date Form Name Code " +
		"* hurt someone. KEY: hand out Compound travel 0.0587 Also right: 0.0582 to 0.0592 Working: cos(29.5) 0.0511 no-angle 0.1038 sin-or-ref " +
		"Seen this number? \"Stop measure\" at-once 36 41 Takes item Class tally: Bench 3 convention slip no answer Page of 1 stroke") {
		if !words[want] {
			t.Errorf("the document lacks %q", want)
		}
	}
}

func TestSameBytesEachTime(t *testing.T) {
	parts := func(w Writer) {
		sheets(fixedSheet())(w)
		keys(fixedKey())(w)
		_ = w.Tally("A", []string{"1"})
		reports(fixedReport())(w)
	}
	for _, f := range Formats() {
		first := document(t, f.New, testOptions(A4), parts)
		var wait sync.WaitGroup
		for range 8 { // side by side: documents share no state
			wait.Go(func() {
				if !bytes.Equal(first, document(t, f.New, testOptions(A4), parts)) {
					t.Errorf("%s: another run gives other bytes", f.Name)
				}
			})
		}
		wait.Wait()
	}
}

// The date in a document is the set's, and never the clock's.
func TestDateOfAPDF(t *testing.T) {
	o := testOptions(A4)
	for want, date := range map[string]time.Time{"D:20000101000000": {}, "D:20270303000000": time.Date(2027, 3, 3, 0, 0, 0, 0, time.UTC)} {
		o.Date = date
		if n := bytes.Count(document(t, PDF, o, keys(fixedKey())), []byte(want)); n != 2 {
			t.Errorf("%s stands %d times in the document, want when it was made and when changed", want, n)
		}
	}
}

// The texts can be found and copied with another reader too.
func TestAnotherReaderFindsTheText(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not installed; the other tests read the pages themselves")
	}
	cmd := exec.Command(tool, "-", "-")
	cmd.Stdin = bytes.NewReader(document(t, PDF, testOptions(Letter), sheets(fixedSheet())))
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Łukasz Wójcik", "29.5°", "⌀", "Page 2 of 2"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("pdftotext does not find %q in:\n%s", want, out)
		}
	}
}

func TestItemTallerThanAPage(t *testing.T) {
	var text []string
	for i := range 120 {
		text = append(text, fmt.Sprintf("line%d of a very long question", i))
	}
	s := Sheet{Title: "Long", Code: "C-1", Items: []Item{{Number: 1, Text: []string{"short"}}, {Number: 2, Text: text, Unit: "in"}, {Number: 3, Text: []string{"last"}}}}
	pages, _ := pagesOf(t, document(t, PDF, testOptions(A4), sheets(s)))
	var all strings.Builder
	for _, page := range pages {
		all.WriteString(pageText(page) + "\n")
	}
	for i := range 120 {
		if n := strings.Count(all.String(), fmt.Sprintf("line%d of", i)); n != 1 {
			t.Errorf("line %d is printed %d times", i, n)
		}
	}
	if !strings.Contains(pageText(pages[0]), "line0 of") {
		t.Error("an item that can't be kept together leaves the page before it empty")
	}
}

// Printed on both sides, each sheet begins on a leaf of its own.
func TestDuplex(t *testing.T) {
	short := Sheet{Title: "Short", Code: "C-1", Items: []Item{{Number: 1, Text: []string{"one"}}}}
	for duplex, want := range map[bool]int{false: 3, true: 6} {
		o := testOptions(A4)
		o.Duplex = duplex
		// Empty pages have no text to read: the page objects are counted.
		if n := len(regexp.MustCompile(`/Type /Page\b`).FindAll(document(t, PDF, o, sheets(short, short, short)), -1)); n != want {
			t.Errorf("duplex %v: %d pages, want %d", duplex, n, want)
		}
	}
}
