package handout

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"testing"
)

// element is one tag of a document with its attributes and its text.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

// parsed reads a document strictly: each tag is closed, each sign escaped.
func parsed(t *testing.T, doc []byte) []element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(doc))
	var all []element
	var open []int
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatalf("the document is not well formed: %v", err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, i := range open {
				all[i].text += string(token)
			}
		}
	}
}

func TestHTML(t *testing.T) {
	doc := document(t, HTML, testOptions(Letter), func(w Writer) {
		sheets(fixedSheet())(w)
		keys(fixedKey())(w)
		_ = w.Tally("Bench 3", []string{"1. Compound travel", "2. Stop before gauging"})
	})
	count := map[string]int{}
	ids := map[string]bool{}
	for _, e := range parsed(t, doc) {
		count[e.name]++
		switch e.name {
		case "html":
			if e.attrs["lang"] != "en" {
				t.Errorf("language %q", e.attrs["lang"])
			}
		case "svg":
			if e.attrs["role"] != "img" || e.attrs["aria-label"] != fixedDrawing.Twin {
				t.Errorf("a drawing is not told: %v", e.attrs)
			}
		case "th":
			if s := e.attrs["scope"]; s != "row" && s != "col" {
				t.Errorf("the heading %q of a table has the scope %q", e.text, s)
			}
		case "section":
			if !ids[e.attrs["aria-labelledby"]] {
				ids[e.attrs["aria-labelledby"]] = false
			}
		case "script", "link", "img", "iframe", "object":
			t.Errorf("the document has a %s", e.name)
		}
		if id := e.attrs["id"]; id != "" {
			if ids[id] {
				t.Errorf("the id %s is used twice", id)
			}
			ids[id] = true
		}
		for name := range e.attrs {
			if slices.Contains([]string{"src", "href", "onclick"}, name) {
				t.Errorf("<%s> has %s", e.name, name)
			}
		}
	}
	for id, used := range ids {
		if !used {
			t.Errorf("no element is called %q", id)
		}
	}
	for name, want := range map[string]int{"h1": 3, "h2": 8, "section": 3, "article": 8, "svg": 2, "table": 3, "figcaption": 2, "td": 6 + 12} {
		if count[name] != want {
			t.Errorf("%d of %s, want %d", count[name], name, want)
		}
	}
	if regexp.MustCompile(`url\(|@import|http://[^w]|https:`).Match(doc) {
		t.Error("the document asks for something from outside")
	}
	for _, want := range []string{"size: Letter", "break-inside: avoid", "Łukasz", "A mistake here can hurt someone."} {
		if !bytes.Contains(doc, []byte(want)) {
			t.Errorf("the document lacks %q", want)
		}
	}
}

func TestHTMLStaysWellFormedWithHostileTexts(t *testing.T) {
	o := testOptions(A4)
	o.Title = hostile
	for _, e := range parsed(t, document(t, HTML, o, hostileParts)) {
		if e.name == "script" {
			t.Error("a text became a script")
		}
	}
}
