package web

import (
	"cmp"
	"embed"
	"fmt"
	"html/template"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"scratchpass/content"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

//go:embed page.gohtml
var source string

//go:embed static
var static embed.FS

// Words are what the page around a sheet says.
type Words struct {
	Lang, Name, Skip, Send, GoOn, Sum, SumLabel, Term, TermLabel, Words, Units, None, Gone, Ended, Order string

	Hidden, Lost, Again   string // of a pass by the clock: why it was broken off, and begin again
	One, Several          string // how to choose
	Earlier, Later, Place string // of a step in an order; ${step}, ${n} and ${of} stand in the last
	NoPage, OtherName     string // why there is no page: none is there, or none under that name of the computer
	Look, Back            string // what can be looked up, and the way back from there
	Do, Moves, Log        string // at the bench: a move, what can be done, and what was
	Pass                  string // that someone does not know
}

// WordsOf are the words of pages.
func WordsOf(say func(string, ...any) string) Words {
	return Words{Lang: "en", Name: say("screen-name"), Skip: say("web-skip"), Send: say("web-send"), GoOn: say("web-go-on"),
		Sum: say("web-sum"), SumLabel: say("web-sum-label"), Term: say("web-term"), TermLabel: say("web-term-label"),
		Words: say("web-words"), Units: say("web-units"), None: say("web-none"), Gone: say("web-gone"), Ended: say("web-ended"), Order: say("web-order"),
		Hidden: say("web-hidden"), Lost: say("web-lost"), Again: say("web-again"), One: say("web-one"), Several: say("web-several"), Earlier: say("web-earlier"), Later: say("web-later"), Place: say("web-place"),
		NoPage: say("web-no-page"), OtherName: say("web-other-name"), Look: say("web-look"), Back: say("web-back"), Do: say("web-do"), Moves: say("web-moves"), Log: say("web-log"), Pass: say("web-pass")}
}

// pages are the templates, read when the first page is written.
var pages = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("web").Funcs(template.FuncMap{
		"kind": kind, "svg": svg, "printable": content.Printable, "add": func(a, b int) int { return a + b },
		"lines": lines, "takes": func(q page.Prompt) string { return kind(q.Takes) }, "trim": strings.TrimSpace, "told": told, "asked": asked, "course": course, "asset": Asset,
	}).Parse(source))
})

// kind is the name of a block's or a prompt's type.
func kind(b any) string {
	if b == nil {
		return ""
	}
	return reflect.TypeOf(b).Name()
}

func svg(d drawing.Drawing) template.HTML { return template.HTML(d.SVG()) } // it escapes its texts

func told(q page.Question) string { told, _ := q.Parts(); return told }

func asked(q page.Question) string { _, asked := q.Parts(); return asked }

// lines are a block's lines as every face that writes lines has them, without pictures.
func lines(b page.Block) []string {
	var all []string
	for _, l := range text.Lines(page.Page{b}, false) {
		if l.Role != text.Picture && strings.TrimSpace(l.Text) != "" {
			all = append(all, content.Printable(strings.TrimRight(l.Text, "\n")))
		}
	}
	return all
}

// document is what a page is made from.
type document struct {
	View
	Asks  asking
	Words Words
}

// asking is what a form is made from.
type asking struct {
	Form
	Words Words
}

// Render writes the page of a view.
func Render(w io.Writer, v View, words Words) error {
	v.Body = withoutOptions(v.Body, v.Prompt)
	d := document{View: v, Words: words, Asks: asking{Form{To: cmp.Or(v.To, "/answer"), Hidden: []Sent{{"prompt", cmp.Or(v.Name, strconv.Itoa(v.Number))}}, Prompt: v.Prompt, Panel: v.Panel}, words}}
	if err := pages().ExecuteTemplate(w, "page", d); err != nil {
		return fmt.Errorf("the page can't be written: %w", err)
	}
	return nil
}

// helps are the words that can be sent instead of an answer. Where there is something to be
// worked out or explained there is help too.
func helps(q page.Prompt) []string {
	if q.Beside && !slices.Contains(q.Words, page.WordHelp) {
		return append(slices.Clone(q.Words), page.WordHelp)
	}
	return q.Words
}

// withoutOptions leaves the options of the question at hand out where each is a button, a box or
// a field of the form.
func withoutOptions(p page.Page, q page.Prompt) page.Page {
	var options []string
	switch takes := q.Takes.(type) {
	case page.OneOf:
		options = takes.Options
	case page.SeveralOf:
		options = takes.Options
	case page.InOrder:
		options = takes.Steps
	case page.Readings: // each stands over its field
		options = takes.Labels
	default:
		return p
	}
	for i := len(p) - 1; i >= 0; i-- {
		if asked, ok := p[i].(page.Question); ok && slices.Equal(asked.Lines, options) {
			asked.Lines = nil
			p = slices.Clone(p)
			p[i] = asked
			break
		}
	}
	return p
}

// unitsOf are the units in which a number may be typed.
func unitsOf(q page.Prompt) []string {
	unit := ""
	switch takes := q.Takes.(type) {
	case page.Number:
		unit = takes.Unit
	case page.Readings:
		unit = takes.Unit
	}
	switch unit {
	case "in", "mm":
		return []string{"in", "thou", "mm"}
	case "":
		return nil
	}
	return []string{unit}
}
