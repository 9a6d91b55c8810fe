package learner

import (
	"maps"
	"testing"
)

// Lines of answers are read, the first to each problem; what is no answer is found by its
// line, and a last line that is torn is no fault.
func TestWrongAnswer(t *testing.T) {
	const one, two = `{"code":"single-depth@1-7f3a","given":"0.05","seconds":3}`, `{"code":"pitch-from-tpi@1-0001","given":"2"}`
	for _, c := range []struct {
		text  string
		wrong int
		given map[string]string
	}{
		{"", 0, map[string]string{}},
		{one + "\n\r\n" + two + "\n", 0, map[string]string{"single-depth@1-7f3a": "0.05", "pitch-from-tpi@1-0001": "2"}},
		{one + "\n" + `{"code":"single-depth@1-7f3a","given":"0.06"}`, 0, map[string]string{"single-depth@1-7f3a": "0.05"}},
		{one + "\n" + two[:20], 0, map[string]string{"single-depth@1-7f3a": "0.05"}},
		{one + "\n" + two[:20] + "\n", 2, nil},
		{"buy oil\n", 1, nil},
		{"buy oil", 1, nil},
		{"{}\n", 1, nil},
		{"[1]\n", 1, nil},
		{one + "\n" + `{"code":"no code","given":"1"}` + "\n", 2, nil},
		{"PK\x03\x04\x00\n", 1, nil},
	} {
		given := map[string]string{}
		if n := wrongAnswer([]byte(c.text), given); n != c.wrong || n == 0 && !maps.Equal(given, c.given) {
			t.Errorf("%q: line %d is wrong, read %q; want %d, %q", c.text, n, given, c.wrong, c.given)
		}
	}
}

// Whatever is in the file, it is read or refused.
func FuzzAnswerFile(f *testing.F) {
	f.Add([]byte("{\"code\":\"single-depth@1-7f3a\",\"given\":\"0.05\",\"seconds\":3}\n\n{\"co"))
	f.Add([]byte("[]\n{}"))
	f.Fuzz(func(t *testing.T, text []byte) {
		given := map[string]string{}
		if n := wrongAnswer(text, given); n < 0 || n == 0 && len(text) < 10 && len(given) > 0 {
			t.Errorf("%q: line %d, %q", text, n, given)
		}
	})
}
