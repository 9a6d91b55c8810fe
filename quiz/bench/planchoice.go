package bench

import (
	"slices"

	"scratchpass/calc"
)

// chosen are a speed and the totals on the compound of its passes.
type chosen struct {
	rpm    int
	totals []calc.Length
}

// choose finds the speed and the cuts: by equal area or by the light schedule, the fewest
// passes that the set-up bears; a slower speed before timid cuts. It reports whether that
// comes to a sensible number of passes; where it does not, the fewest that are borne.
func (p *Plan) choose(angle calc.Angle) (chosen, bool) {
	most, fewest := p.mostFirst(), chosen{}
	for _, floor := range []float64{timid, 0} {
		lists := p.schedules(most, most.Times(floor))
		for _, rpm := range p.speedsFrom(p.RPM) {
			best := p.fewest(lists, rpm, angle)
			n := len(best.totals)
			if n > 0 && (p.Light || n <= p.MostPasses()) {
				return best, true
			}
			if n > 0 && (len(fewest.totals) == 0 || n < len(fewest.totals)) {
				fewest = best
			}
		}
	}
	return fewest, false
}

// fewest is the shortest of the lists that the set-up bears at a speed; none where it bears
// none.
func (p *Plan) fewest(lists [][]calc.Length, rpm int, angle calc.Angle) chosen {
	best := chosen{rpm: rpm}
	for _, totals := range lists {
		if n := len(best.totals); (n == 0 || len(totals) < n) && p.bears(totals, rpm, angle) {
			best.totals = totals
		}
	}
	return best
}

// PrintedPasses are the fewest and the most passes that the table gives for a pitch; between
// its pitches on the straight line, beyond it those of its ends.
func PrintedPasses(pitch calc.Length) (least, most float64) {
	mm, before := pitch.Millimetres(), printedPasses[0]
	for _, row := range printedPasses {
		if mm <= row.pitch {
			share := 0.0
			if row.pitch > before.pitch {
				share = max(0, (mm-before.pitch)/(row.pitch-before.pitch))
			}
			return before.least + share*(row.least-before.least), before.most + share*(row.most-before.most)
		}
		before = row
	}
	return before.least, before.most
}

// MostPasses is how many passes on the compound a card may have for a pitch.
func MostPasses(pitch calc.Length) int {
	_, most := PrintedPasses(pitch)
	return int(wholeDown(most * timesPrinted))
}

// MostPasses is how many passes for each start the card may have.
func (p Plan) MostPasses() int {
	if p.StraightIn() {
		return int(wholeDown(float64(MostPasses(p.Job.Thread.Pitch)) * straightTimes))
	}
	return MostPasses(p.Job.Thread.Pitch)
}

// mostFirst is the greatest first cut that is tried, in lines of the compound's dial.
func (p *Plan) mostFirst() calc.Length {
	first := min(firstFrom+p.Job.Thread.Pitch.Times(firstShare), heaviest).Times(p.Job.firstCutShare())
	if p.Job.Side == calc.Inside {
		first = first.Times(insideShare)
	}
	if p.Light {
		first = first.Times(lightShare)
	}
	if p.Job.InReverse() { // the cut lifts tool and slide
		first = first.Times(reverseShare)
	}
	return p.lines(p.scaled(first), 1)
}

// lightest is the least first cut that is tried.
func (p *Plan) lightest() calc.Length {
	switch {
	case p.Light:
		return min(p.scaled(lightest), p.mostFirst())
	case p.Job.Form() == Acme:
		return p.LeastCut()
	}
	return p.scaled(lightest)
}

// lines is a length in whole lines of the dial that carries the depth, at least so many.
func (p *Plan) lines(l calc.Length, least float64) calc.Length {
	line := p.line()
	return line.Times(max(calc.Round(l.Over(line), 0), least))
}

// speedsFrom are the speeds of the lathe from one down.
func (p *Plan) speedsFrom(rpm int) []int {
	speeds := []int{rpm}
	for _, n := range p.Job.Lathe.Speeds {
		if n < rpm {
			speeds = append(speeds, n)
		}
	}
	slices.Sort(speeds)
	slices.Reverse(speeds)
	return slices.Compact(speeds)
}

