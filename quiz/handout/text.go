package handout

import (
	"bufio"
	"io"
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// textWidth is how many columns a line of plain text has.
const textWidth = 72

// Text writes plain text from top to bottom, "label: value", for screen readers and
// for typing answers into. A drawing is told in words.
func Text(w io.Writer, o Options) (Writer, error) {
	o, err := o.checked(plain)
	if err != nil {
		return nil, err
	}
	return &front{to: &text{out: bufio.NewWriter(w), words: o.Words}, clean: plain}, nil
}

// text is the format.
type text struct {
	out   *bufio.Writer
	words Words
	begun bool
}

// begin parts what follows from what came before.
func (t *text) begin() {
	if t.begun {
		_, _ = t.out.WriteString("\n\n---\n\n") // a buffered writer keeps its error for Flush
	}
	t.begun = true
}

// say writes a text, broken at spaces; the lines after its first are indented.
func (t *text) say(indent int, s string) {
	for line := range strings.SplitSeq(s, "\n") {
		for i, part := range wrap(line, textWidth-indent, ansi.StringWidth) {
			if i > 0 && part != "" {
				part = strings.Repeat(" ", indent) + part
			}
			_, _ = t.out.WriteString(part + "\n")
		}
	}
}

// field writes "label: value", and nothing where there is no value.
func (t *text) field(label, value string) {
	if value != "" {
		t.say(2, labelled(label, value))
	}
}

// blank writes a label to type behind.
func (t *text) blank(label string) { t.say(2, withColon(label)) }

func (t *text) gap() { _, _ = t.out.WriteString("\n") }

func (t *text) sheet(s Sheet) error {
	t.begin()
	t.say(0, s.Title)
	t.say(2, joined(" ", withColon(t.words.Name), s.Name))
	t.field(t.words.Form, s.Form)
	t.say(2, joined(" ", withColon(t.words.Code), s.Code))
	t.blank(t.words.Date)
	for _, fact := range s.Facts {
		t.say(0, fact)
	}
	if s.starred() {
		t.say(2, "* "+t.words.Star)
	}
	for _, it := range s.Items {
		t.gap()
		t.item(it)
	}
	t.gap()
	t.say(0, t.words.Rehearsal)
	return t.out.Flush()
}

// heading is the line above an item: "3. * (2 points)".
func heading(number int, caution bool, parts ...string) string {
	star := ""
	if caution {
		star = "*"
	}
	return joined(" ", append([]string{strconv.Itoa(number) + ".", star}, parts...)...)
}

// inBrackets is what stands behind a title or a label.
func inBrackets(s string) string {
	if s == "" {
		return ""
	}
	return "(" + s + ")"
}

func (t *text) item(it Item) {
	t.say(3, heading(it.Number, it.Caution, inBrackets(it.Points)))
	for _, line := range it.Text {
		t.say(0, line)
	}
	for i, option := range it.Options {
		t.say(3, strconv.Itoa(i+1)+") "+option)
	}
	if d := it.Drawing; d != nil {
		t.field(d.Title, d.Twin)
	}
	if it.told() != "" {
		t.say(0, it.told())
	}
	for i, label := range it.Readings {
		t.blank(joined(" ", reading(i, strings.TrimSuffix(label, ":")), inBrackets(it.Unit)))
	}
	if len(it.Readings) == 0 {
		t.blank(joined(" ", t.words.Answer, inBrackets(it.Unit)))
	}
}

func (t *text) key(k Key) error {
	t.begin()
	t.say(0, t.words.Key)
	t.say(0, k.Title)
	t.field(t.words.Name, k.Name)
	t.field(t.words.Form, k.Form)
	t.field(t.words.Code, k.Code)
	if k.starred() {
		t.say(2, "* "+t.words.Star)
	}
	for _, it := range k.Items {
		t.gap()
		t.say(3, heading(it.Number, it.Caution, it.Title, inBrackets(it.Points)))
		t.field(t.words.Answer, it.Answer)
		t.field(t.words.Accepted, it.Limits)
		t.field(t.words.Path, it.Path)
		if len(it.Seen) > 0 {
			t.blank(t.words.Seen)
		}
		for _, s := range it.Seen {
			t.say(2, s.Value+" = "+s.Name)
		}
		if it.Carried != "" {
			t.say(0, it.Carried)
		}
	}
	return t.out.Flush()
}

func (t *text) tally(name string, items []string) error {
	t.begin()
	t.say(0, joined(": ", t.words.Tally, name))
	if t.words.TallyHow != "" {
		t.say(0, t.words.TallyHow)
	}
	for _, item := range items {
		t.gap()
		t.field(t.words.TallyItem, item)
		for _, column := range t.words.TallyColumns {
			t.blank(column)
		}
	}
	return t.out.Flush()
}

func (t *text) close() error { return t.out.Flush() }
