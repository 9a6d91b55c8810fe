package calc_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/optimize"

	"scratchpass/calc"
)

// wireByOptimisation finds where a wire comes to rest in the groove of a true helical
// thread, by search: for a tilt, the highest place on the flank that holds it up; over
// the tilts, the lowest. It shares no equation with calc.
func wireByOptimisation(t *testing.T, e, wire, pitch, lead float64) float64 {
	t.Helper()
	w, tan := wire/2, math.Tan(math.Pi/6)
	bottom := e/2 - pitch/4/tan
	rest := func(tilt float64) float64 {
		sin, cos := math.Sincos(tilt)
		problem := optimize.Problem{Func: func(v []float64) float64 {
			r, th := v[0], v[1]/v[0]
			y, z := r*math.Sin(th), (r-bottom)*tan+lead*th/(2*math.Pi)
			u := z*cos - y*sin
			if math.Abs(u) >= w {
				return 10 + math.Abs(u)
			}
			return -(r*math.Cos(th) + math.Sqrt(w*w-u*u))
		}}
		result, err := optimize.Minimize(problem, []float64{bottom + w*1.5, 0.001},
			&optimize.Settings{MajorIterations: 4000, Converger: &optimize.FunctionConverge{Absolute: 1e-17, Iterations: 200}},
			&optimize.NelderMead{SimplexSize: w / 10})
		if err != nil {
			t.Fatal(err)
		}
		return -result.F
	}
	tilt := math.Atan(lead / (math.Pi * e))
	result, err := optimize.Minimize(optimize.Problem{Func: func(v []float64) float64 { return rest(v[0]) }}, []float64{tilt},
		&optimize.Settings{MajorIterations: 200, Converger: &optimize.FunctionConverge{Absolute: 1e-16, Iterations: 40}}, &optimize.NelderMead{SimplexSize: 0.01})
	if err != nil {
		t.Fatal(err)
	}
	return 2*result.F + 2*w
}

// Steep threads lift the wires by about the correction: it is good to a fifth of itself.
func TestWireLeadCorrectionAgainstOptimisation(t *testing.T) {
	for _, c := range []struct{ e, wire, pitch, starts float64 }{
		{0.6850, 0.057735, 0.1, 1}, {0.6850, 0.057735, 0.1, 3}, {0.0958, 0.0144, 0.025, 1}, {0.9188, 0.072, 0.125, 2}, {1.8557, 0.15, 1 / 4.5, 1}, {0.2175, 0.035, 0.05, 1},
	} {
		exact := calc.Inches(wireByOptimisation(t, c.e, c.wire, c.pitch, c.pitch*c.starts))
		plain := must[calc.Length](t)(calc.OverWires(calc.Inches(c.e), calc.Inches(c.wire), calc.Inches(c.pitch)))
		angle := must[calc.Angle](t)(calc.LeadAngle(calc.Inches(c.pitch*c.starts), calc.Inches(c.e)))
		correction := must[calc.Length](t)(calc.WireLeadCorrection(calc.Inches(c.wire), angle))
		if lift := exact - plain; lift <= 0 || math.Abs((correction-lift).Over(lift)) > 0.2 {
			t.Errorf("%+v: correction %.6f, exact %.6f", c, correction.Inches(), lift.Inches())
		}
	}
}

// What spring passes leave is the sum of a series, and the lag of a bar comes out of
// following the passes one by one.
func TestSpringPassesAgainstTheSeries(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		kCut, kBar := random.Float64()*1000, 1+random.Float64()*5000
		lag, err := calc.LagRatio(kCut, kBar)
		if err != nil {
			t.Fatal(err)
		}
		cut, left := random.Float64()*0.02, 0.0
		springs := random.IntN(6)
		left = cut
		for range springs + 1 { // force kCut x taken balances kBar x (left - taken)
			taken := left * kBar / (kCut + kBar)
			left -= taken
		}
		got, err := calc.LeftOnAfterSprings(calc.Inches(cut), lag, springs)
		if err != nil || math.Abs(got.Inches()-left) > 1e-15 {
			t.Fatalf("cut %v lag %v springs %d: %v, want %v (%v)", cut, lag, springs, got, left, err)
		}
	}
}

// The area of a groove is the integral of its width over depth.
func TestGrooveAreaAgainstQuadrature(t *testing.T) {
	for _, flat := range []float64{0, 0.005, 0.0125} {
		for _, h := range []float64{0.01, 0.05, 0.0613} {
			g, err := calc.NewGroove(calc.ToolTip{Flat: calc.Inches(flat)}, 0.1, []calc.ToolPass{{Radial: calc.Inches(h)}})
			want := quad.Fixed(func(d float64) float64 { return flat + 2*(h-d)*math.Tan(math.Pi/6) }, 0, h, 8, nil, 0)
			if err != nil || math.Abs(g.Area()-want) > 1e-12 {
				t.Errorf("flat %v depth %v: %v, want %v (%v)", flat, h, g.Area(), want, err)
			}
		}
	}
}

