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
