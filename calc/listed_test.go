package calc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"
)

// sources calls do for every file of the package that is no test.
func sources(t *testing.T, do func(name string, file *ast.File)) {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		do(e.Name(), file)
	}
}

// exported calls do for every exported function and method.
func exported(t *testing.T, do func(file string, f *ast.FuncDecl)) {
	t.Helper()
	sources(t, func(name string, file *ast.File) {
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Name.IsExported() {
				do(name, f)
			}
		}
	})
}

// A function that is not in the list of the odd inputs is a hole in that test.
func TestEverythingIsListed(t *testing.T) {
	found := map[string]bool{}
	exported(t, func(_ string, f *ast.FuncDecl) {
		if f.Recv == nil {
			found[f.Name.Name] = true
			if _, ok := everything[f.Name.Name]; !ok {
				t.Errorf("%s is not in the list", f.Name.Name)
			}
		}
	})
	for name := range everything {
		if !found[name] && name != "UnifiedSizes" {
			t.Errorf("%s is in the list and is no function", name)
		}
	}
}

// Every exported function has a comment that begins with its name.
func TestEverythingIsDocumented(t *testing.T) {
	exported(t, func(file string, f *ast.FuncDecl) {
		if doc := f.Doc.Text(); !strings.HasPrefix(doc, f.Name.Name+" ") {
			t.Errorf("%s: %s has no comment", file, f.Name.Name)
		}
	})
}
