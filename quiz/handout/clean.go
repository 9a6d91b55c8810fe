package handout

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
)

// cleaner makes a text fit for a page. Each format may have its own.
type cleaner func(text string) string

// plain takes out control characters and the signs that turn the direction of
// writing. Letters typed as a base and an accent become one: fonts have those.
func plain(text string) string {
	return norm.NFC.String(strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r) {
			return ' '
		}
		return r
	}, content.Printable(text)))
}

// line cleans what must stand on one line of the model.
func (c cleaner) line(text string) string {
	return strings.TrimSpace(strings.ReplaceAll(c(text), "\n", " "))
}

// lines cleans entries of one line each.
func (c cleaner) lines(texts []string) []string {
	out := make([]string, len(texts))
	for i, text := range texts {
		out[i] = c.line(text)
	}
	return out
}

// text cleans what may have several lines. Empty ones at its end go.
func (c cleaner) text(text string) string { return strings.TrimRight(c(text), " \n") }

// paragraphs cleans lines that may each have several.
func (c cleaner) paragraphs(texts []string) []string {
	text := c.text(strings.Join(texts, "\n"))
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

func (c cleaner) words(w Words) Words {
	for _, field := range []*string{&w.Name, &w.Form, &w.Code, &w.Date, &w.Answer, &w.Page, &w.Rehearsal, &w.Star,
		&w.Fill, &w.Save, &w.Saved, &w.None, &w.Sure, &w.Key, &w.Accepted, &w.Path, &w.Seen, &w.Tally, &w.TallyItem, &w.TallyHow} {
		*field = c.line(*field)
	}
	w.TallyColumns = c.lines(w.TallyColumns)
	w.Lang = strings.Map(func(r rune) rune { // it goes into documents unescaped
		if r == '-' || r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return r
		}
		return -1
	}, w.Lang)
	return w
}

func (c cleaner) sheet(s Sheet) Sheet {
	s.Title, s.Name, s.Form, s.Code = c.line(s.Title), c.line(s.Name), c.line(s.Form), c.line(s.Code)
	s.Facts = c.lines(s.Facts)
	items := make([]Item, len(s.Items))
	for i, it := range s.Items {
		it.Points, it.Expects, it.Sure, it.Unit = c.line(it.Points), c.line(it.Expects), c.line(it.Sure), c.line(it.Unit)
		it.Text = c.paragraphs(it.Text)
		it.Options, it.Readings = c.lines(it.Options), c.lines(it.Readings)
		it.Drawing = c.drawing(it.Drawing)
		items[i] = it
	}
	s.Items = items
	return s
}

func (c cleaner) drawing(given *drawing.Drawing) *drawing.Drawing {
	if given == nil {
		return nil
	}
	d := *given
	d.Title, d.Twin = c.line(d.Title), c.line(d.Twin)
	labels := make([]drawing.Label, len(d.Labels))
	for i, l := range d.Labels {
		labels[i] = l
		labels[i].Text = c.line(l.Text)
	}
	d.Labels = labels
	return &d
}

func (c cleaner) key(k Key) Key {
	k.Title, k.Name, k.Form, k.Code = c.line(k.Title), c.line(k.Name), c.line(k.Form), c.line(k.Code)
	items := make([]KeyItem, len(k.Items))
	for i, it := range k.Items {
		it.Title, it.Points, it.Limits = c.line(it.Title), c.line(it.Points), c.line(it.Limits)
		it.Answer, it.Path, it.Carried = c.text(it.Answer), c.line(it.Path), c.line(it.Carried)
		seen := make([]Seen, len(it.Seen))
		for j, s := range it.Seen {
			seen[j] = Seen{c.line(s.Value), c.line(s.Name)}
		}
		it.Seen = seen
		items[i] = it
	}
	k.Items = items
	return k
}

func (c cleaner) report(r Report) Report {
	r.Title, r.Owner, r.Note = c.line(r.Title), c.line(r.Owner), c.line(r.Note)
	r.Facts = c.lines(r.Facts)
	parts := make([]Part, len(r.Parts))
	for i, p := range r.Parts {
		parts[i] = Part{c.line(p.Heading), c.paragraphs(p.Lines), c.table(p.Table), c.drawing(p.Drawing)}
	}
	r.Parts = parts
	return r
}

func (c cleaner) table(given *Table) *Table {
	if given == nil {
		return nil
	}
	t := Table{c.lines(given.Columns), make([][]string, len(given.Rows))}
	for i, cells := range given.Rows {
		t.Rows[i] = c.lines(cells)
	}
	return &t
}
