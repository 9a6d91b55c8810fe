package drawing

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
)

// Facts are what a figure is drawn from: the numbers that a problem gives, by the names of
// its inputs. What is not among them is drawn from an example, and shown by its letter
// alone: a figure never tells what is asked for.
type Facts struct {
	Lengths map[string]calc.Length
	Numbers map[string]float64 // angles are in degrees
	Words   map[string]string
	Shown   map[string]string // how the question prints a number
	Metric  bool              // lengths are shown in millimetres
	Example bool              // numbers of the example are shown too
}

// ErrFacts is what a figure returns that cannot be drawn without a number which a problem
// does not give.
var ErrFacts = errors.New("the problem lacks a number that its figure needs")

// figure draws on a sheet.
type figure func(s *sheet)

// sheet is a drawing while it is made.
type sheet struct {
	Drawing
	facts  Facts
	words  content.DrawingWords
	all    map[string]content.DrawingWords // for a figure that facts turn into another
	values map[string]string               // what ${name} stands for in the title, the twin and the labels
	lacks  bool                            // a number that the figure can't do without
}

// Names lists the figures that lessons and tasks can have.
func Names() []string { return slices.Sorted(maps.Keys(figures)) }

// Named returns a figure drawn from its example, with its words.
func Named(name string, words map[string]content.DrawingWords) (Drawing, error) {
	return Of(name, Facts{Example: true}, words)
}

// Of returns a figure drawn from facts, with its words.
func Of(name string, facts Facts, words map[string]content.DrawingWords) (Drawing, error) {
	draw, ok := figures[name]
	if !ok {
		return Drawing{}, &calc.InputError{What: "drawing", Got: calc.Quoted(name), Want: strings.Join(Names(), ", ")}
	}
	return drawn(name, facts, words, draw)
}

func drawn(name string, facts Facts, words map[string]content.DrawingWords, draw figure) (Drawing, error) {
	s := sheet{facts: facts, words: words[name], all: words, values: map[string]string{}}
	draw(&s)
	if s.lacks {
		return Drawing{}, ErrFacts
	}
	var unknown []string
	fill := func(text string) string {
		out, names := content.Fill(text, func(name string) (string, bool) { v, ok := s.values[name]; return v, ok })
		unknown = append(unknown, names...)
		return strings.TrimSpace(out)
	}
	d := s.Drawing
	d.Title, d.Twin = fill(s.words.Title), fill(s.words.Twin)
	for i, l := range d.Labels {
		d.Labels[i].Text = fill(l.Text)
	}
	if len(unknown) > 0 {
		return d, fmt.Errorf("the drawing %s has no value for %s; it has %s", name, strings.Join(unknown, ", "),
			strings.Join(slices.Sorted(maps.Keys(s.values)), ", "))
	}
	return d, nil
}

// paper sets the size of the drawing, in dots of a terminal at its full width.
func (s *sheet) paper(width, height float64) {
	s.Width, s.Height, s.Most = width, height, int(width/2)
}

// word is a label of content.
func (s *sheet) word(key string) string { return s.words.Labels[key] }

// name puts a label of content at a place, with its middle there.
func (s *sheet) name(x, y float64, key string) { s.label(x, y, s.word(key)) }

// length returns a length of the facts, or one for example. Where it may be shown, ${symbol}
// becomes "P = 0.1000", else "P".
func (s *sheet) length(name, symbol string, example calc.Length) calc.Length {
	l, given := s.facts.Lengths[name]
	if !given {
		l = example
	}
	text, printed := s.facts.Shown[name]
	if !printed {
		text = s.text(l)
	}
	s.tell(symbol, text, given)
	return l
}

// lengthOr is a length of the facts, or another.
func (s *sheet) lengthOr(name string, other calc.Length) calc.Length {
	if l, given := s.facts.Lengths[name]; given {
		return l
	}
	return other
}

// needed is a length without which the figure would show a number of its own.
func (s *sheet) needed(name, symbol string, example calc.Length) calc.Length {
	if _, given := s.facts.Lengths[name]; !given && !s.facts.Example {
		s.lacks = true
	}
	return s.length(name, symbol, example)
}

// derived makes known a length that follows from others: it is shown in an example alone.
func (s *sheet) derived(symbol string, l calc.Length) calc.Length {
	s.tell(symbol, s.text(l), false)
	return l
}

// degrees returns an angle of the facts, or one for example.
func (s *sheet) degrees(name, symbol string, example float64) calc.Angle {
	x := s.number(name, symbol, example, 2)
	if v := s.values[symbol]; v != symbol {
		s.values[symbol] = v + "°"
	}
	return calc.Degrees(x)
}

// number returns a number of the facts, or one for example, shown with so many decimals at
// most; one that the question does not print is drawn alone.
func (s *sheet) number(name, symbol string, example float64, places int) float64 {
	x, given := s.facts.Numbers[name]
	if !given {
		x = example
	}
	text, printed := s.facts.Shown[name]
	if !printed {
		text = calc.Shortest(x, places)
	}
	s.tell(symbol, text, given && printed)
	return x
}

// choice returns a word of the facts, or one for example.
func (s *sheet) choice(name, example string) string {
	if w, ok := s.facts.Words[name]; ok {
		return w
	}
	return example
}

func (s *sheet) tell(symbol, value string, given bool) {
	s.values[symbol] = symbol
	if given || s.facts.Example {
		s.values[symbol] = symbol + " = " + value
	}
}

// text is a length as a label shows it: the unit stands in the question.
func (s *sheet) text(l calc.Length) string {
	if s.facts.Metric {
		return calc.Fixed(l.Millimetres(), 3)
	}
	return calc.Fixed(l.Inches(), 4)
}

// must is for numbers that are part of the program; a test draws every figure.
func must[T any](x T, err error) T {
	if err != nil {
		panic("drawing: numbers of the program's own: " + err.Error())
	}
	return x
}
