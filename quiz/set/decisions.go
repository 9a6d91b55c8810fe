package set

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/files"
)

// Decided is the verdict of an answer that an instructor has decided about.
const Decided answer.Verdict = "decided"

// Decision is what an instructor gives for one answer.
type Decision struct {
	Code   string // of the sheet
	Item   int    // as printed, from 1
	Points float64
	Reason string
	Who    string // of several who have one form
	File   string
	Line   int
}

// Where is the file and the row of a decision.
func (d Decision) Where() string { return fmt.Sprintf("%s, row %d", d.File, d.Line) }

// Ruling is a decision as the marks show it.
type Ruling struct {
	Reason string         `json:"reason"`
	Where  string         `json:"where"` // file and row
	Was    answer.Verdict `json:"was"`   // the verdict without it
}

// decisionColumns are those of a file of decisions. The last ones stand in the list of
// answers that wait, and are for the eye.
var decisionColumns = []string{"code", "item", "points", "reason", "name", "id", "task", "given", "probably", "key", "of", "verdict"}

// ReadDecisions reads decisions: a table with code, item, points and reason. A row without
// points is of an answer that still waits.
func ReadDecisions(path string) ([]Decision, error) {
	text, err := files.Read(path, mostAnswerBytes)
	if err != nil {
		return nil, err
	}
	return ParseDecisions(path, text)
}

// ParseDecisions is ReadDecisions for a text. Points are 0 to 100; whether a question is
// worth so many is known only when it is marked.
func ParseDecisions(file string, text []byte) ([]Decision, error) {
	var all []Decision
	var wrong faults
	head, err := eachRow(file, text, MostAnswers, nil, func(head header, r line) error {
		if err := head.only(file, decisionColumns); err != nil {
			return err
		}
		if err := head.nameless(file, r); err != nil {
			return err
		}
		d, decided, err := readDecision(file, head, r)
		switch {
		case err != nil:
			wrong.add(err)
		case decided:
			all = append(all, d)
		}
		return nil
	})
	if err == nil && !head.has("code", "item", "points") {
		err = fmt.Errorf("%s: the columns are %s: give code, item, points and reason", file, calc.Quoted(strings.Join(head.names, ", ")))
	}
	if err != nil {
		return nil, err
	}
	return all, wrong.err()
}

func readDecision(file string, head header, r line) (d Decision, decided bool, err error) {
	written := head.of(r, "points")
	if written == "" {
		return d, false, nil
	}
	points, err := calc.ParseNumber(written)
	if err != nil || points < 0 || points > mostPoints {
		return d, false, rowError(file, r.row, "points %s: give 0 to what the question is worth, such as 0.5", calc.Quoted(written))
	}
	item, err := strconv.Atoi(head.of(r, "item"))
	if err != nil || item < 1 || item > mostItems {
		return d, false, rowError(file, r.row, "item %s: give the number of a question", calc.Quoted(head.of(r, "item")))
	}
	clean := func(column string) string { return strings.TrimSpace(content.Printable(head.of(r, column))) }
	return Decision{Code: cleanCode(head.of(r, "code")), Item: item, Points: points, Reason: clean("reason"), Who: clean("name"), File: file, Line: r.row}, true, nil
}

// Decide takes an instructor's decisions; they are applied as sheets are marked. One for a
// code or a question that the set does not have is an error, and so are two for one answer
// and more points than the question is worth.
func (k *Marker) Decide(all []Decision) error {
	codes, err := k.maker.Codes(k.class)
	if err != nil {
		return err
	}
	var wrong faults
	for _, d := range all {
		if err := k.decide(d, codes); err != nil {
			wrong.add(err)
		}
	}
	return wrong.err()
}

