package handout

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// The names of the columns stand above the rows of each page, and a row that no page
// holds goes on below them.
func TestTableGoesOn(t *testing.T) {
	table := &Table{Columns: []string{"Apprentice", "Note"}}
	for i := range 75 {
		table.Rows = append(table.Rows, []string{fmt.Sprintf("row%d", i), "short"})
	}
	var long []string
	for i := range 1100 {
		long = append(long, fmt.Sprintf("word%d", i))
	}
	table.Rows = append(table.Rows, []string{"row75", strings.Join(long, " ")})
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
