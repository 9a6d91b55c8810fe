package bench

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
)

// The words of the bench and the bench agree: everything that it says has words, and
// no words are left over.
func TestEverythingSaidHasWords(t *testing.T) {
	words, err := content.Shipped().Bench()
	if err != nil {
		t.Fatal(err)
	}
	said, wrong := map[string]bool{"over": true, "too-long": true, LinePast: true}, map[string]bool{}
	for _, what := range []string{"mate", "go"} {
		for _, result := range []string{"no-start", "binds", "goes", "shakes", "chips-bind"} {
			said["test-"+what+"-"+result] = true
		}
	}
	said["test-not-go-no-start"] = true
	said["test-not-go-starts-not"], said["test-not-go-goes"] = true, true
	for _, v := range []string{Fits, Binds, Scrap} {
		said["verdict-"+v] = true
	}
	for _, end := range []string{Shoulder, Bottom, Jaws, "dog"} {
		wrong["hit-"+end] = true
	}
	wrong["wrong-groove"], wrong["wrong-line"] = true, true
	files, _ := os.ReadDir(".")
	for _, f := range files {
		if strings.HasSuffix(f.Name(), "_test.go") || !strings.HasSuffix(f.Name(), ".go") {
			continue
		}
		text, err := os.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		for call, into := range map[string]map[string]bool{`s\.(?:say|refuse)\("([a-z-]+)"[,)]`: said, `s\.(?:wrong|once|act|smash)\("([a-z-]+)"[,)]`: wrong} {
			for _, m := range regexp.MustCompile(call).FindAllStringSubmatch(string(text), -1) {
				into[m[1]] = true
			}
		}
		for _, m := range regexp.MustCompile(`say\((?:Scrap|Binds|Fits), "([a-z-]+)"\)|scrap\[.*\]\("([a-z-]+)"\)|o\.Reasons, "([a-z-]+)"\)|return "(crest|root|bore-big|blank-small)"|return \[\]string\{"([a-z-]+)"\}`).FindAllStringSubmatch(string(text), -1) {
			said["reason-"+strings.Join(m[1:], "")] = true
		}
	}
	if len(said) < 60 || len(wrong) < 30 {
		t.Fatalf("only %d sayings and %d mistakes were found: the test looks in the wrong place", len(said), len(wrong))
	}
	for name := range said {
		if words.Says[name] == "" {
			t.Errorf("%q is said and has no words", name)
		}
	}
	for name := range words.Says {
		if !said[name] {
			t.Errorf("%q has words and is never said", name)
		}
	}
	for name := range wrong {
		w := words.Mistakes[name]
		if w.Title == "" || w.What == "" || w.Part+w.Tool+w.You == "" || len(w.Practise) == 0 {
			t.Errorf("the mistake %q wants title, what, one of part, tool and you, and practise", name)
		}
	}
	for name := range words.Mistakes {
		if !wrong[name] {
			t.Errorf("the mistake %q has words and is never made", name)
		}
	}
	for _, v := range Verbs() {
		if words.Moves[v].Write == "" || words.Moves[v].Does == "" {
			t.Errorf("the move %q has no words", v)
		}
		if moves[v] == nil {
			t.Errorf("the move %q does nothing", v)
		}
	}
	for v := range words.Moves {
		if !slices.Contains(Verbs(), v) {
			t.Errorf("words for %q, which is no move", v)
		}
	}
}