func (k *Marker) decide(d Decision, codes map[string]Apprentice) error {
	a, ok := codes[d.Code]
	items := k.maker.Blueprint.Items()
	switch {
	case !ok:
		return fmt.Errorf("%s: no sheet of this set has the code %s%s", d.Where(), calc.Quoted(d.Code), k.hintForID(d.Code))
	case d.Item > items:
		return fmt.Errorf("%s: question %d: the set has %d", d.Where(), d.Item, items)
	}
	if most := k.worth(a, d.Item); d.Points > most {
		return fmt.Errorf("%s: points %s: question %d is worth %s", d.Where(), points(d.Points), d.Item, points(most))
	}
	o := owner{code: d.Code}
	if a.Form != "" {
		o.who = d.Who
		if have := k.forms[d.Code]; d.Who == "" && len(have) == 1 {
			o.who = have[0]
		} else if !slices.Contains(have, d.Who) && len(have) > 0 {
			return fmt.Errorf("%s: %s has no form %s here: give a column name with one of %s", d.Where(), calc.Quoted(d.Who), a.Form, calc.Quoted(strings.Join(have, ", ")))
		}
	}
	if k.decisions[o] == nil {
		k.decisions[o] = map[int]Decision{}
	}
	if first, twice := k.decisions[o][d.Item]; twice {
		return fmt.Errorf("%s: question %d of %s is decided in %s already", d.Where(), d.Item, d.Code, first.Where())
	}
	k.decisions[o][d.Item] = d
	return nil
}

// worth is what a question of someone's sheet is worth.
func (k *Marker) worth(a Apprentice, number int) float64 {
	numbers := k.maker.inOrder()
	if k.maker.Blueprint.Rules.Shuffle {
		numbers = k.maker.shuffled(a.ID)
	}
	place := slices.Index(numbers, number)
	return k.maker.Blueprint.Slots[k.maker.places[place].slot].Points
}

// apply puts a decision in the place of a verdict. The instructor's word counts also where
// nothing had to be decided, but that is told: it may be the wrong row.
func (k *Marker) apply(o owner, r *Result, res *ItemResult) {
	d, ok := k.decisions[o][res.Number]
	if !ok {
		return
	}
	if !r.Handed {
		k.tellDecision(UselessDecision{d, r.label(), res.Verdict, res.Points, false})
		return
	}
	k.Applied++
	if !undecided(res.Verdict) {
		k.tellDecision(UselessDecision{d, r.label(), res.Verdict, res.Points, true})
	}
	res.Ruling = &Ruling{Reason: d.Reason, Where: d.Where(), Was: res.Verdict}
	res.Verdict, res.Points = Decided, d.Points
	if res.Ruling.Was != answer.KnownError || d.Points == res.Of {
		res.Slip = ""
	}
}

// UselessDecision is a decision about an answer that needed none.
type UselessDecision struct {
	Decision
	Name    string         // whose sheet it is, with its code
	Verdict answer.Verdict // what the answer was found to be
	Marked  float64        // its points without the decision
	Applied bool           // false where no answer came of that sheet
}

func (k *Marker) tellDecision(u UselessDecision) {
	if k.Needless++; len(k.NeedlessOnes) < mostDiffering {
		k.NeedlessOnes = append(k.NeedlessOnes, u)
	}
}

// only refuses columns that are not known: what stands in them would be lost.
func (h header) only(file string, known []string) error {
	for i, name := range h.names {
		if key := columnKey(name); key != "" && !slices.Contains(known, key) {
			return fmt.Errorf("%s: the column %s is not known, and what stands in it would be lost: the columns are %s", file, calc.Quoted(h.names[i]), strings.Join(known, ", "))
		}
	}
	return nil
}

// nameless refuses what stands in a column without a name.
func (h header) nameless(file string, r line) error {
	for i, cell := range r.cells {
		if strings.TrimSpace(cell) != "" && i < len(h.names) && columnKey(h.names[i]) == "" {
			return rowError(file, r.row, "%s stands in a column without a name: give the column a name, or leave it out", calc.Quoted(cell))
		}
	}
	return nil
}

// decidedShare is how an instructor's points count: as right, as a part or as wrong.
func (it ItemResult) decidedShare() (right, partly bool) {
	return it.Points >= it.Of, it.Points > 0 && it.Points < it.Of
}
