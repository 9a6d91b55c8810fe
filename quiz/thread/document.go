// Package thread works out everything about one thread.
package thread

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Document is everything about one thread, as JSON shows it. Lengths are in
// the thread's own unit. What the standard does not give, and what nobody can measure
// (wires in a bore), is null.
type Document struct {
	Designation string             `json:"designation"`
	Major       float64            `json:"major"`
	Pitch       float64            `json:"pitch"`
	Lead        float64            `json:"lead"`
	Starts      int                `json:"starts"`
	Hand        string             `json:"hand"`
	Side        *string            `json:"side"`
	Class       *string            `json:"class"`
	Allowance   *float64           `json:"allowance"`
	Limits      *ThreadLimits      `json:"limits"`
	NoLimits    *string            `json:"no_limits"` // why limits is null
	Depths      map[string]float64 `json:"depths"`
	Bore        *float64           `json:"bore"`       // to aim for: inside threads with limits
	BasicBore   float64            `json:"basic_bore"` // the smallest that the form allows
	Wires       ThreadWires        `json:"wires"`
	LeadAngle   float64            `json:"lead_angle"`
	Unit        string             `json:"unit"`
	Sources     []string           `json:"sources"`
}

// ThreadLimits are the limits of size.
type ThreadLimits struct {
	Major LimitPair `json:"major"`
	Pitch LimitPair `json:"pitch"`
	Minor LimitPair `json:"minor"`
}

// LimitPair is a largest and a smallest size; null where the standard gives none.
type LimitPair struct {
	Max *float64 `json:"max"`
	Min *float64 `json:"min"`
}

// ThreadWires are the wires for measuring; OverBest is the reading over the best
// wire at the middle of the pitch diameter's limits, or at the basic one. All are null
// for an inside thread.
type ThreadWires struct {
	Best     *float64 `json:"best"`
	Least    *float64 `json:"least"`
	Largest  *float64 `json:"largest"`
	OverBest *float64 `json:"over_best"`
}

// Of works a thread out.
func Of(d calc.Designation) (Document, error) {
	u := machine.InchUnit
	if d.Metric {
		u = machine.MMUnit
	}
	shown := func(l calc.Length) float64 { return calc.Round(l.Inches()*u.Factor, u.Places) }
	// Pitch and wires carry two more places: they are steps on the way to a size.
	fine := func(l calc.Length) float64 { return calc.Round(l.Inches()*u.Factor, u.Places+2) }
	basicPitch, err := calc.BasicPitchDiameter(d.Nominal, d.Pitch)
	if err != nil {
		return Document{}, err
	}
	bore, err := calc.BasicInternalMinor(d.Nominal, d.Pitch)
	if err != nil {
		return Document{}, err
	}
	doc := Document{
		Designation: d.String(), Major: shown(d.Nominal), Pitch: fine(d.Pitch), Lead: fine(d.Lead()), Starts: d.Starts, Hand: d.Hand.String(),
		BasicBore: shown(bore), Unit: u.Name, Sources: []string{"b1-1", "navy", "geometry"},
	}
	if d.Metric {
		doc.Sources = []string{"iso-261", "iso-965", "navy", "geometry"}
	}
	pitchDiameter := basicPitch
	side, known := d.Side()
	if known {
		name := side.String()
		doc.Side, doc.Class = &name, &d.Class
	}
	if l, err := calc.LimitsOf(d); err != nil {
		why := err.Error()
		doc.NoLimits = &why
	} else {
		pitchDiameter = l.Pitch.Middle()
		doc.limited(l, shown)
	}
	if doc.Depths, err = depths(d, side, fine); err != nil {
		return doc, err
	}
	if side == calc.Outside {
		if doc.Wires, err = wires(d.Pitch, pitchDiameter, fine, shown); err != nil {
			return doc, err
		}
	}
	angle, err := calc.LeadAngle(d.Lead(), basicPitch)
	doc.LeadAngle = calc.Round(angle.Degrees(), 2)
	return doc, err
}

// limited fills in the limits of size and what follows from them.
func (doc *Document) limited(l calc.Limits, shown func(calc.Length) float64) {
	doc.Limits = &ThreadLimits{Pitch: pair(l.Pitch, shown), Major: pair(l.Major, shown), Minor: pair(l.Minor, shown)}
	if l.Side == calc.Outside {
		allowance := shown(l.Allowance)
		doc.Allowance = &allowance
		return
	}
	least, bore := shown(l.Major.Min), shown(l.Minor.Middle())
	doc.Limits.Major.Min, doc.Bore = &least, &bore
}

func wires(pitch, pitchDiameter calc.Length, fine, shown func(calc.Length) float64) (ThreadWires, error) {
	w, err := calc.WiresFor(pitch)
	if err != nil {
		return ThreadWires{}, err
	}
	reading, err := calc.OverWires(pitchDiameter, w.Best, pitch)
	if err != nil {
		return ThreadWires{}, err
	}
	best, least, largest, over := fine(w.Best), fine(w.Least), fine(w.Largest), shown(reading)
	return ThreadWires{&best, &least, &largest, &over}, nil
}

func pair(s calc.Span, shown func(calc.Length) float64) LimitPair {
	if !s.Given {
		return LimitPair{}
	}
	most, least := shown(s.Max), shown(s.Min)
	return LimitPair{&most, &least}
}

// depths are the single depths: the book's, and for tools with a sharp point or a
// usual flat, from a nominal blank or the basic bore.
func depths(d calc.Designation, side calc.Side, fine func(calc.Length) float64) (map[string]float64, error) {
	form, fromStart := calc.UnifiedExternal, calc.RadialDepthFromNominal
	flats := map[string]float64{"sharp_tool": 0, "flat_p8": 1.0 / 8, "flat_p6": 1.0 / 6, "flat_p4": 1.0 / 4}
	if side == calc.Inside {
		form, fromStart = calc.BasicInternal, calc.RadialDepthFromBasicBore
		flats = map[string]float64{"sharp_tool": 0, "flat_p16": 1.0 / 16, "flat_p8": 1.0 / 8}
	}
	book, err := calc.RadialDepthOfForm(d.Pitch, form)
	if err != nil {
		return nil, err
	}
	all := map[string]float64{"book": fine(book)}
	for name, share := range flats {
		h, err := fromStart(d.Pitch, d.Pitch.Times(share))
		if err != nil {
			return nil, err
		}
		all[name] = fine(h)
	}
	return all, nil
}
