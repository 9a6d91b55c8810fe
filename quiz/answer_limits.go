package quiz

import "scratchpass/calc"

// limits is a size to aim for: anything inside the limits is right.
type limits struct{}

var _ Kind = limits{}

func (limits) Name() string { return "limits" }

func (limits) Read(a *Answer, text string) (Reply, error) { return readQuantity(a.Unit, text) }

func (limits) Same(_ *Answer, x, y Reply, tol float64) bool { return calc.Within(x.X, y.X, tol) }

func (limits) Show(a *Answer, r Reply) string { return a.Unit.Text(r.X) }
