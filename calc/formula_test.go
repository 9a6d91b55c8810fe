package calc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
)

// formulaRow holds one formula: what its function is called with and what the symbols of
// its text stand for then. A symbol is a length, an angle or a plain number.
type formulaRow struct {
	name   string
	text   string
	of     any
	units  string // in which the lengths of text and result stand: "in", "mm" or both
	sample func(r *rand.Rand) (args []any, symbols map[string]any)
}

func row[F any](name string, f calc.Formula[F], units string, sample func(*rand.Rand) ([]any, map[string]any)) formulaRow {
	return formulaRow{name, f.Text, f.Of, units, sample}
}

// Text and function of every formula agree, in the units it stands in: as exactly as the
// text's constants are printed, and not a last place less.
func TestTextAndFunctionAgree(t *testing.T) {
	const seeds = 1000
	for _, f := range formulaRows {
		e, err := parser.ParseExpr(strings.ReplaceAll(f.text, " x ", " * "))
		if err != nil {
			t.Errorf("%s: %q can't be read: %v", f.name, f.text, err)
			continue
		}
		r := rand.New(rand.NewPCG(1, 2))
		agreed := 0
		for range seeds {
			args, symbols := f.sample(r)
			got, err := call(f.of, args)
			if err != nil {
				t.Errorf("%s%v: %v", f.name, args, err)
				break
			}
			for _, unit := range strings.Fields(f.units) {
				want, slack := worth(t, e, symbols, unit)
				if x := in(got, unit); math.Abs(x-want) <= slack+1e-11*(1+math.Abs(want)) {
					agreed++
				} else {
					t.Fatalf("%s%v in %s: the function gives %.9f, %q gives %.9f", f.name, args, unit, x, f.text, want)
				}
			}
		}
		if agreed < seeds {
			t.Errorf("%s: only %d of %d compared", f.name, agreed, seeds)
		}
		t.Run(f.name, func(t *testing.T) { oddly(t, f.of, 300) })
	}
}

// call calls a formula's function and returns the first result, and the error where it
// has one.
func call(of any, args []any) (any, error) {
	in := make([]reflect.Value, len(args))
	for i, a := range args {
		in[i] = reflect.ValueOf(a)
	}
	out := reflect.ValueOf(of).Call(in)
	err, _ := out[len(out)-1].Interface().(error)
	return out[0].Interface(), err
}

// in is the number that stands for a value in a text.
func in(value any, unit string) float64 {
	switch v := value.(type) {
	case calc.Length:
		if unit == "mm" {
			return v.Millimetres()
		}
		return v.Inches()
	case int:
		return float64(v)
	}
	return reflect.ValueOf(value).Float() // an angle in degrees, a speed, a plain number
}

// worth evaluates a text, and says how far the rounding of its constants can reach: of
// those with five decimals and more, half a unit in the last.
func worth(t *testing.T, e ast.Expr, symbols map[string]any, unit string) (x, slack float64) {
	t.Helper()
	x = evaluate(t, e, symbols, unit, nil)
	ast.Inspect(e, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok {
			if _, decimals, _ := strings.Cut(lit.Value, "."); len(decimals) >= 5 {
				slack += math.Abs(evaluate(t, e, symbols, unit, lit) - x)
			}
		}
		return true
	})
	return x, slack
}

// evaluate works a text out. off is a constant to take half a unit in its last place more
// of. Angles are in degrees, as everywhere in the texts.
func evaluate(t *testing.T, e ast.Expr, symbols map[string]any, unit string, off *ast.BasicLit) float64 {
	t.Helper()
	value := func(e ast.Expr) float64 { return evaluate(t, e, symbols, unit, off) }
	switch e := e.(type) {
	case *ast.ParenExpr:
		return value(e.X)
	case *ast.BasicLit:
		x, err := strconv.ParseFloat(e.Value, 64)
		if err != nil {
			t.Fatal(err)
		}
		if e == off {
			_, decimals, _ := strings.Cut(e.Value, ".")
			x += 0.5 * math.Pow10(-len(decimals))
		}
		return x
	case *ast.Ident:
		s, ok := symbols[e.Name]
		if !ok {
			t.Fatalf("no value for %s", e.Name)
		}
		return in(s, unit)
	case *ast.CallExpr:
		x := value(e.Args[0])
		switch name := e.Fun.(*ast.Ident).Name; name {
		case "sqrt":
			return math.Sqrt(x)
		case "cos":
			return math.Cos(x * math.Pi / 180)
		case "tan":
			return math.Tan(x * math.Pi / 180)
		case "atan":
			return math.Atan(x) * 180 / math.Pi
		default:
			t.Fatalf("no function %s", name)
		}
	case *ast.BinaryExpr:
		switch x, y := value(e.X), value(e.Y); e.Op {
		case token.ADD:
			return x + y
		case token.SUB:
			return x - y
		case token.MUL:
			return x * y
		case token.QUO:
			return x / y
		}
	}
	t.Fatalf("can't work out %T", e)
	return 0
}

// formulasInSource finds the exported formulas: values, and functions that return one.
// A value has its text.
func formulasInSource(t *testing.T) map[string]string {
	t.Helper()
	isFormula := func(e ast.Expr) bool {
		index, ok := e.(*ast.IndexExpr)
		if !ok {
			return false
		}
		name, ok := index.X.(*ast.Ident)
		return ok && name.Name == "Formula"
	}
	texts := map[string]string{}
	sources(t, func(_ string, file *ast.File) {
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Name.IsExported() && f.Type.Results != nil && isFormula(f.Type.Results.List[0].Type) {
				texts[f.Name.Name] = ""
			}
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, s := range g.Specs {
				for i, v := range s.(*ast.ValueSpec).Values {
					lit, ok := v.(*ast.CompositeLit)
					if !ok || !isFormula(lit.Type) {
						continue
					}
					text, err := strconv.Unquote(lit.Elts[0].(*ast.BasicLit).Value)
					if err != nil {
						t.Fatal(err)
					}
					texts[s.(*ast.ValueSpec).Names[i].Name] = text
				}
			}
		}
	})
	return texts
}

// A formula that no row above holds is an error, and so is a row under another's name.
func TestEveryFormulaIsHeld(t *testing.T) {
	texts := formulasInSource(t)
	held := map[string]bool{}
	for _, f := range formulaRows {
		held[f.name] = true
		if text, ok := texts[f.name]; !ok || text != "" && text != f.text {
			t.Errorf("the row %s holds %q, the formula of that name is %q", f.name, f.text, text)
		}
	}
	for name := range texts {
		if !held[name] {
			t.Errorf("the formula %s stands in no row", name)
		}
	}
	if len(texts) < 50 {
		t.Errorf("only %d formulas found: the test looks in the wrong place", len(texts))
	}
}
