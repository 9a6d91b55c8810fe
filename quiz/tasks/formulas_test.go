package tasks_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
)

// goFiles parses the files of a folder and of those in it that are no tests.
func goFiles(t *testing.T, dir string) map[string]*ast.File {
	t.Helper()
	files := map[string]*ast.File{}
	err := filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		files[path], err = parser.ParseFile(token.NewFileSet(), path, nil, 0)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// textsOfCalc are the texts of all formulas of calc.
func textsOfCalc(t *testing.T) map[string]bool {
	t.Helper()
	texts := map[string]bool{}
	for _, file := range goFiles(t, filepath.Join("..", "..", "calc")) {
		ast.Inspect(file, func(n ast.Node) bool {
			if lit, ok := n.(*ast.CompositeLit); ok && len(lit.Elts) == 2 {
				index, _ := lit.Type.(*ast.IndexExpr)
				if index == nil {
					return true
				}
				if name, ok := index.X.(*ast.Ident); ok && name.Name == "Formula" {
					if text, ok := quoted(lit.Elts[0]); ok {
						texts[text] = true
					}
				}
			}
			return true
		})
	}
	if len(texts) < 50 {
		t.Fatalf("only %d formulas found in calc: the test looks in the wrong place", len(texts))
	}
	for springs := range 7 {
		texts[calc.LeftAfter(springs).Text] = true
	}
	return texts
}

// quoted is the text of a string literal.
func quoted(n ast.Node) (string, bool) {
	lit, ok := n.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil
}

var (
	operator        = regexp.MustCompile(` [x/+-] `)
	decimalConstant = regexp.MustCompile(`\d\.\d`)
	functionCall    = regexp.MustCompile(`\b(sin|cos|tan|atan|sqrt)\(`)
)

// belongsInCalc says why a literal is a formula that calc has or should have; empty for
// one that is none. step tells that it stands as the formula of a step.
func belongsInCalc(text string, step bool, calcHas map[string]bool) string {
	switch {
	case calcHas[text] && (step || operator.MatchString(text)):
		return "is the text of a formula of calc: take it from there"
	case functionCall.MatchString(text):
		return "has a function: make it a formula of calc"
	case operator.MatchString(text) && decimalConstant.MatchString(text):
		return "has a constant: make it a formula of calc"
	}
	return ""
}

// stepFormula is the literal that stands as the formula of a step: the second argument
// of Length, Number and Angle.
func stepFormula(n ast.Node) (ast.Expr, bool) {
	call, ok := n.(*ast.CallExpr)
	if !ok || len(call.Args) < 2 {
		return nil, false
	}
	method, ok := call.Fun.(*ast.SelectorExpr)
	if !ok || method.Sel.Name != "Length" && method.Sel.Name != "Number" && method.Sel.Name != "Angle" {
		return nil, false
	}
	return call.Args[1], true
}

// A formula with a constant or a function, or one that calc has, is not written down
// again in a task. Plain arithmetic on what is given and on earlier steps may be.
func TestFormulasComeFromCalc(t *testing.T) {
	texts := textsOfCalc(t)
	files := goFiles(t, ".")
	for path, file := range goFiles(t, filepath.Join("..", "problem")) {
		files[path] = file
	}
	steps := 0
	for path, file := range files {
		ofStep := map[ast.Expr]bool{}
		ast.Inspect(file, func(n ast.Node) bool {
			if e, ok := stepFormula(n); ok {
				ofStep[e] = true
				steps++
			}
			if e, ok := n.(ast.Expr); ok {
				if text, ok := quoted(e); ok {
					if why := belongsInCalc(text, ofStep[e], texts); why != "" {
						t.Errorf("%s: %q %s", path, text, why)
					}
				}
			}
			return true
		})
	}
	if steps < 40 {
		t.Errorf("only %d steps found: the test looks in the wrong place", steps)
	}
}

// The test above sees what it is to see, and nothing else.
func TestFormulasOfCalcAreTold(t *testing.T) {
	texts := textsOfCalc(t)
	for _, c := range []struct {
		text string
		step bool
		want string
	}{
		{"0.613435 x P", false, "take it from there"},
		{"h", true, "take it from there"},
		{"h", false, ""}, // a symbol
		{"cuts", false, ""},
		{"e x q x q", false, "take it from there"},
		{"1.5 x P", true, "has a constant"},
		{"h / cos(b)", true, "has a function"},
		{"sqrt(p)", false, "has a function"},
		{"d2 - t", true, ""},
		{"d1 - 2 x u", true, ""},
		{"M8x1.25-6g", false, ""}, // a designation
		{"3/4-10 UNC-2A", false, ""},
	} {
		if got := belongsInCalc(c.text, c.step, texts); (c.want == "") != (got == "") || !strings.Contains(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}
