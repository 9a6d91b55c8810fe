package web

import (
	"bytes"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"scratchpass/lessons/page"
)

// Form is what a form asks for, and where it sends it.
type Form struct {
	To        string
	Hidden    []Sent // sent with the answer
	Prompt    page.Prompt
	Panel     *page.Bench // that the prompt belongs to; nil for none
	Given     string      // an answer that was given before, to be changed
	Marked    bool        // an option is marked first and then sent, not sent by a tap
	Still     bool        // no field is gone to by itself: what is asked is read first
	SureLabel string      // how sure, as a question
	Sure      []Choice    // ways to answer that; empty where it is not asked
	PassTo    string      // where who does not know sends that, after they were asked once; else empty
	PassSure  string      // and what that button says then
}

// Sent is something that goes along with an answer.
type Sent struct{ Name, Value string }

// Choice is something that can be ticked.
type Choice struct {
	Value, Name string
	Now         bool
}

// Help are the words that can be sent instead of an answer.
func (f Form) Help() []string { return helps(f.Prompt) }

// Label is what the button of a word says.
func (f asking) Label(word string) string {
	switch {
	case word != page.WordPass:
		return word
	case f.PassTo != "":
		return f.PassSure
	}
	return f.Words.Pass
}

// Keys reports whether a number is typed: its signs are offered.
func (f Form) Keys() bool {
	switch f.Prompt.Takes.(type) {
	case page.Number, page.Readings:
		return true
	}
	return false
}

// Units can be put behind a number.
func (f Form) Units() []string { return unitsOf(f.Prompt) }

// Has reports whether an option is in the answer that was given before.
func (f Form) Has(option int) bool {
	return slices.Contains(strings.FieldsFunc(f.Given, func(r rune) bool { return r < '0' || r > '9' }), strconv.Itoa(option))
}

// Reading is the i-th reading of the answer that was given before.
func (f Form) Reading(i int) string {
	if readings := strings.Fields(f.Given); i < len(readings) {
		return readings[i]
	}
	return ""
}

// Blocks writes a page as it stands between others; its question leaves out the options that
// the prompt has.
func Blocks(p page.Page, q page.Prompt) (template.HTML, error) {
	var b bytes.Buffer
	for _, block := range withoutOptions(p, q) {
		if err := pages().ExecuteTemplate(&b, "block", block); err != nil {
			return "", err
		}
	}
	return template.HTML(b.String()), nil // the template has escaped it
}

// Panel writes the panel of a machine as it stands over a form.
func Panel(p page.Bench) (template.HTML, error) {
	var b bytes.Buffer
	err := pages().ExecuteTemplate(&b, "panel", p)
	return template.HTML(b.String()), err // the template has escaped it
}

// Write writes a form.
func (f Form) Write(words Words) (template.HTML, error) {
	var b bytes.Buffer
	err := pages().ExecuteTemplate(&b, "form", asking{f, words})
	return template.HTML(b.String()), err // the template has escaped it
}
