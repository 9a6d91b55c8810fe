package bench

import (
	"slices"

	"scratchpass/calc"
)

// Done is why a rehearsal ended that was brought to its end.
const Done = "done"

// Outcome is how the part came out.
type Outcome struct {
	Verdict Verdict
	Reasons []string // names of texts
	Why     string   // what ended the rehearsal: Done, or the name of a mistake
}

// PitchDiameter is the pitch diameter near the start of the thread; ok is false while
// the groove is nowhere half a pitch wide.
func (b Bench) PitchDiameter() (diameter calc.Length, ok bool) {
	return b.pitchAt(b.Job.nearStart())
}

// PitchAtEnd is the pitch diameter at the last thread.
func (b Bench) PitchAtEnd() (diameter calc.Length, ok bool) { return b.pitchAt(b.Job.nearEnd()) }

// metal tells on which side of its limits a pitch diameter lies: 1 metal still to come
// off, 0 inside, -1 too much is off.
func (b Bench) metal(e calc.Length) int {
	limits := b.Job.Limits.Pitch
	big, small := e > limits.Max+hair, e < limits.Min-hair
	switch {
	case big && b.Job.Side == calc.Outside, small && b.Job.Side == calc.Inside:
		return 1
	case big, small:
		return -1
	}
	return 0
}

// goes is how the go gauge, or a mate of the tightest size that must go, takes to the
// thread: "no-start", "binds" or "goes", and "shakes" past the other limit.
func (b Bench) goes() string {
	e, ok := b.PitchDiameter()
	if !ok {
		return "no-start"
	}
	if b.metal(e) > 0 {
		over := e - b.Job.Limits.Pitch.Max
		if b.Job.Side == calc.Inside {
			over = b.Job.Limits.Pitch.Min - e
		}
		if over > b.Job.Thread.Pitch.Times(b.Job.farOff()) {
			return "no-start"
		}
		return "binds"
	}
	end, ok := b.PitchAtEnd()
	switch {
	case !ok || b.metal(end) > 0, b.crest() != "", b.cutSo(leaning), b.cutSo(offCentre), b.cutSo(onCone), b.wrongLead(), b.wrongHand(), b.second():
		return "binds"
	case b.metal(e) < 0:
		return "shakes"
	}
	return "goes"
}

// farOff is by what share of the pitch a thread is too large or too small for its gauge to
// start. A taper gauge starts sooner: a turn of it is a sixteenth of the pitch on the diameter.
func (j Job) farOff() float64 {
	if j.Form() == Pipe {
		return farTurns * calc.PipeTaper
	}
	return farFromSize
}

// notGo is "starts-not" as it should be, "goes" on a thread that is past its size, or
// "no-start" on one that is far from it.
func (b Bench) notGo() string {
	if e, ok := b.PitchDiameter(); ok && b.metal(e) < 0 {
		return "goes"
	}
	if b.goes() == "no-start" { // what the go gauge does not start in, the not-go gauge does not either
		return "no-start"
	}
	return "starts-not"
}

// crest names what else than the flanks is in the way: "crest" for a blank that is too
// big or a bore that is too small, "root" for a groove that is too shallow.
func (b Bench) crest() string {
	must, err := b.Job.rootMust()
	root := b.Job.Start - b.deepest().Times(2)
	if b.Job.Side == calc.Inside {
		root = b.Job.Start + b.deepest().Times(2)
		switch {
		case b.Job.Start < b.Job.Limits.Minor.Min-sizeSlack:
			return "crest"
		case err == nil && root < must-sizeSlack:
			return "root"
		}
		return ""
	}
	switch {
	case b.Job.Start > b.Job.Limits.Major.Max+sizeSlack:
		return "crest"
	case err == nil && root > must+sizeSlack:
		return "root"
	}
	return ""
}

// wrongLead reports whether a wrong lead was cut deeper than a scratch.
func (b Bench) wrongLead() bool {
	return b.cutSo(func(p Pass) bool { return !b.rightLead(p.Lead) })
}

// cutDeep reports whether more than a scratch has been cut.
func (b Bench) cutDeep() bool { return b.deepest() > scratchDepth }

func leaning(p Pass) bool   { return p.Leaning }
func offCentre(p Pass) bool { return p.OffCentre }

// cutSo reports whether more than a scratch was cut by a tool that stood so.
func (b Bench) cutSo(so func(Pass) bool) bool {
	return slices.ContainsFunc(b.all(), func(p Pass) bool { return p.Depth > scratchDepth && so(p) })
}

// second reports whether there is a second groove beside the first.
func (b Bench) second() bool {
	for _, m := range b.Mistakes {
		if m.Name == mistakeWrongLine || m.Name == mistakeWrongGroove || m.Name == mistakeWrongIndex || m.Name == mistakeUnchucked {
			return true
		}
	}
	return false
}

