package screen

import (
	"scratchpass/lessons/page"
)

// sheet is what stands on the screen between the frame's two lines: what was there when
// the last answer was given, and what has come since.
type sheet struct {
	old, fresh page.Page
	title      string
	where      page.Where
}

// all is what stands on it.
func (s *sheet) all() page.Page { return append(append(page.Page{}, s.old...), s.fresh...) }

// begins tells a block that begins a step of its own.
func begins(b page.Block) bool {
	switch b.(type) {
	case page.Where, page.Heading:
		return true
	}
	return false
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
		if len(all) == 0 || begins(b) && !begins(p[max(i-1, 0)]) {
			all = append(all, nil)
		}
		all[len(all)-1] = append(all[len(all)-1], b)
	}
	return all
}

// add puts a page on the sheet. One that begins a step takes the place of what is old.
func (s *sheet) add(p page.Page) {
	if len(p) > 0 && begins(p[0]) {
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

// read makes what is fresh old: it has been read, and answered so. What was only turned
// over goes.
func (s *sheet) read(q page.Prompt, echo string) {
	if _, turned := q.Takes.(page.GoOn); turned {
		s.old, s.fresh = nil, nil
		return
	}
	s.old = append(append(s.old, s.fresh...), page.Paragraph{Text: echo})
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
