package codefile

import (
	"slices"
	"strings"
	"testing"
)

// What is written is read again, whether or not each question asks how sure someone is.
func TestWrittenIsRead(t *testing.T) {
	for _, q := range []Questions{
		{Codes: []string{"compound-travel@1-7f3a"}},
		{Codes: []string{"compound-travel@1-7f3a", "single-depth@2m-0001"}, Sure: true},
	} {
		var file strings.Builder
		if err := Write(&file, "Week 3", q); err != nil {
			t.Fatal(err)
		}
		got, err := Parse("codes.txt", []byte(file.String()))
		if err != nil || got.Sure != q.Sure || !slices.Equal(got.Codes, q.Codes) {
			t.Errorf("read %+v, %v; written was %+v", got, err, q)
		}
	}
}

// An editor may leave a mark at the beginning, line ends of its own and notes.
func TestEditedFile(t *testing.T) {
	got, err := Parse("codes.txt", []byte("\ufeff# Week 3\r\n\r\n  compound-travel@1-7f3a \r\n# the first is enough\r\n"))
	if err != nil || got.Sure || !slices.Equal(got.Codes, []string{"compound-travel@1-7f3a"}) {
		t.Errorf("read %+v, %v", got, err)
	}
	if _, err := Parse("codes.txt", []byte("# Week 3\ncompound-travel\n")); err == nil || !strings.HasPrefix(err.Error(), "codes.txt, line 2: ") {
		t.Errorf("a line that is no code: %v", err)
	}
}

// A title adds no question, and none is added or lost with it.
func TestTitleIsOnlyATitle(t *testing.T) {
	codes := []string{"compound-travel@1-7f3a"}
	for _, title := range []string{"a\nsingle-depth@2m-0001", "a\r\nsingle-depth@2m-0001", "a\u2028b", "\x1b]0;x\a", "each question asks how sure you are", " each question asks how sure you are ", ""} {
		var file strings.Builder
		if err := Write(&file, title, Questions{Codes: codes}); err != nil {
			t.Fatal(err)
		}
		got, err := Parse("codes.txt", []byte(file.String()))
		if err != nil || got.Sure || !slices.Equal(got.Codes, codes) || strings.ContainsAny(file.String(), "\x1b\a\r") {
			t.Errorf("%q: written %q, read %+v, %v", title, file.String(), got, err)
		}
	}
	var file strings.Builder
	if err := Write(&file, "a", Questions{Codes: []string{"single-depth@2m-0001\n# x"}}); err == nil || file.Len() > 0 {
		t.Errorf("a code of two lines is written: %q, %v", file.String(), err)
	}
}

// Whatever an instructor hands out, it is read or what is wrong has its line.
func FuzzParse(f *testing.F) {
	f.Add("Week 3", []byte("\ufeff# Week 3\r\n\r\n  compound-travel@1-7f3a \r\n# each question asks how sure you are\n"))
	f.Add("a\nb", []byte("single-depth@2m-0001\rsingle-depth@2m-0001"))
	f.Fuzz(func(t *testing.T, title string, text []byte) {
		q, err := Parse("codes.txt", text)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "codes.txt, line ") {
				t.Errorf("%q: %v", text, err)
			}
			return
		}
		var file strings.Builder
		if err := Write(&file, title, q); err != nil {
			t.Fatalf("%q is read as %+v and can't be written: %v", text, q, err)
		}
		again, err := Parse("codes.txt", []byte(file.String()))
		if err != nil || again.Sure != q.Sure || !slices.Equal(again.Codes, q.Codes) {
			t.Errorf("%q with the title %q: written %q, read %+v, %v", text, title, file.String(), again, err)
		}
	})
}
