package bench

import (
	"math"

	"scratchpass/calc"
)

// CutsDry reports whether a metal is cut without oil: cast iron, whose dust and oil make a paste
// that grinds (handbook-fluids), and brass, which may have a light oil (common practice).
func (j Job) CutsDry() bool { return j.Material == calc.CastIron || j.Material == calc.Brass }

// dry reports whether a cut runs dry that wants oil.
func (b Bench) dry() bool { return !b.Oiled && !b.Job.CutsDry() }

// usualSpeed is a usual spindle speed for threading the metal at this diameter.
func (j Job) usualSpeed() (calc.SpindleSpeed, error) {
	return calc.SpindleSpeedFor(j.Material.ThreadingSpeed(), j.Start)
}

// firstCutShare is how much of the usual first cut in mild steel a metal is given: less where
// it is harder to cut, more where it is easier.
func (j Job) firstCutShare() float64 {
	share := math.Sqrt(calc.MildSteel.SpecificForce() / j.Material.SpecificForce())
	return max(hardShare, min(softShare, share))
}

// tipStands is how much force the tip of the thread's tool stands, as a share of what that of
// a 60-degree tool does.
func (j Job) tipStands() float64 {
	if j.Form() == Acme {
		return acmeTip
	}
	return 1
}

// heavyForce and breakingForce are from where the lathe groans, and the tip breaks, in newtons.
func (j Job) heavyForce() float64    { return groansAt * j.tipStands() }
func (j Job) breakingForce() float64 { return breaksAt * j.tipStands() }

func (s *step) oil(Event) {
	s.Oiled = true
	switch s.Job.Material {
	case calc.CastIron:
		s.act(mistakeOiledCastIron)
	case calc.Brass:
		s.say("oiled-brass")
	default:
		s.say("oiled")
	}
}
