package qti

import "strconv"

// test is one test of the package.
type test struct {
	id, title, file string
	slots           []Slot
}

// tests are the tests that a package has: one, or one for each slot.
func (p *Package) tests() []test {
	if p.Deal != TestOfSlots {
		return []test{{p.ID, p.Title, testFile, p.Slots}}
	}
	var all []test
	for _, slot := range p.Slots {
		all = append(all, test{slot.ID + "-test", p.Title + ": " + slot.title(), "test-" + slot.ID + ".xml", []Slot{slot}})
	}
	return all
}

// points is what a test is worth for one learner; where items of a slot differ in it, the
// most that someone may get.
func (p *Package) points(t test) float64 {
	sum, most := 0.0, 0.0
	for _, slot := range t.slots {
		best, own := 0.0, 0.0
		for _, it := range slot.Items {
			best, own = max(best, it.Points), own+it.Points
		}
		if slot.Select > 0 {
			own = best * float64(slot.Select)
		}
		sum, most = sum+own, max(most, own)
	}
	if p.Deal == OneSlot {
		return most
	}
	return sum
}

func (s Slot) title() string {
	if clean(s.Title) == "" {
		return s.ID
	}
	return s.Title
}

// testOf is a test: a section for each slot, the time there is, and the points added up.
// Each item is answered once.
func (p *Package) testOf(t test) *node {
	mode, shown := "individual", "true"
	if p.Telling != AtOnce { // handed in together, so that nothing is told before the end
		mode = "simultaneous"
	}
	if p.Telling == Never {
		shown = "false"
	}
	part := el("testPart", "identifier", partID, "navigationMode", "nonlinear", "submissionMode", mode).add(
		el("itemSessionControl", "maxAttempts", "1", "showFeedback", shown, "allowReview", shown))
	into := part
	if p.Deal == OneSlot {
		into = el("assessmentSection", "identifier", formsID, "title", t.title, "visible", "true").add(el("selection", "select", "1"))
		part.add(into)
	}
	for _, slot := range t.slots {
		into.add(slot.section())
	}
	most := decimal(p.points(t))
	score := outcome("SCORE", "float", "")
	score.attrs = append(score.attrs, "normalMaximum", most, "normalMinimum", "0")
	root := schemes[p.Version].root("assessmentTest", "identifier", t.id, "title", t.title).add(score, outcome("MAXSCORE", "float", most))
	if p.Seconds > 0 {
		root.add(el("timeLimits", "maxTime", strconv.Itoa(p.Seconds)))
	}
	return root.add(part,
		el("outcomeProcessing").add(el("setOutcomeValue", "identifier", "SCORE").add(el("sum").add(el("testVariables", "variableIdentifier", "SCORE")))))
}

// section is a slot as a section of the test.
func (s Slot) section() *node {
	section := el("assessmentSection", "identifier", s.ID, "title", s.title(), "visible", "true")
	if s.Select > 0 {
		section.add(el("selection", "select", strconv.Itoa(s.Select)))
	}
	for _, it := range s.Items {
		section.add(el("assessmentItemRef", "identifier", it.ID, "href", itemFile(it.ID)))
	}
	return section
}