// schedules are the lists of totals that may be tried, those with the greatest first cut
// first.
func (p *Plan) schedules(most, floor calc.Length) [][]calc.Length {
	line := p.line()
	var lists [][]calc.Length
	least := p.LeastCut()
	greatest := p.lines(max(p.scaled(p.Job.Thread.Pitch.Times(leastShare)), least), 1)
	if p.Light {
		greatest = least
	}
	for first := most; first >= max(floor, p.lightest())-hair; first -= line {
		for last := greatest; last >= least-hair; last -= line {
			lists = append(lists, p.equalAreaTotals(first, last))
		}
	}
	return lists
}

// LeastCut is the least cut on the compound, in whole lines of its dial.
func (p Plan) LeastCut() calc.Length {
	line, least := p.line(), leastCut
	if p.Job.Lathe.Metric {
		least = calc.Millimetres(leastCutMM)
	}
	return line.Times(wholeUp(p.scaled(least).Over(line)))
}

// equalAreaTotals are the totals of passes that take the same section of chip: the first
// cut times the square root of the pass's number, in whole lines of the dial and by at
// least so much, until no more is left for a pass on the compound.
func (p *Plan) equalAreaTotals(first, least calc.Length) []calc.Length {
	line := p.line()
	totals := []calc.Length{p.scratch()}
	total := totals[0]
	rule, err := p.rule(first)
	if err != nil {
		return nil
	}
	for n := 0; total < p.Leave-line.Times(0.5); n++ {
		next := min(max(total+least, rule(n, total)), p.Leave)
		if next-total < p.LeastCut()-hair { // no crumb gets a pass of its own: it is left for what goes straight in
			break
		}
		total = next
		totals = append(totals, total)
	}
	return totals
}

// rule is the total after each pass, in lines of the dial: by the square root, or by the
// section that a wide tip truly takes.
func (p *Plan) rule(first calc.Length) (func(n int, total calc.Length) calc.Length, error) {
	line := p.Job.Lathe.Compound.Division
	if p.Job.Form() == Acme { // down to a line: so wide a chip is heavier by half with one line more
		_, err := calc.EqualSection(p.Job.flankAngle(), 0, first, p.Job.flat())
		return func(n int, total calc.Length) calc.Length {
			if n == 0 {
				return first
			}
			on, _ := calc.EqualSection(p.Job.flankAngle(), total, first, p.Job.flat()) // its first was looked at
			return total + line.Times(wholeDown(on.Over(line)))
		}, err
	}
	passes, err := calc.PassesForFirstCut(max(p.Leave, first), first)
	if err != nil {
		return nil, err
	}
	totals, err := calc.EqualArea(first.Times(sqrt(passes)), passes)
	return func(n int, _ calc.Length) calc.Length {
		if n >= len(totals) {
			return 0
		}
		return p.lines(totals[n], 1)
	}, err
}

// scratch is the cut of the scratch pass.
func (p *Plan) scratch() calc.Length { return min(p.lines(calc.Thou.Times(1.5), 1), p.Leave) }

// bears reports whether the set-up bears passes at a speed: no chip of them chatters at the
// bench, and none is heavy.
func (p *Plan) bears(totals []calc.Length, rpm int, angle calc.Angle) bool {
	if len(totals) == 0 {
		return false
	}
	b := New(p.Job)
	b.Snug, b.Oiled, b.RPM = true, true, float64(rpm)
	quiet, lag, before := b.quiet(), b.Lag(), calc.Length(0)
	for _, total := range totals {
		depth, err := calc.DepthAfterPass(before, p.deep(total, angle), lag)
		if err != nil {
			return false
		}
		width, err := p.Job.chipWidth(depth, p.flanks())
		if err != nil {
			return false
		}
		if chip := depth - before; chip > noForce {
			force, err := calc.CuttingForce(p.Job.Material, width, chip)
			counted, errToo := calc.CountedWidth(width, chip, fullChip)
			if err != nil || errToo != nil || force > p.Job.heavyForce() || counted > quiet {
				return false
			}
		}
		before = depth
	}
	return true
}
