package calc

import "math"

// WireContact returns the exact reading over three wires that lie in the groove of a
// true helical thread: a reference for the approximations of OverWires and
// WireLeadCorrection, not a shop formula.
//
// The flank is the surface z = (r - R) tan a + lead t / (2 pi) at the angle t round
// the thread. A wire with radius w whose axis crosses the x axis at C, tilted by b,
// touches it without cutting in when C is the largest value over the flank of
//
//	x + sqrt(w^2 - u^2),  u = z cos b - y sin b
//
// The wire may tilt, so it sinks to where the contact lies square across it:
//
//	y cos b + z sin b = 0
//
// and M = 2 C + 2 w. Both flanks touch at once, by symmetry.
//
// pitchDiameter is 0.02 to 12 in, lead 0.01 in up to a lead angle of 20 degrees,
// pitch as for WiresFor. Source: geometry; tested against an independent
// optimisation.
func WireContact(pitchDiameter, wire, pitch, lead Length) (Length, error) {
	angle, err := LeadAngle(lead, pitchDiameter)
	err = firstError(err, checkWire(wire, pitch), between("pitch diameter", pitchDiameter, 0.02, LargestNominal),
		inRange("lead angle", angle.Degrees(), 0, 20))
	if err != nil {
		return 0, err
	}
	g := helixGroove{
		w: wire.Inches() / 2, perRadian: lead.Inches() / (2 * math.Pi), tan: Angle(30).Tan(),
		// The groove is half a pitch wide at the pitch line: there the flank stands a
		// quarter of a pitch from the middle.
		root: pitchDiameter.Inches()/2 - pitch.Inches()/4/Angle(30).Tan(),
	}
	c := g.seat(angle.radians())
	return Inches(finite(2*c + 2*g.w)), nil
}

// helixGroove is one flank of a groove; the sharp bottom of the groove lies at the
// radius root.
type helixGroove struct{ w, perRadian, tan, root float64 }

// rest returns how far out the axis of a wire tilted by b rests on the flank:
// the largest C over the flank, found by Newton's method in r and t.
func (g helixGroove) rest(b float64) (c, along float64) {
	sin, cos := math.Sincos(b)
	at := func(r, t float64) (c, along float64) {
		y, z := r*math.Sin(t), (r-g.root)*g.tan+g.perRadian*t
		u := z*cos - y*sin
		if math.Abs(u) >= g.w {
			return math.Inf(-1), 0
		}
		return r*math.Cos(t) + math.Sqrt(g.w*g.w-u*u), y*cos + z*sin
	}
	// Start from the contact of a groove without lead: w cos 30 beside the middle.
	r, t := g.root+g.w*Angle(30).Cos()/g.tan, 0.0
	step := g.w / 8
	best, _ := at(r, t)
	// A pattern search in r and r t is slow and cannot go astray; Newton then polishes.
	for step > g.w*1e-6 {
		moved := false
		for _, d := range [4][2]float64{{step, 0}, {-step, 0}, {0, step / r}, {0, -step / r}} {
			if v, _ := at(r+d[0], t+d[1]); v > best {
				best, r, t, moved = v, r+d[0], t+d[1], true
			}
		}
		if !moved {
			step /= 2
		}
	}
	const h = 1e-5
	for range 4 {
		f := func(i, j float64) float64 { v, _ := at(r+i*h, t+j*h/r); return v }
		f0, fr, fR, ft, fT := f(0, 0), f(1, 0), f(-1, 0), f(0, 1), f(0, -1)
		gr, gt := (fr-fR)/2, (ft-fT)/2
		rr, tt, rt := fr-2*f0+fR, ft-2*f0+fT, (f(1, 1)-f(1, -1)-f(-1, 1)+f(-1, -1))/4
		det := rr*tt - rt*rt
		if !(det > 0) || math.IsInf(det, 0) {
			break
		}
		nr, nt := r-h*(tt*gr-rt*gt)/det, t-h/r*(rr*gt-rt*gr)/det
		if v, _ := at(nr, nt); v < best-1e-14 {
			break
		}
		r, t = nr, nt
		best, _ = at(r, t)
	}
	return at(r, t)
}

// seat returns where the wire comes to lie when it may tilt: the lowest of its
// resting places, by golden-section search round the lead angle.
func (g helixGroove) seat(leadAngle float64) float64 {
	low, high := leadAngle*0.5, leadAngle*1.6+1e-6
	const golden = 0.6180339887498949
	a, b := high-golden*(high-low), low+golden*(high-low)
	ca, _ := g.rest(a)
	cb, _ := g.rest(b)
	for high-low > 1e-7 {
		if ca < cb {
			high, b, cb = b, a, ca
			a = high - golden*(high-low)
			ca, _ = g.rest(a)
		} else {
			low, a, ca = a, b, cb
			b = low + golden*(high-low)
			cb, _ = g.rest(b)
		}
	}
	c, _ := g.rest((low + high) / 2)
	return c
}
