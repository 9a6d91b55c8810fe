package class

import "scratchpass/quiz/set"

// Given are the answers to a set as they come back from paper: each with the code of its sheet
// and the number on it. Answers that came late, and that the instructor has not let, are left
// out. visitors are those in no roster; the others are those on it.
func Given(r *Room, n int, visitors bool) []set.Given {
	var all []set.Given
	for _, p := range r.Everyone() {
		if p.Visitor != visitors || p.Is != "" {
			continue
		}
		items, err := r.Sets[n].Items(p.ID)
		if err != nil { // they were made before they were answered
			continue
		}
		for _, it := range items {
			a, ok := p.Answers[Question{n, it.Place}]
			if !ok || a.Late {
				continue
			}
			all = append(all, set.Given{Code: r.Sets[n].Maker.Code(p.ID), Item: it.Number, Text: a.Text, Certainty: a.Certainty, Who: p.Name, ID: p.ID, Row: true})
		}
	}
	return all
}
