package calc

import (
	"fmt"
	"strconv"
	"strings"
)

// Hand is the way a thread turns.
type Hand int

// Right-hand threads carry no mark in a designation, left-hand ones carry LH.
const (
	RightHand Hand = iota
	LeftHand
)

// String returns "right" or "left".
func (h Hand) String() string {
	if h == LeftHand {
		return "left"
	}
	return "right"
}

// Designation is a thread as a drawing calls it out.
type Designation struct {
	Metric  bool
	Size    string // as written, in its plainest form: "1/2", "10", "0.4375", "#4" where 4 would be inches; metric "12"
	Nominal Length
	Pitch   Length
	TPI     ThreadsPerInch // inch threads: exact, as written; 0 for metric
	Series  Series         // inch threads; empty for metric
	Class   string         // "2A", "6g", "4g6g"; empty when the drawing gives none
	Starts  int            // 1 unless the drawing says otherwise
	Hand    Hand
}

// Lead returns how far the thread advances in a turn: starts x pitch.
func (d Designation) Lead() Length { return d.Pitch.Times(float64(d.Starts)) }

// Side returns which side the class names: A and small letters are outside, B and
// capitals are inside. ok is false when there is no class to tell.
func (d Designation) Side() (side Side, ok bool) {
	switch {
	case d.Class == "":
		return Outside, false
	case strings.HasSuffix(d.Class, "B"), strings.HasSuffix(d.Class, "H"), strings.HasSuffix(d.Class, "G"):
		return Inside, true
	}
	return Outside, true
}

// String prints the designation in its standard form: 1/2-13 UNC-2A-LH,
// M12x1.75-6g, 3/4-16 UNF-2A 2 STARTS, and as ISO 965-1 has it M16xPh3P1.5.
func (d Designation) String() string {
	var b strings.Builder
	if d.Metric {
		pitch := Shortest(d.Pitch.Millimetres(), 4)
		b.WriteString("M" + d.Size + "x")
		if d.Starts > 1 {
			b.WriteString("Ph" + Shortest(d.Lead().Millimetres(), 4) + "P")
		}
		b.WriteString(pitch)
	} else {
		b.WriteString(d.Size + "-" + Shortest(d.TPI.Number(), 4) + " " + string(d.Series))
	}
	if d.Class != "" {
		b.WriteString("-" + d.Class)
	}
	if d.Hand == LeftHand {
		b.WriteString("-LH")
	}
	if !d.Metric && d.Starts > 1 {
		b.WriteString(" " + strconv.Itoa(d.Starts) + " STARTS")
	}
	return b.String()
}

// nominalOf reads a size. A whole number may be a screw number or inches, and the
// threads tell: screw numbers 0 to 4 have 40 threads per inch and more, 5 to 12
// have 24 and more (ASME B1.1); anything coarser is inches.
func nominalOf(size string, n ThreadsPerInch) (Length, error) {
	number, err := strconv.Atoi(size)
	if err != nil || number > 4 && n < 24 || number >= 1 && number <= 4 && n < 36 {
		return ParseFraction(size)
	}
	return NumberSize(number)
}

// seriesOf returns the series that has the size with these threads per inch.
func seriesOf(size string, n ThreadsPerInch) Series {
	nominal, err := nominalOf(size, n)
	if err != nil {
		return UNS
	}
	if s, ok := standardSize(nominal); ok {
		for _, name := range []Series{UNC, UNF, UNEF} {
			if s.TPI[name] == n {
				return name
			}
		}
	}
	for _, c := range constantPitch {
		if c == n && nominal >= 0.25 {
			return UN
		}
	}
	return UNS
}

func standardSize(nominal Length) (UnifiedSize, bool) {
	for _, s := range UnifiedSizes() {
		if Within(s.Nominal.Inches(), nominal.Inches(), 1e-6) {
			return s, true
		}
	}
	return UnifiedSize{}, false
}

// checkSeries refuses a series name that does not belong to the thread.
func checkSeries(d Designation) error {
	size, standard := standardSize(d.Nominal)
	switch d.Series {
	case UNC, UNF, UNEF:
		word := map[Series]string{UNC: "coarse", UNF: "fine", UNEF: "extra-fine"}[d.Series]
		n, has := size.TPI[d.Series]
		if !standard || !has {
			return fmt.Errorf("the %s series has no size %s; write UN or UNS", word, d.Size)
		}
		if n != d.TPI {
			return fmt.Errorf("the %s series is %s here; write UN or UNS", word, Shortest(n.Number(), 2))
		}
	case UN:
		for _, c := range constantPitch {
			if c == d.TPI {
				return nil
			}
		}
		return fmt.Errorf("UN is 4, 6, 8, 12, 16, 20, 28 or 32 threads per inch; write UNS")
	}
	return nil
}