// A boring bar's give is the double integral of its bending moment.
func TestBarGiveAgainstQuadrature(t *testing.T) {
	const force, overhang, diameter = 911.1, 101.6, 25.4
	i := math.Pi * math.Pow(diameter, 4) / 64
	want := quad.Fixed(func(x float64) float64 { return force * x * x / (calc.SteelModulus * i) }, 0, overhang, 8, nil, 0)
	got, err := calc.BarGive(force, calc.Millimetres(overhang), calc.Millimetres(diameter))
	if err != nil || math.Abs(got.Millimetres()-want) > 1e-12 {
		t.Errorf("%v, want %v (%v)", got.Millimetres(), want, err)
	}
}

// passMove is one pass as the dials are moved for it; a move of nothing is a spring pass.
type passMove struct{ compound, straight, across calc.Length }

// passesOf is where the tip runs with the compound at an angle from the cross-slide line.
func passesOf(moves []passMove, a calc.Angle) []calc.ToolPass {
	passes := make([]calc.ToolPass, len(moves))
	var at calc.ToolPass
	for i, m := range moves {
		at.Radial += m.straight + m.compound.Times(a.Cos())
		at.Across += m.compound.Times(a.Sin()) + m.across
		passes[i] = at
	}
	return passes
}

// randomPasses are compound and straight-in moves with a wrong line now and then.
func randomPasses(r *rand.Rand, pitch calc.Length) []calc.ToolPass {
	moves := make([]passMove, 1+r.IntN(9))
	for i := range moves {
		switch r.IntN(5) {
		case 0: // a spring pass
		case 1:
			moves[i].straight = pitch.Times(r.Float64() * 0.05)
		case 2:
			moves[i].across = pitch.Times(r.Float64() - 0.5)
			moves[i].compound = pitch.Times(r.Float64() * 0.05)
		default:
			moves[i].compound = pitch.Times(r.Float64() * 0.12)
		}
	}
	return passesOf(moves, calc.Angle([]float64{29, 29.5, 30, 0}[r.IntN(4)]))
}

// The groove's area against a general polygon library: the union of the tool's
// polygon at every pass, with its neighbours, inside one pitch.
func TestGrooveAgainstPolygonUnion(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	n := 1000
	if testing.Short() {
		n = 100
	}
	failed := 0
	for i := range n {
		pitch := calc.Inch / calc.Length(4+random.IntN(25))
		tip := calc.ToolTip{Flat: pitch.Times(random.Float64() * 0.2)}
		if random.IntN(3) == 0 {
			tip = calc.ToolTip{Nose: pitch.Times(random.Float64() * 0.1)}
		}
		passes := randomPasses(random, pitch)
		g, err := calc.NewGroove(tip, pitch, passes)
		if err != nil {
			t.Fatal(err)
		}
		want, ok := areaByUnion(tip, pitch.Inches(), passes)
		if !ok {
			failed++
			continue
		}
		if math.Abs(g.Area()-want) > 1e-9 {
			t.Fatalf("list %d: area %.12f, by union %.12f (%+v, pitch %v, %v)", i, g.Area(), want, tip, pitch, passes)
		}
		// The width over depth adds up to the same area.
		depth := g.Depth().Inches()
		if depth == 0 {
			continue
		}
		const slices = 4000
		sum := 0.0
		for k := range slices {
			sum += g.WidthAt(calc.Inches((float64(k)+0.5)/slices*depth)).Inches() * depth / slices
		}
		if math.Abs(sum-want) > 2e-3*want+1e-9 {
			t.Fatalf("list %d: widths add up to %v, area %v", i, sum, want)
		}
	}
	if failed*20 > n {
		t.Errorf("the polygon library gave up on %d of %d lists", failed, n)
	}
}

// areaByUnion clips the tool's polygons to the metal of one pitch and joins them.
func areaByUnion(tip calc.ToolTip, pitch float64, passes []calc.ToolPass) (area float64, ok bool) {
	metal := polygon(-pitch/2, -1, pitch/2, -1, pitch/2, 0, -pitch/2, 0)
	var tools []geom.Geometry
	const up = 0.5
	for _, p := range passes {
		for k := -2.0; k <= 2; k++ {
			x, d := p.Across.Inches()-pitch*math.Round(p.Across.Inches()/pitch)+k*pitch, p.Radial.Inches()
			var xy []float64
			if tip.Nose > 0 {
				r := tip.Nose.Inches()
				for i := range 25 {
					a := (-60 + 5*float64(i)) * math.Pi / 180
					xy = append(xy, x+r*math.Sin(a), -d-(r*math.Cos(a)-r))
				}
			} else if tip.Flat > 0 {
				xy = []float64{x - tip.Flat.Inches()/2, -d, x + tip.Flat.Inches()/2, -d}
			} else {
				xy = []float64{x, -d}
			}
			rx, ry := xy[len(xy)-2], xy[len(xy)-1]
			lx, ly := xy[0], xy[1]
			reach := (up - ry) * math.Tan(math.Pi/6)
			xy = append(xy, rx+reach, up, lx-(up-ly)*math.Tan(math.Pi/6), up)
			tools = append(tools, polygon(xy...))
		}
	}
	joined, err := geom.UnionMany(tools)
	if err != nil {
		return 0, false
	}
	cut, err := geom.Intersection(joined, metal)
	if err != nil {
		return 0, false
	}
	return cut.Area(), true
}

func polygon(xy ...float64) geom.Geometry {
	xy = append(xy, xy[0], xy[1])
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}
