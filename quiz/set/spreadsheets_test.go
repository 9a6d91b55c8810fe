package set

import (
	"archive/zip"
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
)

const spreadsheetSet = "set: tables\ntitle: Tables\nunits: in\nslots:\n- tasks: [pitch-from-tpi]\n- tasks: [cross-slide-return]\n- tasks: [thread-dial-line]\n" +
	"- tasks: [stop-before-gauging]\n- {tasks: [threading-speed], points: 2}\n- tasks: [compound-travel]\n"

func spreadsheet(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("testdata/spreadsheets/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// verdictLetters write down verdicts in the table below.
var verdictLetters = map[answer.Verdict]string{answer.Right: "R", answer.KnownError: "S", answer.SafeWrong: "P", answer.Unread: "?", Blank: "-", answer.ScrapWrong: "W", answer.Wrong: "W"}

// Answer files as they come out of spreadsheets, marked as a careful person would. The marks
// were written by hand, from the keys: Ada 0.0417 | 0.0060, 0.0085 | 2, 10 | 3 | 46 | 0.0539,
// Jörg 0.0500 | 0.0055, 0.0080 | 1, 9 | 1 | 37 | 0.0584, Zoë 0.0500 | 0.0060, 0.0070 | 6, 14 | 2 |
// 40 | 0.0877. R is right, S a common error, P a part (half) or wrong on the safe
// side, W wrong, - blank, ? left to the
// instructor, D left as well, for it was made a date; then the points.
func TestSpreadsheets(t *testing.T) {
	m := maker(t, spreadsheetSet)
	class, err := ParseRoster("roster", spreadsheet(t, "participants-roster.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if got := fmt.Sprint(class); got != "[{k-101 Ada Brink } {k-102 Jörg Weiß } {k-103 Zoë Ny }]" {
		t.Fatal(got)
	}
	for file, want := range map[string]struct {
		marks    [3]string
		notes    string
		probably string
	}{
		"unicode-text.txt": {marks: [3]string{"RRRRRR 7", "RRPSSS 2.5", "absent"}},
		"big-endian.csv":   {marks: [3]string{"RRRSSS 3", "absent", "S----- 0"}},
		"windows-1252.csv": {marks: [3]string{"absent", "RR?RRR 6", "SRRS-R 3"}, notes: "set-note-1252"},
		"sep-line.csv":     {marks: [3]string{"RRR--- 3", "R-S--- 1", "absent"}},
		"old-lines.csv":    {marks: [3]string{"RRRR-- 4", "absent", "RSP--- 1.5"}},
		"totals.csv":       {marks: [3]string{"RRRRRR 7", "R----- 1", "absent"}, notes: "set-note-totals set-note-totals"},
		"dates.csv": {marks: [3]string{"DRDRRD 4", "DDDRRD 3", "D?WDDP 0"},
			probably: "1/24 or 24/1; 2-10 or 10-2; 1/2 or 2/26 or 2/1; 1/2 or 2/1; 8:10; 1-9 or 9-1 or 1-9-26; 1/2 or 2/26 or 2/1; 3/64 or 64/3; 1-3 or 3-1; 1/4 or 4/26 or 4/1"},
		"odd-answers.csv":  {marks: [3]string{"RRRRRR 7", "------ 0", "RRRRR? 6"}},
		"participants.csv": {marks: [3]string{"SS---- 0", "absent", "------ 0"}},
		"workbook.xlsx": {marks: [3]string{"RRRRRR 7", "DRDRRD 4", "R-R-?? 2"}, notes: "set-note-sheets set-note-totals",
			probably: "1/2 or 2/26 or 2/1; 1-9 or 9-1 or 1-9-26; 3/64 or 1/3 or 3/1"},
	} {
		var notes []string
		answers, err := parseAnswers(file, spreadsheet(t, file), func(n Note) { notes = append(notes, n.Says) })
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		if got := strings.Join(notes, " "); got != want.notes {
			t.Errorf("%s: notes %q, want %q", file, got, want.notes)
		}
		var probably []string
		for i, r := range mark(t, m, class, answers) {
			got := ""
			for _, it := range r.Items {
				letter := verdictLetters[it.Verdict]
				if it.Probably != "" {
					letter = "D"
					probably = append(probably, it.Probably)
				}
				got += letter
			}
			got += " " + points(r.Points)
			if !r.Handed {
				got = "absent"
			}
			if got != want.marks[i] {
				t.Errorf("%s, %s: %s, want %s: %+v", file, r.Name, got, want.marks[i], r.Items)
			}
		}
		if got := strings.Join(probably, "; "); got != want.probably {
			t.Errorf("%s: probably %q, want %q", file, got, want.probably)
		}
	}
}

// What a spreadsheet makes a date of is recognised; what looks a little like one is not.
func TestMangled(t *testing.T) {
	m := maker(t, spreadsheetSet)
	all := items(t, m, "k-101")
	for text, want := range map[string]string{
		"01-Feb": "1/2 or 2/1", "1-Feb": "1/2 or 2/1", "04-Mar": "3/4 or 4/3", "16-May": "5/16 or 16/5", "Mar-64": "3/64 or 64/3", "March 2064": "3/64 or 64/3",
		"2026-02-01": "1/2 or 2/26 or 2/1", "2026-02-01T00:00:00Z": "1/2 or 2/26 or 2/1", "1964-03-01": "3/64 or 1/3 or 3/1", "02/01/2026": "1/2 or 2/1", "28/01/2026": "1/28 or 28/1", "13/02/2026": "2/13 or 13/2",
		"02/13/2026": "2/13 or 13/2", "01.02.2026": "1/2 or 2/26 or 2/1", "46054": "1/2 or 2/26 or 2/1", "08:10:00": "8:10", "1:02:00 PM": "1:02",
		"0.0417": "", "1/24": "", "4 marks": "", "8 in": "", "10958": "", "73051": "", "46054.5": "", "4605": "", "14/13/2026": "", "00/00/2026": "", "1-2-3": "", "5 mm": "", "3 dec.": "3/12 or 12/3", "32-Feb": "", "": "",
	} {
		if got := mangled(all[0].Problem, text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if got := mangled(all[2].Problem, "13579"); got != "" { // 1, 3, 5, 7, 9
		t.Error(got)
	}
}

// A workbook that is damaged, packed too tight or no workbook at all is an error that says so,
// never a shorter table.
func TestDamagedWorkbooks(t *testing.T) {
	whole := spreadsheet(t, "workbook.xlsx")
	if _, err := ParseAnswers("x.xlsx", whole); err != nil {
		t.Fatal(err)
	}
	repacked := func(change func(name string, text []byte) []byte) []byte {
		in, err := zip.NewReader(bytes.NewReader(whole), int64(len(whole)))
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		w := zip.NewWriter(&out)
		for _, f := range in.File {
			r, err := f.Open()
			if err != nil {
				t.Fatal(err)
			}
			var text bytes.Buffer
			if _, err := text.ReadFrom(r); err != nil {
				t.Fatal(err)
			}
			part, err := w.Create(f.Name)
			if err == nil {
				_, err = part.Write(change(f.Name, text.Bytes()))
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
		return out.Bytes()
	}
	replaced := func(part, from, to string) []byte {
		return repacked(func(name string, text []byte) []byte {
			if name != part {
				return text
			}
			if !bytes.Contains(text, []byte(from)) {
				t.Fatalf("%s has no %q: %s", part, from, text)
			}
			return bytes.Replace(text, []byte(from), []byte(to), 1)
		})
	}
	const sheet = "xl/worksheets/sheet1.xml"
	for name, c := range map[string]struct {
		text []byte
		want string
	}{
		"cut off":           {whole[:len(whole)-30], "can't be read as a workbook (.xlsx), save it as CSV UTF-8"},
		"a bit over":        {slices.Concat(whole[:900], []byte{whole[900] ^ 0x10}, whole[901:]), "x.xlsx"},
		"another archive":   {replaced("xl/workbook.xml", "<sheets>", "<sheets><!--"), "can't be read as a workbook"},
		"a sheet that ends": {replaced(sheet, "</sheetData>", ""), "can't be read as a workbook"},
		"a text not there":  {replaced(sheet, `t="s"><v>0</v>`, `t="s"><v>-1</v>`), "has a text that is not there"},
		"a column far out":  {replaced(sheet, `r="A2"`, `r="ZZZZZZ2"`), "is no cell of the first 400 columns"},
		"too much": {repacked(func(name string, text []byte) []byte {
			if name == sheet {
				return bytes.Repeat([]byte(" "), usualUnpacked+1)
			}
			return text
		}), "x.xlsx holds more than 16 MiB"},
		"too deep": {replaced(sheet, "<sheetData>", "<sheetData>"+strings.Repeat("<a>", mostDeep)+strings.Repeat("</a>", mostDeep)), "more in it than a table has"},
		"too many": {replaced(sheet, "</sheetData>", strings.Repeat("<a/>", mostElements)+"</sheetData>"), "more in it than a table has"},
	} {
		_, err := ParseAnswers("x.xlsx", c.text)
		if err == nil && name == "a bit over" {
			continue // it may have hit what nobody reads
		}
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

// Whatever a spreadsheet has in it, it is read, or the error says what is wrong.
func FuzzSpreadsheet(f *testing.F) {
	entries, err := os.ReadDir("testdata/spreadsheets")
	if err != nil {
		f.Fatal(err)
	}
	for _, e := range entries {
		f.Add(spreadsheet(f, e.Name()))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		all, err := ParseAnswers("x", text)
		if err != nil && err.Error() == "" {
			t.Error("an error without words")
		}
		for _, g := range all {
			if g.Item < 0 || g.Item > mostItems || strings.ContainsAny(g.Text, "\x1b\n\u202e") {
				t.Errorf("%+v", g)
			}
		}
	})
}
