package screen

import (
	"slices"
	"strings"

	"scratchpass/lessons/page"
)

// sheet is what stands on the screen between the frame's two lines: what was there when
// the last answer was given, and what has come since.
type sheet struct {
	old, fresh page.Page
	title      string
	where      page.Where

	panel *page.Bench // stays over the sheet, which is its log then; nil for none
	log   page.Page   // of the panel, while a page of another kind has its place
}

// longestLog is how many blocks of what was done at a panel are kept: more than can be seen.
const longestLog = 60

// all is what stands on it.
func (s *sheet) all() page.Page { return append(append(page.Page{}, s.old...), s.fresh...) }

// begins tells a block that begins a step of its own.
func begins(b page.Block) bool {
	switch b.(type) {
	case page.Where, page.Heading, page.Bench:
		return true
	}
	return false
}

// isBench tells a step that sets the panel.
func isBench(p page.Page) bool {
	if len(p) == 0 {
		return false
	}
	_, is := p[0].(page.Bench)
	return is
}

// steps parts pages where a step begins: each is read by itself if they do not fit
// together.
func steps(p page.Page) []page.Page {
	var all []page.Page
	for i, b := range p {
		if _, pause := b.(page.Pause); pause {
			continue
		}
		// A heading right after a line that says where one is begins no further step.
		if len(all) == 0 || begins(b) && (!begins(p[max(i-1, 0)]) || isBench(p[i:])) {
			all = append(all, nil)
		}
		all[len(all)-1] = append(all[len(all)-1], b)
	}
	return all
}

// add puts a page on the sheet. One that begins a step takes the place of what is old.
func (s *sheet) add(p page.Page) {
	switch {
	case isBench(p):
		s.pin(p[0].(page.Bench))
		p = p[1:]
	case len(p) > 0 && begins(p[0]):
		if s.panel != nil {
			s.log, s.panel = s.old, nil
		}
		s.old = nil
	}
	for i, b := range p {
		switch b := b.(type) {
		case page.Where:
			s.where = b
		case page.Heading:
			if s.title = b.Text; i == 0 || !begins(p[i-1]) { // what was said of where one is was of another page
				s.where = page.Where{}
			}
		}
	}
	s.fresh = append(s.fresh, p...)
}

// pin sets the panel anew. What was done before it stands below it.
func (s *sheet) pin(b page.Bench) {
	if s.panel == nil {
		s.old = s.log
	}
	s.panel, s.title, s.where = &b, b.Title, page.Where{}
}

// read makes what is fresh old: it has been read, and answered so. What was only turned
// over goes.
func (s *sheet) read(q page.Prompt, echo string) {
	_, turned := q.Takes.(page.GoOn)
	switch {
	case turned && s.panel == nil:
		s.old = nil
	case turned:
		s.old = append(s.old, s.fresh...)
	case s.panel != nil && strings.TrimSpace(echo) == ">": // nothing was typed
		s.old = append(s.old, s.fresh...)
	default:
		s.old = append(append(s.old, s.fresh...), page.Paragraph{Text: echo})
	}
	if s.panel != nil {
		s.old = slices.Clone(s.old[max(0, len(s.old)-longestLog):])
	}
	s.fresh = nil
}

// body is a page without what the frame shows, with a line between two steps.
func body(p page.Page, title string) page.Page {
	var out page.Page
	for _, b := range p {
		switch b := b.(type) {
		case page.Heading:
			if len(out) == 0 && b.Text == title {
				continue
			}
		case page.Where:
			if len(out) > 0 {
				out = append(out, rule{})
			}
			continue
		case page.Pause, page.Typeable, page.Now:
			continue
		}
		out = append(out, b)
	}
	return out
}
