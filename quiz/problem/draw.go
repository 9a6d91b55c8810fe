package problem

import (
	"hash/fnv"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"strconv"
	"sync"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Level is how much a problem leaves to the learner.
type Level int

// The three levels.
const (
	NumbersGiven Level = 1 // every number is there
	DeriveFirst  Level = 2 // one thing must be found first
	OnTheJob     Level = 3 // the learner's own lathe, and numbers that don't matter
)

// Draw is the source of a problem's numbers. The same code gives the same
// numbers on every machine: the generator is PCG, and the choosing is done here
// and not by a library, which might change its way.
type Draw struct {
	Level  Level
	System machine.System
	Lathe  machine.Lathe

	inputs []Input
	source *rand.PCG
}

// seeded returns the source for one code.
func seeded(c Code) *rand.PCG {
	h := fnv.New64a()
	h.Write([]byte(c.String())) // a hash never returns an error
	a := h.Sum64()
	h.Write([]byte("second"))
	return rand.NewPCG(a, h.Sum64())
}

// IntN returns a whole number from 0 up to but not including n.
func (d *Draw) IntN(n int) int {
	if n <= 1 {
		return 0
	}
	high, _ := bits.Mul64(d.source.Uint64(), uint64(n))
	return int(high)
}

// Between returns a whole number from low to high, both included.
func (d *Draw) Between(low, high int) int { return low + d.IntN(high-low+1) }

// Pick returns one of the items.
func Pick[T any](d *Draw, items ...T) T { return items[d.IntN(len(items))] }

// Steps returns a multiple of step from low to high, both multiples included.
func (d *Draw) Steps(low, high, step float64) float64 {
	from, to := int(calc.Round(low/step, 0)), int(calc.Round(high/step, 0))
	return calc.Round(float64(d.Between(from, to))*step, 9)
}

// Length returns a length that is a whole number of steps: of thousandths of an
// inch, or of hundredths of a millimetre when the problem is metric. Both ranges
// are given in their own unit.
func (d *Draw) Length(lowThou, highThou, lowHundredths, highHundredths int) calc.Length {
	if d.System == machine.Metric {
		return calc.Millimetres(float64(d.Between(lowHundredths, highHundredths)) / 100)
	}
	return calc.Inches(float64(d.Between(lowThou, highThou)) / 1000)
}

// Shuffle returns the items in a drawn order.
func (d *Draw) Shuffle(items []string) []string {
	out := slices.Clone(items)
	for i := len(out) - 1; i > 0; i-- {
		j := d.IntN(i + 1)
		out[i], out[j] = out[j], out[i]
	}
	return out
}

// Values returns empty values for the task's inputs.
func (d *Draw) Values() Values { return NewValues(d.inputs, d.System) }

// drawnThread is a thread that problems are drawn from.
type drawnThread struct {
	designation calc.Designation
	text        string
}

// threadList holds the standard threads that a single-point job may be about.
var threadList = [2]func() []drawnThread{machine.Imperial: sync.OnceValue(inchThreads), machine.Metric: sync.OnceValue(metricThreads)}

func inchThreads() []drawnThread {
	var all []drawnThread
	for _, size := range calc.UnifiedSizes() {
		for _, s := range []calc.Series{calc.UNC, calc.UNF} {
			n, ok := size.TPI[s]
			if !ok || size.Nominal < 0.25 || size.Nominal > 2.5 {
				continue
			}
			all = append(all, drawn(size.Size+"-"+calc.Shortest(n.Number(), 2)+" "+string(s)))
		}
	}
	return all
}

func metricThreads() []drawnThread {
	var all []drawnThread
	for _, text := range []string{"M8x1", "M8x1.25", "M10x1", "M10x1.25", "M10x1.5", "M12x1", "M12x1.25", "M12x1.5", "M12x1.75", "M14x1.5", "M14x2",
		"M16x1.5", "M16x2", "M18x1.5", "M18x2.5", "M20x1.5", "M20x2", "M20x2.5", "M22x1.5", "M22x2.5", "M24x2", "M24x3", "M27x2", "M27x3", "M30x2", "M30x3.5",
		"M33x2", "M33x3.5", "M36x3", "M36x4", "M39x3", "M39x4", "M42x4", "M42x4.5", "M45x4.5", "M48x5", "M52x5"} {
		all = append(all, drawn(text))
	}
	return all
}

func drawn(text string) drawnThread {
	d, err := calc.ParseDesignation(text)
	if err != nil {
		panic(err) // the lists above are part of the program; a test reads them all
	}
	return drawnThread{d, text}
}

// Draws is raised when tasks draw other numbers from a code than before: sheets made with
// an earlier program then have other codes, and are not taken for these.
const Draws = 3

// Thread draws a standard thread whose pitch lies between the two: each pitch as often as
// another, whatever number of sizes has it, and of its sizes any. With every size as often
// many problems would have twelve threads per inch, and a class one answer to share.
func (d *Draw) Thread(finest, coarsest calc.Length) calc.Designation {
	return Pick(d, Pick(d, d.Threads(finest, coarsest)...)...)
}

// Threads lists the standard threads between two pitches, those of each pitch together.
func (d *Draw) Threads(finest, coarsest calc.Length) [][]calc.Designation {
	return sizesBetween(d.System, finest, coarsest)
}

// pitchRange is a question to the list of threads.
type pitchRange struct {
	system           machine.System
	finest, coarsest calc.Length
}

var foundBetween sync.Map // pitchRange to [][]calc.Designation: tasks ask the same few again and again

// sizesBetween are the standard sizes of each pitch between the two.
func sizesBetween(system machine.System, finest, coarsest calc.Length) [][]calc.Designation {
	asked := pitchRange{system, finest, coarsest}
	if found, ok := foundBetween.Load(asked); ok {
		return found.([][]calc.Designation)
	}
	var sizes [][]calc.Designation
	at := map[calc.Length]int{}
	for _, t := range threadList[system]() {
		p := t.designation.Pitch
		if p < finest.Times(1-1e-9) || p > coarsest.Times(1+1e-9) {
			continue
		}
		if _, ok := at[p]; !ok {
			at[p] = len(sizes)
			sizes = append(sizes, nil)
		}
		sizes[at[p]] = append(sizes[at[p]], t.designation)
	}
	foundBetween.Store(asked, sizes)
	return sizes
}

// Tell puts a thread into the values in one of the ways a learner may be told it:
// threads per inch, the pitch, a drawing's callout, or a result from before. At
// level 1 the numbers are given, above it they must be found.
func (d *Draw) Tell(v *Values, t calc.Designation, side calc.Side) {
	ways := []string{"callout", "previous"}
	switch {
	case d.Level == NumbersGiven && t.Metric:
		ways = []string{"pitch"}
	case d.Level == NumbersGiven:
		ways = []string{"tpi", "pitch"}
	}
	d.TellAs(v, t, side, ways...)
}

// TellAs is Tell with the ways to choose from.
func (d *Draw) TellAs(v *Values, t calc.Designation, side calc.Side, ways ...string) {
	way := Pick(d, ways...)
	switch way {
	case "tpi":
		v.Set("tpi", t.TPI.Number())
	case "callout":
		t.Class = d.class(t, side)
		v.SetThread("thread", t)
	default: // the number as printed is the number that counts
		v.SetLength("pitch", d.printed(t.Pitch))
		v.Phrase("told-thread", "told-thread-"+way)
	}
}

// printed returns the length that is shown for l: what a problem gives is exactly
// what it prints.
func (d *Draw) printed(l calc.Length) calc.Length {
	u := d.System.Length()
	return calc.Inches(calc.Round(l.Inches()*u.Factor, u.Places) / u.Factor)
}

// Job puts a job of the bench into the values, with numbers that don't matter to
// the question: level 3 asks as the work does.
func (d *Draw) Job(v *Values, side calc.Side) { d.JobWith(v, side, 0) }

// JobWith is Job for work that shows a length: it stands out of the jaws by more than
// that. It is false where work of the size that is told would stand out too far: the
// draw must then be thrown away.
func (d *Draw) JobWith(v *Values, side calc.Side, length calc.Length) bool {
	jobs := []string{"valve-stem", "adjusting-screw", "tie-rod"}
	if side == calc.Inside {
		jobs = []string{"gland-nut", "lock-ring", "adjuster-sleeve"}
	}
	v.Phrase("job", "job-"+Pick(d, jobs...))
	speeds := d.Lathe.Speeds
	if len(speeds) == 0 {
		speeds = machine.InchLathe.Speeds
	}
	v.Say("rpm", strconv.Itoa(speeds[d.IntN(min(3, len(speeds)))]))
	out, ok := d.stickout(v, side, length)
	v.Say("stickout", d.System.Length().Text(out.Inches()))
	return ok || d.Level != OnTheJob // the others don't tell of the job
}

// stickout draws how far the work stands out of the jaws, or the bar out of its
// holder: no further than three times the diameter of the work, or four times that
// of the bar, as lessons teach. Where no size is told it stays short, unless a length
// on it asks for more. It is not ok where the work is too thin for that length.
func (d *Draw) stickout(v *Values, side calc.Side, length calc.Length) (out calc.Length, ok bool) {
	size, told := calc.Length(0.5), false
	for i, in := range v.inputs {
		switch {
		case !v.values[i].set:
		case in.Type == InputThread:
			size, told = v.values[i].thread.Nominal, true
		case in.Name == "nominal" || in.Name == "diameter" || in.Name == "bore":
			size, told = calc.Inches(v.values[i].x), true
		}
	}
	most := size.Times(3)
	if !told && length > 0 {
		most = max(most, length+calc.Inch)
	}
	if side == calc.Inside {
		most = size.Times(2) // a bar is little more than half as thick as its bore
		for i, in := range v.inputs {
			if in.Name == "bar" && v.values[i].set {
				most = calc.Inches(v.values[i].x).Times(4)
			}
		}
	}
	step, u := 0.125, machine.InchUnit
	if d.System == machine.Metric {
		step, u = 2, machine.MMUnit
	}
	high := max(step*2, step*float64(int(min(most.Inches(), 3.5)*u.Factor/step)))
	low := max(step*2, step*float64(int(high/2/step)))
	if length > 0 { // and some of it is not threaded
		low = max(low, step*math.Ceil(length.Inches()*u.Factor/step+2))
	}
	ok = low <= high
	return calc.Inches(d.Steps(low, max(low, high), step) / u.Factor), ok
}

func (d *Draw) class(t calc.Designation, side calc.Side) string {
	switch {
	case t.Metric && side == calc.Inside:
		return "6H"
	case t.Metric:
		return "6g"
	case side == calc.Inside:
		return Pick(d, "2B", "2B", "3B")
	}
	return Pick(d, "2A", "2A", "3A")
}
