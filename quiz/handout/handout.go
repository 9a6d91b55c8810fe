// Package handout lays problem sheets and their keys out: as PDF, as HTML and as
// plain text, all from one model. It knows neither blueprints nor apprentices' files;
// quiz/set fills the model.
package handout

import (
	"io"
	"slices"
	"time"

	"scratchpass/quiz/drawing"
)

// Sheet is what one apprentice gets: questions, and no number of the key.
type Sheet struct {
	Title string   // of the set
	Name  string   // printed on the name line; empty leaves a line to write on
	Form  string   // "A" for lettered forms; empty where every apprentice has their own numbers
	Code  string   // finds the sheet again when it is marked
	Facts []string // one line each: time, points, tolerance, the lathe
	Items []Item
}

// starred reports whether the sheet must say what the star means.
func (s Sheet) starred() bool {
	return slices.ContainsFunc(s.Items, func(it Item) bool { return it.Caution })
}

// Item is one question of a sheet.
type Item struct {
	Number   int
	Points   string           // "2 points", as printed
	Text     []string         // the question, a line each
	Options  []string         // numbered from 1, to choose from or to order
	Choose   Choose           // how options are chosen where they can be ticked
	Readings []string         // each has a blank of its own
	Expects  string           // what to write: "Answer in inches, such as 0.1234."
	Sure     string           // to tick how sure one is; empty where that is not asked
	Unit     string           // printed behind the blank; empty where it has none
	Drawing  *drawing.Drawing // nil for none
	Caution  bool             // a task that can hurt someone: starred
}

// Choose is how many options are ticked; empty where a number or an order is written.
type Choose string

// The two ways, named after the fields of HTML.
const (
	One  Choose = "radio"
	Some Choose = "checkbox"
)

// told is what to write, and how sure one is.
func (it Item) told() string { return joined(" ", it.Expects, it.Sure) }

// Key is the other half of a sheet. It never travels with it.
type Key struct {
	Title, Name, Form, Code string
	Items                   []KeyItem
}

func (k Key) starred() bool {
	return slices.ContainsFunc(k.Items, func(it KeyItem) bool { return it.Caution })
}

// KeyItem is what marks one item at arm's length.
type KeyItem struct {
	Number  int
	Title   string // of the task
	Points  string
	Answer  string
	Limits  string // what else is right: "0.0582 to 0.0592 in"; empty where nothing is
	Path    string // the working on one line: "h = 0.613435 P = 0.0511, c = h / cos a = 0.0587"
	Seen    []Seen // "seen this number?": what each common error gives
	Caution bool
	Carried string // for a linked item: "takes the answer to item 3: mark what follows from it"
}

// Report is running text with tables and drawings: what a class got wrong, or what came
// of one apprentice's answers.
type Report struct {
	Title string
	Owner string   // at the foot of every page: whose it is
	Facts []string // one line each, below the title
	Parts []Part
	Note  string // a caution at the foot

	Compact bool // small type and narrow gaps, for a card that is to stand on one page
	Wide    bool // in a PDF across the paper's long side, in small type: for a table of many columns
	Brief   bool // in a PDF drawings stand small beside their lines, and a report that half a page holds shares the page
}

// Part is a piece of a report under a heading of its own.
type Part struct {
	Heading string // empty for none
	Lines   []string
	Table   *Table
	Drawing *drawing.Drawing
}

// Table is rows of cells below the names of their columns.
type Table struct {
	Columns []string
	Rows    [][]string
}

// Seen is one wrong number and the common error that gives it.
type Seen struct{ Value, Name string }

// Words are the fixed words of a sheet and its key; content has them.
type Words struct {
	Lang                   string // of all texts, such as "en"
	Name, Form, Code, Date string // labels of the heading's blanks
	Answer                 string // label of the answer line: in the box, and in a key
	Page                   string // "Page ${page} of ${of}": counts the pages of one sheet
	Rehearsal              string // the caution at the foot of each sheet
	Star                   string // what the star means, without the star
	Key                    string // "KEY: do not hand out"
	Accepted, Path, Seen   string // labels in a key
	Tally                  string // title of the class tally grid
	TallyItem, TallyHow    string
	TallyColumns           []string // right, another convention, a common error, ...

	Fill, Save, Saved string // on a sheet with fields: what to do, the button, and what "${file}" is then
	None              string // of several options none
	PickOne, PickSome string // above options to tick: one, or all that fit
	Sure              string // how sure one is
	Sures             []Sure
}

// Sure is one of the answers to how sure someone is, by the name it has in a file of answers.
type Sure struct{ Value, Name string }

// Paper is a size of paper.
type Paper string

// The two that are printed on.
const (
	A4     Paper = "A4"
	Letter Paper = "Letter"
)

// Layout is how close the questions of a sheet stand on paper.
type Layout string

// The two layouts.
const (
	Compact Layout = "compact" // two columns; a sheet that half a page holds takes no more
	Roomy   Layout = "roomy"   // one column, with squares of 5 mm for the working
)

// Writer lays out sheets one after another. Close ends the document; a Writer that
// failed stays failed. What was written before Close is no document yet.
type Writer interface {
	Sheet(s Sheet) error
	Key(k Key) error
	Tally(title string, items []string) error // the class tally grid, after the keys
	Report(r Report) error
	Close() error
}

// Made is the date in a document when the set names none, so that the same set gives
// the same bytes on every day.
var Made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Options are what a document needs to know before the first sheet.
type Options struct {
	Paper   Paper
	Words   Words
	Title   string
	Date    time.Time // zero is Made
	Layout  Layout    // of the sheets in a PDF; empty is Roomy
	Fields  bool      // in HTML a sheet has fields to fill in, and saves them as a file of answers; one sheet a document
	Compact bool      // there are compact reports in it
	Duplex  bool      // in a PDF each sheet, key and report ends on an even page, for printing on both sides
}

// New returns a writer of a format: "pdf", "html" or "text".
type New func(w io.Writer, o Options) (Writer, error)
