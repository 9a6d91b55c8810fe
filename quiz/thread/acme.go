package thread

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// AcmeDocument is what can be worked out about an Acme thread, as JSON shows it, in
// inches. It has no limits of size: the tables of ASME B1.5 are not at hand.
type AcmeDocument struct {
	Designation   string   `json:"designation"`
	Form          string   `json:"form"`
	Major         float64  `json:"major"`
	Pitch         float64  `json:"pitch"`
	TPI           float64  `json:"tpi"`
	Lead          float64  `json:"lead"`
	Starts        int      `json:"starts"`
	Hand          string   `json:"hand"`
	Class         *string  `json:"class"`
	PitchDiameter float64  `json:"pitch_diameter"` // basic
	Depth         float64  `json:"depth"`
	ToolFlat      float64  `json:"tool_flat"`
	FlankAngle    float64  `json:"flank_angle"`
	CompoundAngle float64  `json:"compound_angle"`
	LeadAngle     float64  `json:"lead_angle"`
	Unit          string   `json:"unit"`
	Sources       []string `json:"sources"`
}

// OfAcme works an Acme thread out.
func OfAcme(d calc.AcmeDesignation) (AcmeDocument, error) {
	places := machine.InchUnit.Places
	pitchDiameter, err := calc.AcmePitchLine.Of(d.Nominal, d.Pitch)
	if err != nil {
		return AcmeDocument{}, err
	}
	depth, err := calc.AcmeDepth(d.Pitch)
	if err != nil {
		return AcmeDocument{}, err
	}
	flat, err := calc.AcmeToolFlat(d.Pitch)
	if err != nil {
		return AcmeDocument{}, err
	}
	angle, err := calc.LeadAngle(d.Lead(), pitchDiameter)
	if err != nil {
		return AcmeDocument{}, err
	}
	fine := func(l calc.Length) float64 { return calc.Round(l.Inches(), places+2) }
	doc := AcmeDocument{
		Designation: d.String(), Form: "acme", Major: calc.Round(d.Nominal.Inches(), places), Pitch: fine(d.Pitch), TPI: calc.Round(d.TPI.Number(), 4),
		Lead: fine(d.Lead()), Starts: d.Starts, Hand: d.Hand.String(), PitchDiameter: calc.Round(pitchDiameter.Inches(), places),
		Depth: fine(depth), ToolFlat: fine(flat), FlankAngle: calc.AcmeAngle.Degrees(), CompoundAngle: calc.AcmeAngle.Degrees() / 2,
		LeadAngle: calc.Round(angle.Degrees(), 2), Unit: machine.InchUnit.Name, Sources: []string{"jones-1914", "data-sheets", "geometry"},
	}
	if d.Class != "" {
		doc.Class = &d.Class
	}
	return doc, nil
}
