package page_test

import (
	"reflect"
	"strings"
	"testing"

	"scratchpass/lessons/page"
)

// What a face writes of keys and moments is read as it was meant, and nothing else is.
func TestTaken(t *testing.T) {
	for text, want := range map[string]page.Taken{
		"broken": {Broken: true}, "steps": {Steps: true}, "end 0.000": {},
		"space 2.513, o 9.000, h 9.081, end 9.081": {Presses: []page.Press{{Key: "space", At: 2.513}, {Key: "o", At: 9}, {Key: "h", At: 9.081}}, End: 9.081},
	} {
		got, err := page.ParseTaken(text)
		if err != nil || !reflect.DeepEqual(got, want) || got.String() != text {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "space", "space 1", "end", "end -1", "end NaN", "end 4000", "space 2, end 1", "end 1, space 2", "end 1, end 2", "x 1, end 2", "space 1e400, end 2", strings.Repeat("o 1, ", 30) + "end 2"} {
		if got, err := page.ParseTaken(text); err == nil || !strings.Contains(err.Error(), "can't read the keys") {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
}

func FuzzTaken(f *testing.F) {
	f.Add("space 2.513, space 9.081, end 9.081")
	f.Add("broken")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := page.ParseTaken(text)
		if err != nil {
			return
		}
		again, err := page.ParseTaken(got.String())
		if err != nil || len(again.Presses) != len(got.Presses) || again.Broken != got.Broken || again.Steps != got.Steps {
			t.Errorf("%q is written as %q: %+v, %v", text, got, again, err)
		}
	})
}
