package web

import (
	"bytes"
	"context"
	"fmt"
	"mime"
	"net/http"
	"net/url"

	"scratchpass/lessons/page"
)

// Lookup is a page with an address of its own beside the talk, for what can be looked up
// without an exercise. It is asked for by any number of windows at once.
type Lookup struct {
	Path  string // "/thread"
	Label string // of the way to it; empty where other pages lead to it
	Make  func(ctx context.Context, asked url.Values) (Looked, error)
}

// Looked is what was looked up.
type Looked struct {
	Title  string // of the window, and over the page where this begins with no heading
	Fields []Field
	Send   string // on the button of the form
	Body   page.Page
	Links  []Link // to more
	File   *File  // to be kept, instead of a page
}

// Field is what a form asks for. One with options is chosen from.
type Field struct {
	Name, Label, Value string
	Hint               string // what may stand there
	Options            []string
	Number             bool // digits are offered first
	Hidden             bool // goes along, and is not shown
}

// Link leads to another page. Part is what stands over the first of a group of links.
type Link struct{ To, Text, Part string }

// File is something to be kept or printed.
type File struct {
	Name, Type string
	Data       []byte
}

// lookupDocument is what the page of a lookup is made from.
type lookupDocument struct {
	Looked
	Action  string
	Problem string
	Words   Words
	Look    []Link
}

// RenderLookup writes the page of what was looked up. problem says what was wrong with what
// was asked for, and is empty where nothing was.
func RenderLookup(w *bytes.Buffer, l Looked, action, problem string, look []Link, words Words) error {
	if len(l.Body) > 0 { // the title of a page stands over its form
		if h, ok := l.Body[0].(page.Heading); ok {
			l.Title, l.Body = h.Text, l.Body[1:]
		}
	}
	if err := pages().ExecuteTemplate(w, "lookup", lookupDocument{l, action, problem, words, look}); err != nil {
		return fmt.Errorf("the page can't be written: %w", err)
	}
	return nil
}

// links are the ways to the lookups.
func links(all []Lookup) []Link {
	var to []Link
	for _, l := range all {
		if l.Label != "" {
			to = append(to, Link{To: l.Path, Text: l.Label})
		}
	}
	return to
}

// lookup serves one page of what can be looked up.
func lookup(l Lookup, o Options) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		found, err := l.Make(r.Context(), r.URL.Query())
		problem, code := "", http.StatusOK
		if err != nil {
			problem, code = Problem(err), http.StatusUnprocessableEntity
		}
		w.Header().Set("Cache-Control", "no-store")
		if f := found.File; f != nil && err == nil {
			w.Header().Set("Content-Type", f.Type)
			w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": f.Name}))
			_, _ = w.Write(f.Data) // who has gone needs no file
			return
		}
		var b bytes.Buffer
		if err := RenderLookup(&b, found, l.Path, problem, links(o.Lookups), o.Words); err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.WriteHeader(code)
		_, _ = w.Write(b.Bytes())
	}
}
