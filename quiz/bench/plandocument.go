package bench

import (
	"scratchpass/calc"
)

// PlanDocument is the card as JSON shows it. Lengths are in the unit of the lathe's
// dials.
type PlanDocument struct {
	Job      string              `json:"job"`
	Thread   string              `json:"thread"`
	Lathe    string              `json:"lathe"`
	Unit     string              `json:"unit"`
	RPM      int                 `json:"rpm"`
	Fastest  float64             `json:"fastest"`
	TooFast  bool                `json:"too_fast"`
	Unscrews bool                `json:"unscrews_in_reverse"`
	Chatters bool                `json:"chatters"`
	Swing    string              `json:"handle_towards"`
	Overhang float64             `json:"bar_stands_out"`
	Gears    [][2][]int          `json:"gears"`
	Marks    []int               `json:"marks"`
	Closed   bool                `json:"keep_half_nut_closed"`
	Scale    float64             `json:"compound_scale"`
	Depth    float64             `json:"depth"`
	Travel   float64             `json:"travel"`
	Leave    float64             `json:"leave_compound_at"`
	Estimate float64             `json:"rule_of_thumb"`
	Out      float64             `json:"withdraw"`
	Steps    []PlanStepDocument  `json:"steps"`
	Wires    map[string]*float64 `json:"wires"`
	Cautions []string            `json:"cautions"`
}

// PlanStepDocument is one line.
type PlanStepDocument struct {
	Kind     string  `json:"kind"`
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
	d := PlanDocument{Job: job, Thread: p.Job.Thread.String(), Lathe: p.Job.Lathe.Name, Unit: u.Name, RPM: p.RPM, Fastest: calc.Round(p.Fastest, 1),
		TooFast: p.TooFast, Unscrews: p.Unscrews, Chatters: p.Chatters, Swing: p.Job.Swing(), Overhang: shown(p.Overhang), Steps: []PlanStepDocument{},
		Gears: [][2][]int{}, Marks: append([]int{}, p.Marks...), Closed: p.Job.KeepClosed(), Scale: p.Scale.Degrees(), Depth: shown(p.Depth), Travel: shown(p.Travel),
		Leave: shown(p.Leave), Estimate: shown(p.Estimate), Out: shown(p.Out), Cautions: p.Cautions, Wires: map[string]*float64{"best": nil, "over_max": nil, "over_min": nil}}
	for _, t := range p.Trains {
		d.Gears = append(d.Gears, [2][]int{t.Drivers, t.Driven})
	}
	for _, s := range p.Steps {
		d.Steps = append(d.Steps, PlanStepDocument{s.Kind, shown(s.Feed), shown(s.Total), shown(s.Compound), s.Turns, shown(s.Cross), shown(s.Depth)})
	}
	if p.Wire > 0 {
		for name, l := range map[string]calc.Length{"best": p.Wire, "over_max": p.OverMax, "over_min": p.OverMin} {
			x := shown(l)
			d.Wires[name] = &x
		}
	}
	return d
}
