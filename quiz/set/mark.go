package set

import (
	"cmp"
	"encoding/json"
	"maps"
	"regexp"
	"slices"
	"strings"

	"scratchpass/quiz/answer"
)

// Verdicts that only a set has.
const (
	Carried answer.Verdict = "carried" // wrong, but right from the wrong answer it starts from
	Blank   answer.Verdict = "blank"   // nothing was written
	ByHand  answer.Verdict = "by-hand" // can be read, but starts from an answer that nothing can be worked out from
	Twice   answer.Verdict = "twice"   // two answers came that differ: nobody knows which was first

	NotAsked answer.Verdict = "not-asked" // in a class nobody was asked it: it is worth nothing here
)

// Result is what came of one apprentice's sheet.
type Result struct {
	ID     string       `json:"id"`
	Name   string       `json:"name"`
	Form   string       `json:"form"`
	Code   string       `json:"code"`
	Points float64      `json:"points"`
	Of     float64      `json:"of"`
	Open   int          `json:"open"` // answers that an instructor must look at; their points are not in Points
	Handed bool         `json:"handed_in"`
	Items  []ItemResult `json:"items"`

	items []Item // the questions, for feedback
}

// ItemResult is what came of one answer.
type ItemResult struct {
	Number    int              `json:"number"`
	Task      string           `json:"task"`
	Code      string           `json:"code"` // of the problem
	Given     string           `json:"given"`
	Key       string           `json:"key"`
	Verdict   answer.Verdict   `json:"verdict"`
	Slip      string           `json:"slip"`
	Points    float64          `json:"points"`
	Of        float64          `json:"of"`
	Certainty answer.Certainty `json:"certainty"`
	Gate      bool             `json:"gate"`
	Twice     []Source         `json:"twice,omitempty"`    // the answers that differ, where there are several
	Probably  string           `json:"probably,omitempty"` // what was typed, where a spreadsheet has made a date of it
	Ruling    *Ruling          `json:"decision,omitempty"` // what the instructor decided

	place int
	mark  answer.Mark
}

// MarshalJSON leaves the points of an answer that waits for the instructor open: null, not zero.
func (it ItemResult) MarshalJSON() ([]byte, error) {
	type plain ItemResult
	shown := struct {
		plain
		Points *float64 `json:"points"`
	}{plain: plain(it)}
	if !undecided(it.Verdict) {
		shown.Points = &it.Points
	}
	return json.Marshal(shown)
}

// Source is an answer and where it stands.
type Source struct {
	Given string `json:"given"`
	Where string `json:"where"` // file and row
}

// undecided reports whether a verdict leaves an answer to the instructor.
func undecided(v answer.Verdict) bool { return v == answer.Unread || v == ByHand || v == Twice }

// Marker marks the sheets of a set.
type Marker struct {
	Names      []string    // what stands in rows whose code is someone else's
	Repeats    int         // answers that came a second time, and were no others or came later in one file; the first counts
	RepeatedIn [][2]string // files of the first and of the second, each pair once, a few
	Empty      []string    // sheets that came back with nothing on them, a few
	Differ     int         // questions with answers that differ
	Differing  []Differing // a few of them
	Applied    int         // decisions that were applied
	Needless   int         // decisions about answers that needed none

	NeedlessOnes []UselessDecision // a few of them

	NotAsked map[int]bool // by place: questions that no one was asked, in a class that ended before

	maker     *Maker
	class     []Apprentice
	given     map[owner]map[int]Given      // by printed number
	typed     map[owner]map[string][]Given // by problem code, one of each file
	decisions map[owner]map[int]Decision   // by printed number
	forms     map[string][]string          // who has handed in each form, in the order they came
	has       map[owner]bool               // who is among them

	sheetOf map[string]firstTyped // by file
	mixed   map[owner]bool        // sheets and files that have answers to them and to another sheet
	byID    map[string]string     // ids by what they would be as codes; nil until someone asks
	toldOf  map[string]bool       // names that were told of
	filesOf map[string][]string   // of typed answers, by the id of whose they are
	called  map[string]string     // the id of who is called so; nil until someone asks
}

// People is how many results there will be: one for each apprentice, and where several
// have one form one for each of them.
func (k *Marker) People() int {
	n := len(k.class)
	for _, who := range k.forms {
		n += len(who) - 1
	}
	return n
}

// Each marks one apprentice after the other.
func (k *Marker) Each(do func(Result) error) error {
	for _, a := range k.class {
		items, err := k.maker.Items(a.ID)
		if err != nil {
			return err
		}
		people := []string{""}
		if a.Form != "" && len(k.forms[k.maker.Code(a.ID)]) > 0 {
			people = k.forms[k.maker.Code(a.ID)]
		}
		for _, who := range people {
			if err := do(k.sheet(a, who, items)); err != nil {
				return err
			}
		}
	}
	return nil
}

