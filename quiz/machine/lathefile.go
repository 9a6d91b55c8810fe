package machine

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/files"
)

// LatheFile is a lathe as its owner writes it down.
type LatheFile struct {
	Name        string       `yaml:"name"`
	LeadScrew   string       `yaml:"lead_screw"` // "8 TPI" or "3 mm"
	ThreadDial  DialGear     `yaml:"thread_dial"`
	CrossSlide  SlideDial    `yaml:"cross_slide"`
	Compound    CompoundDial `yaml:"compound"`
	SpindleNose string       `yaml:"spindle_nose"` // screwed or locked
	Gears       []int        `yaml:"gears,omitempty,flow"`
	Speeds      []int        `yaml:"speeds,omitempty,flow"`
}

// DialGear is the thread dial; both 0 when there is none.
type DialGear struct {
	Gear  int `yaml:"gear"`
	Marks int `yaml:"marks"`
}

// SlideDial is the dial of the cross slide.
type SlideDial struct {
	Turn  string `yaml:"turn"`
	Line  string `yaml:"line"`
	Reads string `yaml:"reads"` // diameter or radius
}

// CompoundDial is the dial and the scale of the compound.
type CompoundDial struct {
	Turn string `yaml:"turn"`
	Line string `yaml:"line"`
	Zero string `yaml:"zero"` // across or along
}

// ReadLathe reads a lathe file strictly: what is missing, unknown or out of range is an
// error that names the file and says what to write; so is what is no ordinary file.
func ReadLathe(path string) (Lathe, error) {
	text, err := files.Read(path, files.MostWords)
	if err != nil {
		return Lathe{}, err
	}
	return ParseLathe(path, text)
}

// ParseLathe is ReadLathe for a text; file stands in front of what is wrong.
func ParseLathe(file string, text []byte) (Lathe, error) {
	var f LatheFile
	if err := content.Decode(file, text, &f); err != nil {
		return Lathe{}, err
	}
	l, err := f.lathe()
	if err == nil {
		err = l.Check()
	}
	if err != nil {
		return Lathe{}, fmt.Errorf("%s: %w", file, err)
	}
	return l, nil
}

func (f LatheFile) lathe() (Lathe, error) {
	l := Lathe{Name: f.Name, DialTeeth: f.ThreadDial.Gear, DialMarks: f.ThreadDial.Marks, Gears: f.Gears, Speeds: f.Speeds}
	if n := len(f.Gears) + len(f.Speeds); n > 200 {
		return l, fmt.Errorf("%d gears and speeds: give at most 200", n)
	}
	var errs []error
	number, metric := strings.CutSuffix(strings.TrimSpace(f.LeadScrew), "mm")
	number, inch := strings.CutSuffix(number, "TPI")
	x, err := calc.ParseNumber(number)
	if err != nil || metric == inch {
		errs = append(errs, &calc.InputError{What: "lead_screw", Got: calc.Quoted(f.LeadScrew), Want: "8 TPI or 3 mm"})
	}
	l.LeadScrew, l.Metric = x, metric
	size := func(key, text string, into *calc.Length) {
		_, unit, err := calc.ParseLength(text)
		if err == nil && !unit.Known {
			err = &calc.InputError{What: "no unit in", Got: calc.Quoted(text), Want: "0.100 in or 2 mm"}
		}
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", key, err))
			return
		}
		*into, _ = calc.LengthOf(text, calc.UnitInch) // just read without error
	}
	size("cross_slide turn", f.CrossSlide.Turn, &l.Cross.Turn)
	size("cross_slide line", f.CrossSlide.Line, &l.Cross.Division)
	size("compound turn", f.Compound.Turn, &l.Compound.Turn)
	size("compound line", f.Compound.Line, &l.Compound.Division)
	word := func(key, text, no, yes string) bool {
		if text != yes && text != no {
			errs = append(errs, &calc.InputError{What: key, Got: calc.Quoted(text), Want: no + " or " + yes})
		}
		return text == yes
	}
	if word("cross_slide reads", f.CrossSlide.Reads, "radius", "diameter") {
		l.CrossReads = calc.ReadsDiameter
	}
	if word("compound zero", f.Compound.Zero, "across", "along") {
		l.CompoundZero = calc.ZeroAlong
	}
	l.ScrewedNose = word("spindle_nose", f.SpindleNose, "locked", "screwed")
	return l, errors.Join(errs...)
}

// File is the lathe as it is written down.
func (l Lathe) File() LatheFile {
	u, screw := InchUnit, " TPI"
	if l.Metric {
		u, screw = MMUnit, " mm"
	}
	size := func(x calc.Length) string { return u.Text(x.Inches()) }
	pick := func(b bool, yes, no string) string {
		if b {
			return yes
		}
		return no
	}
	return LatheFile{
		Name: l.Name, LeadScrew: calc.Shortest(l.LeadScrew, 3) + screw,
		ThreadDial:  DialGear{l.DialTeeth, l.DialMarks},
		CrossSlide:  SlideDial{size(l.Cross.Turn), size(l.Cross.Division), pick(l.CrossReads == calc.ReadsDiameter, "diameter", "radius")},
		Compound:    CompoundDial{size(l.Compound.Turn), size(l.Compound.Division), pick(l.CompoundZero == calc.ZeroAlong, "along", "across")},
		SpindleNose: pick(l.ScrewedNose, "screwed", "locked"), Gears: l.Gears, Speeds: l.Speeds,
	}
}

// WriteLathe writes the lathe to a file, whole or not at all.
func WriteLathe(path string, l Lathe) error {
	text, err := yaml.Marshal(l.File())
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return files.WriteWhole(path, func(f *os.File) error { _, err := f.Write(text); return err })
}
