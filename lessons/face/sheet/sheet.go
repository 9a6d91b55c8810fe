// Package sheet is what stands before a learner at a face that shows one sheet at a time:
// what was there when the last answer was given, and what has come since.
package sheet

import (
	"slices"
	"strconv"
	"strings"

	"scratchpass/lessons/page"
)

// Sheet is one such sheet.
type Sheet struct {
	Old, Fresh page.Page
	Title      string     // the last heading
	Where      page.Where // where the learner is

	Panel *page.Bench // stays over the sheet, which is its log then; nil for none
	log   page.Page   // of the panel, while a page of another kind has its place
}

// longestLog is how many blocks of what was done at a panel are kept: more than can be seen.
const longestLog = 60

// All is what stands on it.
func (s *Sheet) All() page.Page { return append(append(page.Page{}, s.Old...), s.Fresh...) }

// Begins tells a block that begins a step of its own.
func Begins(b page.Block) bool {
	switch b.(type) {
	case page.Where, page.Heading, page.Bench:
		return true
	}
	return false
}

// IsBench tells a step that sets the panel.
func IsBench(p page.Page) bool {
	if len(p) == 0 {
		return false
	}
	_, is := p[0].(page.Bench)
	return is
}

// Steps parts pages where a step begins: each is read by itself if they do not fit
// together.
func Steps(p page.Page) []page.Page {
	var all []page.Page
	for i, b := range p {
		if _, pause := b.(page.Pause); pause {
			continue
		}
		// A heading right after a line that says where one is begins no further step.
		if len(all) == 0 || Begins(b) && (!Begins(p[max(i-1, 0)]) || IsBench(p[i:])) {
			all = append(all, nil)
		}
		all[len(all)-1] = append(all[len(all)-1], b)
	}
	return all
}

// Add puts a page on the sheet. One that begins a step takes the place of what is old.
func (s *Sheet) Add(p page.Page) {
	switch {
	case IsBench(p):
		s.pin(p[0].(page.Bench))
		p = p[1:]
	case len(p) > 0 && Begins(p[0]):
		if s.Panel != nil {
			s.log, s.Panel = s.Old, nil
		}
		s.Old = nil
	}
	for i, b := range p {
		switch b := b.(type) {
		case page.Where:
			s.Where = b
		case page.Heading:
			if s.Title = b.Text; i == 0 || !Begins(p[i-1]) { // what was said of where one is was of another page
				s.Where = page.Where{}
			}
		}
	}
	s.Fresh = append(s.Fresh, p...)
}

// pin sets the panel anew. What was done before it stands below it.
func (s *Sheet) pin(b page.Bench) {
	if s.Panel == nil {
		s.Old = s.log
	}
	s.Panel, s.Title, s.Where = &b, b.Title, page.Where{}
}

// Read makes what is fresh old: it has been read, and answered so. What was only turned
// over goes.
func (s *Sheet) Read(q page.Prompt, echo string) {
	_, turned := q.Takes.(page.GoOn)
	switch {
	case turned && s.Panel == nil:
		s.Old = nil
	case turned:
		s.Old = append(s.Old, s.Fresh...)
	case s.Panel != nil && strings.TrimSpace(echo) == ">": // nothing was typed
		s.Old = append(s.Old, s.Fresh...)
	default:
		s.Old = append(append(s.Old, s.Fresh...), page.Paragraph{Text: echo})
	}
	if s.Panel != nil {
		s.Old = slices.Clone(s.Old[max(0, len(s.Old)-longestLog):])
	}
	s.Fresh = nil
}

// Rule is a line across the sheet, between what came of an answer and what is asked next.
type Rule struct{ page.Gap }

// Echo is how an answer to a prompt is kept on the sheet: of a menu with the line that was
// chosen.
func Echo(q page.Prompt, reply string) string {
	if _, timed := q.Takes.(page.Timed); timed { // what came of the keys is told
		reply = ""
	}
	options := q.Options()
	if n, err := strconv.Atoi(reply); err == nil && n >= 1 && n <= len(options) {
		reply += ") " + options[n-1]
	}
	return "> " + reply
}

// Body is a page without what the frame shows, with a line between two steps.
func Body(p page.Page, title string) page.Page {
	var out page.Page
	for _, b := range p {
		switch b := b.(type) {
		case page.Heading:
			if len(out) == 0 && b.Text == title {
				continue
			}
		case page.Where:
			if len(out) > 0 {
				out = append(out, Rule{})
			}
			continue
		case page.Pause, page.Typeable, page.Now:
			continue
		}
		out = append(out, b)
	}
	return out
}
