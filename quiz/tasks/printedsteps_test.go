package tasks_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// A calculator that is fed the printed line gives the printed number.
func TestPrintedStepsReproduceThePrintedAnswer(t *testing.T) {
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		for seed := range draws(300) {
			p := made(t, task, level, s, seed+100, lathe(s, seed))
			for i, step := range p.Working.Steps {
				if step.Formula == "" {
					continue
				}
				with := p.Working.With(i)
				x, err := evaluate(with)
				if err != nil {
					t.Fatalf("%s: step %q: %v", p.Code, with, err)
				}
				places := step.Unit.Places
				slack := 0.0
				if !step.Final {
					places += 2
					slack = 2.1 * math.Pow10(-places) // on the way the last figure may waver
				}
				if got := calc.Fixed(x, places); got != step.Value() && !(step.Unit.Count && parse(t, got) == parse(t, step.Value())) && math.Abs(x-parse(t, step.Value())) > slack {
					t.Errorf("%s: %s = %s gives %s, printed %s", p.Code, step.Formula, with, got, step.Value())
				}
			}
		}
	})
}

func parse(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// evaluate works out a printed expression as a pocket calculator in degrees would.
func evaluate(text string) (float64, error) {
	e, err := parser.ParseExpr(strings.ReplaceAll(text, " x ", " * "))
	if err != nil {
		return 0, err
	}
	var failed error
	var eval func(e ast.Expr) float64
	eval = func(e ast.Expr) float64 {
		switch e := e.(type) {
		case *ast.BasicLit:
			x, err := strconv.ParseFloat(e.Value, 64)
			if err != nil {
				failed = err
			}
			return x
		case *ast.ParenExpr:
			return eval(e.X)
		case *ast.UnaryExpr:
			return -eval(e.X)
		case *ast.BinaryExpr:
			x, y := eval(e.X), eval(e.Y)
			switch e.Op {
			case token.ADD:
				return x + y
			case token.SUB:
				return x - y
			case token.MUL:
				return x * y
			case token.QUO:
				return x / y
			}
		case *ast.CallExpr:
			if f, ok := e.Fun.(*ast.Ident); ok && len(e.Args) == 1 {
				x := eval(e.Args[0])
				switch f.Name {
				case "cos":
					return math.Cos(x * math.Pi / 180)
				case "tan":
					return math.Tan(x * math.Pi / 180)
				case "sqrt":
					return math.Sqrt(x)
				case "atan":
					return math.Atan(x) * 180 / math.Pi
				}
			}
		}
		failed = fmt.Errorf("can't work out %T in %q", e, text)
		return 0
	}
	x := eval(e)
	return x, failed
}
