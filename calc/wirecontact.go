package calc

import "math"

// WireContact returns the exact reading over three wires that lie in the groove of a
// true helical thread: a reference for the approximations of OverWires and
// WireLeadCorrection, not a shop formula.
//
// The flank is the surface z = (r - R) tan a + lead t / (2 pi) at the angle t round
// the thread. A wire with radius w may tilt, so it sinks until it touches square
// across itself, and there it touches as a ball would: the normal of the flank at
// the contact p goes through the ball's centre on the x axis,
//
//	p + w n = (C, 0, 0)    and    M = 2 C + 2 w
//
// The second and third components are two equations for r and t, solved by Newton's
// method. The other flank touches at once, by symmetry.
//
// pitchDiameter is 0.02 to 12 in, lead 0.01 in up to a lead angle of 20 degrees,
// pitch as for WiresFor. Source: geometry; tested against an optimisation of a
// tilting wire.
func WireContact(pitchDiameter, wire, pitch, lead Length) (Length, error) {
	angle, err := LeadAngle(lead, pitchDiameter)
	err = firstError(err, checkWire(wire, pitch), between("pitch diameter", pitchDiameter, 0.02, LargestNominal),
		inRange("lead angle", angle.Degrees(), 0, 20))
	if err != nil {
		return 0, err
	}
	tan := Angle(30).Tan()
	w, k := wire.Inches()/2, lead.Inches()/(2*math.Pi)
	// The groove is half a pitch wide at the pitch line: there the flank stands a
	// quarter of a pitch from the middle.
	bottom := pitchDiameter.Inches()/2 - pitch.Inches()/4/tan
	residual := func(r, t float64) (y, z, x float64) {
		sin, cos := math.Sincos(t)
		n := w / math.Sqrt(r*r*tan*tan+k*k+r*r)
		return r*sin + n*(tan*r*sin+k*cos), (r-bottom)*tan + k*t - n*r, r*cos + n*(tan*r*cos-k*sin)
	}
	r, t := bottom+w*Angle(30).Cos()/tan, 0.0 // the contact of a groove without lead
	for range 20 {
		const h = 1e-6
		y, z, _ := residual(r, t)
		yr, zr, _ := residual(r+h, t)
		yt, zt, _ := residual(r, t+h)
		yr, zr, yt, zt = (yr-y)/h, (zr-z)/h, (yt-y)/h, (zt-z)/h
		det := yr*zt - yt*zr
		if det == 0 {
			break
		}
		dr, dt := (y*zt-z*yt)/det, (z*yr-y*zr)/det
		r, t = r-dr, t-dt
		if math.Abs(dr) < 1e-15 && math.Abs(dt) < 1e-15 {
			break
		}
	}
	_, _, centre := residual(r, t)
	return Inches(finite(2*centre + 2*w)), nil
}
