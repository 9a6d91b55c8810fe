package bench

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Event is one thing done at the lathe: a move, a decision, or time going by.
type Event struct {
	Verb string // "compound"
	Word string // "in", "out", "to", "on", or what is meant: "mate"
	X    float64
	Has  bool // X was given
	Ns   []int
	Note string
}

// Length is the event's number as a length.
func (e Event) Length() calc.Length { return calc.Inches(e.X) }

// shape is how an event is written: its words, and what follows them.
type shape struct {
	words []string // what may stand behind the verb; empty for nothing
	takes string   // length, number, mark, gears, lead or text; empty for nothing
	bare  bool     // words and number may be left out
}

// verbs are the events by their first word. The words of content explain each; a test
// holds the two lists together.
var verbs = map[string]shape{
	"dress": {}, "key": {words: []string{"out"}}, "feed": {words: []string{"off"}}, "square": {words: []string{toAxis, toCone}, bare: true}, "taper": {takes: "ratio"}, "height": {}, "gibs": {}, "oil": {},
	"speed": {takes: "number"}, "gears": {takes: "gears"}, "levers": {takes: "lead"}, "angle": {takes: "swing"},
	"overhang": {takes: "length"}, "touch": {}, "zero": {words: []string{"cross", "compound"}},
	"start": {}, "stop": {}, "reverse": {},
	"tumbler": {words: []string{"right", "left"}}, "tool": {words: []string{"over", "up"}}, "index": {},
	"cross":    {words: []string{"in", "out", "to"}, takes: "length"},
	"compound": {words: []string{"in", "out", "to"}, takes: "length"},
	"close":    {words: []string{"on"}, takes: "mark", bare: true},
	"open":     {}, "run": {}, "return": {words: []string{"groove", "end"}, bare: true}, "wait": {takes: "number"},
	"pass": {takes: "length"}, "spring": {}, "finish": {takes: "length"},
	"clean": {words: []string{"hook", "hand"}}, "test": {words: []string{"mate", "go", "not-go", "wires"}},
	"count": {}, "emery": {}, "unchuck": {}, "done": {},
	"book": {words: []string{"cross", "compound"}, takes: "length"}, "note": {takes: "text"},
}

// Verbs lists the first words of all events, sorted.
func Verbs() []string {
	var all []string
	for v := range verbs {
		all = append(all, v)
	}
	slices.Sort(all)
	return all
}

// longest is the longest line that is read.
const longest = 200

// Parse reads an event. A bare number is in the units of the lathe's dials.
func Parse(text string, s machine.System) (Event, error) {
	text = strings.TrimSpace(content.Printable(text))
	if len(text) > longest || strings.Contains(text, "\n") {
		return Event{}, &calc.InputError{What: "can't read", Got: calc.Quoted(text), Want: "one line of at most 200 letters"}
	}
	verb, rest, _ := strings.Cut(text, " ")
	verb, rest = strings.ToLower(verb), strings.TrimSpace(rest)
	how, ok := verbs[verb]
	if !ok {
		return Event{}, &calc.InputError{What: "can't read", Got: calc.Quoted(text), Want: "a move" + cmp.Or(content.DidYouMean(verb, Verbs()), "; help lists them")}
	}
	e := Event{Verb: verb}
	refuse := func() (Event, error) {
		return Event{}, &calc.InputError{What: "can't read", Got: calc.Quoted(text), Want: how.wants(verb, s)}
	}
	if how.takes == "text" {
		e.Note = rest
		return e, nil
	}
	rest = strings.ToLower(rest)
	if rest == "" && how.bare {
		return e, nil
	}
	if number, ok := strings.CutPrefix(rest, "on mark "); ok && how.takes == "mark" {
		rest = "on " + number
	}
	if how.takes == "mark" && rest[0] >= '0' && rest[0] <= '9' { // close 1
		rest = "on " + rest
	}
	if len(how.words) > 0 {
		first, after, _ := strings.Cut(rest, " ")
		if !slices.Contains(how.words, first) {
			return refuse()
		}
		e.Word, rest = first, strings.TrimSpace(after)
	}
	if how.takes == "" && rest != "" || how.takes != "" && rest == "" {
		return refuse()
	}
	if how.takes == "" {
		return e, nil
	}
	if err := e.read(how.takes, rest, s); err != nil {
		return refuse()
	}
	return e, nil
}

var errUnread = errors.New("not read")

