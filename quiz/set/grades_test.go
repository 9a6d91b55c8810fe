package set

import (
	"bytes"
	"strings"
	"testing"
)

// The marks that a learning system takes: one grade a person with the id of the roster, none
// where a sheet did not come or an answer waits; what looks like a formula is a text.
func TestGradesOut(t *testing.T) {
	m := maker(t, spreadsheetSet)
	class := []Apprentice{{ID: "k-101", Name: "Ada Brink"}, {ID: "k-102", Name: "Jörg <Weiß>"}, {ID: "k-103", Name: "=Zoë"}}
	results := mark(t, m, class, parsed(t, "a.csv", "code,1,2\n"+m.Code("k-101")+",0.0417,0.006 0.0085\n"+m.Code("k-102")+",0.05,=1+1\n"))
	var grades, roster, book bytes.Buffer
	g, err := NewGradesCSV(&grades)
	if err != nil {
		t.Fatal(err)
	}
	o, err := NewOneRosterResults(&roster, "tables", "2026-12-01")
	if err != nil {
		t.Fatal(err)
	}
	x, err := NewMarksWorkbook(&book)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range []interface {
		Add(Result) error
		Close() error
	}{g, o, x} {
		for _, r := range results {
			if err := w.Add(r); err != nil {
				t.Fatal(err)
			}
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if want := "id,name,grade\nk-101,Ada Brink,2\nk-102,Jörg <Weiß>,\nk-103,'=Zoë,\n"; grades.String() != want {
		t.Errorf("%s, want %s", grades.String(), want)
	}
	if want := "sourcedId,status,dateLastModified,lineItemSourcedId,studentSourcedId,scoreStatus,score,scoreDate,comment,textScore,classSourcedId,inProgress,incomplete,late,missing\n" +
		"tables.vbt-kax9,,,tables,k-101,fully graded,2,2026-12-01,,,,false,false,false,false\n" +
		"tables.kh8-a7q8,,,tables,k-102,partially graded,,2026-12-01,,,,false,true,false,false\n" +
		"tables.k2g-aq5g,,,tables,k-103,not submitted,,2026-12-01,,,,false,false,false,true\n"; roster.String() != want {
		t.Errorf("%s, want %s", roster.String(), want)
	}
	rows, err := workbookRows("marks.xlsx", book.Bytes(), 100, func(Note) {})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, r := range rows {
		got = append(got, strings.Join(r.cells, "|"))
	}
	if want := "id|name|form|code|handed_in|points|of|open\nk-101|Ada Brink||VBT-KAX9|yes|2|7|0\nk-102|Jörg <Weiß>||KH8-A7Q8|yes|1|7|1\nk-103|=Zoë||K2G-AQ5G|no||7|0"; strings.Join(got, "\n") != want {
		t.Errorf("%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
	again := bytes.Buffer{}
	y, err := NewMarksWorkbook(&again)
	for i := 0; err == nil && i < len(results); i++ {
		err = y.Add(results[i])
	}
	if err == nil {
		err = y.Close()
	}
	if err != nil || !bytes.Equal(again.Bytes(), book.Bytes()) {
		t.Errorf("another run gives another workbook, or %v", err)
	}
}