// rough reports whether the ripples of chatter are still there.
func (b Bench) rough() bool {
	quiet := calc.Length(0)
	for i := len(b.Passes) - 1; i >= 0; i-- {
		if b.Passes[i].Chatter {
			return quiet < quietDepth
		}
		quiet += b.Passes[i].Thickness
	}
	return false
}

// outOfLimits names a blank that is too small or a bore that is too big: its crests can
// never be right.
func (b Bench) outOfLimits() string {
	if b.Job.Side == calc.Inside {
		if b.Job.Start > b.Job.Limits.Minor.Max+sizeSlack {
			return "bore-big"
		}
		return ""
	}
	if b.Job.Start < b.Job.Limits.Major.Min-sizeSlack {
		return "blank-small"
	}
	return ""
}

// whyShallow names what kept the tool from the metal.
func (s *step) whyShallow() []string {
	switch {
	case !s.Touched():
		return []string{"never-zeroed"}
	case !s.AtTouch:
		return []string{"zeroed-away"}
	case len(s.Passes) == 0 && !s.Torn:
		return []string{"never-cut"}
	}
	return nil
}

// end ends the rehearsal and judges the part.
func (s *step) end(why string) {
	if s.Over {
		return
	}
	s.endPass()
	if why == Done && s.Turn != 0 {
		s.wrong(mistakeLeftRunning)
	}
	if s.wrongLead() {
		s.wrongThread("wrong-lead")
	}
	if s.wrongHand() {
		s.wrongThread("wrong-hand")
	}
	o := &Outcome{Why: why}
	s.judgeGroove(o)
	if why == Done {
		s.judgeSize(o)
		s.remarks(o)
	} else { // it did not come to an end: nothing more is to be said of the part
		o.say(Scrap, "smashed")
	}
	s.Over, s.Outcome = true, o
	s.say("verdict-" + string(o.Verdict))
}

// say adds a reason. The first verdict stands, unless a later one is scrap.
func (o *Outcome) say(v Verdict, reason string) {
	if o.Verdict == "" || v == Scrap {
		o.Verdict = v
	}
	o.Reasons = append(o.Reasons, reason)
}

// scrapIf says why the part is scrap, where it is.
func (o *Outcome) scrapIf(so bool, reason string) {
	if so {
		o.say(Scrap, reason)
	}
}

// judgeGroove says what spoils a thread however far it has come.
func (s *step) judgeGroove(o *Outcome) {
	o.scrapIf(s.Torn, "torn")
	o.scrapIf(s.second(), "second-groove")
	o.scrapIf(s.wrongLead(), "wrong-lead")
	o.scrapIf(s.wrongHand(), "wrong-hand")
}

// judgeSize holds a finished part to its limits.
func (s *step) judgeSize(o *Outcome) {
	e, ok := s.PitchDiameter()
	end, okEnd := s.PitchAtEnd()
	o.scrapIf(s.pastSize(), "past-size")
	if ok && s.metal(e) < 0 {
		s.once(mistakeCutPastSize, "pitch", s.text(e))
	}
	o.scrapIf(s.cutSo(leaning), "leans")
	o.scrapIf(s.cutSo(offCentre), "off-centre")
	o.scrapIf(s.cutSo(onCone), "on-cone")
	o.scrapIf(s.cutSo(offTaper), "no-taper")
	if what := s.outOfLimits(); what != "" {
		o.say(Scrap, what)
	}
	switch {
	case !ok && s.begun() > 0 && s.begun() < s.starts() && s.cutDeep():
		o.say(Binds, "start-missing")
	case !ok:
		o.say(Binds, "no-depth")
		o.Reasons = append(o.Reasons, s.whyShallow()...)
	case s.metal(e) > 0:
		o.say(Binds, "metal-left")
	case !okEnd || s.metal(end) > 0:
		o.say(Binds, "short-thread")
	}
	if what := s.crest(); what != "" && ok && (what != "root" || s.metal(e) <= 0) { // a groove that is to go deeper still is not too shallow
		o.say(Binds, what)
	}
	if o.Verdict == "" {
		o.say(Fits, "in-limits")
	}
}

// remarks adds what is to be said of a finished part beside its size.
func (s *step) remarks(o *Outcome) {
	if found := s.fault(); found != "" {
		o.Reasons = append(o.Reasons, found)
	}
	if s.rough() {
		o.Reasons = append(o.Reasons, "rough")
	}
	if s.madeBefore(mistakeSwungWrongWay) && s.cutDeep() {
		o.Reasons = append(o.Reasons, "scraped")
	}
	if _, ok := s.PitchDiameter(); ok && len(s.Tests) == 0 {
		o.Reasons = append(o.Reasons, "untested")
	}
}
