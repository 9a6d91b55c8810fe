package handout

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"io"
	"sync"

	"scratchpass/quiz/drawing"
)

//go:embed page.gohtml
var pageSource string

// fieldsSource is a sheet with fields to fill in, and fieldsScript the one script that such
// a document may run: it saves what was filled in as a file of answers, and asks for nothing
// from outside.
//
//go:embed fields.gohtml
var fieldsSource string

//go:embed fields.js
var fieldsScript string

// page has the parts of a document: head, sheet, key, tally, report and tail. It is read
// when the first document is written: a start of the program that writes none is quicker.
var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.Must(template.New("page").Funcs(template.FuncMap{
		"colon":   withColon,
		"heading": heading,
		"joined":  joined,
		"ems":     ems,
		"svg":     func(d *drawing.Drawing) template.HTML { return template.HTML(d.SVG()) }, // it escapes its texts
		"inc":     func(i int) int { return i + 1 },
		"script":  func() template.JS { return template.JS(fieldsScript) },
		"policy": func() string {
			sum := sha256.Sum256([]byte(fieldsScript))
			return "default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
		},
	}).Parse(pageSource)).Parse(fieldsSource))
})

// ems is how wide a drawing of a report is, in sizes of the text around it: its letters
// are about as large as small type.
func ems(d *drawing.Drawing) int { return d.Columns() / 2 }

// HTML writes one document that needs nothing from outside: for a screen reader, for
// a screen and, with breaks where they belong, for a printer.
func HTML(w io.Writer, o Options) (Writer, error) {
	o, err := o.checked(plain)
	if err != nil {
		return nil, err
	}
	return &front{to: &html{out: w, options: o}, clean: plain}, nil
}

// html is the format.
type html struct {
	out     io.Writer
	options Options
	parts   int
}

// part is what a template of the document gets.
type part struct {
	Number  int // of the part, for its id
	Options Options
	Words   Words
	Sheet   Sheet
	Key     Key
	Tally   string
	Items   []string
	Report  Report
	Starred bool
}

func (h *html) write(name string, p part) error {
	p.Options, p.Words = h.options, h.options.Words
	if h.parts == 0 {
		if err := page().ExecuteTemplate(h.out, "head", p); err != nil {
			return err
		}
	}
	h.parts++
	p.Number = h.parts
	return page().ExecuteTemplate(h.out, name, p)
}

func (h *html) sheet(s Sheet) error {
	name := "sheet"
	if h.options.Fields {
		name = "fields"
	}
	return h.write(name, part{Sheet: s, Starred: s.starred()})
}

func (h *html) key(k Key) error {
	return h.write("key", part{Key: k, Starred: k.starred()})
}

func (h *html) tally(name string, items []string) error {
	return h.write("tally", part{Tally: name, Items: items})
}

func (h *html) report(r Report) error { return h.write("report", part{Report: r}) }

func (h *html) close() error { return page().ExecuteTemplate(h.out, "tail", part{Options: h.options}) }
