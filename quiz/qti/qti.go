// Package qti writes problems as QTI content packages, versions 2.1 and 3.0, for
// learning systems that import them: a zip of a manifest, a test and one file an
// item. QTI is an open standard of 1EdTech.
//
// An item marks as quiz does: right first, then other conventions with full credit,
// then common errors inside their own tolerance, then the right number in another unit for
// half the points. The outcome FEEDBACK tells which it was: right,
// convention-NAME, slip-NAME, part-NAME, unit, scrap-side, safe-side, far-off,
// wrong, or unread where nothing was answered. Each has its modal feedback.
//
// What differs from the program, because a learning system reads the answer:
//   - A number is a decimal in the unit behind the box: no fraction, no other unit.
//   - An error's feedback quotes the error's own number, which may be a last place away
//     from what was typed. Where the number can't be known, only the key is told.
//   - 1.60 counts as 1.6, and 2 as 2.0: zeros at the end are lost when a number is
//     read.
//   - "none of them" is an option of its own, since no choice at all is no answer.
//
// Each item has its problem's code as its label. A figure is an SVG file of the package,
// with its words in the item: as the text beside the image, or where they are longer than
// an importer need take (256 letters) in a paragraph below it.
//
// With ChoiceOnly a decision with one right option stays as it is, and every other
// answer becomes one choice among whole answers: the key and what the common errors give, as
// printed, numbers in order of size and everything else in order of its text. Conventions are left out, because a single choice has one right answer. Where
// fewer than three are left, others are added: for a number its half, its double,
// one and a half times and three times it (whole numbers where things are counted);
// for all that fit of some options all of them, none, every other one, and the rest.
// Any other answer with fewer than three is an error.
package qti

import (
	"archive/zip"
	"fmt"
	"io"
	"time"

	"scratchpass/quiz/drawing"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Version is a version of QTI.
type Version int

// The versions that are written.
const (
	V21 Version = iota + 1
	V30
	V12 // in a Common Cartridge
)

// Item is one problem with its words.
type Item struct {
	ID      string // an XML name, the only one in the package
	Problem *problem.Problem
	Words   *wording.Words
	Points  float64          // for a right answer
	Picture *drawing.Drawing // beside the question; nil for none
}

// Slot is a place in the test that one or more items may fill.
type Slot struct {
	ID     string
	Title  string
	Select int // how many of the items each learner gets; 0 is all
	Items  []Item
}

// Deal is how the slots of a package make up what a learner gets.
type Deal int

// The ways.
const (
	EverySlot   Deal = iota // one test with all slots, each with its selection
	OneSlot                 // one test, of which each learner gets one slot by chance: a whole form
	TestOfSlots             // a test for each slot: the learner's own
)

// Telling is when a learner is told what was wrong.
type Telling int

// The times.
const (
	AtOnce   Telling = iota // after each question
	AtTheEnd                // when all is handed in
	Never                   // not by the learning system: no feedback is in the package
)

// Package is a test and its items.
type Package struct {
	ID         string
	Title      string
	Version    Version
	ChoiceOnly bool // for importers that take nothing but single choice

	// ConventionCosts is the share of the points, 0 to 1, that an answer loses which is right
	// by another convention than the one asked for.
	ConventionCosts float64
	Deal            Deal
	Telling         Telling
	Seconds         int // that a learner has for the test; 0 is no limit
	Slots           []Slot
	Words           Words
}

// Words are the fixed sentences of a package. They say how to answer in a learning
// system, where nobody types the number of a line.
type Words struct {
	Number    string            // above one box for a number
	Limits    string            // above one box where any size inside limits is right
	Numbers   string            // above several boxes for numbers
	Parts     string            // above the boxes for the parts of a designation
	Choice    string            // one is right
	Several   string            // all that fit
	Order     string            // put in order
	None      string            // the option that none of them fits
	Unread    string            // said where nothing was answered
	WrongUnit string            // said to the right number in another unit
	Fields    map[string]string // labels of the parts of a designation: diameter, pitch, tpi, starts, side, hand
}

// made is the date of every file in a package, so that the same problems give the
// same bytes on every day.
var made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Write writes a package. Nothing is written before every item is known to be
// expressible; the error names all that are not.
func Write(w io.Writer, p Package) error {
	if err := p.check(); err != nil {
		return err
	}
	gather := p.files
	if p.Version == V12 {
		gather = p.cartridge
	}
	files, err := gather()
	if err != nil {
		return err
	}
	z := zip.NewWriter(w)
	for _, f := range files {
		entry, err := z.CreateHeader(&zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: made})
		if err != nil {
			return fmt.Errorf("%s: %w", f.name, err)
		}
		if err := f.write(entry, p.Version); err != nil {
			return fmt.Errorf("%s: %w", f.name, err)
		}
	}
	return z.Close()
}
