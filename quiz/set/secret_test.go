package set

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What makes a secret weak is seen at a glance; what is made here has no flaw.
func TestFlawsOfSecrets(t *testing.T) {
	path := filepath.Join(t.TempDir(), "secret")
	for text, want := range map[string]string{
		strings.Repeat("a", 16):                         "[short alike]",
		strings.Repeat("a", 40):                         "[alike]",
		"abcabcabcabcabcabcabcabcab":                    "[alike]",
		"correcthorse correcthorse ":                    "[alike]",
		"0123456701234567012345670":                     "[alike]",
		"abababababababababababababc":                   "[alike]", // three different letters
		"abcdefghijklmnopqrstuvw":                       "[short]",
		"abcdefghijklmnopqrstuvwx":                      "[]",
		"a secret that stands in a test, so it is none": "[]",
	} {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if got := fmt.Sprint(Secret(text).Flaws(path)); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
	made := filepath.Join(t.TempDir(), "made")
	s, err := NewSecret(made)
	if err != nil || len(s.Flaws(made)) > 0 {
		t.Errorf("%v, %v", s.Flaws(made), err)
	}
	if os.PathSeparator != '/' {
		return // modes are those of Unix
	}
	for mode, open := range map[os.FileMode]bool{0o600: false, 0o400: false, 0o640: true, 0o604: true, 0o620: true, 0o644: true} {
		if err := os.Chmod(made, mode); err != nil {
			t.Fatal(err)
		}
		if got := len(s.Flaws(made)) > 0; got != open {
			t.Errorf("mode %o: %v", mode, s.Flaws(made))
		}
	}
}
