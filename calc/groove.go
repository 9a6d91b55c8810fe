package calc

import (
	"math"
	"slices"
)

// ToolTip is the shape of a tool: two flanks and a tip that is flat or round. Exactly one of
// the two is used: a nose radius above 0 counts.
type ToolTip struct {
	Flat  Length // width of the tip flat, 0 to 0.25 in
	Nose  Length // radius of a round nose, 0 to 0.25 in
	Flank Angle  // how far each flank leans from the tool's middle, 5 to 45 degrees; 0 is that of a 60-degree thread
}

// flank is how far each flank leans.
func (t ToolTip) flank() Angle {
	if t.Flank == 0 {
		return VeeFlank
	}
	return t.Flank
}

// noseSides is into how many straight pieces a round nose is broken: the polygon
// then lies within r/5000 of the arc.
const noseSides = 24

// corner is a point of a shape: across the groove, and how deep.
type corner struct{ x, depth float64 }

// outline returns the corners of the tip from left to right, relative to the tip's
// middle, with the flanks starting at the first and last. Depth 0 is the deepest.
func (t ToolTip) outline() []corner {
	if t.Nose <= 0 {
		half := t.Flat.Inches() / 2
		if half == 0 {
			return []corner{{0, 0}}
		}
		return []corner{{-half, 0}, {half, 0}}
	}
	// The arc touches the flanks where its tangent is theirs: with flanks at 30 degrees
	// that is 60 degrees from the bottom.
	side := 90 - t.flank().Degrees()
	r := t.Nose.Inches()
	points := make([]corner, 0, noseSides+1)
	for i := range noseSides + 1 {
		a := Angle(-side + 2*side*float64(i)/noseSides)
		points = append(points, corner{r * a.Sin(), r*a.Cos() - r})
	}
	return points
}

// ToolPass is where the tip of the tool ran: how far across and how deep.
type ToolPass struct {
	Across Length // along the bed; 0 is where the first pass touched
	Radial Length // depth below the surface, 0 to 1 in
}

// Groove is what a list of passes has cut, in the section along the axis, over one
// pitch: a polygon, exact for the tool's own polygon.
type Groove struct {
	pitch   float64
	profile []corner // from left to right over one pitch; depth 0 is the surface
}

// NewGroove returns the groove that passes of a tool have cut in a thread of this
// pitch. The groove repeats with the pitch: what a neighbouring groove cuts away is
// gone too.
//
// It is the upper edge of all passes, taken together: metal never comes back. For
// shapes that are alike but for a shift, any two cross at most once, so the edge is
// found in one sweep from left to right.
func NewGroove(tip ToolTip, pitch Length, passes []ToolPass) (Groove, error) {
	err := firstError(checkPitch(pitch), between("tool flat", tip.Flat, 0, 0.25), between("nose radius", tip.Nose, 0, 0.25), inRange("angle of a flank", tip.flank().Degrees(), 5, 45),
		inRange("number of passes", float64(len(passes)), 0, 2000))
	if err != nil {
		return Groove{}, err
	}
	for _, p := range passes {
		if err := firstError(between("depth of a pass", p.Radial, 0, 1), between("place of a pass", p.Across, -4, 4)); err != nil {
			return Groove{}, err
		}
	}
	g := Groove{pitch: pitch.Inches()}
	e := newEnvelope(tip, g.pitch, passes)
	g.profile = e.profile(-g.pitch/2, g.pitch/2)
	return g, nil
}

// How tool j, right of tool i, stands to it.
const (
	crosses = iota
	neverDeeper
	alwaysDeeper
)

// Point is a corner of a groove.
type Point struct{ Across, Radial Length }

// Points returns the corners over one pitch, from left to right; depth 0 is the
// surface.
func (g Groove) Points() []Point {
	points := make([]Point, len(g.profile))
	for i, c := range g.profile {
		points[i] = Point{Inches(c.x), Inches(c.depth)}
	}
	return points
}

// Area returns the section cut away over one pitch, in square inches.
func (g Groove) Area() float64 {
	sum := 0.0
	for i := 1; i < len(g.profile); i++ {
		a, b := g.profile[i-1], g.profile[i]
		sum += (b.x - a.x) * (a.depth + b.depth) / 2
	}
	return sum
}

// Depth returns how deep the deepest point lies.
func (g Groove) Depth() Length {
	deepest := 0.0
	for _, c := range g.profile {
		deepest = max(deepest, c.depth)
	}
	return Inches(deepest)
}

// WidthAt returns how wide the groove is at a depth: how much of one pitch is cut at
// least so deep. At depth 0 it is the width at the surface.
func (g Groove) WidthAt(radial Length) Length {
	d := radial.Inches()
	sum := 0.0
	for i := 1; i < len(g.profile); i++ {
		a, b := g.profile[i-1], g.profile[i]
		switch deep, flat := max(a.depth, b.depth), a.depth == b.depth; {
		case deep < d, deep <= 0, math.IsNaN(d):
		case flat, min(a.depth, b.depth) >= d:
			sum += b.x - a.x
		default:
			sum += (b.x - a.x) * (deep - d) / math.Abs(a.depth-b.depth)
		}
	}
	return Inches(sum)
}

// PitchLine returns the depth at which the groove is half a pitch wide. ok is false
// while it is nowhere so wide, or everywhere wider.
func (g Groove) PitchLine() (radial Length, ok bool) {
	half := Inches(g.pitch / 2)
	depths := make([]float64, 0, len(g.profile)+1)
	for _, c := range g.profile {
		depths = append(depths, c.depth)
	}
	slices.Sort(depths)
	if len(depths) == 0 || g.WidthAt(0) < half {
		return 0, false
	}
	// The width falls from the surface down, in straight pieces between the depths of
	// the corners.
	for i := 1; i < len(depths); i++ {
		above, below := Inches(depths[i-1]), Inches(depths[i])
		if below <= above {
			continue
		}
		// Just below a level floor the width jumps: measure from inside the piece.
		mid := (above + below).Times(0.5)
		at := g.WidthAt(mid)
		slope := (at - g.WidthAt(below)).Over(below - mid)
		top, bottom := at+(mid-above).Times(slope), at-(below-mid).Times(slope)
		if top >= half && bottom <= half && slope > 0 {
			return above + (top - half).Times(1/slope), true
		}
		if top < half {
			return above, true
		}
	}
	return 0, false
}

// PitchDiameter returns the pitch diameter of a thread cut into a blank or a bore of
// this diameter:
//
//	E = d - 2 x pitch line   outside
//	E = d + 2 x pitch line   inside
//
// ok is false while the groove is nowhere half a pitch wide.
func (g Groove) PitchDiameter(side Side, start Length) (diameter Length, ok bool) {
	line, ok := g.PitchLine()
	if side == Inside {
		line = -line
	}
	return start - line.Times(2), ok
}
