// Package sheet is what stands before a learner at a face that shows one sheet at a time:
// what was there when the last answer was given, and what has come since.
package sheet

import "scratchpass/lessons/page"

// Sheet is one such sheet.
type Sheet struct {
	Old, Fresh page.Page
	Title      string     // the last heading
	Where      page.Where // where the learner is
}

// All is what stands on it.
func (s *Sheet) All() page.Page { return append(append(page.Page{}, s.Old...), s.Fresh...) }

// Begins tells a block that begins a step of its own.
func Begins(b page.Block) bool {
	switch b.(type) {
	case page.Where, page.Heading:
		return true
	}
	return false
}

// Steps parts pages where a step begins, for a face that shows them one by one.
func Steps(p page.Page) []page.Page {
	var all []page.Page
	for i, b := range p {
		if _, pause := b.(page.Pause); pause {
			continue
		}
		// A heading right after a line that says where one is begins no further step.
		if len(all) == 0 || Begins(b) && !Begins(p[max(i-1, 0)]) {
			all = append(all, nil)
		}
		all[len(all)-1] = append(all[len(all)-1], b)
	}
	return all
}

// Add puts a page on the sheet. One that begins a step takes the place of what is old.
func (s *Sheet) Add(p page.Page) {
	if len(p) > 0 && Begins(p[0]) {
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

// Read makes what is fresh old: it has been read, and answered so. What was only turned
// over goes.
func (s *Sheet) Read(q page.Prompt, echo string) {
	if _, turned := q.Takes.(page.GoOn); turned {
		s.Old, s.Fresh = nil, nil
		return
	}
	s.Old = append(append(s.Old, s.Fresh...), page.Paragraph{Text: echo})
	s.Fresh = nil
}

// Rule is a line across the sheet, between what came of an answer and what is asked next.
type Rule struct{ page.Gap }

// Body is a page without what a frame around it says, with a rule between two steps.
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
