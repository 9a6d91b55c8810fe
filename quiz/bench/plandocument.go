package bench

import (
	"math"

	"scratchpass/calc"
)

// PlanDocument is the card as JSON shows it. Lengths are in the unit of the lathe's
// dials.
type PlanDocument struct {
	Job      string              `json:"job"`
	Thread   string              `json:"thread"`
	Lathe    string              `json:"lathe"`
	Material string              `json:"material"`
	Unit     string              `json:"unit"`
	RPM      *int                `json:"rpm"`     // null where there are no passes, as all that belongs to them
	Fastest  *float64            `json:"fastest"` // null where nothing stands behind the end of the cut
	TooFast  bool                `json:"too_fast"`
	Unscrews bool                `json:"unscrews_in_reverse"`
	NoGroove bool                `json:"no_groove"` // to start in
	Towards  string              `json:"towards"`   // headstock or tailstock: the way of the tool
	Reverse  bool                `json:"spindle_in_reverse"`
	IndexBy  string              `json:"from_start_to_start"` // dial, compound or turn; empty for one start
	ByStart  [][]int             `json:"marks_by_start"`
	Chatters bool                `json:"chatters"`
	Swing    string              `json:"handle_towards"`
	Faults   []string            `json:"faults"`
	Overhang *float64            `json:"bar_stands_out"` // null for an outside thread
	Drive    string              `json:"drive"`          // gears or levers
	Gears    []TrainDocument     `json:"gears"`          // none come near where the list is empty and the drive is gears
	Marks    []int               `json:"marks"`
	Closed   bool                `json:"keep_half_nut_closed"`
	Scale    float64             `json:"compound_scale"`
	Depth    float64             `json:"depth"`
	Travel   float64             `json:"travel"`
	Leave    *float64            `json:"leave_compound_at"`
	Estimate float64             `json:"rule_of_thumb"`
	Out      *float64            `json:"withdraw"`
	Cuts     string              `json:"cuts"`          // equal-area or light
	Springs  int                 `json:"spring_passes"` // before each try
	TooMany  int                 `json:"too_many_passes"`
	NoGears  bool                `json:"no_gears"`
	Misses   bool                `json:"misses_the_size"`
	Would    WouldDocument       `json:"would_do"`
	Steps    []PlanStepDocument  `json:"steps"`
	Wires    map[string]*float64 `json:"wires"`
	Cautions []string            `json:"cautions"`
}

// WouldDocument is what would help where the set-up does not bear the cuts: all null and
// false where it does, or where nothing was found.
type WouldDocument struct {
	Bar    *float64 `json:"bar"`
	RPM    *int     `json:"rpm"`
	Centre bool     `json:"centre"`
}

// TrainDocument is one set of change gears.
type TrainDocument struct {
	Drivers []int   `json:"drivers"`
	Driven  []int   `json:"driven"`
	PPM     float64 `json:"ppm"` // error of the lead in parts per million
}

// PlanStepDocument is one line.
type PlanStepDocument struct {
	Kind     string  `json:"kind"`
	Start    int     `json:"start"`
	Feed     float64 `json:"feed"`
	Total    float64 `json:"total"`
	Compound float64 `json:"compound_dial"`
	Turns    int     `json:"turns"`
	Cross    float64 `json:"cross_dial"`
	Depth    float64 `json:"depth"`
}

// Document returns the card for JSON.
func (p Plan) Document(job string) PlanDocument {
	u := p.Job.System().Length()
	shown := func(l calc.Length) float64 { return calc.Round(l.Inches()*u.Factor, u.Places) }
	d := PlanDocument{Job: job, Thread: p.Job.Thread.String(), Lathe: p.Job.Lathe.Name, Material: p.Job.Material.String(), Unit: u.Name, NoGroove: p.NoGroove, Towards: p.Job.Towards, Reverse: p.Job.InReverse(), IndexBy: p.IndexBy, ByStart: append([][]int{}, p.StartMarks...),
		TooFast: p.TooFast, Unscrews: p.Unscrews, Chatters: p.Chatters, Faults: append([]string{}, p.Faults...), Swing: p.Job.Swing(), Drive: "levers", Steps: []PlanStepDocument{},
		Gears: []TrainDocument{}, Marks: append([]int{}, p.Marks...), Closed: p.Job.KeepClosed(), Scale: p.Scale.Degrees(), Depth: shown(p.Depth), Travel: shown(p.Travel),
		Estimate: shown(p.Estimate), Cautions: p.Cautions, Wires: map[string]*float64{"best": nil, "over_max": nil, "over_min": nil}}
	if p.Fastest > 0 {
		fastest := math.Floor(p.Fastest*10) / 10
		d.Fastest = &fastest
	}
	if p.Passes() {
		leave, out := shown(p.Leave), shown(p.Out)
		d.RPM, d.Leave, d.Out = &p.RPM, &leave, &out
	}
	if p.Job.Side == calc.Inside {
		overhang := shown(p.Overhang)
		d.Overhang = &overhang
	}
	if len(p.Job.Lathe.Gears) > 0 {
		d.Drive = "gears"
	}
	d.Cuts, d.Springs, d.TooMany, d.NoGears, d.Misses, d.Would.Centre = p.Schedule(), p.Springs, p.TooMany, p.NoGears, p.Misses, p.HeldWould
	if p.BarWould > 0 {
		bar := shown(p.BarWould)
		d.Would.Bar = &bar
	}
	if p.SpeedWould > 0 {
		d.Would.RPM = &p.SpeedWould
	}
	for _, t := range p.Trains {
		d.Gears = append(d.Gears, TrainDocument{t.Drivers, t.Driven, calc.Round(t.PPM, 1)})
	}
	for _, s := range p.Steps {
		d.Steps = append(d.Steps, PlanStepDocument{s.Kind, s.Start, shown(s.Feed), shown(s.Total), shown(s.Compound), s.Turns, shown(s.Cross), shown(s.Depth)})
	}
	if p.Wire > 0 {
		for name, l := range map[string]calc.Length{"best": p.Wire, "over_max": p.OverMax, "over_min": p.OverMin} {
			x := shown(l)
			d.Wires[name] = &x
		}
	}
	return d
}
