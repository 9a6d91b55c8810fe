package calc

import (
	"math"
	"slices"
)

// envelope finds the upper edge of shifted copies of one concave shape.
type envelope struct {
	tip   []corner
	slope float64  // how much shallower a flank is per unit across: the cotangent of its angle
	tools []corner // x and depth of each tip, sorted by x
	stack []piece
}

// piece is a tool that is the deepest from a place on.
type piece struct {
	tool int
	from float64
}

func newEnvelope(t ToolTip, pitch float64, passes []ToolPass) *envelope {
	tip := t.outline()
	e := &envelope{tip: tip, slope: math.Sqrt(3)}
	if t.flank() != VeeFlank {
		e.slope = 1 / t.flank().Tan()
	}
	e.tools = make([]corner, 0, 3*len(passes))
	for _, p := range passes {
		// Into the period round 0, with as many neighbours as reach into it.
		x := p.Across.Inches()
		x -= pitch * math.Round(x/pitch)
		reach := tip[len(tip)-1].x + (p.Radial.Inches()+tip[len(tip)-1].depth)/e.slope
		most := math.Max(1, math.Ceil(reach/pitch))
		for k := -most; k <= most; k++ {
			e.tools = append(e.tools, corner{x + k*pitch, p.Radial.Inches()})
		}
	}
	slices.SortFunc(e.tools, func(a, b corner) int {
		switch {
		case a.x != b.x && a.x < b.x:
			return -1
		case a.x != b.x:
			return 1
		case a.depth > b.depth:
			return -1
		case a.depth < b.depth:
			return 1
		}
		return 0
	})
	for j := range e.tools {
		e.add(j)
	}
	return e
}

// at is how deep tool i cuts at x; below 0 it cuts nothing.
func (e *envelope) at(i int, x float64) float64 {
	t := e.tools[i]
	return t.depth + e.shape(x-t.x)
}

// shape is the outline of the tip with its flanks, 0 at the deepest.
func (e *envelope) shape(x float64) float64 {
	tip := e.tip
	first, last := tip[0], tip[len(tip)-1]
	switch {
	case x <= first.x:
		return first.depth - (first.x-x)*e.slope
	case x >= last.x:
		return last.depth - (x-last.x)*e.slope
	case len(tip) == 2: // a flat
		return 0
	}
	i, _ := slices.BinarySearchFunc(tip, x, func(c corner, x float64) int {
		if c.x < x {
			return -1
		}
		return 1
	})
	a, b := tip[i-1], tip[i]
	return a.depth + (b.depth-a.depth)*(x-a.x)/(b.x-a.x)
}

// add puts the next tool to the right on the edge.
func (e *envelope) add(j int) {
	for len(e.stack) > 0 {
		top := e.stack[len(e.stack)-1]
		x, state := e.cross(top.tool, j)
		switch {
		case state == neverDeeper:
			return
		case state == alwaysDeeper || x <= top.from:
			e.stack = e.stack[:len(e.stack)-1]
		default:
			e.stack = append(e.stack, piece{j, x})
			return
		}
	}
	e.stack = append(e.stack, piece{j, math.Inf(-1)})
}

// cross returns the place from which tool j, which is not left of i, cuts deeper.
// The difference j - i only grows from left to right, and is constant where both
// are flanks.
func (e *envelope) cross(i, j int) (float64, int) {
	a, b := e.tools[i], e.tools[j]
	first, last := e.tip[0], e.tip[len(e.tip)-1]
	diff := func(x float64) float64 { return e.at(j, x) - e.at(i, x) }
	left, right := a.x+first.x, b.x+last.x
	low, high := diff(left), diff(right)
	switch {
	case high <= 0:
		return 0, neverDeeper
	case low >= 0:
		return 0, alwaysDeeper
	}
	// Go through the corners of both to the piece on which the sign changes.
	x0, d0 := left, low
	k, l := 0, 0
	for {
		x1 := right
		if k < len(e.tip) {
			x1 = min(x1, a.x+e.tip[k].x)
		}
		if l < len(e.tip) {
			x1 = min(x1, b.x+e.tip[l].x)
		}
		if k < len(e.tip) && a.x+e.tip[k].x <= x1 {
			k++
		}
		if l < len(e.tip) && b.x+e.tip[l].x <= x1 {
			l++
		}
		if d1 := diff(x1); d1 >= 0 && x1 > x0 {
			return x0 + (x1-x0)*(0-d0)/(d1-d0), crosses
		} else if x1 >= x0 {
			x0, d0 = x1, d1
		}
		if x0 >= right {
			return right, crosses
		}
	}
}

// profile returns the corners of the edge from low to high, the surface where no
// tool has cut.
func (e *envelope) profile(low, high float64) []corner {
	points := make([]corner, 0, len(e.stack)*(len(e.tip)+2)+2)
	put := func(x, depth float64) {
		if n := len(points); n > 0 {
			last := points[n-1]
			if last.depth < 0 && depth > 0 || last.depth > 0 && depth < 0 { // through the surface
				points = append(points, corner{last.x + (x-last.x)*last.depth/(last.depth-depth), 0})
			}
		}
		points = append(points, corner{x, depth})
	}
	if len(e.stack) == 0 {
		return []corner{{low, 0}, {high, 0}}
	}
	for s, p := range e.stack {
		from, to := max(p.from, low), high
		if s+1 < len(e.stack) {
			to = min(to, e.stack[s+1].from)
		}
		if from >= to {
			continue
		}
		put(from, e.at(p.tool, from))
		for _, c := range e.tip {
			if x := e.tools[p.tool].x + c.x; x > from && x < to {
				put(x, e.tools[p.tool].depth+c.depth)
			}
		}
		put(to, e.at(p.tool, to))
	}
	for i := range points {
		points[i].depth = max(points[i].depth, 0)
	}
	return points
}
