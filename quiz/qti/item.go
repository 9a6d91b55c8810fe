package qti

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"scratchpass/quiz/answer"
)

// files makes every file of the package, the manifest first. The error names every
// item that can't be expressed.
func (p *Package) files() ([]file, error) {
	files := []file{{name: manifestFile, root: p.manifestOf()}}
	for _, t := range p.tests() {
		files = append(files, file{name: t.file, root: p.testOf(t)})
	}
	var problems []error
	for _, slot := range p.Slots {
		for _, it := range slot.Items {
			root, err := p.item(it)
			if err != nil {
				problems = append(problems, fmt.Errorf("item %s: %w", it.ID, err))
				continue
			}
			files = append(files, file{name: itemFile(it.ID), root: root})
			if it.Picture != nil {
				files = append(files, file{name: pictureFile(it.ID), raw: it.Picture.SVG()})
			}
		}
	}
	return files, errors.Join(problems...)
}

// draft is an item while it is made.
type draft struct {
	Item
	pack  *Package
	asks  []*node // declarations of the responses
	body  []*node
	rules []rule
}

// item makes the file of one item.
func (p *Package) item(it Item) (*node, error) {
	d := &draft{Item: it, pack: p}
	_, unknown := it.Words.Ask(it.Problem)
	if len(unknown) > 0 {
		return nil, fmt.Errorf("the words of %s ask for %q, which the problem does not have: mend its question", it.Problem.Task.Name, unknown)
	}
	if err := d.write(); err != nil {
		return nil, err
	}
	return d.root(), nil
}

// write writes the item by the kind of its answer, or as one choice where that is all
// that is taken.
func (d *draft) write() error {
	kind := d.Problem.Task.Kind
	if d.pack.ChoiceOnly && kind != answer.Choice {
		return d.wholeAnswers()
	}
	return kind.Accept(d)
}

var _ answer.Visitor = (*draft)(nil)

// root puts the parts of an item together, in the order the standard has them.
func (d *draft) root() *node {
	title := d.Words.Task.Title
	if clean(title) == "" {
		title = d.ID
	}
	root := schemes[d.pack.Version].root("assessmentItem",
		"identifier", d.ID, "title", title, "label", d.Problem.Code.String(), "adaptive", "false", "timeDependent", "false", "xml:lang", "en")
	root.add(d.asks...)
	points := decimal(d.Points)
	score := outcome("SCORE", "float", "0")
	score.attrs = append(score.attrs, "normalMaximum", points, "normalMinimum", "0")
	root.add(score, outcome("MAXSCORE", "float", points), outcome("FEEDBACK", "identifier", ""))
	root.add(el("itemBody").add(d.body...), d.processing())
	if d.pack.Telling == Never {
		return root
	}
	return root.add(d.feedback()...)
}

// outcome declares an outcome; an empty value declares none to begin with.
func outcome(id, baseType, value string) *node {
	n := el("outcomeDeclaration", "identifier", id, "cardinality", "single", "baseType", baseType)
	if value != "" {
		n.add(el("defaultValue").add(leaf("value", value)))
	}
	return n
}

// ask declares a response with its key.
func (d *draft) ask(id, cardinality, baseType string, key ...string) {
	n := el("responseDeclaration", "identifier", id, "cardinality", cardinality, "baseType", baseType)
	correct := el("correctResponse")
	for _, k := range key {
		correct.add(leaf("value", k))
	}
	d.asks = append(d.asks, n.add(correct))
}

// say puts a text into the body.
func (d *draft) say(s string) { d.body = append(d.body, paragraphs(s)...) }

// pose puts the question into the body, and its picture below it.
func (d *draft) pose(question string) {
	d.say(question)
	if d.Picture == nil {
		return
	}
	words := clean(d.Picture.Twin)
	short := words
	if len([]rune(words)) > longestAlt {
		short = clean(d.Picture.Title)
	}
	width := 480.0
	d.body = append(d.body, el("p").add(el("img", "src", "../"+pictureFile(d.ID), "alt", short,
		"width", decimal(width), "height", decimal(math.Round(width*d.Picture.Height/d.Picture.Width)))))
	if short != words {
		d.say(d.Picture.Twin)
	}
}

// longestAlt is how long the text beside an image may be that every importer takes.
const longestAlt = 256

// errors are the common errors, conventions first, as marks are given.
func (d *draft) errors() []answer.Known {
	var conventions, others []answer.Known
	for _, known := range d.Problem.Expected.Errors {
		if known.Convention {
			conventions = append(conventions, known)
		} else {
			others = append(others, known)
		}
	}
	return append(conventions, others...)
}

// decimal prints a number as XML reads it, without an exponent.
func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// feedbackOf words a mark; unless it is exact, only the key is told and not what was
// answered.
func (d *draft) feedbackOf(m answer.Mark, exact bool) string {
	m.Response = d.printed(m.Response)
	f := d.Words.Feedback(d.Problem, m)
	if m.Verdict == answer.WrongUnit {
		f.Reason = d.pack.Words.WrongUnit
	}
	if !exact {
		f.Given = ""
	}
	return f.Text()
}

// printed is a response with its numbers as they are printed: what someone types.
func (d *draft) printed(r answer.Response) answer.Response {
	return d.Problem.Task.Kind.Typed(&d.Problem.Expected, r)
}

// feedback is a modal feedback for every rule that has one, each identifier once.
func (d *draft) feedback() []*node {
	var all []*node
	var seen []string
	for _, r := range d.rules {
		if slices.Contains(seen, r.id) {
			continue
		}
		seen = append(seen, r.id)
		n := el("modalFeedback", "outcomeIdentifier", "FEEDBACK", "showHide", "show", "identifier", r.id)
		into := n
		if d.pack.Version == V30 {
			into = el("contentBody")
			n.add(into)
		}
		into.add(paragraphs(r.text)...)
		all = append(all, n)
	}
	return all
}

// idOf is the identifier of a mark's feedback.
func idOf(m answer.Mark) string {
	switch {
	case m.Verdict == answer.SafeWrong && m.Error != "":
		return "part-" + m.Error
	case m.Error != "":
		return string(m.Verdict) + "-" + m.Error
	}
	return string(m.Verdict)
}

// lineNumber puts the number in front of an option that feedback calls by its number.
func lineNumber(i int, s string) string { return strconv.Itoa(i+1) + ") " + strings.TrimSpace(s) }
