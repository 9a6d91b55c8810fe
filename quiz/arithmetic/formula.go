package arithmetic

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/vm"

	"scratchpass/calc"
)

// MostFormula is the longest text of a formula, in letters.
const MostFormula = 300

// Formula is a formula over named numbers, as an instructor writes it: "L / (s + w)". It
// has what a sum on the calculator has, and the functions of FormulaNames.
type Formula struct {
	Text string // as it was written
	Uses []string

	signs   string // with the signs of the library
	program *vm.Program
}

// symbolForm is what a number of a formula may be called.
var symbolForm = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]{0,7}$`)

// CheckSymbol returns an error unless a number of a formula may be called so.
func CheckSymbol(name string) error {
	switch {
	case !symbolForm.MatchString(name):
		return fmt.Errorf("%s can't stand in a formula: give a letter, and up to 7 letters or figures behind it", calc.Quoted(name))
	case name == "pi" || formulaFunctions[name] != nil || slices.Contains(wordsOfLibrary, name):
		return fmt.Errorf("%s has a meaning of its own in formulas: choose another letter", calc.Quoted(name))
	}
	return nil
}

// wordsOfLibrary are words that the library for expressions reads as signs.
var wordsOfLibrary = []string{"and", "or", "not", "in", "let", "if", "else", "nil", "true", "false", "matches", "contains", "env"}

// NewFormula reads a formula whose numbers have these names. The error says what is wrong
// with it, quoted.
func NewFormula(text string, names []string) (*Formula, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return nil, errors.New("the formula is empty")
	}
	if len(text) > MostFormula {
		return nil, fmt.Errorf("the formula has more than %d letters: put a part of it into steps", MostFormula)
	}
	if symbol := assigned.FindString(text); symbol != "" {
		return nil, cannot(text, "leave "+symbol+" out: the letter stands in symbol")
	}
	signs := withSigns(text, names)
	tree, err := parser.Parse(signs)
	if err != nil {
		return nil, cannot(text, whyNot(signs, firstLine(err), names))
	}
	look := &looker{names: names}
	ast.Walk(&tree.Node, look)
	if look.wrong != "" {
		return nil, cannot(text, look.wrong)
	}
	env := map[string]any{"pi": math.Pi}
	for name, f := range formulaFunctions {
		env[name] = f
	}
	for _, name := range names {
		env[name] = 0.0
	}
	program, err := expr.Compile(signs, expr.Env(env), expr.DisableAllBuiltins(), expr.MaxNodes(200), expr.AsFloat64(), expr.Patch(decimals{}))
	if err != nil {
		return nil, cannot(text, firstLine(err))
	}
	slices.Sort(look.uses)
	return &Formula{Text: text, Uses: slices.Compact(look.uses), signs: signs, program: program}, nil
}

var (
	// assigned is what stands in front of an equals sign: m = r * W.
	assigned = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]*\s*=`)
	// besides finds two terms with nothing between them.
	besides = regexp.MustCompile(`[A-Za-z0-9.)]\s+[A-Za-z0-9.(]|[0-9)]\s*[A-Za-z(]`)
	// timesX finds an x between two terms. Beside letters it stands by itself.
	timesX = regexp.MustCompile(`([0-9.)]\s*|[A-Za-z0-9]\s+)[xX](\s*[0-9.(-]|\s+[A-Za-z])`)
)

// withSigns writes the signs of school and shop as the library knows them. An x between two
// terms is times, as workings print it, unless a number of the formula is called x.
func withSigns(text string, names []string) string {
	text = strings.NewReplacer("×", "*", "·", "*", "÷", "/", "−", "-").Replace(text)
	if slices.Contains(names, "x") || slices.Contains(names, "X") {
		return text
	}
	for range 2 { // what stood behind one x may stand in front of the next
		text = timesX.ReplaceAllString(text, "$1*$2")
	}
	return text
}

// whyNot words why a formula could not be read; library is what the library says.
func whyNot(text, library string, names []string) string {
	switch {
	case slices.Contains(names, "x") && besides.MatchString(text):
		return "times is written *, for x is a number of this question"
	case besides.MatchString(text):
		return "times is written *, as in 2 * a"
	}
	return library
}

// firstLine is what the library says without the picture below it.
func firstLine(err error) string {
	first, _, _ := strings.Cut(err.Error(), "\n")
	return first
}

// Value works the formula out. It is an error when it has no value with these numbers.
func (f *Formula) Value(numbers map[string]float64) (float64, error) {
	env := make(map[string]any, len(numbers)+len(formulaFunctions)+1)
	env["pi"] = math.Pi
	for name, f := range formulaFunctions {
		env[name] = f
	}
	for name, x := range numbers {
		env[name] = x
	}
	out, err := expr.Run(f.program, env)
	x, ok := out.(float64)
	switch {
	case err != nil || !ok:
		return 0, cannot(f.Text, "it fails with these numbers")
	case math.IsNaN(x) || math.IsInf(x, 0):
		return 0, cannot(f.Text, "it has no value with these numbers")
	}
	return x, nil
}

// looker goes through a formula and finds what it uses, and what no formula has.
type looker struct {
	names []string
	uses  []string
	wrong string
}

// Visit looks at one node. The library calls it.
func (l *looker) Visit(node *ast.Node) {
	if l.wrong != "" {
		return
	}
	switch n := (*node).(type) {
	case *ast.IntegerNode, *ast.FloatNode:
	case *ast.UnaryNode:
		l.sign(n.Operator, "+", "-")
	case *ast.BinaryNode:
		l.sign(n.Operator, "+", "-", "*", "/", "^")
	case *ast.IdentifierNode:
		l.name(n.Value)
	case *ast.CallNode:
		if callee, ok := n.Callee.(*ast.IdentifierNode); !ok || formulaFunctions[callee.Value] == nil {
			l.wrong = "only functions can have brackets behind them; times is written *"
		}
	case *ast.BuiltinNode:
		l.builtin(n.Name)
	default:
		l.wrong = "a formula has numbers, letters, + - * / ^, brackets and functions"
	}
}

// builtin looks at a function that the library has as well: ours is taken, if there is one.
func (l *looker) builtin(name string) {
	if formulaFunctions[name] == nil {
		l.name(name)
	}
}

func (l *looker) sign(sign string, known ...string) {
	if !slices.Contains(known, sign) {
		l.wrong = "the sign " + sign + " is not known; known are + - * / ^"
	}
}

func (l *looker) name(name string) {
	switch {
	case slices.Contains(l.names, name):
		l.uses = append(l.uses, name)
	case name == "pi", formulaFunctions[name] != nil:
	default:
		l.wrong = calc.Quoted(name) + " is not known; known are " + strings.Join(slices.Concat(l.names, FormulaNames()), ", ")
	}
}

// decimals makes decimals of whole numbers: as such they would overflow.
type decimals struct{}

// Visit makes one. The library calls it.
func (decimals) Visit(node *ast.Node) {
	if n, ok := (*node).(*ast.IntegerNode); ok {
		ast.Patch(node, &ast.FloatNode{Value: float64(n.Value)})
	}
}
