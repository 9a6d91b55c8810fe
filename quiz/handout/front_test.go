package handout

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"scratchpass/quiz/drawing"
)

func TestFormatNamed(t *testing.T) {
	for _, f := range Formats() {
		if got, err := FormatNamed(f.Name); err != nil || got.Ending != f.Ending || got.New == nil {
			t.Errorf("%s: %v %v", f.Name, got, err)
		}
	}
	if _, err := FormatNamed("docx"); err == nil || err.Error() != `format "docx": give pdf, html, text` {
		t.Errorf("docx: %v", err)
	}
}

func TestOptionsAreChecked(t *testing.T) {
	with := func(change func(o *Options)) Options {
		o := testOptions(A4)
		change(&o)
		return o
	}
	for want, o := range map[string]Options{
		`paper "A5": give A4 or Letter`:                                         with(func(o *Options) { o.Paper = "A5" }),
		`paper "": give A4 or Letter`:                                           with(func(o *Options) { o.Paper = "" }),
		"the tally has 11 columns: give 10 at most":                             with(func(o *Options) { o.Words.TallyColumns = make([]string, 11) }),
		`words for a page "${pages}": give ${page} and ${of} and no other name`: with(func(o *Options) { o.Words.Page = "${pages}" }),
	} {
		for _, f := range Formats() {
			if _, err := f.New(io.Discard, o); err == nil || err.Error() != want {
				t.Errorf("%s: %v, want %s", f.Name, err, want)
			}
		}
	}
	if _, err := PDF(io.Discard, with(func(o *Options) { o.Words.Rehearsal = strings.Repeat("care ", 400) })); err == nil || !strings.Contains(err.Error(), "a few lines") {
		t.Errorf("a caution that fills pages: %v", err)
	}
}

// broken is a disk that is full.
type broken struct{}

var errFull = errors.New("the disk is full")

func (broken) Write([]byte) (int, error) { return 0, errFull }

func TestWriterKeepsItsError(t *testing.T) {
	for _, f := range Formats() {
		w, _ := f.New(broken{}, testOptions(A4))
		_ = w.Sheet(fixedSheet())
		if err := w.Close(); !errors.Is(err, errFull) {
			t.Errorf("%s: a full disk gives %v", f.Name, err)
		}
		if err := w.Sheet(fixedSheet()); !errors.Is(err, errFull) {
			t.Errorf("%s: a writer that failed takes a sheet: %v", f.Name, err)
		}

		w, _ = f.New(io.Discard, testOptions(A4))
		if err := w.Close(); !errors.Is(err, errEmpty) {
			t.Errorf("%s: an empty document gives %v", f.Name, err)
		}

		w, _ = f.New(io.Discard, testOptions(A4))
		_ = w.Key(fixedKey())
		if err := w.Close(); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
		for _, err := range []error{w.Close(), w.Sheet(Sheet{}), w.Key(Key{}), w.Tally("", nil), w.Report(Report{})} {
			if !errors.Is(err, errClosed) {
				t.Errorf("%s: after Close: %v", f.Name, err)
			}
		}

		w, _ = f.New(io.Discard, testOptions(A4))
		flat := Sheet{Items: []Item{{Number: 7, Drawing: &drawing.Drawing{Title: "flat", Width: 10}}}}
		if err := w.Sheet(flat); err == nil || err.Error() != `the drawing "flat" of item 7 is 10 by 0: give it a size` {
			t.Errorf("%s: %v", f.Name, err)
		}
	}
}

func TestReportsAreChecked(t *testing.T) {
	for want, r := range map[string]Report{
		`the drawing "flat" of part 2 is 10 by 0: give it a size`:               {Parts: []Part{{}, {Drawing: &drawing.Drawing{Title: "flat", Width: 10}}}},
		"the table of part 1 has no columns: name them":                         {Parts: []Part{{Table: &Table{Rows: [][]string{{}}}}}},
		"row 2 of the table of part 1 has 1 cells: give 2, one for each column": {Parts: []Part{{Table: &Table{[]string{"a", "b"}, [][]string{{"c", "d"}, {"e"}}}}}},
	} {
		for _, f := range Formats() {
			w, _ := f.New(io.Discard, testOptions(A4))
			if err := w.Report(r); err == nil || err.Error() != want {
				t.Errorf("%s: %v, want %s", f.Name, err, want)
			}
		}
	}
	w, _ := PDF(io.Discard, testOptions(A4))
	if err := w.Report(Report{Note: strings.Repeat("care ", 400)}); err == nil || !strings.Contains(err.Error(), "a few lines") {
		t.Errorf("a caution that fills pages: %v", err)
	}
}

