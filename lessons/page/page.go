// Package page is what a flow shows and asks. A page is a list of blocks of meaning: a
// heading, a question, a verdict, a working. It knows no width, no colour and no tag;
// faces render it, each in its own way and all with the same words.
package page

import (
	"strings"

	"scratchpass/quiz/drawing"
)

// Page is what is shown at once.
type Page []Block

// Block is one piece of a page: one of the types below.
type Block interface{ block() }

// Heading is the title of a page or of a part of it.
type Heading struct{ Text string }

// Where says where the learner is: problem 3 of 8. Of is 0 where there is no number of them.
type Where struct {
	Text     string
	Done, Of int
}

// Paragraph is running text. A line break in it stays.
type Paragraph struct{ Text string }

// Item is an item of a list; Inner is one of a list inside it.
type Item struct {
	Text  string
	Inner bool
}

// Aside is what can be typed, or another remark that is not in the way.
type Aside struct{ Text string }

// Typeable says which words can be typed at a question. A face that shows the keys which
// work now leaves it out.
type Typeable struct{ Text string }

// Now is said at once, though nothing is asked: that something takes its time.
type Now struct{ Text string }

// Gap sets what follows apart from what stands before.
type Gap struct{}

// Question is a problem as it is asked. Lines are its options or the names of its
// readings, numbered from 1. Code remakes the problem. Its figure is drawn from what the
// problem gives; a face without pictures tells it when asked to look.
type Question struct {
	Code   string
	Text   string
	Lines  []string
	Figure *Figure // nil for none
}

// Parts are what a question tells first, and its last line, which asks.
func (q Question) Parts() (told, asked string) {
	told, asked = "", strings.TrimSpace(q.Text)
	if at := strings.LastIndexByte(asked, '\n'); at >= 0 {
		told, asked = asked[:at], asked[at+1:]
	}
	return told, asked
}

// Pause is where a page is to be read before anything else comes: after a mistake. A face
// from which nothing scrolls away goes on.
type Pause struct{}

// Givens are the numbers that a problem starts from.
type Givens []Given

// Given is one of them. Label is its name as a sentence begins with it.
type Given struct{ Label, Symbol, Value, Unit string }

// Step is a line of a working: a symbol, its formula in symbols and in numbers, and its
// value. A step that is left for the learner is Blank. Means says what the symbol stands
// for, as a sentence; it is empty where that has been said.
type Step struct {
	Symbol string
	Line   string // the whole line: symbol = formula = with numbers = value
	Means  string
	Blank  bool
}

// Working is the way to an answer.
type Working []Step

// Sequence is steps in their order, each as it stands in a list.
type Sequence []string

// Verdict is what came of an answer, or of a job. Where an answer is not right, Given says
// what it was and Answer what is right, each in a sentence; both may be empty.
type Verdict struct {
	Right         bool
	Text          string
	Given, Answer string
}

// Mistake is something that went wrong at the bench.
type Mistake struct{ Text string }

// Caution is a safety note.
type Caution struct{ Text string }

// Figure is a drawing with its twin in words. A figure may have several pictures that
// are told together.
type Figure struct {
	Caption  string
	Pictures []drawing.Drawing
	Twin     string
}

// Score is a result to be read from the back of a room. It repeats what a sentence
// beside it says.
type Score struct{ Text string }

// Meter is how much of something is done, and how much more is begun. Text says it.
type Meter struct {
	Done, Begun, Of int
	Text            string
}

// Meters are several of them, a row each, with a name for what each is of.
type Meters []NamedMeter

// NamedMeter is one of them.
type NamedMeter struct {
	Name string
	Meter
}

// Moves are things that can be done now, numbered from 1.
type Moves []string

// Log is lines that stand as they were written.
type Log struct{ Text string }

// Table is rows under the names of their columns. Told in words a row is a line, and a
// cell that is "0" is left out there from the third column on.
type Table struct {
	Columns []string
	Rows    [][]string
}

// Columns is a table that is read down its columns of figures; each row is told by a
// sentence of its own where there is no room for columns.
type Columns struct {
	Head string
	Rows []ColumnRow
}

// ColumnRow is a row of figures, and the same as a sentence.
type ColumnRow struct{ Row, Sentence string }

func (Heading) block()   {}
func (Where) block()     {}
func (Paragraph) block() {}
func (Item) block()      {}
func (Aside) block()     {}
func (Gap) block()       {}
func (Now) block()       {}
func (Typeable) block()  {}
func (Pause) block()     {}
func (Question) block()  {}
func (Givens) block()    {}
func (Working) block()   {}
func (Sequence) block()  {}
func (Verdict) block()   {}
func (Mistake) block()   {}
func (Caution) block()   {}
func (Figure) block()    {}
func (Score) block()     {}
func (Meter) block()     {}
func (Meters) block()    {}
func (Moves) block()     {}
func (Log) block()       {}
func (Table) block()     {}
func (Columns) block()   {}
