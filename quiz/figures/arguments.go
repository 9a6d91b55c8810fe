package figures

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
)

// arguments are what stands behind a figure's name. They are read by their place; what
// can't be read is 0, and the first error is kept.
type arguments struct {
	words []string
	err   error
}

func (a *arguments) keep(err error) {
	if a.err == nil {
		a.err = err
	}
}

// number reads a plain number.
func (a *arguments) number(i int) float64 {
	x, err := calc.ParseNumber(a.words[i])
	a.keep(err)
	return x
}

// count reads a whole number. otherwise stands for one that was left out.
func (a *arguments) count(i, otherwise int) int {
	if i >= len(a.words) {
		return otherwise
	}
	x, err := calc.ParseNumber(a.words[i])
	n := int(max(-1e6, min(x, 1e6)))
	if err == nil && float64(n) != x {
		err = &calc.InputError{What: "can't count", Got: calc.Quoted(a.words[i]), Want: "a whole number such as 2"}
	}
	a.keep(err)
	return n
}

// metal reads the word for a material.
func (a *arguments) metal(i int) calc.Material {
	m := slices.Index(calc.MaterialNames, a.words[i])
	if m < 0 {
		a.keep(&calc.InputError{What: "can't read", Got: calc.Quoted(a.words[i]), Want: "one of " + strings.Join(calc.MaterialNames, ", ")})
	}
	return calc.Material(max(0, m))
}

// length reads a length, in inches where it has no unit.
func (a *arguments) length(i int) calc.Length {
	l, err := calc.LengthOf(a.words[i], calc.UnitInch)
	a.keep(err)
	return l
}

// angle reads an angle in degrees.
func (a *arguments) angle(i int) calc.Angle {
	angle, err := calc.ParseAngle(a.words[i])
	a.keep(err)
	return angle
}

// named reads a thread with its size, such as 1-8 or M12x1.75.
func (a *arguments) named(i int) calc.Designation {
	d, err := calc.ParseDesignation(a.words[i])
	a.keep(err)
	return d
}

// pitch reads a thread in whatever way its pitch is told: by threads per inch (8), by a
// pitch with its unit (0.125in, 1.5mm) or by name (1-8).
func (a *arguments) pitch(i int) calc.Length {
	text := a.words[i]
	if n, err := calc.ParseNumber(text); err == nil {
		pitch, err := calc.ThreadsPerInch(n).Pitch()
		a.keep(err)
		return pitch
	}
	if strings.HasSuffix(text, "in") || strings.HasSuffix(text, "mm") {
		return a.length(i)
	}
	d, err := calc.ParseDesignation(text)
	if err != nil {
		a.keep(&calc.InputError{What: "can't read", Got: calc.Quoted(text), Want: "threads per inch such as 8, a pitch such as 0.125in or 1.5mm, or a thread such as 1-8"})
	}
	return d.Pitch
}

// dial reads a thread dial: the threads per inch of the lead screw, the teeth of the gear
// and the marks.
func (a *arguments) dial(i int) calc.ThreadDial {
	return calc.ThreadDial{LeadScrew: calc.ThreadsPerInch(a.number(i)), Teeth: a.count(i+1, 0), Marks: a.count(i+2, 0)}
}

// pipe reads a size of taper pipe thread.
func (a *arguments) pipe(i int) calc.PipeSize {
	var sizes []string
	for _, s := range calc.PipeSizes {
		if s.Size == a.words[i] {
			return s
		}
		sizes = append(sizes, s.Size)
	}
	a.keep(fmt.Errorf("no pipe size is called %s; they are %s", calc.Quoted(a.words[i]), strings.Join(sizes, ", ")))
	return calc.PipeSize{}
}

// factor reads the name of a share of the pitch.
func (a *arguments) factor(i int) float64 {
	f, ok := factors()[a.words[i]]
	if !ok {
		a.keep(fmt.Errorf("no factor is called %s; they are %s", calc.Quoted(a.words[i]), strings.Join(sortedKeys(factors()), ", ")))
	}
	return f
}