// read reads what follows the words.
func (e *Event) read(takes, text string, s machine.System) (err error) {
	e.Has = true
	switch takes {
	case "length":
		bare := calc.UnitInch
		if s == machine.Metric {
			bare = calc.UnitMillimetre
		}
		var l calc.Length
		l, err = calc.LengthOf(text, bare)
		e.X = l.Inches()
	case "number":
		e.X, err = calc.ParseNumber(text)
	case "ratio":
		if e.X, err = calc.ParseNumber(strings.ReplaceAll(text, ":", "/")); e.X > 0.5 {
			return errUnread
		}
	case "mark":
		e.X, err = calc.ParseNumber(text)
		if e.X != calc.Round(e.X, 0) || e.X < 1 {
			return errUnread
		}
	case "lead":
		return e.readLead(text)
	case "swing":
		number, side, _ := strings.Cut(text, " ")
		e.Word = strings.TrimSpace(side)
		if e.Word != Tailstock && e.Word != Headstock {
			return errUnread
		}
		e.X, err = calc.ParseNumber(number)
	case "gears":
		return e.readGears(text)
	}
	if e.X < 0 || e.X > 10000 {
		return errUnread
	}
	return err
}

// readLead reads "10 TPI" or "2.5 mm" and keeps the lead.
func (e *Event) readLead(text string) error {
	if number, ok := strings.CutSuffix(text, "tpi"); ok {
		n, err := calc.ParseNumber(number)
		if err != nil || n < 1 || n > 100 {
			return errUnread
		}
		e.X, e.Word = n, "TPI"
		return nil
	}
	number, ok := strings.CutSuffix(text, "mm")
	x, err := calc.ParseNumber(number)
	if !ok || err != nil || x < 0.2 || x > 100 {
		return errUnread
	}
	e.X, e.Word = x, "mm"
	return nil
}

// lead is the lead that was read.
func (e Event) lead() calc.Length {
	if e.Word == "TPI" {
		return calc.Inch.Times(1 / e.X)
	}
	return calc.Millimetres(e.X)
}

// readGears reads "32/40" or "32/40 x 30/50": driver and driven.
func (e *Event) readGears(text string) error {
	for _, pair := range strings.Split(text, "x") {
		a, b, ok := strings.Cut(strings.TrimSpace(pair), "/")
		driver, err := strconv.Atoi(strings.TrimSpace(a))
		driven, err2 := strconv.Atoi(strings.TrimSpace(b))
		if !ok || err != nil || err2 != nil || driver < 12 || driven < 12 || driver > 240 || driven > 240 || len(e.Ns) > 2 {
			return errUnread
		}
		e.Ns = append(e.Ns, driver, driven)
	}
	return nil
}

// wants says how an event is written.
func (how shape) wants(verb string, s machine.System) string {
	text := verb
	if len(how.words) > 0 {
		text += " " + strings.Join(how.words, " or ")
	}
	example := map[machine.System]string{machine.Imperial: " 0.005", machine.Metric: " 0.12"}[s]
	switch how.takes {
	case "length":
		if verb == "overhang" {
			example = map[machine.System]string{machine.Imperial: " 1.5", machine.Metric: " 40"}[s]
		}
		text += example
	case "number":
		text += map[string]string{"speed": " 70", "wait": " 1.5"}[verb]
	case "mark":
		text += " 1"
	case "swing":
		text += " 29.5 tailstock, or headstock: the side that the compound's handle is swung to"
	case "gears":
		text += " 32/40, or gears 32/40 x 30/50, driver and driven"
	case "ratio":
		text += " 1/16, how much the diameter grows for a length"
	case "lead":
		text += " 10 TPI or levers 2.5 mm"
	}
	if how.bare {
		text += ", or just " + verb
	}
	return text
}

// Write writes the event as Parse reads it in these units.
func (e Event) Write(s machine.System) string {
	parts := []string{e.Verb}
	how := verbs[e.Verb]
	if e.Word != "" && len(how.words) > 0 {
		parts = append(parts, e.Word)
	}
	switch {
	case how.takes == "text":
		parts = append(parts, e.Note)
	case !e.Has:
	case how.takes == "length":
		parts = append(parts, calc.Shortest(e.X*s.Length().Factor, 6))
	case how.takes == "ratio":
		parts = append(parts, ratioText(e.X))
	case how.takes == "lead", how.takes == "swing":
		parts = append(parts, calc.Shortest(e.X, 6), e.Word)
	case how.takes == "gears":
		var t calc.Train
		for i := 0; i+1 < len(e.Ns); i += 2 {
			t.Drivers, t.Driven = append(t.Drivers, e.Ns[i]), append(t.Driven, e.Ns[i+1])
		}
		parts = append(parts, t.String())
	default:
		parts = append(parts, calc.Shortest(e.X, 6))
	}
	return strings.TrimSpace(strings.Join(parts, " "))
}
