package wording_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/wording"
)

// phrasesNamed are the phrases of a prefix that the sources of a folder name, each whole:
// one that is put together can't be found, and is an error.
func phrasesNamed(t *testing.T, dir, prefix string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, e := range entries {
		if filepath.Ext(e.Name()) != ".go" || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(dir, e.Name()), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				if text, err := strconv.Unquote(lit.Value); err == nil && strings.HasPrefix(text, prefix) {
					named[text] = true
				}
			}
			return true
		})
	}
	if named[prefix] {
		t.Errorf("%s: a phrase is put together from %q: write each out", dir, prefix)
	}
	return slices.Sorted(maps.Keys(named))
}

func words(t *testing.T, task string) *wording.Words {
	t.Helper()
	w, err := wording.Load(content.Shipped(), task)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Every phrase for what would be understood has words, and every such phrase in content is
// one that the reading of answers names.
func TestWantsHaveWords(t *testing.T) {
	var written []string
	for key := range words(t, "single-depth").Phrases {
		if strings.HasPrefix(key, "want-") {
			written = append(written, key)
		}
	}
	slices.Sort(written)
	if named := phrasesNamed(t, filepath.Join("..", "answer"), "want-"); !slices.Equal(named, written) || len(named) < 11 {
		t.Errorf("answers name %q; content has %q", named, written)
	}
}

// What a learner reads who typed something else, whatever was asked for: no name is left
// unfilled, and what was typed is in it.
func TestUnreadTexts(t *testing.T) {
	named := answer.Response{Fields: [][2]string{{"diameter", "10"}, {"pitch", "1.5"}, {"side", "outside"}}}
	row := answer.Expected{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.004, 0.005)}
	w := words(t, "single-depth")
	seen := map[string]bool{}
	for _, c := range []struct {
		e    answer.Expected
		want string // behind "give"
	}{
		{answer.Expected{Kind: answer.Quantity, Unit: machine.InchUnit}, "a length such as 0.0556, 55.6 thou or 3/64"},
		{answer.Expected{Kind: answer.Limits, Unit: machine.MMUnit}, "a length such as 1.411, 1.411 mm or 0.0556 in"},
		{answer.Expected{Kind: answer.Quantity, Unit: machine.DegreeUnit}, "an angle such as 29.5 or 29°30'"},
		{answer.Expected{Kind: answer.Quantity, Unit: machine.PlainUnit}, "a number such as 3 or 0.85"},
		{answer.Expected{Kind: answer.Quantity, Unit: machine.RPMUnit}, "a whole number, such as 12 rpm"},
		{answer.Expected{Kind: answer.Quantity, Unit: machine.TPIUnit}, "a number, such as 12.5 TPI"},
		{answer.Expected{Kind: answer.Choice, Options: []string{"a", "b", "c"}}, "the number of one line, 1 to 3"},
		{answer.Expected{Kind: answer.Several, Options: []string{"1", "2"}}, "the numbers of all that fit with commas between them, such as 1, 3, or all, or none"},
		{answer.Expected{Kind: answer.Order, Options: []string{"a", "b", "c", "d"}}, "the numbers of all the steps in order, such as 2 1 3 4"},
		{row, "2 numbers with a space between them, such as 0.0030 0.0030"},
		{answer.Expected{Kind: answer.Designation, Unit: machine.MMUnit, Key: named}, "all parts in order, such as 10, 1.5, external"},
	} {
		for typed, want := range map[string]string{"": "nothing was typed: give " + c.want, "no idea": `can't read "no idea": give ` + c.want} {
			m := c.e.Mark(typed)
			if m.Verdict != answer.Unread {
				t.Errorf("%s: %q is %s", c.e.Kind.Name(), typed, m.Verdict)
				continue
			}
			seen[m.Unread.Want.Phrase] = true
			if got := w.Unread(m.Unread); got != want || strings.Contains(got, "${") {
				t.Errorf("%s: %q, want %q", c.e.Kind.Name(), got, want)
			}
		}
	}
	for _, phrase := range phrasesNamed(t, filepath.Join("..", "answer"), "want-") {
		if !seen[phrase] {
			t.Errorf("%s is never said", phrase)
		}
	}
	p := remake(t, "single-depth@1-0001")
	if got := w.Feedback(p, p.Mark("deep")).Text(); got != `Not marked: can't read "deep": give a length such as 0.0556, 55.6 thou or 3/64.` {
		t.Errorf("the feedback is %q", got)
	}
}