// hostile has what no page may hold in every field.
const hostile = "a\x1b[31m\u202eb\x00\u2028c\r\t\u200bd\u009b<script>alert(1)</script>&amp;\"'\xff"

func hostileParts(w Writer) {
	d := &drawing.Drawing{Title: hostile, Twin: hostile, Width: 10, Height: 10, Labels: []drawing.Label{{Text: hostile}}}
	_ = w.Sheet(Sheet{Title: hostile, Name: hostile, Form: hostile, Code: hostile, Facts: []string{hostile}, Items: []Item{
		{Number: 1, Points: hostile, Text: []string{hostile, "x\ny"}, Options: []string{hostile}, Expects: hostile, Unit: hostile, Drawing: d, Caution: true},
		{Number: 2, Readings: []string{hostile}},
	}})
	_ = w.Key(Key{Title: hostile, Name: hostile, Form: hostile, Code: hostile, Items: []KeyItem{
		{Number: 1, Title: hostile, Points: hostile, Answer: hostile, Limits: hostile, Path: hostile, Seen: []Seen{{hostile, hostile}}, Carried: hostile},
	}})
	_ = w.Tally(hostile, []string{hostile})
	_ = w.Report(Report{Title: hostile, Owner: hostile, Facts: []string{hostile}, Note: hostile, Parts: []Part{
		{Heading: hostile, Lines: []string{hostile, "x\ny"}, Table: &Table{[]string{hostile, ""}, [][]string{{hostile, hostile}}}, Drawing: d},
	}})
}

func TestNothingHostileComesOut(t *testing.T) {
	o := testOptions(A4)
	o.Title = hostile
	o.Words.Rehearsal, o.Words.Lang, o.Words.TallyColumns = hostile, `en" onload="x`, []string{hostile}
	for _, f := range Formats() {
		out := string(document(t, f.New, o, hostileParts))
		if f.Name == "pdf" {
			pages, _ := pagesOf(t, []byte(out))
			out = ""
			for _, page := range pages {
				for _, p := range page {
					out += p.text + "\n"
				}
			}
		}
		for _, r := range out {
			if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Zl, r) || r == unicode.ReplacementChar) {
				t.Errorf("%s: %U comes out", f.Name, r)
			}
		}
		if f.Name == "html" && regexp.MustCompile(`(?i)<script|onload="`).MatchString(out) {
			t.Errorf("html is not escaped")
		}
		if f.Name != "html" && strings.Count(out, "<script>") < 10 {
			t.Errorf("%s: a text was lost: %s", f.Name, out)
		}
	}
}

// A document that was begun and not closed leaves its sheets as they were given.
func TestCleaningLeavesTheModelAlone(t *testing.T) {
	s := Sheet{Name: "a\x00b", Items: []Item{{Number: 1, Text: []string{"c\td"}, Options: []string{"e\x00f"}}}}
	k := Key{Items: []KeyItem{{Seen: []Seen{{"g\x00h", ""}}}}}
	r := Report{Facts: []string{"i\x00j"}, Parts: []Part{{Lines: []string{"k\x00l"}, Table: &Table{[]string{"m\x00n"}, [][]string{{"o\x00p"}}}}}}
	document(t, Text, testOptions(A4), func(w Writer) { _, _, _ = w.Sheet(s), w.Key(k), w.Report(r) })
	if p := r.Parts[0]; r.Facts[0] != "i\x00j" || p.Lines[0] != "k\x00l" || p.Table.Columns[0] != "m\x00n" || p.Table.Rows[0][0] != "o\x00p" {
		t.Errorf("the model was changed: %+v", r)
	}
	if s.Name != "a\x00b" || s.Items[0].Text[0] != "c\td" || s.Items[0].Options[0] != "e\x00f" || k.Items[0].Seen[0].Value != "g\x00h" {
		t.Errorf("the model was changed: %+v %+v", s, k)
	}
	if bytes.ContainsRune(document(t, Text, testOptions(A4), sheets(s)), 0) {
		t.Error("a control character comes out")
	}
}
