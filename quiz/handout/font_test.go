package handout

import (
	"strings"
	"testing"
)

func TestFontHasTheSigns(t *testing.T) {
	for _, text := range []string{"° ⌀ ± × ½ – “ ” … √ ≤ ≥ ∠ · ' \"", "Łukasz Zoë Øyvind Ştefan Țăranu Ngũgĩ Đặng Ωμέγα Андрей", "Zoe\u0308 A\u030Angstro\u0308m", "no-break\u00a0space"} {
		if missing := Missing(text); len(missing) > 0 {
			t.Errorf("%q: the font lacks %q", text, missing)
		}
	}
	// What the fixed words of the project use can be printed too.
	if missing := Missing(strings.Join(testWords.TallyColumns, "") + testWords.Rehearsal + testWords.Star); len(missing) > 0 {
		t.Errorf("the font lacks %q", missing)
	}
}

func TestMissing(t *testing.T) {
	for text, want := range map[string]string{
		"Ada 漢字 漢": "字漢", "Michal מיכל": "יכלמ", "smile 😀": "😀", "": "", "Ada\x00\u202e\u200bBell\n": "", "bad \xff byte": "",
	} {
		if got := string(Missing(text)); got != want {
			t.Errorf("%q lacks %q, want %q", text, got, want)
		}
	}
	s := Sheet{Title: "T", Name: "漢字 Ada 😀", Code: "C", Items: []Item{{Number: 1, Text: []string{"a"}}}}
	pages, _ := pagesOf(t, document(t, PDF, testOptions(A4), sheets(s)))
	if text := pageText(pages[0]); !strings.Contains(text, "?? Ada ?") {
		t.Errorf("a letter that the font lacks is not printed as ?: %s", text)
	}
}
