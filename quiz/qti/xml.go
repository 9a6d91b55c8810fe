package qti

import (
	"bufio"
	"io"
	"strings"
	"unicode"

	"scratchpass/content"
)

// node is an element, or a text where it has no name. Elements and attributes have
// their names of version 2.1; those of 3.0 follow from them.
type node struct {
	name  string
	attrs []string // name, value, name, value
	kids  []*node
	text  string
}

func el(name string, attrs ...string) *node { return &node{name: name, attrs: attrs} }

func text(s string) *node { return &node{text: s} }

func (n *node) add(kids ...*node) *node {
	n.kids = append(n.kids, kids...)
	return n
}

// leaf is an element around a text.
func leaf(name, s string, attrs ...string) *node { return el(name, attrs...).add(text(s)) }

// paragraphs puts each line of a text into a paragraph of its own.
func paragraphs(s string) []*node {
	var all []*node
	for line := range strings.SplitSeq(s, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			all = append(all, leaf("p", line))
		}
	}
	return all
}

// common are the elements that both versions share with others: those of XHTML and
// of the manifest.
var common = map[string]bool{
	"p": true, "img": true, "manifest": true, "metadata": true, "schema": true, "schemaversion": true, "organizations": true,
	"resources": true, "resource": true, "file": true, "dependency": true,
}

// kebab turns responseIdentifier into response-identifier.
func kebab(name string) string {
	var b strings.Builder
	for _, r := range name {
		if unicode.IsUpper(r) {
			b.WriteByte('-')
			r = unicode.ToLower(r)
		}
		b.WriteRune(r)
	}
	return b.String()
}

func (v Version) element(name string) string {
	if v != V30 || common[name] {
		return name
	}
	return "qti-" + kebab(name)
}

func (v Version) attribute(name string) string {
	if v != V30 || strings.Contains(name, ":") { // xsi:schemaLocation is no word of QTI
		return name
	}
	return kebab(name)
}

// clean takes out what no XML text may hold or no reader should meet: control and
// format characters and what is no character at all.
func clean(s string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return ' '
		case r&0xfffe == 0xfffe:
			return -1
		}
		return r
	}, content.Printable(s)))
}

var escaped = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

// write writes a document. Elements that hold text stand on one line, so that no
// white space is added to what is read.
func (n *node) write(w io.Writer, v Version) error {
	b := bufio.NewWriter(w)
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>`)
	n.print(b, v, "\n")
	b.WriteByte('\n')
	return b.Flush()
}

// print writes an element; indent stands before each tag, empty inside a line.
func (n *node) print(b *bufio.Writer, v Version, indent string) {
	if n.name == "" {
		escaped.WriteString(b, spaced(n.text))
		return
	}
	name := v.element(n.name)
	b.WriteString(indent + "<" + name)
	for i := 0; i < len(n.attrs); i += 2 {
		b.WriteString(" " + v.attribute(n.attrs[i]) + `="`)
		escaped.WriteString(b, clean(n.attrs[i+1]))
		b.WriteByte('"')
	}
	if len(n.kids) == 0 {
		b.WriteString("/>")
		return
	}
	b.WriteByte('>')
	inside := indent
	if indent != "" {
		inside += " "
	}
	for _, kid := range n.kids {
		if kid.name == "" {
			inside = ""
		}
	}
	for _, kid := range n.kids {
		kid.print(b, v, inside)
	}
	if inside != "" {
		b.WriteString(indent)
	}
	b.WriteString("</" + name + ">")
}

// spaced is clean, but keeps a space at either end, which parts a box from the words
// around it.
func spaced(s string) string {
	c := clean(s)
	if strings.HasPrefix(s, " ") {
		c = " " + c
	}
	if strings.HasSuffix(s, " ") && c != " " {
		c += " "
	}
	return c
}
