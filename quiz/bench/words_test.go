package bench

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
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
	for _, name := range mistakesInSource(t) {
		wrong[name] = true
	}
	for _, what := range []string{"mate", "go"} {
		for _, result := range []string{"no-start", "binds", "goes", "shakes", "chips-bind"} {
			said["test-"+what+"-"+result] = true
		}
	}
	said["test-not-go-no-start"] = true
	for _, result := range []string{"no-start", "binds", "goes", "shakes", "chips-bind"} {
		said["gauge-"+result] = true
	}
	said["test-not-go-starts-not"], said["test-not-go-goes"] = true, true
	for _, v := range []Verdict{Fits, Binds, Scrap} {
		said["verdict-"+string(v)] = true
	}
	for _, name := range []string{mistakeChatter.Figures(), mistakeHeavy.Figures(), "figures-give"} {
		said[name] = true
	}
	files, _ := os.ReadDir(".")
	for _, f := range files {
		if strings.HasSuffix(f.Name(), "_test.go") || !strings.HasSuffix(f.Name(), ".go") {
			continue
		}
		text, err := os.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`s\.(?:say|refuse)\("([a-z-]+)"[,)]`).FindAllStringSubmatch(string(text), -1) {
			said[m[1]] = true
		}
		for _, m := range regexp.MustCompile(`say\((?:Scrap|Binds|Fits), "([a-z-]+)"\)|scrapIf\(.*, "([a-z-]+)"\)|o\.Reasons, "([a-z-]+)"\)|return "(crest|root|bore-big|blank-small|fault-found|fault-unseen|fault-missed)"|return \[\]string\{"([a-z-]+)"\}`).FindAllStringSubmatch(string(text), -1) {
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

// mistakesInSource are the names of mistakes that the source declares. One that is declared
// and never made, or made by a name that is not declared, is an error.
func mistakesInSource(t *testing.T) []string {
	t.Helper()
	declared, used := map[string]string{}, map[string]bool{}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ValueSpec:
				if kind, ok := n.Type.(*ast.Ident); ok && kind.Name == "MistakeName" {
					declared[n.Names[0].Name], _ = strconv.Unquote(n.Values[0].(*ast.BasicLit).Value)
					return false
				}
			case *ast.CallExpr:
				method, ok := n.Fun.(*ast.SelectorExpr)
				if !ok || !slices.Contains([]string{"wrong", "once", "act", "smash", "madeBefore"}, method.Sel.Name) {
					break
				}
				if lit, ok := n.Args[0].(*ast.BasicLit); ok {
					t.Errorf("%s: the mistake %s is made by its text: declare it", name, lit.Value)
				}
			case *ast.Ident:
				used[n.Name] = true
			}
			return true
		})
	}
	var names []string
	for constant, name := range declared {
		if !used[constant] {
			t.Errorf("the mistake %s is declared and never made", constant)
		}
		names = append(names, name)
	}
	return names
}

// Tasks and cautions about some jobs alone are left out at others.
func TestOnlyForSomeJobs(t *testing.T) {
	words, err := content.Shipped().Bench()
	if err != nil {
		t.Fatal(err)
	}
	inside, outside := shippedJob(t, "gland-nut"), shippedJob(t, "adjusting-screw")
	closed := outside
	closed.Thread.Pitch = calc.Millimetres(2.5) // on an inch lead screw
	for _, c := range []struct {
		job  Job
		want string
	}{
		{outside, "support-work one-full-pass"}, {inside, "withdraw-inside inside-way-out one-full-pass"}, {closed, "support-work half-nut-kept-closed one-full-pass"},
	} {
		got := c.job.about([]string{"withdraw-inside", "inside-way-out", "support-work", "half-nut-kept-closed", "one-full-pass"}, words.OnlyFor)
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %q, want %q", c.job.Thread, got, c.want)
		}
	}
	if all := outside.about([]string{"withdraw-inside"}, content.OnlyFor{}); len(all) != 1 {
		t.Errorf("without a list something is left out: %q", all)
	}
}
