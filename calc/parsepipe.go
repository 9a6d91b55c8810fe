package calc

import (
	"fmt"
	"strings"
)

const pipeWant = "a taper pipe thread such as 1/2-14 NPT or 1-11.5 NPT"

// pipeForm is the callout of a taper pipe thread, as ASME B1.20.1 writes it: the size of the
// pipe, the threads per inch, NPT. The threads may be left out: each size has its own.
var pipeForm = lazily(`^(1/8|1/4|3/8|1/2|3/4|1|1[ -]1/4|1[ -]1/2|2)"?(?: ?- ?(27|18|14|11\.5|11[ -]1/2))?[ -]*NPT$`)

// PipeDesignation is a taper pipe thread as a drawing calls it out.
type PipeDesignation struct {
	PipeSize
	Pitch Length
	Hand  Hand
}

// String prints the designation in one form, 1/2-14 NPT.
func (d PipeDesignation) String() string {
	text := d.Size + "-" + Shortest(d.TPI.Number(), 4) + " NPT"
	if d.Hand == LeftHand {
		text += "-LH"
	}
	return text
}

// IsPipe reports whether a text means a taper pipe thread, well written or not. NPTF and other
// letters behind it are other threads, and no pipe thread of these.
func IsPipe(text string) bool { return strings.Contains(strings.ToUpper(text), "NPT") }

// ParsePipe reads the callout of a taper pipe thread NPT of the sizes 1/8 to 2.
func ParsePipe(text string) (PipeDesignation, error) {
	fail := func(err error) (PipeDesignation, error) {
		return PipeDesignation{}, fmt.Errorf("%s: %w", Quoted(text), err)
	}
	upper, hand, starts, err := handAndStarts(text)
	if err != nil {
		return fail(err)
	}
	m := pipeForm().FindStringSubmatch(upper)
	if m == nil || starts != 1 {
		return fail(fmt.Errorf("not a taper pipe thread of the sizes 1/8 to 2: give %s", pipeWant))
	}
	size := strings.Replace(m[1], " ", "-", 1)
	for _, s := range PipeSizes {
		if s.Size != size {
			continue
		}
		n := strings.NewReplacer(" 1/2", ".5", "-1/2", ".5").Replace(m[2])
		if own := Shortest(s.TPI.Number(), 4); n != "" && n != own {
			return fail(fmt.Errorf("the pipe size %s has %s threads per inch: give %s", s.Size, own, PipeDesignation{PipeSize: s, Hand: hand}))
		}
		pitch, err := s.TPI.Pitch()
		return PipeDesignation{s, pitch, hand}, err
	}
	return fail(fmt.Errorf("not a taper pipe thread: give %s", pipeWant))
}

// pipeTruncation is how much crest and root of a pipe thread may be cut off at most, straight
// in, by threads per inch. At least it is 0.033 P. Source: ASME B1.20.1, Table 1, as a table
// of pipe threads gives it.
var pipeTruncation = map[ThreadsPerInch]Length{27: 0.0036, 18: 0.0049, 14: 0.0056, 11.5: 0.0063}

// leastTruncation is the least share of the pitch that is cut off. Source: ASME B1.20.1, 2.4.
const leastTruncation = 0.033

// PipeTruncation returns how much crest and root of a pipe thread are cut off, straight in:
// at least and at most.
func (d PipeDesignation) PipeTruncation() (least, most Length) {
	return d.Pitch.Times(leastTruncation), pipeTruncation[d.TPI]
}

// PipeLimits returns the limits of size of a taper pipe thread at its gauging end: the small
// end of an external one, the face of an internal one. Everywhere else the diameters are those
// of the taper.
//
//	pitch diameter   E0 outside, E1 inside, and what one turn of the gauge makes, P/16, either way
//	crests           the sharp form cut off by the least and the most truncation
//
// Root is the diameter that the root must reach at least. Source: ASME B1.20.1, 3.2: one turn
// large or small; truncation by Table 1.
func PipeLimits(d PipeDesignation, side Side) (Limits, error) {
	pipe, err := PipeThread(d.Outside, d.TPI, d.L1)
	if err != nil {
		return Limits{}, err
	}
	least, most := d.PipeTruncation()
	turn, sharp := d.Pitch.Times(PipeTaper), d.Pitch.Times(HeightOfSharpV)
	l := Limits{Side: side}
	if side == Inside {
		l.Pitch = span(pipe.E1+turn, pipe.E1-turn)
		l.Minor = span(pipe.E1-sharp+most.Times(2), pipe.E1-sharp+least.Times(2))
		l.Major = Span{Min: l.Pitch.Min + sharp - most.Times(2)}
		return l, nil
	}
	l.Pitch = span(pipe.E0+turn, pipe.E0-turn)
	l.Major = span(pipe.E0+sharp-least.Times(2), pipe.E0+sharp-most.Times(2))
	l.Minor = Span{Max: l.Pitch.Max - sharp + most.Times(2)}
	return l, nil
}