// sheet marks one apprentice; of several who have one form, one of them.
func (k *Marker) sheet(a Apprentice, who string, items []Item) Result {
	code := k.maker.Code(a.ID)
	o := owner{code, who}
	items = slices.Clone(items)
	r := Result{ID: a.ID, Name: cmp.Or(a.Name, who), Form: a.Form, Code: code, Of: k.maker.Blueprint.Points(), Items: make([]ItemResult, len(items)), items: items}
	r.Handed = len(k.given[o]) > 0 || len(k.typed[o]) > 0 // a blank paper too
	read := map[int]answer.Mark{}                         // by place, what was understood
	nothing := true
	for i, it := range items {
		given, differ := k.answerTo(o, it)
		g, onScreen := given[0], given[0].typed() && given[0].Code != ""
		if onScreen && len(it.From) > 0 { // on a screen the question has a number of its own
			it.Problem = alone(it)
			items[i] = it
		}
		res := ItemResult{Number: it.Number, Task: it.Problem.Task.Name, Code: it.Problem.Code.String(), Given: g.Text, Key: it.Words.KeyNumber(it.Problem), Of: it.Points,
			Certainty: g.Certainty, Gate: it.Problem.Task.SafetyCritical, Verdict: Blank, place: it.Place}
		nothing = nothing && g.Text == ""
		switch {
		case differ:
			k.leave(&res, r.label(), given)
			read[it.Place] = answer.Mark{Verdict: answer.Unread} // what starts from it is left too
		case k.NotAsked[it.Place] && g.Text == "":
			res.Verdict, res.Of = NotAsked, 0
			r.Of -= it.Points
		case blank(g.Text): // not known, or said so
		case !onScreen && mangled(it.Problem, g.Text) != "":
			res.Verdict, res.Probably = answer.Unread, mangled(it.Problem, g.Text)
			res.mark = answer.Mark{Verdict: answer.Unread}
			read[it.Place] = res.mark
		default:
			k.mark(&res, it, k.text(it, g), onScreen, read)
		}
		k.apply(o, &r, &res)
		if undecided(res.Verdict) {
			r.Open++
		}
		r.Points += res.Points
		r.Items[i] = res
	}
	if r.Handed && nothing && len(k.Empty) < mostDiffering {
		k.Empty = append(k.Empty, r.label())
	}
	return r
}

// nothings are what people write where they know no answer.
var nothings = []string{"", "pass", "-", "--", "---", "\u2013", "\u2014", "\u2212", "?", "??", "???"}

// blank reports whether a text is no try at an answer.
func blank(text string) bool {
	return slices.Contains(nothings, strings.ToLower(strings.TrimSpace(text)))
}

// commaDecimal is a comma before decimals; one between two numbers has a space after it.
var commaDecimal = regexp.MustCompile(`,(\d)`)

// decimals writes a number as it is read here, where a comma stands before its decimals.
func (k *Marker) decimals(it Item, g Given) string {
	if !g.Comma && !k.maker.Blueprint.Comma || strings.Contains(g.Text, ".") { // with points in it a comma is none
		return g.Text
	}
	text := commaDecimal.ReplaceAllString(g.Text, ".$1")
	switch kind := it.Problem.Task.Kind; {
	case kind.Numeric():
		return text
	case kind == answer.Designation && it.Problem.Mark(text).Verdict != answer.Unread: // M12x1,75, and not 3/8,16
		return text
	}
	return g.Text
}

// mark marks one answer. An answer that follows rightly from the one before it as it was
// written, wrong or only rounded, costs nothing more, and neither does a unit that was
// wrong there already: one mistake costs once. What starts from an answer that can't be
// read, or from which nothing can be worked out, is left for the instructor.
func (k *Marker) mark(res *ItemResult, it Item, text string, onScreen bool, read map[int]answer.Mark) {
	p := it.Problem
	m := p.Mark(text)
	read[it.Place] = m
	res.Verdict, res.Slip, res.Points, res.mark = m.Verdict, m.Error, m.Points*it.Points, m
	if m.Verdict == answer.Convention {
		res.Points *= 1 - conventionCosts[k.maker.Blueprint.Rules.Conventions]
	}
	if m.Correct() || m.Verdict == answer.Unread || onScreen || len(it.From) == 0 {
		return
	}
	after, wrongUnit, guessed := p, false, false
	for _, input := range slices.Sorted(maps.Keys(it.From)) {
		before, ok := read[it.From[input]]
		if !ok {
			return // nothing was written there
		}
		var err error
		if before.Verdict != answer.Unread {
			if before.Verdict == answer.WrongUnit { // what was meant is known
				wrongUnit = true
				continue
			}
			var inUnit bool
			after, inUnit, err = after.WithInputGuess(input, before.Response)
			wrongUnit, guessed = wrongUnit || inUnit, guessed || inUnit
		}
		if before.Verdict == answer.Unread || err != nil {
			res.Verdict, res.Slip, res.Points = ByHand, "", 0
			return
		}
	}
	switch follows := after.MarkResponse(m.Response); {
	case follows.Verdict == answer.Right, follows.Verdict == answer.WrongUnit && wrongUnit:
		res.Verdict, res.Slip, res.Points = Carried, "", it.Points
	case follows.Verdict == answer.WrongUnit:
		res.Verdict, res.Slip, res.Points = answer.WrongUnit, "", follows.Points*it.Points
	case guessed: // which unit was meant before is only a guess
		res.Verdict, res.Slip, res.Points = ByHand, "", 0
	}
}
